"""The prover of an open lesson: reads what an edit changed, answers board facts at once, and has the rest searched.

One thread reads, one tells the windows, the others search. A finding whose words are unchanged keeps its answer over edits elsewhere, and every
search is kept in the lesson's evidence store, so that nothing is searched twice.
"""

from __future__ import annotations

import os
import threading
import time
from contextlib import suppress
from dataclasses import replace
from typing import TYPE_CHECKING

from lineproof.collection import CollectionError
from lineproof.engine import Stop
from lineproof.lesson import Lesson
from lineproof.lesson.opinions import TABLE
from lineproof.proof import Effort, EvidenceStore, evidence_file, settle
from lineproof.proof.asker import Interrupted
from lineproof.proof.at_hand import AtHand

from .contradicting import contradictions_shown
from .deciding import bearing
from .found import Answered, Shown, Snapshot, answered, faulty, snapshot, uncounted
from .naming import Names
from .passages import Passage, Read, Said, passages, read, spoken
from .ways import Counted, Looking, Way
from .wire import ContradictionShown, OutsideShown, WayShown

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine

    from .opened import OpenLesson

REST = 0.5
"""Seconds without an edit after which the whole lesson is read again, where an edit may have changed what other words mean."""
TELL = 0.2
"""Seconds between two messages to the windows at least."""
SHARE = 4
"""Of a long lesson a message takes so long to make that this many times as long must pass before the next."""
BREATH = 0.002
"""Seconds between two comments in which others may run, while the whole lesson is read again."""
PIECE = 20
"""Comments that are read before the windows are told of them."""
PARTIAL = 50
"""Edits after which the whole lesson is read again in any case: what was read of an old version keeps it in memory."""


class Prover:
    """The threads of one lesson, from `start` to `stop`.

    effort: of each search. workers: threads that search. outside: an engine that may answer in place of ours, and does at first. collection: the games that are counted at first; "" for none.
    :raises lineproof.collection.CollectionError: when there is no such collection.
    """

    def __init__(
        self,
        opened: OpenLesson,
        effort: Effort = Effort.NORMAL,
        workers: int | None = None,
        outside: OutsideEngine | None = None,
        collection: str = "",
    ) -> None:
        self._opened = opened
        self._outside = outside
        self._counted = Counted()
        self._looking = Effort.SKETCH
        self.way = Way(effort, outside, self._counted.games(collection, opened.lesson))
        """How the checks are made now."""
        self.store = EvidenceStore(evidence_file(opened.lesson))
        """The lesson's evidence; open until `stop`."""
        self._stop = Stop()
        self._break = Stop()
        """Ends the searches that are made in a way that another was chosen for."""
        self._news = threading.Event()
        self._untold = threading.Event()
        self._more = threading.Condition()
        # Under `_more`:
        self._table: dict[str, Passage] = {}
        self._answers: dict[str, Answered] = {}
        self._waiting: dict[str, Said] = {}
        self._busy: set[str] = set()
        self._shown: tuple[int, Lesson, Names, bool] = (*opened.present(), False)
        self._made: dict[str, Shown] = {}
        self._contradictions: tuple[int, list[ContradictionShown]] | None = None
        # Of the reading thread alone:
        self._context: object = None
        self._partial = 0
        count = workers or max(1, (os.cpu_count() or 1) - 1)  # one core is for the windows
        targets = [self._read, self._tell, *[self._search] * count]
        self._threads = [threading.Thread(target=target, daemon=True) for target in targets]

    def start(self) -> None:
        self._news.set()
        for thread in self._threads:
            thread.start()

    def stop(self) -> None:
        """Ends the threads; what was answered is kept."""
        self._stop.set()
        with self._more:
            self._break.set()
        self._news.set()
        self._untold.set()
        with self._more:
            self._more.notify_all()
        for thread in self._threads:
            thread.join()
        self._counted.close()
        self.store.close()

    def changed(self) -> None:
        """Says that there is a new version."""
        self._news.set()

    @property
    def looking(self) -> Looking:
        """How is looked for what the lesson leaves open."""
        with self._more:
            return Looking(self._looking, self.way.outside, self.way.collection)

    def choose(
        self, effort: Effort, looking: Effort, outside: bool = False, collection: str = ""
    ) -> None:
        """Checks everything anew, where another way to check is chosen. looking: of what is looked for from now on. outside: by the engine that
        the run was started with, if there is one. collection: games to count; "" for none.

        :raises lineproof.collection.CollectionError: when there is no such collection.
        """
        _, lesson, _ = self._opened.present()
        games = self._counted.games(collection, lesson)
        with self._more:
            self._looking = looking
        self._check(Way(effort, self._outside if outside else None, games))
        self._untold.set()

    def _count_for(self, lesson: Lesson) -> None:
        """Counts the games of the lesson's audience, where that is another now."""
        way = self.way
        if way.games is None or way.games.suit(lesson):
            return
        with suppress(CollectionError):  # it has gone: those that were opened are asked
            self._check(replace(way, games=self._counted.games(way.collection, lesson)))

    def _check(self, way: Way) -> None:
        with self._more:
            if way.same(self.way):
                return
            self.way = way
            self._break.set()
            self._break = Stop()
            self._table, self._answers, self._waiting, self._made = {}, {}, {}, {}
            self._contradictions = None
            self._shown = (*self._shown[:3], False)
        self._news.set()
        self._untold.set()

    def snapshot(self) -> Snapshot:
        """What is found by now, of the version that was read last."""
        with self._more:
            version, lesson, names, whole = self._shown
            way, looking, made = self.way, self._looking, self._made
            table, answers, both = dict(self._table), dict(self._answers), self._contradictions
        told = both[1] if both is not None and both[0] == version else None
        outside = None
        if self._outside is not None:
            name = self._outside.program.name
            outside = OutsideShown(name=name, asked=way.outside is not None)
        return snapshot(
            lesson,
            names,
            version,
            WayShown(
                effort=way.effort.value,
                looking=looking.value,
                outside=outside,
                collection=way.collection,
            ),
            table,
            answers,
            told,
            made,
            read=whole,
        )

    def _tell(self) -> None:
        while True:
            self._untold.wait()
            self._untold.clear()
            if self._stop.is_set():
                return
            began = time.monotonic()
            found = self.snapshot()
            self._opened.events.publish("findings", found)
            self._rest(max(TELL, SHARE * (time.monotonic() - began)))
            if found.complete and found.contradictions is None:
                self._compare(found.version)

    def _rest(self, seconds: float) -> None:
        end = time.monotonic() + seconds
        while not self._stop.is_set() and (left := end - time.monotonic()) > 0:
            time.sleep(min(left, TELL))

    def _compare(self, version: int) -> None:
        """Looks at all findings of a version together, unless there is a newer one."""
        with self._more:
            shown, lesson, names, _ = self._shown
            table, answers, way = dict(self._table), dict(self._answers), self.way
        found = None
        if shown == version:
            with suppress(Exception):  # a fault there must not keep the findings from the windows
                found = contradictions_shown(lesson, names, table, answers)
        if found is not None:
            with self._more:
                if way != self.way:
                    return
                self._contradictions = (version, found)
            self._untold.set()

    # Reading

    def _read(self) -> None:
        while True:
            self._news.wait()
            self._news.clear()
            if self._stop.is_set():
                return
            version, lesson, names = self._opened.present()
            self._count_for(lesson)
            way = self.way
            context = (names.all, bearing(lesson.settings))
            first = self._context is None
            same = context == self._context and TABLE not in lesson.settings.decisions
            if not self._read_new(version, lesson, names):
                continue
            if not first and (not same or self._partial >= PARTIAL):
                if self._news.wait(REST) or not self._read_all(lesson, names):
                    continue
                self._partial = 0
            self._context = context
            self._end(version, lesson, names, way)

    def _read_new(self, version: int, lesson: Lesson, names: Names) -> bool:
        """Reads what is not in the table; False when there is a newer version already."""
        everything = list(spoken(lesson, names))
        with self._more:
            self._shown = (version, lesson, names, False)
            new = [one for one in everything if one.key not in self._table]
        self._partial += bool(new)
        for piece in (new[at : at + PIECE] for at in range(0, len(new), PIECE)):
            self._put(passages(lesson, list(read(lesson, piece))))
            if self._news.is_set():
                return False
        return True

    def _read_all(self, lesson: Lesson, names: Names) -> bool:
        """Reads the whole lesson anew, so that each sentence is understood as it stands now; False as above."""
        found: list[Read] = []
        for one in read(lesson, list(spoken(lesson, names))):
            found.append(one)
            if self._news.wait(BREATH):
                return False
        self._put(passages(lesson, found))
        return True

    def _put(self, new: dict[str, Passage]) -> None:
        """Puts passages into the table, answers what needs no search, and has the rest searched before all else."""
        at_hand = AtHand(self.store)
        with self._more:
            known, way = set(self._answers), self.way
        answers: dict[str, Answered] = {}
        waiting: dict[str, Said] = {}
        for said in (said for passage in new.values() for said in passage.said):
            if said.id in known:
                continue
            try:
                answers[said.id] = answered(
                    settle(said.claim, way.effort, at_hand, None, way.outside, way.games)
                )
            except Interrupted:
                waiting[said.id] = said
            except CollectionError as error:
                answers[said.id] = uncounted(error)
            except Exception as error:  # a check that breaks must not end the others
                answers[said.id] = faulty(error)
        with self._more:
            if way != self.way:  # all of it is read again
                return
            self._table.update(new)
            self._answers.update(answers)
            self._waiting = {**waiting, **self._waiting}
            self._more.notify_all()
        self._untold.set()

    def _end(self, version: int, lesson: Lesson, names: Names, way: Way) -> None:
        """All of a version is read: what it does not have is forgotten."""
        keys = {one.key for one in spoken(lesson, names)}
        with self._more:
            if way != self.way:
                return
            self._table = {key: each for key, each in self._table.items() if key in keys}
            ids = {said.id for passage in self._table.values() for said in passage.said}
            self._answers = {id_: each for id_, each in self._answers.items() if id_ in ids}
            self._waiting = {id_: each for id_, each in self._waiting.items() if id_ in ids}
            self._made = {key: each for key, each in self._made.items() if key in keys}
            self._shown = (version, lesson, names, True)
        self._untold.set()

    # Searching

    def _search(self) -> None:
        while (found := self._next()) is not None:
            said, way, end = found
            answer: Answered | None = None
            try:
                answer = answered(
                    settle(said.claim, way.effort, self.store, end, way.outside, way.games)
                )
            except Interrupted:
                if self._stop.is_set():
                    return
            except CollectionError as error:
                answer = uncounted(error)
            except Exception as error:  # a check that breaks must not end the others
                answer = faulty(error)
            with self._more:
                self._busy.discard(said.id)
                if answer is not None and way == self.way:
                    self._answers[said.id] = answer
                self._more.notify_all()
            self._untold.set()

    def _next(self) -> tuple[Said, Way, Stop] | None:
        """The next claim to search, newest first, in which way, and what ends the search; None at the end."""
        with self._more:
            while not self._stop.is_set():
                for id_, said in self._waiting.items():
                    if id_ not in self._busy:
                        del self._waiting[id_]
                        if id_ in self._answers:
                            break
                        self._busy.add(id_)
                        return said, self.way, self._break
                else:
                    self._more.wait()
            return None
