"""The lessons that are open in one run of the desk, each with its keeper and its prover."""

from __future__ import annotations

import os
import threading
from base64 import b64encode
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from lineproof.lesson.errors import LessonError
from lineproof.order.script import script
from lineproof.order.summary import summary
from lineproof.proof import Effort
from lineproof.publish import PublishError
from lineproof.report.plain import harmless

from .events import News
from .figures import figures_shown
from .followings import Followings
from .keeper import Keeper
from .opened import OpenLesson
from .prover import Prover
from .publishing import editions_shown, notice_shown, order_of, published
from .questions import ask
from .starting import start
from .studies import Studies
from .weighings import Weighings
from .wire import (
    AnswerShown,
    DemoLesson,
    EditionsShown,
    FiguresShown,
    FollowAsked,
    FollowedShown,
    GivenFile,
    LessonEvent,
    LessonsShown,
    NewLesson,
    NoticeShown,
    Opened,
    OpenLessonAt,
    OrderShown,
    PublishAsked,
    PublishedShown,
    QuestionAsked,
    StudyShown,
    WeighAsked,
    WeighedShown,
)

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine


class NotOpenError(LessonError):
    """No open lesson has that key."""

    hint = "open it again"


@dataclass(frozen=True)
class OnDesk:
    """An open lesson with what works for it."""

    opened: OpenLesson
    keeper: Keeper
    prover: Prover
    studies: Studies
    followings: Followings

    def standing(self) -> list[News]:
        """How it stands now, as events."""
        version, _, _ = self.opened.present()
        return [
            ("lesson", LessonEvent(version=version, window="")),
            ("saved", self.opened.saved_event()),
            ("findings", self.prover.snapshot()),
        ]

    def ask(self, asked: QuestionAsked) -> AnswerShown:
        """Answers "what about ...?"."""
        _, lesson, names = self.opened.present()
        place = None if asked.place is None else names.place(asked.place)
        return ask(lesson, names, self.prover.store, place, asked.question)

    def begin_study(self) -> StudyShown:
        """Begins to study the present version."""
        self.studies.begin(*self.opened.present())
        return self.study()

    def study(self) -> StudyShown:
        """What the study has found by now."""
        _, lesson, names = self.opened.present()
        return self.studies.shown(lesson, names)

    def follow(self, asked: FollowAsked) -> FollowedShown:
        """Begins to follow students' games."""
        _, lesson, names = self.opened.present()
        self.followings.begin(lesson, names, asked)
        return self.followings.shown()

    def figures(self, place: str, collection: str, of_audience: bool) -> FiguresShown:
        """What a collection of games says of a place."""
        return figures_shown(self.opened.names.place(place), collection, of_audience=of_audience)

    def pgn(self) -> GivenFile:
        """The present version as a file."""
        _, lesson, _ = self.opened.present()
        data = b64encode(lesson.source.encode()).decode("ascii")
        return GivenFile(name=Path(lesson.name).name, base64=data)

    def editions(self) -> EditionsShown:
        """What has been published of it."""
        _, lesson, _ = self.opened.present()
        return editions_shown(lesson)

    def notice(self, number: int) -> NoticeShown:
        """What is new since an edition."""
        _, lesson, _ = self.opened.present()
        return notice_shown(lesson, number)

    def order(self, minutes: float | None = None, pauses: bool = False) -> OrderShown:
        """How the lesson is best told."""
        _, lesson, _ = self.opened.present()
        found = order_of(lesson, self.prover.store, self.studies.of(lesson), minutes, pauses)
        said = harmless(summary(found, lesson.settings.title)).splitlines()
        return OrderShown(said=said, script=harmless(script(found)))

    def publish(self, asked: PublishAsked) -> PublishedShown:
        """Publishes the present version.

        :raises PublishError: also while it is still being checked.
        """
        version, lesson, _ = self.opened.present()
        found = self.prover.snapshot()
        if not found.complete or found.version != version:
            raise PublishError(
                "the lesson is still being checked",
                path=lesson.name,
                hint="wait until all is found",
            )
        study = self.studies.of(lesson)
        return published(lesson, self.prover.way, self.prover.store, study, asked)


class Lessons:
    """Lessons by the keys that they got when they were opened: "1", "2" and so on."""

    def __init__(
        self, effort: Effort = Effort.NORMAL, outside: OutsideEngine | None = None
    ) -> None:
        """outside: an engine that answers in place of ours, where the author does not choose otherwise; who opened it closes it."""
        self._effort = effort
        self._outside = outside
        self.weighings = Weighings()
        self._lock = threading.Lock()
        self._open: dict[str, OnDesk] = {}
        self._paths: dict[str, str] = {}

    def open(self, path: str | os.PathLike[str]) -> OnDesk:
        """Opens a lesson folder or a PGN file; one that is open already is given again.

        :raises LessonError: when it cannot be opened.
        """
        real = os.path.realpath(path)
        with self._lock:
            known = self._paths.get(real)
            if known is not None:
                return self._open[known]
            key = str(len(self._paths) + 1)
            opened = OpenLesson(key, Path(path))
            prover = Prover(opened, self._effort, outside=self._outside)
            opened.on_change = prover.changed
            made = OnDesk(
                opened,
                Keeper(opened),
                prover,
                Studies(opened.events, prover.store),
                Followings(opened.events, prover.store),
            )
            self._open[key], self._paths[real] = made, key
        made.keeper.start()
        made.prover.start()
        return made

    def start(self, asked: OpenLessonAt | NewLesson | DemoLesson) -> Opened:
        """Opens what is asked for, after it is made where it is new.

        :raises LessonError: when it cannot be.
        """
        return self.open(start(asked)).opened.shown_briefly()

    def __getitem__(self, key: str) -> OnDesk:
        """:raises NotOpenError:"""
        with self._lock:
            found = self._open.get(key)
        if found is None:
            raise NotOpenError("this lesson is not open", path="the desk")
        return found

    def weigh(self, asked: WeighAsked) -> WeighedShown:
        """Begins to weigh openings.

        :raises NotOpenError: when one of the lessons is not open.
        """
        return self.weighings.begin(asked, [self[key].opened.lesson for key in asked.lessons])

    def shown(self) -> LessonsShown:
        """What is open."""
        with self._lock:
            some = list(self._open.values())
        return LessonsShown(lessons=[each.opened.shown_briefly() for each in some])

    def end_events(self) -> None:
        """Ends the event streams of all windows."""
        with self._lock:
            some = list(self._open.values())
        for each in some:
            each.opened.events.close()

    def close(self) -> None:
        """Saves and closes all."""
        self.weighings.end()
        with self._lock:
            some = list(self._open.values())
            self._open.clear()
            self._paths.clear()
        for each in some:
            each.studies.end()
            each.followings.end()
            each.prover.stop()
            each.keeper.stop()
            each.opened.close()
