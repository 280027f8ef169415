"""From the JSON of a handout to the PDF, by Typst, with its own fonts and ours and no others."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final

from lineproof.publish.product import PublishError

HERE: Final = Path(__file__).parent
TEMPLATE: Final = HERE / "handout.typ"
FONTS: Final = HERE / "fonts"
STANDARD: Final = "ua-1"
"""PDF/UA-1: ISO 14289-1."""


def _midnight(day: Mapping[str, int] | None) -> int:
    """The PDF's clock stands at the edition's day, so that the same edition has the same bytes."""
    if day is None:
        return 0
    return int(datetime(day["year"], day["month"], day["day"], tzinfo=UTC).timestamp())


def typeset(document: Mapping[str, Any], name: str) -> bytes:
    """The PDF. The document goes in as data and is never read as markup.

    :raises PublishError: when Typst is not installed, or refuses.
    """
    try:
        import typst
    except ImportError as missing:
        raise PublishError(
            "the handout needs typst",
            path=name,
            hint="pip install 'lineproof[publish]', or leave handout out with --only",
        ) from missing
    try:
        return bytes(
            typst.compile(
                TEMPLATE,
                root=HERE,
                font_paths=[FONTS],
                ignore_system_fonts=True,
                format="pdf",
                pdf_standards=STANDARD,
                timestamp=_midnight(document["date"]),
                sys_inputs={"document": json.dumps(document, ensure_ascii=False)},
            )
        )
    except typst.TypstError as error:
        raise PublishError(
            f"Typst cannot set the handout ({error.message})",
            path=name,
            hint="please report this with the lesson",
        ) from error
