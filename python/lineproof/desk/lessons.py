"""The lessons that are open in one run of the desk, each with its keeper and its prover."""

from __future__ import annotations

import os
import threading
from base64 import b64encode
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from typing import TYPE_CHECKING

from lineproof.collection import CollectionError
from lineproof.lesson import Lesson
from lineproof.lesson.errors import EditError, LessonError
from lineproof.lesson.lesson import LINES
from lineproof.order.script import script
from lineproof.order.summary import summary
from lineproof.proof import Effort
from lineproof.publish import PublishError
from lineproof.replies import Study
from lineproof.report.html import html
from lineproof.report.plain import harmless
from lineproof.report.studied_html import study_html

from .events import News
from .figures import figures_shown
from .followings import Followings
from .keeper import Keeper
from .naming import Names
from .opened import OpenLesson
from .prover import Prover
from .publishing import editions_shown, notice_shown, order_of, proof_of, to_publish
from .publishings import Publishings, Tell
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
    PublishingShown,
    QuestionAsked,
    ReportOf,
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
    publishings: Publishings

    def standing(self) -> list[News]:
        """How it stands now, as events."""
        version, _, _ = self.opened.present()
        return [
            ("lesson", LessonEvent(version=version, window="")),
            ("saved", self.opened.saved_event()),
            ("findings", self.prover.snapshot()),
            ("publishing", self.publishings.shown()),
        ]

    def ask(self, asked: QuestionAsked) -> AnswerShown:
        """Answers "what about ...?"."""
        _, lesson, names = self.opened.present()
        place = None if asked.place is None else names.place(asked.place)
        return ask(lesson, names, self.prover.store, self.prover.looking, place, asked.question)

    def begin_study(self) -> StudyShown:
        """Begins to study the present version."""
        self.studies.begin(*self.opened.present(), self.prover.looking)
        return self.study()

    def study(self) -> StudyShown:
        """What the study has found by now."""
        _, lesson, names = self.opened.present()
        return self.studies.shown(lesson, names)

    def follow(self, asked: FollowAsked) -> FollowedShown:
        """Begins to follow students' games."""
        _, lesson, names = self.opened.present()
        self.followings.begin(lesson, names, self.prover.looking, asked)
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

    def notice(self, number: int, until: int | None = None) -> NoticeShown:
        """What is new since an edition, up to another or to now."""
        _, lesson, _ = self.opened.present()
        return notice_shown(lesson, number, until)

    def order(self, minutes: float | None = None, pauses: bool = False) -> OrderShown:
        """How the lesson is best told."""
        _, lesson, _ = self.opened.present()
        study, collection = self.studies.of(lesson), self.prover.way.collection
        found = order_of(lesson, self.prover.store, study, minutes, pauses, collection)
        said = harmless(summary(found, lesson.settings.title)).splitlines()
        return OrderShown(said=said, script=harmless(script(found)))

    def publish(self, asked: PublishAsked) -> PublishingShown:
        """Begins to publish the present version.

        :raises PublishError: also while it is still being checked.
        """
        version, lesson, names = self._checked()

        def study(tell: Tell) -> Study:
            return self.studies.wait_for(version, lesson, names, self.prover.looking, tell)

        work = to_publish(lesson, self.prover.way, self.prover.store, study, asked)
        return self.publishings.begin(work)

    def report(self, of: ReportOf) -> GivenFile:
        """A report as a page for the author's files, as the command line writes it.

        :raises LessonError: when what it is of has not been found.
        """
        _, lesson, _ = self.opened.present()
        page = None
        if of == "proof":
            _, lesson, _ = self._checked()
            page = html(proof_of(lesson, self.prover.way, self.prover.store))
        elif of == "study":
            study = self.studies.of(lesson)
            page = None if study is None else study_html(study)
        else:
            page = self.followings.report()
        if not page:
            raise EditError(
                "there is nothing to report on the lesson as it is now",
                path=lesson.name,
                hint="have it looked for first",
            )
        return file_of(f"{stem(lesson)}-{of}.html", page)

    def _checked(self) -> tuple[int, Lesson, Names]:
        """The present version, once all that it says has been checked.

        :raises PublishError:
        """
        version, lesson, names = self.opened.present()
        found = self.prover.snapshot()
        if not found.complete or found.version != version:
            raise PublishError(
                "the lesson is still being checked",
                path=lesson.name,
                hint="wait until all is found",
            )
        return version, lesson, names

    def close(self) -> None:
        """Breaks off what goes on, saves, and lets go of the files."""
        self.opened.events.close()
        self.publishings.end()
        self.studies.end()
        self.followings.end()
        self.prover.stop()
        self.keeper.stop()
        self.opened.close()


class Lessons:
    """Lessons by the keys that they got when they were opened: "1", "2" and so on."""

    def __init__(
        self,
        effort: Effort = Effort.NORMAL,
        outside: OutsideEngine | None = None,
        collection: str = "",
    ) -> None:
        """outside: an engine that answers in place of ours; who opened it closes it. collection: games that are counted, "" for none. Both hold where the author
        does not choose otherwise."""
        self._effort = effort
        self._outside = outside
        self._collection = collection
        self._number = count(1)
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
            key = str(next(self._number))
            opened = OpenLesson(key, Path(path))
            prover = self._prover(opened)
            opened.on_change = prover.changed
            made = OnDesk(
                opened,
                Keeper(opened),
                prover,
                Studies(opened.events, prover.store),
                Followings(opened.events, prover.store),
                Publishings(opened.events),
            )
            self._open[key], self._paths[real] = made, key
        made.keeper.start()
        made.prover.start()
        return made

    def _prover(self, opened: OpenLesson) -> Prover:
        """The prover of a lesson; it counts no games, and the author is told, where the collection has gone since the start."""
        try:
            return Prover(opened, self._effort, outside=self._outside, collection=self._collection)
        except CollectionError as error:
            told = f"Games are not counted: {error}."
            opened.notice = f"{opened.notice} {told}" if opened.notice else told
            return Prover(opened, self._effort, outside=self._outside)

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
        lessons = [self[key].opened.lesson for key in asked.lessons]
        return self.weighings.begin(asked, lessons, self._outside if asked.outside else None)

    def weighed_report(self) -> GivenFile:
        """The report of the openings that were weighed last.

        :raises EditError: when none were.
        """
        page = self.weighings.report()
        if not page:
            raise EditError("nothing has been weighed", path="the desk", hint="weigh openings")
        return file_of("openings.html", page)

    def shown(self) -> LessonsShown:
        """What is open."""
        with self._lock:
            some = list(self._open.values())
        return LessonsShown(
            lessons=[each.opened.shown_briefly() for each in some],
            outside=None if self._outside is None else self._outside.program.name,
        )

    def take_off(self, key: str) -> LessonsShown:
        """Takes a lesson off the desk, once it is saved; its files stay. Its windows are told.

        :raises NotOpenError:
        :raises EditError: when it cannot be saved; it stays then.
        """
        found = self[key]
        found.opened.save()
        saved = found.opened.saved_event()
        if saved.version < found.opened.present()[0]:
            raise EditError(
                f"not all of it is saved ({saved.problem or 'it is being written'})",
                path=found.opened.lesson.name,
                hint="make room, or make its folder writable, and try again",
            )
        with self._lock:
            if self._open.pop(key, None) is None:
                raise NotOpenError("this lesson is not open", path="the desk")
            self._paths = {path: each for path, each in self._paths.items() if each != key}
        found.close()
        return self.shown()

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
            each.close()


def file_of(name: str, page: str) -> GivenFile:
    """A page as a file that is handed to the browser."""
    return GivenFile(name=name, base64=b64encode(page.encode()).decode("ascii"))


def stem(lesson: Lesson) -> str:
    """What files about a lesson are called: by its folder, or by its file where it has none of its own."""
    path = Path(lesson.name)
    return path.parent.name or path.stem if path.name == LINES else path.stem
