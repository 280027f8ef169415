"""`lineproof follow`: students' games against the lesson."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import STOPPED, CommandError
from .output import write, write_json
from .report import add_report_option, check_report, where_it_is, written
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
    command = add_command(commands, "follow", "find where students' games left the lesson", run)
    command.add_argument(
        "lesson", metavar="LESSON", type=Path, help="a lesson folder or a PGN file"
    )
    command.add_argument("games", metavar="GAMES.pgn", type=Path, help="the games")
    command.add_argument(
        "--player",
        metavar="NAME",
        help="the student, by name or a part of it; without, whoever had the taught side",
    )
    add_effort_option(command, "sketch")
    add_report_option(command)
    add_engine_option(command)
    add_lesson_settings(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.facade import Lesson, LessonError
    from lineproof.follow import FollowError
    from lineproof.report.followed import followed, followed_json

    from .outside import opened
    from .progress import progress

    check_audience(given.audience)
    with progress(str(given.lesson), "Following", "game") as tell:
        try:
            lesson = Lesson.open(given.lesson, side=given.side, audience=given.audience)
            check_report(lesson, given.report, given.games)
            with opened(given.engine) as engine:
                found = lesson.follow(
                    given.games, given.effort, player=given.player, progress=tell, engine=engine
                )
        except (LessonError, FollowError) as error:
            raise CommandError(str(error)) from error
        except KeyboardInterrupt:
            raise CommandError(
                "Stopped. What was searched is kept; the same command goes on from there.", STOPPED
            ) from None
    failure = None
    if given.report is not None:
        from lineproof.report.followed_html import save_followed_html

        failure = written(lambda file: save_followed_html(found, lesson, file), given.report)
    if given.json:
        write_json(followed_json(found))
    else:
        write(followed(found, name=str(given.lesson)))
        if given.report is not None and failure is None:
            write(where_it_is(given.report))
    if failure is not None:
        raise CommandError(failure)
    return 0
