"""`lineproof ask`: a viewer's "what about ...?"."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import CommandError
from .output import write, write_json
from .shared import (
    add_command,
    add_effort_option,
    add_engine_option,
    add_lesson_settings,
    check_audience,
)

if TYPE_CHECKING:
    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(commands, "ask", 'answer a viewer\'s "what about ...?"', run)
    command.add_argument(
        "lesson", metavar="LESSON", type=Path, help="a lesson folder or a PGN file"
    )
    command.add_argument(
        "position", metavar="MOVES-or-FEN", help='such as "1. e4 e5 2. Nc3 Nf6 3. f4 exf4"'
    )
    add_effort_option(command, "sketch")
    command.add_argument(
        "--collection", metavar="NAME", help="a collection whose games are counted"
    )
    add_engine_option(command)
    add_lesson_settings(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.collection import CollectionError
    from lineproof.facade import Lesson, LessonError
    from lineproof.replies import NaturalError
    from lineproof.report.studied import answered
    from lineproof.report.studied_json import answer_json

    from .outside import opened

    check_audience(given.audience)
    try:
        lesson = Lesson.open(given.lesson, side=given.side, audience=given.audience)
        with opened(given.engine) as engine:
            found = lesson.ask(
                given.position, given.effort, collection=given.collection, engine=engine
            )
    except (LessonError, CollectionError, NaturalError) as error:
        raise CommandError(str(error)) from error
    if given.json:
        write_json(answer_json(found))
    else:
        write(answered(found, name=str(given.lesson)))
    return 0
