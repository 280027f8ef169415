"""`lineproof unanswered`: what the opponent will play and the lesson forgot; slips, pause points, early stops."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import STOPPED, CommandError
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
    command = add_command(
        commands, "unanswered", "find replies that the lesson leaves open, slips, pause points", run
    )
    command.add_argument(
        "lesson", metavar="LESSON", type=Path, help="a lesson folder or a PGN file"
    )
    add_effort_option(command, "sketch")
    command.add_argument(
        "--collection", metavar="NAME", help="a collection whose games are counted"
    )
    command.add_argument("--all", action="store_true", help="show long lists whole")
    add_engine_option(command)
    add_lesson_settings(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.collection import CollectionError
    from lineproof.facade import Lesson, LessonError
    from lineproof.replies import NaturalError, StudyError
    from lineproof.report.studied import studied
    from lineproof.report.studied_json import study_json

    from .outside import opened
    from .progress import progress

    check_audience(given.audience)
    with progress(str(given.lesson), "Studying", "step") as tell:
        try:
            lesson = Lesson.open(given.lesson, side=given.side, audience=given.audience)
            with opened(given.engine) as engine:
                found = lesson.study(
                    given.effort, progress=tell, collection=given.collection, engine=engine
                )
        except (LessonError, StudyError, CollectionError, NaturalError) as error:
            raise CommandError(str(error)) from error
        except KeyboardInterrupt:
            raise CommandError(
                "Stopped. What was searched is kept; the same command goes on from there.", STOPPED
            ) from None
    if given.json:
        write_json(study_json(found))
    else:
        write(studied(found, name=str(given.lesson), everything=given.all))
    return 0
