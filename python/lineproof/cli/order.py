"""`lineproof order`: in which order a lesson is best told, its script, and what to cut."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import STOPPED, CommandError
from .output import write, write_json
from .shared import add_command, add_lesson_settings, check_audience, own

if TYPE_CHECKING:
    from lineproof.order import RunningOrder

    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(
        commands, "order", "put a lesson in the order in which it is best told", run
    )
    command.add_argument(
        "lesson", metavar="LESSON", type=Path, help="a lesson folder or a PGN file"
    )
    command.add_argument(
        "--minutes", type=float, metavar="N", help="say what to leave out to fit into N minutes"
    )
    command.add_argument(
        "--script", metavar="FILE.md", type=Path, help="write the script, with the time of each cue"
    )
    command.add_argument(
        "--collection", metavar="NAME", help="count in these games what is seldom met"
    )
    command.add_argument(
        "--study",
        action="store_true",
        help="look for pause points and slips by search too, as `unanswered` does (minutes the first time)",
    )
    add_lesson_settings(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.collection import CollectionError
    from lineproof.facade import Lesson, LessonError
    from lineproof.order import OrderError
    from lineproof.replies import NaturalError, StudyError

    from .progress import progress

    check_audience(given.audience)
    _check_minutes(given.minutes)
    with progress(str(given.lesson), "Looking", "step") as tell:
        try:
            lesson = Lesson.open(given.lesson, side=given.side, audience=given.audience)
            if given.script is not None and own(lesson, given.script):
                raise CommandError(
                    f"{given.script}: this belongs to the lesson, and a script would destroy it; choose another place with --script"
                )
            found = lesson.order(
                minutes=given.minutes,
                study=given.study,
                progress=tell,
                collection=given.collection,
            )
        except (LessonError, OrderError, StudyError, CollectionError, NaturalError) as error:
            raise CommandError(str(error)) from error
        except KeyboardInterrupt:
            raise CommandError(
                "Stopped. What was searched is kept; the same command goes on from there.", STOPPED
            ) from None
    failure = None if given.script is None else _write(found, given.script)
    if given.json:
        from lineproof.order.json import order_json

        write_json(order_json(found))
    else:
        from lineproof.order.summary import summary
        from lineproof.report.plain import harmless, plain

        write(harmless(summary(found, plain(str(given.lesson)))))
        if given.script is not None and failure is None:
            write(f"\nThe script is in {plain(str(given.script))}.\n")
    if failure is not None:
        raise CommandError(failure)
    return 0


def _check_minutes(minutes: float | None) -> None:
    from lineproof.order.running import MINUTES

    low, high = MINUTES
    if minutes is not None and not low <= minutes <= high:
        raise CommandError(f"--minutes is {minutes:g}; give a number from {low} to {high}")


def _write(order: RunningOrder, file: Path) -> str | None:
    """Writes the script; gives the line to say when that cannot be done."""
    from lineproof.order.script import script
    from lineproof.report.plain import harmless
    from lineproof.report.writing import write_whole

    try:
        write_whole(file, harmless(script(order)).encode("utf-8"))
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        return (
            f"{file}: the script cannot be written ({reason}); choose another place with --script"
        )
    return None
