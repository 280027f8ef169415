"""From the JSON of a handout to the PDF, by Typst, with its own fonts and ours and no others."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from itertools import pairwise
from pathlib import Path
from types import ModuleType
from typing import Any, Final

from lineproof.publish.product import PublishError

HERE: Final = Path(__file__).parent
TEMPLATE: Final = HERE / "handout.typ"
FONTS: Final = HERE / "fonts"
BEHIND: Final = ("exercises", "solutions", "meetings", "positions", "figures", "sources")
"""What is printed behind the lines and has no part in how they fill their columns."""
STANDARD: Final = "ua-1"
"""PDF/UA-1: ISO 14289-1."""
AGAIN: Final = 3
_MISSING: Final = re.compile(r'the text `"(.+?)"` could not be displayed')


def _midnight(day: Mapping[str, int] | None) -> int:
    """The PDF's clock stands at the edition's day, so that the same edition has the same bytes."""
    if day is None:
        return 0
    return int(datetime(day["year"], day["month"], day["day"], tzinfo=UTC).timestamp())


def typeset(document: Mapping[str, Any], name: str) -> bytes:
    """The PDF. The document goes in as data and is never read as markup. A character that no font of ours has is replaced by U+FFFD.

    :raises PublishError: when Typst is not installed, or refuses.
    """
    typst = _typst(name)
    inputs = _inputs(document)
    with _refusals(typst, name):
        for _ in range(AGAIN):
            try:
                return _compiled(typst, inputs, document["date"])
            except typst.TypstError as error:
                missing = {c for text in _MISSING.findall(error.diagnostic) for c in text}
                if not (missing := {c for c in missing if not c.isascii()}):
                    raise
                # what no font of ours has; the characters stand in strings of the JSON only
                table = dict.fromkeys(map(ord, missing), "\ufffd")
                inputs = {key: text.translate(table) for key, text in inputs.items()}
        return _compiled(typst, inputs, document["date"])


def _compiled(typst: ModuleType, inputs: dict[str, str], day: Mapping[str, int] | None) -> bytes:
    return bytes(
        typst.compile(
            TEMPLATE,
            root=HERE,
            font_paths=[FONTS],
            ignore_system_fonts=True,
            format="pdf",
            pdf_standards=STANDARD,
            timestamp=_midnight(day),
            sys_inputs=inputs,
        )
    )


@dataclass(frozen=True)
class Column:
    """The foot of a column of the text. free: centimetres that are left there. next: the place of the diagram that begins the next column, if one does
    that may be left out."""

    free: float
    next: int | None


def foot(document: Mapping[str, Any], name: str) -> list[Column]:
    """The columns of the text in their order; the last one, which may end anywhere, is left out.

    :raises PublishError: as `typeset`.
    """
    typst = _typst(name)
    with _refusals(typst, name):
        found = typst.query(
            TEMPLATE,
            "<ends>",
            field="value",
            root=HERE,
            font_paths=[FONTS],
            ignore_system_fonts=True,
            sys_inputs=_inputs({**document, **dict.fromkeys(BEHIND, ())}),
        )
    ends: dict[tuple[int, bool], list[dict[str, Any]]] = {}
    for end in json.loads(found):
        ends.setdefault((end["page"], end["right"]), []).append(end)
    columns = [ends[column] for column in sorted(ends)]
    return [
        Column(min(end["free"] for end in here), _first(after)) for here, after in pairwise(columns)
    ]


def _first(column: list[dict[str, Any]]) -> int | None:
    """The place of the diagram that stands first or behind the first words of a column."""
    return next((end["place"] for end in column[:2] if end["place"] is not None), None)


def _typst(name: str) -> ModuleType:
    try:
        import typst
    except ImportError as missing:
        raise PublishError(
            "the handout needs typst",
            path=name,
            hint="pip install 'lineproof[publish]', or leave handout out with --only",
        ) from missing
    return typst


@contextmanager
def _refusals(typst: ModuleType, name: str) -> Iterator[None]:
    try:
        yield
    except typst.TypstError as error:
        raise PublishError(
            f"Typst cannot set the handout ({error.message})",
            path=name,
            hint="please report this with the lesson",
        ) from error


def _inputs(document: Mapping[str, Any]) -> dict[str, str]:
    return {"document": json.dumps(document, ensure_ascii=False)}
