"""`lineproof new`: makes a lesson folder."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import CommandError
from .output import write, write_json
from .shared import add_command, add_lesson_settings, check_audience

if TYPE_CHECKING:
    from .shared import Commands

FORMAT = 1
"""Of the JSON."""


def add(commands: Commands) -> None:
    command = add_command(commands, "new", "make a lesson folder", run)
    command.add_argument("folder", metavar="FOLDER", type=Path, help="a new or an empty folder")
    command.add_argument(
        "--from", dest="source", metavar="FILE.pgn", type=Path, help="lines to copy into it"
    )
    add_lesson_settings(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.lesson import LessonError
    from lineproof.lesson.folder import new
    from lineproof.report.plain import plain

    check_audience(given.audience)
    try:
        lesson = new(given.folder, given.source, given.side, given.audience)
    except LessonError as error:
        raise CommandError(str(error)) from error
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise CommandError(
            f"{given.folder}: the folder cannot be made ({reason}); choose another place"
        ) from error
    settings = lesson.settings
    if given.json:
        write_json(
            {
                "format": FORMAT,
                "folder": str(given.folder),
                "lines": lesson.name,
                "title": settings.title,
                "side": settings.side,
                "audience": settings.audience,
            }
        )
    else:
        folder = plain(str(given.folder))
        write(
            f"Made {folder}. Write the lines in {plain(lesson.name)}, then run: lineproof prove {folder}\n"
        )
    return 0
