"""A diagram on a sheet: drawn for day and night, with its caption."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from lineproof.diagram import PRINT, PRINT_DARK, Mark, diagram

from .markup import Html, tag

THEMES: Final = ((PRINT, "by-day"), (PRINT_DARK, "by-night"))
"""Themes of the diagrams with the class of the page that shows each."""


def board_figure(
    fen: str, marks: Sequence[Mark], caption: str, *, name: str, flipped: bool
) -> Html:
    """name: a word that no other figure of the page has. flipped: as Black sees the board."""
    drawn = [
        tag(
            "div",
            Html(
                diagram(
                    fen,
                    marks=tuple(marks),
                    theme=theme,
                    flipped=flipped,
                    title=caption,
                    id_prefix=f"{kind}-{name}",
                    use_sprite=True,
                )
            ),
            class_=kind,
        )
        for theme, kind in THEMES
    ]
    return tag("figure", *drawn, tag("figcaption", caption))
