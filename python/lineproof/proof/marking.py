"""Marking: a sentence of a lesson becomes the author's opinion, or is one no more."""

from __future__ import annotations

from collections.abc import Sequence

from lineproof.claims import Reading, read_lesson
from lineproof.lesson import Lesson, LessonError
from lineproof.lesson.folder import write_settings
from lineproof.lesson.opinions import Opinion, fingerprint, read_opinions, with_opinions

from .opinions import Marked, mark_of, matched

LISTED = 5
"""Places that a message names at most."""

At = tuple[int, int | None]
"""A line and perhaps a column, both from 1, as reports give them."""


class NoSuchSentenceError(LessonError):
    """The lesson has no such sentence."""

    hint = "`lineproof prove LESSON --show read` lists every sentence"


class SeveralSentencesError(LessonError):
    """More than one sentence is meant."""

    hint = "say which with --at LINE, or --at LINE:COLUMN"


def opinions(lesson: Lesson) -> tuple[Marked, ...]:
    """The lesson's marks, each with its sentences, none where the sentence is gone."""
    marks = read_opinions(lesson.settings.decisions)
    found = matched(read_lesson(lesson).sentences, marks)
    return tuple(zip(marks, found, strict=True))


def mark(lesson: Lesson, words: str = "", at: At | None = None) -> tuple[Lesson, Reading]:
    """Marks one sentence and writes lesson.toml; a sentence that is marked already stays so.

    words: the sentence or a part of it; capitals and line breaks do not matter. at: where it stands.

    :returns: the lesson with the mark, and the sentence.
    :raises NoSuchSentenceError, SeveralSentencesError: when not just one sentence is meant.
    :raises LessonError: as `lineproof.lesson.folder.write_settings`; a bare PGN file has no lesson.toml.
    """
    readings = read_lesson(lesson).sentences
    reading = _one(lesson, readings, words, at)
    marks = read_opinions(lesson.settings.decisions)
    if not any(r is reading for some in matched(readings, marks) for r in some):
        new = mark_of(reading, readings)
        lesson = write_settings(lesson, with_opinions(lesson.settings, (*marks, new)))
    return lesson, reading


def take_back(lesson: Lesson, words: str = "", at: At | None = None) -> tuple[Lesson, Opinion]:
    """Takes a mark back and writes lesson.toml. The sentence of the mark may be gone.

    :returns: the lesson without the mark, and the mark.
    :raises NoSuchSentenceError, SeveralSentencesError: when not just one mark is meant.
    :raises LessonError: as `lineproof.lesson.folder.write_settings`.
    """
    marks = opinions(lesson)
    fitting = [
        (opinion, found)
        for opinion, found in marks
        if fingerprint(words) in opinion.fingerprint
        and (at is None or any(_stands(lesson, r, at) for r in found))
    ]
    whole = [each for each in fitting if each[0].fingerprint == fingerprint(words)]
    fitting = whole or fitting
    if not fitting:
        raise NoSuchSentenceError(
            f"no sentence that is marked as your opinion {_meant(words, at)}",
            path=lesson.name,
            hint="`lineproof opinion LESSON` lists those that are",
        )
    if len(fitting) > 1:
        places = _places(lesson, [r for _, found in fitting for r in found])
        raise SeveralSentencesError(
            f"{len(fitting)} marked sentences {_meant(words, at)}{places}", path=lesson.name
        )
    opinion = fitting[0][0]
    left = [other for other, _ in marks if other != opinion]
    return write_settings(lesson, with_opinions(lesson.settings, left)), opinion


def _one(lesson: Lesson, readings: Sequence[Reading], words: str, at: At | None) -> Reading:
    """The one sentence that is meant: where one has just these words, it, else one that holds them."""
    wanted = fingerprint(words)
    fitting = [
        r
        for r in readings
        if wanted in fingerprint(r.sentence.text) and (at is None or _stands(lesson, r, at))
    ]
    whole = [r for r in fitting if fingerprint(r.sentence.text) == wanted]
    fitting = whole or fitting
    if not fitting:
        raise NoSuchSentenceError(f"no sentence {_meant(words, at)}", path=lesson.name)
    if len(fitting) > 1:
        raise SeveralSentencesError(
            f"{len(fitting)} sentences {_meant(words, at, many=True)}{_places(lesson, fitting)}", path=lesson.name
        )  # fmt: skip
    return fitting[0]


def _stands(lesson: Lesson, reading: Reading, at: At) -> bool:
    line, column = at
    first = lesson.locate(reading.sentence.start)
    last = lesson.locate(reading.sentence.end - 1)
    if column is None:
        return first[0] <= line <= last[0]
    return first <= (line, column) <= last


def _meant(words: str, at: At | None, many: bool = False) -> str:
    has, stands = ("have", "stand") if many else ("has", "stands")
    where = "" if at is None else f"line {at[0]}" + (f", column {at[1]}" if at[1] else "")
    said = " ".join(words.split())
    parts = [f"{has} the words {said!r}"] if said else []
    parts += [f"{stands} at {where}"] if where else []
    return " and ".join(parts) or ("are there" if many else "is there")


def _places(lesson: Lesson, readings: Sequence[Reading]) -> str:
    spots = [":".join(map(str, lesson.locate(r.sentence.start))) for r in readings]
    more = f" and {len(spots) - LISTED} more" if len(spots) > LISTED else ""
    return f", at {', '.join(spots[:LISTED])}{more}" if spots else ""


__all__ = ["NoSuchSentenceError", "SeveralSentencesError", "mark", "opinions", "take_back"]
