"""`lineproof opinion`: marks a sentence as the author's opinion, takes a mark back, or lists the marks."""

from __future__ import annotations

import argparse
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

from .failures import CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from lineproof.facade import Lesson
    from lineproof.proof.opinions import Marked

    from .shared import Commands

FORMAT = 1
"""Of the JSON."""


def add(commands: Commands) -> None:
    command = add_command(
        commands, "opinion", "mark a sentence as your opinion, which is not checked", run
    )
    command.add_argument("lesson", metavar="LESSON", type=Path, help="a lesson folder")
    command.add_argument(
        "words", metavar="WORDS", nargs="?", default="", help="the sentence or a part of it; without, the marks are listed"
    )  # fmt: skip
    command.add_argument(
        "--at", metavar="LINE[:COLUMN]", help="where it stands, as a report gives it"
    )
    command.add_argument("--take-back", action="store_true", help="have it checked again")


def run(given: argparse.Namespace) -> int:
    from lineproof.facade import Lesson, LessonError
    from lineproof.proof.marking import opinions

    at = _at(given.at)
    asked = bool(given.words.strip()) or at is not None
    if given.take_back and not asked:
        raise CommandError("--take-back needs WORDS or --at; without them the marks are listed")
    done = ""
    try:
        lesson = Lesson.open(given.lesson)
        if asked and given.take_back:
            lesson, words = lesson.take_back_opinion(given.words, at)
            done = "taken back"
        elif asked:
            lesson, words = lesson.mark_opinion(given.words, at)
            done = "marked"
        marks = opinions(lesson)
    except LessonError as error:
        raise CommandError(str(error)) from error
    if given.json:
        change = {"what": done, "words": words} if done else None
        write_json({"format": FORMAT, "changed": change, "opinions": [_json(m) for m in marks]})
    elif done:
        write(_done(done, words))
    else:
        write(_listed(lesson, marks))
    return 0


def _at(text: str | None) -> tuple[int, int | None] | None:
    if text is None:
        return None
    found = re.fullmatch(r"(?:.*:)?(\d{1,9}):(\d{1,9})|(\d{1,9})", text)
    if found is None:
        raise CommandError(f"--at is {text}; give a line, or LINE:COLUMN, as the report does")
    return (int(found[3]), None) if found[3] else (int(found[1]), int(found[2]))


def _done(what: str, words: str) -> str:
    from lineproof.report.plain import plain

    if what == "marked":
        return f"“{plain(words)}” is your opinion now: it is not checked, and counted apart.\n"
    return f"“{plain(words)}” is checked again.\n"


def _listed(lesson: Lesson, marks: tuple[Marked, ...]) -> str:
    from lineproof.report.plain import plain

    if not marks:
        return "No sentence is marked as your opinion.\n"
    lines = []
    for opinion, found in marks:
        for reading in found:
            line, column = lesson.locate(reading.sentence.start)
            at = f"{plain(lesson.name)}:{line}:{column}"
            lines.append(f"{at}  {reading.place.label}  “{plain(opinion.words)}”\n")
        if not found:
            lines.append(
                f"gone, was beside {plain(opinion.move or '-')}  “{plain(opinion.words)}”\n"
            )
    return "".join(lines)


def _json(mark: Marked) -> dict[str, Any]:
    opinion, found = mark
    lesson = found[0].place.lesson if found else None
    places = [] if lesson is None else [lesson.locate(r.sentence.start) for r in found]
    return {
        "words": opinion.words,
        "move": opinion.move,
        "places": [{"line": line, "column": column} for line, column in places],
    }
