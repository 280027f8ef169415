"""`lineproof compare`: what has changed between two editions."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from .failures import CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from .shared import Commands

WHAT = "a lesson folder, a PGN file, or an edition of either, such as vienna@3"


def add(commands: Commands) -> None:
    command = add_command(
        commands, "compare", "say what has changed between two editions of a lesson", run
    )
    command.add_argument("old", metavar="OLD", help=WHAT)
    command.add_argument("new", metavar="NEW", help=WHAT)
    command.add_argument("--side", choices=("white", "black"), help="the side that is taught")


def run(given: argparse.Namespace) -> int:
    from lineproof.lesson import LessonError
    from lineproof.publish.compare import compare, notice, opened
    from lineproof.publish.compare.json import values

    try:
        found = compare(opened(given.old, side=given.side), opened(given.new, side=given.side))
    except LessonError as error:
        raise CommandError(str(error)) from error
    if given.json:
        write_json(values(found))
    else:
        write(notice(found))
    return 0
