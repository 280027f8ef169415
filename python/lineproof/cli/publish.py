"""`lineproof publish`: a proved lesson as files to hand on."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from .failures import CLAIM_FAILS, STOPPED, CommandError
from .filming import add_filming, filming, told_order
from .output import say, write, write_json
from .shared import (
    add_command,
    add_effort_option,
    add_engine_option,
    add_lesson_settings,
    check_audience,
)

if TYPE_CHECKING:
    from lineproof.proof import Finding
    from lineproof.publish import Choices, Found, Product, Published

    from .shared import Commands

FORMAT = 1
"""Of the JSON."""
LANGUAGES = ("en", "de", "fr", "es", "nl")
NOTATIONS = ("letters", "figurine")
PAPERS = ("a4", "letter")


def add(commands: Commands) -> None:
    command = add_command(
        commands,
        "publish",
        "write a proved lesson as a handout, a page, captions, a video, an article, diagrams, PGN and EPD",
        run,
    )
    command.add_argument(
        "lesson", metavar="LESSON", type=Path, help="a lesson folder or a PGN file"
    )
    command.add_argument(
        "--out", metavar="FOLDER", type=Path, required=True, help="where the products go"
    )
    command.add_argument(
        "--only",
        metavar="NAMES",
        help="some products, such as pgn,epd; without it all but the video",
    )
    command.add_argument(
        "--anyway", action="store_true", help="publish also when claims fail or words are stale"
    )
    command.add_argument(
        "--width", type=int, metavar="PIXELS", help="width of each picture, 1 to 16384 (720)"
    )
    command.add_argument(
        "--language",
        choices=LANGUAGES,
        default="en",
        help="of the pieces' letters, in the moves of the article, the page and the handout (en)",
    )
    _add_handout(command)
    add_effort_option(command, "normal")
    command.add_argument(
        "--collection", metavar="NAME", help="a collection whose games are counted"
    )
    add_engine_option(command)
    add_lesson_settings(command)
    add_filming(command)


def _add_handout(command: argparse.ArgumentParser) -> None:
    page = command.add_argument_group("the handout")
    page.add_argument(
        "--notation",
        choices=NOTATIONS,
        default="letters",
        help="letters of the language, or figurines, which need none (letters)",
    )
    page.add_argument("--paper", choices=PAPERS, default="a4", help="size of the paper (a4)")
    page.add_argument(
        "--columns", type=int, choices=(1, 2), help="of text (2, and 1 in large type)"
    )
    page.add_argument("--large", action="store_true", help="large type")


def run(given: argparse.Namespace) -> int:
    from lineproof.diagram.board import LARGEST
    from lineproof.facade import LessonError
    from lineproof.publish import Choices, RefusedError, chosen, publish
    from lineproof.publish.product import WIDTH
    from lineproof.publish.publishing import counted

    from .progress import progress

    check_audience(given.audience)
    width = WIDTH if given.width is None else given.width
    if not 1 <= width <= LARGEST:
        raise CommandError(f"--width is {width}; give 1 to {LARGEST} pixels")
    try:
        only = None if given.only is None else [n.strip() for n in given.only.split(",")]
        products = chosen(only)
        choices = Choices(
            width,
            given.language,
            notation=given.notation,
            paper=given.paper,
            columns=given.columns,
            large=given.large,
            filming=filming(given, products),
        )
        found = _found(given, products, choices)
        long = any(product.on_request for product in products)
        doing = ("Filming", "frame") if long else ("Making", "product")
        with progress(str(given.lesson), *doing) as tell:
            published = publish(
                found,
                given.out,
                products,
                replace(choices, progress=tell) if long else choices,
                anyway=given.anyway,
                progress=None if long else tell,
            )
    except RefusedError as error:
        for finding in error.failing:
            say(_told(finding))
        if given.json:
            write_json(_json(given.out, None, error.failing))
        raise CommandError(str(error), CLAIM_FAILS) from error
    except LessonError as error:
        raise CommandError(str(error)) from error
    for finding in published.failing:
        say(_told(finding))
    if published.failing:
        say(
            f"{given.lesson}: {counted(published.failing)}; published all the same, as --anyway asks"
        )
    if given.json:
        write_json(_json(given.out, published, published.failing))
    else:
        write(_answer(published))
    return 0


def _found(given: argparse.Namespace, products: tuple[Product, ...], choices: Choices) -> Found:
    """The proof, and the study where a product needs it; refused before the study where claims fail."""
    from lineproof.collection import CollectionError
    from lineproof.facade import Lesson
    from lineproof.order import OrderError
    from lineproof.publish import Found, refuse
    from lineproof.publish.publishing import check, check_choices
    from lineproof.replies import NaturalError, StudyError

    from .outside import opened, unanswered
    from .progress import progress

    name = str(given.lesson)
    try:
        lesson = Lesson.open(given.lesson, side=given.side, audience=given.audience)
        check(lesson, given.out)
        check_choices(lesson, products, choices)
        with opened(given.engine) as engine:
            with progress(name) as tell:
                proof = lesson.prove(
                    given.effort, progress=tell, engine=engine, collection=given.collection
                )
            line = unanswered(proof)
            if line is not None:
                raise CommandError(f"{line}; nothing was published")
            refuse(proof, given.anyway)
            with progress(name, "Studying", "step") as tell:
                order = told_order(given, lesson, tell)
                if not any(product.needs_study for product in products):
                    return Found(proof, order=order)
                return Found(
                    proof,
                    lesson.study(progress=tell, collection=given.collection, engine=engine),
                    order=order,
                )
    except (OrderError, StudyError, CollectionError, NaturalError) as error:
        raise CommandError(str(error)) from error
    except KeyboardInterrupt:
        raise CommandError(
            "Stopped. Nothing was published; what was searched is kept, and the same command goes on from there.",
            STOPPED,
        ) from None


def _address(finding: Finding) -> str:
    line, column = finding.claim.place.lesson.locate(finding.claim.start)
    return f"{finding.claim.place.lesson.name}:{line}:{column}"


def _told(finding: Finding) -> str:
    """ "vienna/lines.pgn:4:47: 3. f4, “The knight on f6 is pinned to the king.” fails: ..." """
    from lineproof.publish.publishing import STALE

    claim = finding.claim
    what = "is stale" if claim.kind == STALE else "fails"
    return f"{_address(finding)}: {claim.place.label}, “{claim.words}” {what}: {finding.because}"


def _answer(published: Published) -> str:
    from lineproof.report.plain import plain

    products: dict[str, list[int]] = {}
    for file in published.files:
        products.setdefault(file.product, []).append(file.size)
    lines = [f"Published in {plain(str(published.out))}:"]
    for product, sizes in products.items():
        files = "1 file" if len(sizes) == 1 else f"{len(sizes):,} files"
        lines.append(f"  {product:<9} {files}, {sum(sizes):,} bytes")
    lines += [f"  {product:<9} nothing to show" for product in published.empty]
    lines += [f"  {product}: {plain(note)}." for product, note in published.notes]
    if published.edition is not None:
        lines.append(f"This is edition {published.edition.number}.")
    return "\n".join(lines) + "\n"


def _json(out: Path, published: Published | None, failing: tuple[Finding, ...]) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "folder": str(out),
        "published": published is not None,
        "files": [
            {"product": f.product, "name": f.name, "size": f.size, "sha256": f.sha256}
            for f in (published.files if published is not None else ())
        ],
        "empty": list(published.empty) if published is not None else [],
        "notes": [
            {"product": product, "words": words}
            for product, words in (published.notes if published is not None else ())
        ],
        "edition": None
        if published is None or published.edition is None
        else {"number": published.edition.number, "date": published.edition.day.isoformat()},
        "fails": [
            {
                "at": _address(finding),
                "place": finding.claim.place.label,
                "kind": finding.claim.kind,
                "words": finding.claim.words,
                "because": finding.because,
            }
            for finding in failing
        ],
    }
