"""`lineproof unanswered`: what the opponent will play and the lesson forgot; slips, pause points, early stops."""

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
    add_report_option(command)
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
            check_report(lesson, given.report)
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
    failure = None
    if given.report is not None:
        from lineproof.report.studied_html import save_study_html

        failure = written(lambda file: save_study_html(found, file), given.report)
    if given.json:
        write_json(study_json(found))
    else:
        write(studied(found, name=str(given.lesson), everything=given.all))
        if given.report is not None and failure is None:
            write(where_it_is(given.report))
    if failure is not None:
        raise CommandError(failure)
    return 0
