"""Importing: PGN files as the browser hands them over, into an open lesson or a new one."""

from __future__ import annotations

from collections.abc import Sequence

from lineproof.lesson import Lesson, Settings
from lineproof.lesson.errors import EditError
from lineproof.lesson.source import Source

from .edits import LINE_END, Done
from .joining import joined as put_together
from .wire import GivenFile


def imported(lesson: Lesson, files: Sequence[GivenFile], joined: bool = False) -> Done:
    """The lesson with the games of these files after its own. A lesson of one game without a move or a word makes way for them.

    joined: those that begin as games before them are written into their lines.
    :raises LessonError: when one of the files is no PGN; it names the file and the place.
    """
    text, count = "", 0
    for file in files:
        read = _read(file)
        text, count = _after(text, read), count + len(read.places)
    text = LINE_END.sub(lesson.source.line_end, text)
    empty = len(lesson.places) == 1 and not lesson.comments
    if empty:
        edited, first = lesson.with_text(text), 0
    else:
        own = _closed(lesson) + lesson.source.line_end * 2
        edited, first = lesson.with_text(own + text), len(lesson.places)
    edited.source.refuse_lacking(edited.text, 0)
    if len(edited.places) != first + count:
        raise EditError(
            "the games cannot be put into one file as they are",
            path=lesson.name,
            hint="make a lesson of each",
        )
    if joined:
        games = len(lesson.games) if first else 0
        edited = put_together(edited, games)
        kept = edited.games[games].root if games < len(edited.games) else edited.places[0]
        return Done(edited, kept)
    return Done(edited, edited.places[first])


def together(files: Sequence[GivenFile]) -> bytes:
    """The bytes of a new lesson's lines: those of the one file as they are, else the games of all in UTF-8.

    :raises LessonError: as above.
    """
    read = [_read(file) for file in files]
    if len(read) == 1:
        return files[0].data
    text = ""
    for lesson in read:
        text = _after(text, lesson)
    return text.encode()


def _read(file: GivenFile) -> Lesson:
    return Lesson(Source.decode(file.data, file.name), Settings(title=file.name))


def _after(text: str, lesson: Lesson) -> str:
    """The text with the games of a lesson after it."""
    return (text + "\n\n" if text else "") + _closed(lesson)


def _closed(lesson: Lesson) -> str:
    """The text without blanks at its end, and with a result marker there, by which the next game is told from it."""
    end = "" if lesson.games[-1].result is not None else " *"
    return lesson.text.rstrip() + end
