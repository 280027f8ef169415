"""What may differ between two ways of setting the same handout."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from lineproof.publish.product import Choices


@dataclass(frozen=True)
class Shape:
    """board: width of a diagram in the text, in centimetres. apart: moves and words that lie between two of a section at least.

    free: centimetres at the foot of a column that nobody minds. without: indexes of places whose diagrams are left to the exercises and the other products.
    """

    board: float
    apart: int
    free: float
    without: frozenset[int] = frozenset()


TWO: Final = (Shape(4.9, 40, 2.2), Shape(4.6, 40, 2.2))
ONE: Final = (Shape(5.8, 40, 2.2), Shape(5.2, 40, 2.2), Shape(4.8, 40, 2.2))
LARGE: Final = (Shape(8.4, 70, 4.0), Shape(7.4, 70, 4.0))
LARGE_TWO: Final = (Shape(6.6, 70, 4.0), Shape(5.8, 70, 4.0))


def columns(choices: Choices) -> int:
    return choices.columns or (1 if choices.large else 2)


def shapes(choices: Choices) -> tuple[Shape, ...]:
    """Those that go with the page, the best first."""
    if choices.large:
        return LARGE_TWO if columns(choices) == 2 else LARGE
    return TWO if columns(choices) == 2 else ONE
