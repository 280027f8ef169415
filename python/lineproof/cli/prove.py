"""`lineproof prove`: checks a lesson and says what holds."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import CLAIM_FAILS, STOPPED, CommandError
from .output import write, write_json
from .report import add_report_option, check_report, where_it_is, written
from .shared import add_command, add_engine_option, add_lesson_settings, check_audience

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine
    from lineproof.facade import Lesson
    from lineproof.proof import Proof

    from .progress import Tell
    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(
        commands, "prove", "check every sentence of a lesson that can be checked", run
    )
    command.add_argument(
        "lesson", metavar="LESSON", type=Path, help="a lesson folder or a PGN file"
    )
    command.add_argument(
        "--effort",
        choices=("sketch", "normal", "thorough"),
        default="normal",
        help="how much search a check may spend (normal)",
    )
    command.add_argument(
        "--show",
        choices=("read", "all"),
        help="read: every sentence and what became of it; all: every finding too",
    )
    add_report_option(command)
    command.add_argument(
        "--strict", action="store_true", help="exit with 1 when a claim fails or two contradict"
    )
    command.add_argument(
        "--collection",
        metavar="NAME",
        help="count in these games how often moves are played",
    )
    add_engine_option(command)
    add_lesson_settings(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.facade import Lesson, LessonError, Outcome

    from .outside import opened, unanswered
    from .progress import progress

    check_audience(given.audience)
    with progress(str(given.lesson)) as tell:
        try:
            lesson = Lesson.open(given.lesson, side=given.side, audience=given.audience)
        except LessonError as error:
            raise CommandError(str(error)) from error
        check_report(lesson, given.report)
        with opened(given.engine) as engine:
            proof = _prove(lesson, given.effort, tell, engine, given.collection)
    failure = None
    if given.report is not None:
        from lineproof.report.html import save_html

        failure = written(lambda file: save_html(proof, file), given.report)
    if given.json:
        from lineproof.report.json import proof_json

        write_json(proof_json(proof))
    else:
        from lineproof.report.terminal import terminal

        from .width import output

        write(terminal(proof, output(), given.show))
        if given.report is not None and failure is None:
            write(where_it_is(given.report))
    failure = failure or unanswered(proof)
    if failure is not None:
        raise CommandError(failure)
    wrong = (
        proof.count(Outcome.FAILS) or proof.contradictions
    )  # of two that contradict one is false
    return CLAIM_FAILS if given.strict and wrong else 0


def _prove(
    lesson: Lesson,
    effort: str,
    tell: Tell | None,
    engine: OutsideEngine | None,
    collection: str | None,
) -> Proof:
    from lineproof.collection import CollectionError

    store = lesson.evidence()
    try:
        return lesson.prove(
            effort, progress=tell, store=store, engine=engine, collection=collection
        )
    except CollectionError as error:
        raise CommandError(str(error)) from error
    except KeyboardInterrupt:
        if store.kept and store.path is not None:
            line = "Stopped. What was found is kept; the same command goes on from there."
        else:
            line = "Stopped. What was found could not be kept, so the same command begins anew."
        raise CommandError(line, STOPPED) from None
    finally:
        store.close()
