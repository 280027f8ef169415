"""The study of an open lesson: what its audience will really play and the lesson leaves open, as a list of things to do.

It is begun when the author asks for it, goes on while he works, and each thing on the list can be taken into the lesson, put off, or
dismissed; what he decided stands in lesson.toml.
"""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from typing import Literal

from lineproof.collection import CollectionError
from lineproof.engine.outside import OutsideError
from lineproof.lesson import Lesson
from lineproof.lesson.errors import EditError
from lineproof.proof import EvidenceStore
from lineproof.replies import NaturalError, Study
from lineproof.replies.study import StudyError, study
from lineproof.report.studied import where_from

from .deciding import bearing
from .events import Events
from .naming import Names
from .put_off import read_put_off
from .shown import without_options
from .things import Thing, things
from .ways import Looking, collection_of
from .wire import PauseShown, StudyShown, ThingShown

WAIT = 0.1
"""Seconds between two looks how far it is."""
WORKERS = 1
"""Threads that search: the windows and the prover want the rest."""
State = Literal["none", "running", "done", "failed"]


class Ended(Exception):  # noqa: N818 - the desk is being closed
    """The study is not wanted any more."""


class Studies:
    """The study of one lesson. state: "none" until one is asked for."""

    def __init__(self, events: Events, store: EvidenceStore) -> None:
        self._events = events
        self._store = store
        self._lock = threading.Lock()
        self._state: State = "none"
        self._count = (0, 0)
        self._problem = ""
        self._version = 0
        self._found: Study | None = None
        self._things: tuple[Thing, ...] = ()
        self._pauses: tuple[PauseShown, ...] = ()
        self._ended = False
        self._thread: threading.Thread | None = None

    def begin(self, version: int, lesson: Lesson, names: Names, looking: Looking) -> None:
        """Begins a study of a version, unless one is going on.

        :raises EditError: when the lesson does not say which side is taught.
        """
        if lesson.settings.side is None:
            raise EditError(
                "the lesson does not say which side is taught",
                path=lesson.name,
                hint="say it in the settings",
            )
        with self._lock:
            if self._state == "running":
                return
            self._state, self._version, self._count = "running", version, (0, 0)
            self._thread = threading.Thread(
                target=self._run, args=(lesson, names, looking), daemon=True
            )
            self._thread.start()

    def wait_for(
        self,
        version: int,
        lesson: Lesson,
        names: Names,
        looking: Looking,
        tell: Callable[[Literal["step"], int, int], None],
    ) -> Study:
        """The study of a version, once it is done; begun where it is not going on. tell: called with how far it is; what it raises ends the wait.

        :raises StudyError: when it fails.
        """
        begun = False
        while (found := self.of(lesson)) is None:
            with self._lock:
                state, problem, of, count = self._state, self._problem, self._version, self._count
            if state == "failed" and begun and of == version:
                raise StudyError(problem)
            if state != "running":
                self.begin(version, lesson, names, looking)
                begun = True
            tell("step", *(count if of == version else (0, 0)))
            time.sleep(WAIT)
        return found

    def end(self) -> None:
        """Breaks off what goes on; what was searched is kept."""
        self._ended = True
        if self._thread is not None:
            self._thread.join()

    def _run(self, lesson: Lesson, names: Names, looking: Looking) -> None:
        state: State = "failed"
        problem = ""
        try:
            with collection_of(looking.collection) as collection:
                found = study(
                    lesson,
                    looking.effort,
                    progress=self._progress,
                    workers=WORKERS,
                    store=self._store,
                    collection=collection,
                    engine=looking.outside,
                )
            made = tuple(things(found, names))
            with self._lock:
                self._found, self._things = found, made
                self._pauses = tuple(_pauses(found, names))
            state = "done"
        except Ended:
            return
        except (StudyError, CollectionError, NaturalError, OutsideError) as error:
            problem = str(error)
        except Exception as error:  # said in the window, where it would else run for ever
            problem = f"the program has a fault here ({type(error).__name__})"
        with self._lock:
            self._state, self._problem = state, problem
        self._tell()

    def _progress(self, done: int, of: int) -> None:
        if self._ended:
            raise Ended
        with self._lock:
            self._count = (done, of)
        self._tell()

    def _tell(self) -> None:
        self._events.publish("study", self._shown([], []))

    def of(self, lesson: Lesson) -> Study | None:
        """The study that was made of just this text, under settings that bear on it as these do."""
        with self._lock:
            found = self._found
        if found is None or found.lesson.text != lesson.text:
            return None
        return found if bearing(found.lesson.settings) == bearing(lesson.settings) else None

    def shown(self, lesson: Lesson, names: Names) -> StudyShown:
        """What was found and still holds in the present version: what the lesson has taken up since is left out."""
        with self._lock:
            some, pauses = self._things, self._pauses
        there = [pause for pause in pauses if names.find(pause.place) is not None]
        return self._shown(list(_left(some, lesson, names)), there)

    def _shown(self, some: list[ThingShown], pauses: list[PauseShown]) -> StudyShown:
        with self._lock:
            done, of = self._count
            return StudyShown(
                state=self._state,
                version=self._version,
                done=done,
                of=of,
                problem=self._problem or None,
                basis=None if self._found is None else without_options(where_from(self._found)),
                things=some,
                pauses=pauses,
            )


def _pauses(found: Study, names: Names) -> Iterator[PauseShown]:
    for one in found.pauses:
        yield PauseShown(place=names.of(one.place), grade=one.grade, best=one.best, point=one.point)


def _left(some: tuple[Thing, ...], lesson: Lesson, names: Names) -> Iterator[ThingShown]:
    decided = {each.anchor: each.how for each in read_put_off(lesson.settings.decisions)}
    for thing in some:
        place = names.find(thing.shown.place)
        if place is None or any(child.uci == thing.move for child in place.children):
            continue
        how = decided.get((thing.shown.sort, place.key, thing.shown.about))
        yield thing.shown.model_copy(update={"decided": how})


__all__ = ["Ended", "Studies"]
