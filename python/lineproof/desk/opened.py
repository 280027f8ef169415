"""A lesson that is open on the desk: its present version, the steps that led to it, and its file.

Each edit makes a new version and is on the disk, as a step, before it is answered; the file itself follows within a second
(`keeper`). All methods may be called from any thread.
"""

from __future__ import annotations

import os
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from lineproof.lesson import Lesson, Place, Settings
from lineproof.lesson.errors import EditError, LessonError, LockedError, SaveError
from lineproof.lesson.folder import write_settings
from lineproof.lesson.lock import WriterLock
from lineproof.proof.marking import mark, take_back
from lineproof.report.title import title_of

from .changes import Change
from .deciding import settled
from .edits import Done, comment_of, edited
from .events import Events
from .file import LessonFile
from .importing import imported
from .merge import merged
from .naming import Names
from .shown import Road, lesson_shown
from .steps import Do, Step, Steps, StepsError, StepsFile, digest
from .wire import (
    ConflictShown,
    Decide,
    Edited,
    Import,
    LessonEvent,
    LessonShown,
    MarkOpinion,
    Op,
    Opened,
    PutDiagram,
    Redo,
    SavedEvent,
    SetLesson,
    SetSource,
    TakeBack,
    Undo,
)

SHOWN = 2_000
"""Characters of each text that are shown where two are to be chosen from."""


class StaleError(LessonError):
    """An edit was of an older version than the present one."""

    hint = "look at the lesson as it is now, and repeat the edit"


@dataclass(frozen=True)
class Conflict:
    """The file as another program left it, where that cannot be merged with what was changed here."""

    theirs: Lesson
    bytes: bytes


class OpenLesson:
    """One open lesson."""

    def __init__(self, key: str, path: str | os.PathLike[str]) -> None:
        """Opens it, takes its lock and finds the steps of earlier runs.

        What a killed run had not yet written into the file is taken up; what another program wrote meanwhile is merged.

        :raises LessonError: when it cannot be read, or another process is writing it.
        """
        self.key = key
        self.events = Events()
        self.wake = threading.Event()
        """Set when there is something to save."""
        self.on_change: Callable[[], None] = _nothing
        """Called after each new version."""
        self._lock = threading.RLock()
        self._lesson = Lesson.open(path)
        self._writer = WriterLock(self._lesson)
        self.unwritable: SaveError | None = None
        """Why nothing can be changed: the lesson lies where nothing can be written."""
        try:
            self._writer.__enter__()
        except LockedError:
            raise
        except SaveError as error:
            self.unwritable = SaveError(
                f"{error.message}, so that it can only be looked at",
                path=error.path,
                hint="make its folder writable, or copy it, and start the desk again",
            )
        try:
            self.file = LessonFile(self._lesson)
            self.version = 0
            self.problem: str | None = None
            self.notice: str | None = None
            """What was met when the lesson was opened, and the author may want to know."""
            self.conflict: Conflict | None = None
            self._saved = 0
            self._first: str | None = None
            """The text on which all steps build, while there is no file of them yet."""
            self._unkept: list[tuple[Do, Step, str, str]] = []
            self._names = Names(self._lesson)
            self._roads: dict[str, Road] = {}
            self._steps_file, self._steps = self._begin()
        except BaseException:
            self._writer.__exit__(None, None, None)
            raise

    # Reading

    @contextmanager
    def held(self) -> Iterator[None]:
        """Nothing changes until it is left."""
        with self._lock:
            yield

    @property
    def lesson(self) -> Lesson:
        return self._lesson

    @property
    def names(self) -> Names:
        return self._names

    @property
    def troubled(self) -> bool:
        """Whether something keeps the present version from the file, or did when it was last tried."""
        return self.problem is not None or self.file.unreadable is not None

    def present(self) -> tuple[int, Lesson, Names]:
        """The version, and the lesson in it."""
        with self._lock:
            return self.version, self._lesson, self._names

    def shown(self) -> LessonShown:
        """The lesson for the page."""
        with self._lock:
            return lesson_shown(
                self._lesson,
                self._names,
                self._roads,
                key=self.key,
                version=self.version,
                undo=0 if self.unwritable else len(self._steps.done),
                redo=0 if self.unwritable else len(self._steps.undone),
                unwritable=None if self.unwritable is None else told(self.unwritable),
                conflict=self._conflict_shown(),
                notice=self.notice,
            )

    def shown_briefly(self) -> Opened:
        """What a list of lessons says of it."""
        lesson = self._lesson
        return Opened(key=self.key, title=title_of(lesson), name=lesson.name)

    def _conflict_shown(self) -> ConflictShown | None:
        if self.conflict is None:
            return None
        ours, theirs = self._lesson, self.conflict.theirs
        step = Step.between(ours.text, theirs.text)
        ends = step.start + len(step.old), step.start + len(step.new)
        return ConflictShown(
            ours=_whole(ours, step.start, ends[0]), theirs=_whole(theirs, step.start, ends[1])
        )

    def saved_event(self) -> SavedEvent:
        with self._lock:
            return SavedEvent(version=self._saved, problem=self.problem)

    # Editing

    def edit(self, version: int, window: str, op: Op) -> Edited:
        """Makes an edit of a version.

        :raises StaleError: when that is not the present version.
        :raises EditError, LessonError: when it cannot be made.
        """
        with self._lock:
            if self.unwritable is not None:
                raise self.unwritable
            if version != self.version:
                raise StaleError(
                    "the lesson has been changed in another window", path=self._lesson.name
                )
            self._take_settings()  # so that writing lesson.toml overwrites nothing that was set there
            match op:
                case Undo():
                    done = self._go_back("undo")
                case Redo():
                    done = self._go_back("redo")
                case MarkOpinion():
                    done = self._mark(op)
                case SetLesson() | Decide() | SetSource() | PutDiagram() | TakeBack():
                    settings, place = settled(self._lesson, self._names, op)
                    self._write(settings)
                    done = Done(self._lesson, place)
                case Import():
                    done = imported(self._lesson, op.files, op.joined)
                    self._take("edit", done.lesson)
                case _:
                    done = edited(self._lesson, self._names, op)
                    self._take("edit", done.lesson)
            if self.version != version:
                self.events.publish("lesson", LessonEvent(version=self.version, window=window))
            shown = self.shown()
            at = self._lesson.places[done.at.index]
            return Edited(
                lesson=shown,
                at=self._names.of(at),
                said=done.said,
                joins=shown.places[at.index].joins if done.said else None,
            )

    def _go_back(self, do: Do) -> Done:
        stack = self._steps.done if do == "undo" else self._steps.undone
        if not stack:
            what = "nothing to take back" if do == "undo" else "nothing that was taken back"
            raise EditError(f"there is {what}", path=self._lesson.name, hint="edit first")
        step = stack[-1].back if do == "undo" else stack[-1]
        if step.settings is not None:
            self._write(step.settings.apply(self._lesson.settings), do, step)
            return Done(self._lesson, self._place_of(step.settings))
        lesson = self._lesson.with_text(step.apply(self._lesson.text))
        self._take(do, lesson, step)
        at = lesson.place_at(step.start)
        return Done(lesson, at or lesson.places[0])

    def _mark(self, op: MarkOpinion) -> Done:
        lesson = self._lesson
        comment = comment_of(lesson, op.comment)
        words = comment.text[op.start : op.end]
        if not words.strip():
            raise EditError("no sentence stands there", path=lesson.name, hint="choose a sentence")
        at = lesson.locate(comment.start + op.start)
        marked, _ = (mark if op.opinion else take_back)(lesson, words, at)
        if marked.settings != lesson.settings:
            self.file.settings_seen()
            self._note(marked, "edit", None)
        return Done(self._lesson, self._lesson.places[comment.anchor.index])

    def _write(self, settings: Settings, do: Do = "edit", step: Step | None = None) -> None:
        """Writes lesson.toml, where that changes anything, and takes the step to it: by default the one that makes these settings of the present ones."""
        lesson = self._lesson
        if settings != lesson.settings:
            lesson = write_settings(lesson, settings)
            self.file.settings_seen()
        elif step is None:
            return
        self._note(lesson, do, step)

    def _note(self, lesson: Lesson, do: Do, step: Step | None) -> None:
        """Makes a lesson the present version whose settings are on the disk, with the step to them."""
        change = Change.between(self._lesson.settings, lesson.settings)
        self._follow(do, step or Step.of_settings(change), digest(lesson.text))
        self._put(lesson)
        self.keep()

    def _place_of(self, change: Change) -> Place:
        """A place that a change of the settings is of, or the first."""
        key = change.position
        found = () if key is None else self._lesson.positions.get(key, ())
        return found[0] if found else self._lesson.places[0]

    def _take(self, do: Do, lesson: Lesson, step: Step | None = None) -> None:
        """Makes a lesson the present version, with the step to it."""
        if lesson.text == self._lesson.text:
            return
        step = step or Step.between(self._lesson.text, lesson.text)
        self._follow(do, step, digest(lesson.text))
        self._put(lesson)
        self.keep()

    def _follow(self, do: Do, step: Step, to: str) -> None:
        self._steps.follow(do, step, to)
        if self.unwritable is None:
            self._unkept.append(
                (do, step, to, datetime.now(UTC).isoformat(timespec="milliseconds"))
            )

    def _put(self, lesson: Lesson) -> None:
        self._lesson = lesson
        self._names = Names(lesson)
        self._count()

    def _count(self) -> None:
        self.version += 1
        self.on_change()
        self.wake.set()

    # Keeping

    def keep(self) -> None:
        """Writes the steps that are not on the disk yet; what goes wrong becomes `problem`."""
        with self._lock:
            try:
                if self._unkept and self._first is not None:
                    self._steps_file.begin(self._first)
                    self._first = None
                while self._unkept:
                    self._steps_file.add(*self._unkept[0])
                    del self._unkept[0]
            except OSError as error:
                self._tell(f"the disk refuses the work ({(error.strerror or str(error)).lower()})")

    def save(self) -> None:
        """Writes the present version into the lesson's file, unless it is there; what goes wrong becomes `problem`."""
        self.keep()
        if self.file.unreadable is not None:
            self._tell(
                f"another program has changed the file, and it cannot be read: {self.file.unreadable}"
            )
            return
        with self._lock:
            if self.conflict is not None:
                return
            lesson, version = self._lesson, self.version
            if version == self._saved and self.problem is None:
                return
        try:
            self.file.write(lesson)
        except SaveError as error:
            self._tell(told(error))
            return
        except LessonError as error:
            self._tell(str(error))
            return
        with self._lock:
            self._saved = version
            if not self._unkept:
                self.problem = None
            self._note_saved(lesson)
            self.events.publish("saved", self.saved_event())

    def _note_saved(self, lesson: Lesson) -> None:
        """The file holds this lesson's text now."""
        told = digest(lesson.text)
        self._steps.saved(told)
        if not self._unkept and self._first is None:
            with suppress(OSError):  # the next run finds the text among the steps
                self._steps_file.saved(told)

    def _tell(self, problem: str | None) -> None:
        with self._lock:
            if problem != self.problem:
                self.problem = problem
                self.events.publish("saved", self.saved_event())

    # What other programs do

    def look(self) -> None:
        """Takes over what another program changed in the lesson's files since they were read or written here."""
        self._take_settings()
        found = self.file.changed(self._lesson)
        if found is not None:
            self._take_over(*found)

    def _take_settings(self) -> None:
        with self._lock:  # an edit of ours that is half written is nobody else's
            settings = self.file.changed_settings(self._lesson)
            if settings is not None:
                self._put(self._lesson.with_settings(settings))
                self.events.publish("lesson", LessonEvent(version=self.version, window=""))

    def _take_over(self, theirs: Lesson, data: bytes) -> None:
        with self._lock:
            base = theirs.with_text(self._steps.base)
            text = merged(base, self._lesson, theirs)
            if text is None:
                self.conflict = Conflict(theirs, data)
                self._count()
                self._tell("another program has changed the same place; say which is to stay")
            else:
                self._adopt(theirs, data, text)
            self.events.publish("lesson", LessonEvent(version=self.version, window=""))

    def _adopt(self, theirs: Lesson, data: bytes, text: str) -> None:
        """The file holds `theirs` now, and the lesson is to have `text`."""
        self.file.seen(data)
        if theirs.text != text and theirs.text != self._lesson.text:
            self._take("outside", theirs)  # so that it can be had by taking back
        together = theirs.with_text(text).with_settings(self._lesson.settings)
        if text == self._lesson.text:
            self._put(together)
        self._take("outside", together)
        self._note_saved(theirs)
        self.problem = None

    def settle(self, version: int, window: str, keep: str) -> LessonShown:
        """Ends a conflict. keep: "ours" or "theirs"; what gives way can be had again by taking back, or from the history.

        :raises StaleError, EditError:
        """
        with self._lock:
            if version != self.version:
                raise StaleError("the lesson has changed meanwhile", path=self._lesson.name)
            if self.conflict is None:
                raise EditError("nothing is to be decided", path=self._lesson.name, hint="go on")
            conflict, self.conflict = self.conflict, None
            if keep == "theirs":
                self._adopt(conflict.theirs, conflict.bytes, conflict.theirs.text)
            else:
                self.file.seen(conflict.bytes, keep_it=True)
                self.problem = None
                self._count()
            self.events.publish("lesson", LessonEvent(version=self.version, window=window))
            return self.shown()

    # Beginning and end

    def _begin(self) -> tuple[StepsFile, Steps]:
        home = self._lesson.home
        if home is None:
            raise SaveError(
                "the lesson is in no file", path=self._lesson.name, hint="save it as a file"
            )
        if self.unwritable is not None:
            return StepsFile(home), Steps.of(self._lesson.text)
        file = StepsFile(Path(os.path.realpath(home)))
        on_disk = self._lesson
        try:
            steps = file.read()
        except StepsError as error:
            aside = file.set_aside()
            self.notice = f"The steps of earlier days cannot be taken back ({error}); they are kept in {aside.name}."
            steps = None
        except OSError as error:
            raise _cannot_keep(self._lesson, error) from error
        try:
            if steps is None:
                self._first = on_disk.text
                return file, Steps.of(on_disk.text)
            file.mend()
        except OSError as error:
            raise _cannot_keep(self._lesson, error) from error
        self._steps_file, self._steps = file, steps
        if steps.text == on_disk.text:
            return file, steps
        self._put(on_disk.with_text(steps.text))
        if steps.known(on_disk.text):  # a run that was killed before it could save
            steps.saved(digest(on_disk.text))
            self.notice = "The desk was not closed properly; your last edits have been taken up."
        else:
            text = merged(on_disk.with_text(steps.base), self._lesson, on_disk)
            # Where both changed the same place the file goes before; ours can be had by taking back.
            self._adopt(on_disk, on_disk.disk or b"", on_disk.text if text is None else text)
            self.notice = "Another program has changed the file since it was last on the desk."
            if text is None:
                self.notice += (
                    " It changed what you had edited, too; yours comes back when you take back."
                )
        return file, steps

    def close(self) -> None:
        """Saves what is not saved, and lets the lesson go."""
        self.save()
        self.events.close()
        self._writer.__exit__(None, None, None)


def told(error: LessonError) -> str:
    """What is wrong, and what to do."""
    return f"{error.message}; {error.hint}" if error.hint else error.message


def _nothing() -> None:
    """Nobody wants to know of new versions."""


def _whole(lesson: Lesson, start: int, end: int) -> str:
    """A part of the text, with the whole of the words or the comment that it begins and ends in."""
    pgn = lesson.pgn
    most = len(lesson.text) - 1
    _, first, _ = pgn.token(pgn.token_at(min(start, most)))
    _, _, last = pgn.token(pgn.token_at(min(max(start, end - 1), most)))
    return lesson.text[first : max(last, end)][:SHOWN]


def _cannot_keep(lesson: Lesson, error: OSError) -> SaveError:
    return SaveError(
        f"what is edited could not be kept ({(error.strerror or str(error)).lower()})",
        path=lesson.name,
        hint="make room, or make the folder writable",
    )
