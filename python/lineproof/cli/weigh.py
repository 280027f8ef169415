"""`lineproof weigh`: candidate openings side by side."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import STOPPED, CommandError
from .output import write, write_json
from .report import add_report_option, check_report, where_it_is, written
from .shared import add_command, add_engine_option, add_lesson_settings, check_audience

if TYPE_CHECKING:
    from lineproof.follow.weighing import Candidate

    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(commands, "weigh", "weigh candidate openings side by side", run)
    command.add_argument(
        "candidates",
        metavar="LESSON-or-MOVES",
        nargs="+",
        help='lessons, or moves such as "1. e4 e5 2. Nc3" for the side that made the last one',
    )
    command.add_argument(
        "--collection", metavar="NAME", help="a collection whose games are counted"
    )
    add_report_option(command)
    add_engine_option(command)
    add_lesson_settings(command)


def run(given: argparse.Namespace) -> int:
    from contextlib import ExitStack

    from lineproof.collection import Collection, CollectionError
    from lineproof.follow.weighing import weigh_openings
    from lineproof.lesson import LessonError
    from lineproof.lesson.settings import AUDIENCE
    from lineproof.lesson.where import where
    from lineproof.proof import Effort, EvidenceStore
    from lineproof.proof.asker import Asker
    from lineproof.replies import NaturalError, Replies
    from lineproof.report.weighed import weighed, weighed_json

    from .outside import opened
    from .progress import progress

    check_audience(given.audience)
    try:
        with ExitStack() as stack:
            collection = None
            if given.collection is not None:
                collection = stack.enter_context(Collection.open(given.collection))
                collection.games  # noqa: B018 - raises where there is none
            engine = stack.enter_context(opened(given.engine))
            tell = stack.enter_context(progress(given.candidates[0], "Weighing", "candidate"))
            candidates = [_candidate(text, given) for text in given.candidates]
            rating = given.audience or _theirs(audience for _, audience in candidates) or AUDIENCE
            store = EvidenceStore(where()["weighed openings"] / "cache" / "evidence.sqlite")
            stack.callback(store.close)
            replies = Replies(rating, store, collection=collection)
            found = weigh_openings(
                [candidate for candidate, _ in candidates],
                replies,
                Asker(store, Effort.SKETCH.steps[0], None, engine),
                tell,
            )
            uncounted = replies.uncounted(one.candidate.spot for one in found)
    except (LessonError, CollectionError, NaturalError) as error:
        raise CommandError(str(error)) from error
    except KeyboardInterrupt:
        raise CommandError(
            "Stopped. What was searched is kept; the same command goes on from there.", STOPPED
        ) from None
    failure = None
    if given.report is not None:
        from lineproof.report.weighed_html import save_weighed_html

        failure = written(
            lambda file: save_weighed_html(found, rating, uncounted, file), given.report
        )
    if given.json:
        write_json(weighed_json(found, rating))
    else:
        write(weighed(found, rating, uncounted=uncounted))
        if given.report is not None and failure is None:
            write(where_it_is(given.report))
    if failure is not None:
        raise CommandError(failure)
    return 0


def _theirs(audiences: Iterable[int | None]) -> int | None:
    """The rating that all lessons are for; None where there are none, or where they are for different ones."""
    found = {audience for audience in audiences if audience is not None}
    return found.pop() if len(found) == 1 else None


def _candidate(text: str, given: argparse.Namespace) -> tuple[Candidate, int | None]:
    """What is to be weighed, and the audience of a lesson."""
    from lineproof.collection.asked import asked
    from lineproof.follow.weighing import Candidate
    from lineproof.lesson import Lesson
    from lineproof.report.title import title_of

    if not Path(text).exists():
        return Candidate.of_moves(text, asked(text)), None
    lesson = Lesson.open(text, side=given.side, audience=given.audience)
    check_report(lesson, given.report)
    if lesson.settings.side is None:
        raise CommandError(
            f"{text}: the lesson does not say which side is taught; say it with --side"
        )
    candidate = Candidate.of_lesson(lesson, lesson.settings.side)
    return replace(candidate, name=title_of(lesson)), lesson.settings.audience
