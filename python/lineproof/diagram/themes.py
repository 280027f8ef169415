"""The looks of a diagram: printed page, printed page at night, stage.

    >>> PRINT.hatching, STAGE.hatching
    ('#20242E', None)

Every colour is `#RRGGBB`. The tests hold each theme to WCAG 2.2, success criterion 1.4.11.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Final

from .contrast import relative_luminance
from .marks import Side


@dataclass(frozen=True)
class Theme:
    """The colours of one look; None means that the part is not drawn.

    name: lower-case, used in ids, so no two themes of a page may share it.
    light, dark: fill of the squares; hatching: 45 degree lines over the dark squares.
    ink, paper: the two tones of the pieces; paper is the halo of the marks too.
    knock_out: hairline around each piece, which keeps hatching off its outline.
    white_idea, black_idea: marks of either side; the move just played is marked in ink.
    rule: the double rule around the board; coordinates: letters and figures outside it.
    page: ground of the margin. A theme without rule and coordinates has no margin.

    :raises DiagramError: if a colour is not of the form `#RRGGBB`
    """

    name: str
    light: str
    dark: str
    hatching: str | None
    ink: str
    paper: str
    knock_out: str | None
    white_idea: str
    black_idea: str
    rule: str | None
    coordinates: str | None
    page: str | None

    def __post_init__(self) -> None:
        for colour in (getattr(self, field.name) for field in fields(self) if field.name != "name"):
            if colour is not None:
                relative_luminance(colour)

    def idea(self, side: Side) -> str:
        """The colour of a side's marks."""
        return self.white_idea if side == "white" else self.black_idea


PRINT: Final = Theme(
    name="print",
    light="#FBF7EE",
    dark="#E7DFCE",
    hatching="#20242E",
    ink="#20242E",
    paper="#FBF7EE",
    knock_out="#FBF7EE",
    white_idea="#9A5200",
    black_idea="#06494B",
    rule="#20242E",
    coordinates="#20242E",
    page="#FBF7EE",
)
"""As in printed books: hatched dark squares, double rule, coordinates outside."""

PRINT_DARK: Final = Theme(
    name="print-dark",
    light="#D6CFC1",
    dark="#B3AB9B",
    hatching="#20242E",
    ink="#20242E",
    paper="#F3EDE1",
    knock_out="#F3EDE1",
    white_idea="#9A5200",
    black_idea="#06494B",
    rule="#D6CFC1",
    coordinates="#D6CFC1",
    page="#20242E",
)
"""The printed board for a page in dark mode: dimmed paper, never a negative of the position."""

STAGE: Final = Theme(
    name="stage",
    light="#E9DCD3",
    dark="#B08A95",
    hatching=None,
    ink="#20242E",
    paper="#FBF7EE",
    knock_out="#FBF7EE",
    white_idea="#9A5200",
    black_idea="#06494B",
    rule=None,
    coordinates=None,
    page=None,
)
"""For recording: linen and rose-grey squares, no frame, no coordinates, no margin."""

THEMES: Final = (PRINT, PRINT_DARK, STAGE)
