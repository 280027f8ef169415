"""Publishing a lesson: refused while a claim fails; then every product is made, and all are written together."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Final

from lineproof.claims import Outcome
from lineproof.lesson import Lesson
from lineproof.lesson.lesson import HOME
from lineproof.proof import Finding, Progress, Proof

from .editions import Edition, due, keep
from .folder import check_folder, with_sums, write
from .product import Choices, Files, Found, Product, PublishError

STALE: Final = "stale"
"""The kind of claim that a sentence makes which an edit left behind."""


class RefusedError(PublishError):
    """Claims of the lesson fail, or words of it are stale. failing: their findings, in the order of the text."""

    hint = "correct the words, mark an opinion with `lineproof opinion`, or publish all the same with --anyway"
    failing: tuple[Finding, ...] = ()


def counted(failing: Sequence[Finding]) -> str:
    """ "2 claims fail and 1 sentence is stale"."""
    stale = len({finding.claim.sentence for finding in failing if finding.claim.kind == STALE})
    false = sum(finding.claim.kind != STALE for finding in failing)
    parts = [f"{false:,} claim{'s fail' if false > 1 else ' fails'}"] * bool(false)
    parts += [f"{stale:,} sentence{'s are' if stale > 1 else ' is'} stale"] * bool(stale)
    return " and ".join(parts)


@dataclass(frozen=True)
class Written:
    """A file that was written. name: with its product's folder. sha256: of its bytes, in hexadecimal digits."""

    product: str
    name: str
    size: int
    sha256: str


@dataclass(frozen=True)
class Published:
    """What was published. empty: products with nothing to show. failing: claims that fail and were published all the same.

    notes: by product, sentences for the author on what could not be kept. edition: None for a lesson in no file.
    """

    out: Path
    files: tuple[Written, ...]
    empty: tuple[str, ...]
    failing: tuple[Finding, ...]
    notes: tuple[tuple[str, str], ...] = ()
    edition: Edition | None = None


def check(lesson: Lesson, out: Path) -> None:
    """Refuses before any work what cannot be published, or cannot be written there.

    :raises PublishError:
    """
    if len(lesson.places) == len(lesson.games):
        raise PublishError(
            "the lesson has no moves", path=lesson.name, hint="write its lines first"
        )
    if lesson.settings.side is None:
        raise PublishError(
            "the lesson does not say which side is taught",
            path=lesson.name,
            hint="say it with --side",
        )
    if HOME in out.absolute().parts:
        raise PublishError(
            "this folder is for the lesson's history",
            path=str(out),
            hint="choose another with --out",
        )
    check_folder(out)


def check_choices(lesson: Lesson, products: Sequence[Product], choices: Choices) -> None:
    """Refuses before any work what the choices ask of a product and cannot be had.

    :raises PublishError:
    """
    for product in products:
        if product.check is not None:
            product.check(lesson, choices)


def refuse(proof: Proof, anyway: bool = False) -> tuple[Finding, ...]:
    """The findings that fail, and those of stale words, also where it is only likely that an edit left them behind.

    :raises RefusedError: when there are any, unless `anyway`.
    """
    failing = tuple(
        finding
        for finding in proof.findings
        if finding.outcome is Outcome.FAILS
        or (finding.claim.kind == STALE and finding.outcome is not Outcome.HOLDS)
    )
    if failing and not anyway:
        message = f"{counted(failing)}, so nothing was published"
        refused = RefusedError(message, path=proof.lesson.name)
        refused.failing = failing
        raise refused
    return failing


def publish(
    found: Found,
    out: Path,
    products: Sequence[Product],
    choices: Choices | None = None,
    *,
    anyway: bool = False,
    progress: Progress | None = None,
    today: date | None = None,
) -> Published:
    """Makes the products and writes them into `out`, each into a folder of its name, and records the edition.

    found: with a study where one of the products needs it. anyway: also where claims fail. progress: called with the
    products made and in all. today: the day of a new edition, by default that of the clock.
    :raises RefusedError: when claims fail.
    :raises PublishError: when a product cannot be made or written; nothing has changed then.
    :raises LessonError: when the edition cannot be recorded; nothing has changed then either.
    """
    lesson = found.proof.lesson
    check(lesson, out)
    failing = refuse(found.proof, anyway)
    new = False
    if lesson.home is not None:
        edition, new = due(lesson, found.proof.findings, today)
        found = replace(found, edition=edition)
    made: dict[str, Files] = {}
    choices = choices or Choices()
    for product in products:
        if progress is not None:
            progress(len(made), len(products))
        made[product.name] = with_sums(product.make(lesson, found, choices))
    if progress is not None:
        progress(len(made), len(products))  # the last moment at which it can be broken off
    # kept before anything with its number is handed out, and only once all of it is made
    kept = keep(lesson, found.edition) if new and found.edition is not None else None
    try:
        write(out, made)
    except BaseException:
        if kept is not None:  # it has come to nobody
            with suppress(OSError):
                kept.unlink()
        raise
    return Published(
        out,
        tuple(
            Written(product, f"{product}/{name}", len(data), hashlib.sha256(data).hexdigest())
            for product, files in made.items()
            for name, data in sorted(files.items())
        ),
        tuple(product for product, files in made.items() if not files),
        failing,
        notes=tuple(
            (product.name, note)
            for product in products
            if product.notes is not None
            for note in product.notes(lesson, found, choices)
        ),
        edition=found.edition,
    )
