"""`lineproof collect reach`: how many of the audience's games come to each position of a lesson."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .collected import add_collection_option, opened
from .failures import CommandError
from .output import write, write_json
from .shared import add_command, add_lesson_settings, check_audience

if TYPE_CHECKING:
    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(
        commands, "reach", "say how many of the audience's games come to each position", run
    )
    command.add_argument(
        "lesson", metavar="LESSON", type=Path, help="a lesson folder or a PGN file"
    )
    add_lesson_settings(command)
    add_collection_option(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.lesson import Lesson, LessonError
    from lineproof.report.collected import reached
    from lineproof.report.collected_json import reach_json

    check_audience(given.audience)
    try:
        lesson = Lesson.open(given.lesson, side=given.side, audience=given.audience)
    except LessonError as error:
        raise CommandError(str(error)) from error
    with opened(given) as collection:
        found = collection.reach(lesson)
        if given.json:
            write_json(reach_json(found, collection.name, str(given.lesson)))
        else:
            write(reached(found, collection=collection.name, name=str(given.lesson)))
    return 0
