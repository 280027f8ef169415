"""What is being published of an open lesson, while its author goes on writing."""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass

from lineproof.collection import CollectionError
from lineproof.engine.outside import OutsideError
from lineproof.lesson.errors import LessonError
from lineproof.order import OrderError
from lineproof.publish import PublishError
from lineproof.replies import NaturalError, StudyError

from .events import Events
from .hints import hint_here
from .wire import Counts, PublishedShown, PublishingShown

TOLD = 200
"""How often the windows are told how far it is, at most, in all."""
NONE = PublishingShown(state="none", what="product", done=0, of=0, problem=None, published=None)


Tell = Callable[[Counts, int, int], None]
"""Called with what is counted, how many are done, and how many there are in all."""


class BrokenOff(Exception):  # noqa: N818 - the author wants it no more
    """It is not to be published any more."""


@dataclass(frozen=True)
class Work:
    """What is left to do once all is checked. what: that which is counted first. make: writes the products; called with where to tell how far it is."""

    name: str
    what: Counts
    make: Callable[[Tell], PublishedShown]


class Publishings:
    """The publishing of one lesson; one at a time, and what came of the last one is kept."""

    def __init__(self, events: Events) -> None:
        self._events = events
        self._lock = threading.Lock()
        self._shown = NONE
        self._broken = threading.Event()
        self._thread: threading.Thread | None = None

    def begin(self, work: Work) -> PublishingShown:
        """Begins to publish.

        :raises PublishError: while something is being published.
        """
        with self._lock:
            if self._shown.state == "running":
                raise PublishError(
                    "the lesson is being published already",
                    path=work.name,
                    hint="wait until that is done, or break it off",
                )
            self._broken = broken = threading.Event()
            self._shown = NONE.model_copy(update={"state": "running", "what": work.what})
            self._thread = threading.Thread(target=self._run, args=(work, broken), daemon=True)
            self._thread.start()
            return self._shown

    def shown(self) -> PublishingShown:
        """How far it is, or what came of it."""
        with self._lock:
            return self._shown

    def end(self) -> PublishingShown:
        """Breaks off what goes on, and nothing of it is written, unless it is done already."""
        self._broken.set()
        if self._thread is not None:
            self._thread.join()
        return self.shown()

    def _run(self, work: Work, broken: threading.Event) -> None:
        told: tuple[Counts, int] | None = None

        def tell(what: Counts, done: int, of: int) -> None:
            nonlocal told
            if broken.is_set():
                raise BrokenOff
            if (what, done * TOLD // max(1, of)) != told:
                told = (what, done * TOLD // max(1, of))
                self._tell(self.shown().model_copy(update={"what": what, "done": done, "of": of}))

        try:
            made = work.make(tell)
            self._tell(self.shown().model_copy(update={"state": "done", "published": made}))
        except BrokenOff:
            self._tell(NONE)
        except LessonError as error:
            hint = hint_here(error.hint)
            said = f"{error.message}: {hint}" if hint else error.message
            self._tell(NONE.model_copy(update={"state": "failed", "problem": said}))
        except (OrderError, StudyError, CollectionError, NaturalError, OutsideError) as error:
            self._tell(NONE.model_copy(update={"state": "failed", "problem": str(error)}))
        except OSError as error:
            reason = (error.strerror or str(error)).lower()
            said = f"the system refuses it ({reason}): choose another place"
            self._tell(NONE.model_copy(update={"state": "failed", "problem": said}))
        except Exception as error:  # said in the window, where it would else run for ever
            said = f"the program has a fault here ({type(error).__name__})"
            self._tell(NONE.model_copy(update={"state": "failed", "problem": said}))

    def _tell(self, shown: PublishingShown) -> None:
        with self._lock:
            self._shown = shown
        self._events.publish("publishing", shown)
