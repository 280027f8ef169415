"""Weighing candidate openings side by side: moves, and lessons that are on the desk."""

from __future__ import annotations

import threading
from collections.abc import Callable, Sequence
from contextlib import ExitStack
from dataclasses import replace
from typing import TYPE_CHECKING

from lineproof.collection import CollectionError
from lineproof.collection.asked import asked as read
from lineproof.engine import Stop
from lineproof.engine.outside import OutsideError
from lineproof.follow.weighing import Candidate, weigh_openings
from lineproof.lesson import Lesson
from lineproof.lesson.errors import EditError
from lineproof.lesson.where import where
from lineproof.proof import Effort, EvidenceStore
from lineproof.proof.asker import Asker, Interrupted
from lineproof.replies import NaturalError, Replies
from lineproof.report.title import title_of
from lineproof.report.weighed import begun, weight_said
from lineproof.report.weighed_html import weighed_html

from .shown import without_options
from .ways import collection_of
from .wire import CandidateShown, WeighAsked, WeighedShown

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine

Tell = Callable[[int, int], None]
NONE = WeighedShown(state="none", done=0, of=0, problem=None, said=[], candidates=[])


class Weighings:
    """What is weighed in one run; one weighing at a time, and the last one's answer is kept."""

    def __init__(self) -> None:
        self._asked = threading.Lock()
        """Held while another weighing begins."""
        self._lock = threading.Lock()
        self._shown = NONE
        self._page = ""
        self._stop = Stop()
        self._thread: threading.Thread | None = None

    def begin(
        self,
        asked: WeighAsked,
        lessons: Sequence[Lesson],
        outside: OutsideEngine | None = None,
    ) -> WeighedShown:
        """Begins to weigh openings; one that goes on is broken off. lessons: those among the candidates. outside: answers the searches in place of ours.

        :raises NotAPositionError: when moves are none.
        :raises EditError: when a lesson does not say which side it teaches, or nothing is to be weighed.
        :raises CollectionError: when there is no such collection.
        """
        candidates = [_of_moves(text) for text in asked.moves if text.strip()]
        candidates += [_of_lesson(lesson) for lesson in lessons]
        if not candidates:
            raise EditError("nothing is to be weighed", path="the desk", hint="give moves")
        with collection_of(asked.collection):
            pass
        with self._asked:
            self.end()
            self._stop = stop = Stop()
            self._tell(NONE.model_copy(update={"state": "running", "of": len(candidates)}))
            self._thread = threading.Thread(
                target=self._run, args=(candidates, asked, outside, stop), daemon=True
            )
            self._thread.start()
        return self.shown()

    def shown(self) -> WeighedShown:
        """How far it is, and what was found."""
        with self._lock:
            return self._shown

    def end(self) -> None:
        """Breaks off what goes on; what was searched is kept."""
        self._stop.set()
        if self._thread is not None:
            self._thread.join()

    def report(self) -> str:
        """The report of what was weighed last, as HTML; "" where there is none."""
        with self._lock:
            return self._page

    def _tell(self, shown: WeighedShown, page: str = "") -> None:
        with self._lock:
            self._shown, self._page = shown, page

    def _run(
        self,
        candidates: Sequence[Candidate],
        asked: WeighAsked,
        outside: OutsideEngine | None,
        stop: Stop,
    ) -> None:
        def tell(done: int, of: int) -> None:
            self._tell(NONE.model_copy(update={"state": "running", "done": done, "of": of}))

        try:
            self._tell(*_weighed(candidates, asked, outside, stop, tell))
        except Interrupted:
            return
        except (CollectionError, NaturalError, OutsideError) as error:
            self._tell(NONE.model_copy(update={"state": "failed", "problem": str(error)}))
        except Exception as error:  # said in the window, where it would else run for ever
            problem = f"the program has a fault here ({type(error).__name__})"
            self._tell(NONE.model_copy(update={"state": "failed", "problem": problem}))


def _weighed(
    candidates: Sequence[Candidate],
    asked: WeighAsked,
    outside: OutsideEngine | None,
    stop: Stop,
    tell: Tell,
) -> tuple[WeighedShown, str]:
    """What is shown, and the report."""
    with ExitStack() as stack:
        collection = stack.enter_context(collection_of(asked.collection))
        store = EvidenceStore(where()["weighed openings"] / "cache" / "evidence.sqlite")
        stack.callback(store.close)
        replies = Replies(asked.audience, store, collection=collection, stop=stop)
        ask = Asker(store, Effort.SKETCH.steps[0], stop, outside)
        found = weigh_openings(candidates, replies, ask, tell)
        uncounted = replies.uncounted(one.candidate.spot for one in found)
    count = len(found)
    shown = WeighedShown(
        state="done",
        done=count,
        of=count,
        problem=None,
        said=[without_options(line) for line in begun(asked.audience, uncounted)],
        candidates=[
            CandidateShown(name=name, said=lines)
            for name, *lines in (list(weight_said(one, uncounted)) for one in found)
        ],
    )
    return shown, weighed_html(found, asked.audience, uncounted=uncounted)


def _of_moves(text: str) -> Candidate:
    return Candidate.of_moves(text.strip(), read(text))


def _of_lesson(lesson: Lesson) -> Candidate:
    side = lesson.settings.side
    if side is None:
        raise EditError(
            "the lesson does not say which side it teaches",
            path=lesson.name,
            hint="say it in the settings",
        )
    return replace(Candidate.of_lesson(lesson, side), name=title_of(lesson))
