"""What a diagram may point at: a square, a move, a pin, the move just played.

>>> ShownMove("g5", "f7", "white").end
'f7'
>>> Pin("b5", "c8", "white")
Traceback (most recent call last):
    ...
lineproof.diagram.errors.DiagramError: a pin runs along a rank, file or diagonal, not b5 to c8
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from .errors import DiagramError
from .squares import file_and_rank, path_between

Side = Literal["white", "black"]
"""Whose idea a mark shows."""


@dataclass(frozen=True)
class MarkedSquare:
    """Four open corner strokes on `square`."""

    square: str
    side: Side

    def __post_init__(self) -> None:
        file_and_rank(self.square)
        _check_side(self.side)


@dataclass(frozen=True)
class ShownMove:
    """A thin line from an open ring at `start` to a solid wedge at `end`."""

    start: str
    end: str
    side: Side

    def __post_init__(self) -> None:
        _check_ends(self.start, self.end)
        _check_side(self.side)


@dataclass(frozen=True)
class Pin:
    """A dashed rule from the pinning piece at `start` to what it aims at behind, at `end`."""

    start: str
    end: str
    side: Side

    def __post_init__(self) -> None:
        _check_ends(self.start, self.end)
        _check_side(self.side)
        if path_between(self.start, self.end) is None:
            raise DiagramError(
                f"a pin runs along a rank, file or diagonal, not {self.start} to {self.end}"
            )


@dataclass(frozen=True)
class JustPlayed:
    """Two small corner dots on each of the squares of the move just played."""

    start: str
    end: str

    def __post_init__(self) -> None:
        _check_ends(self.start, self.end)


Mark = MarkedSquare | ShownMove | Pin | JustPlayed


def _check_ends(start: str, end: str) -> None:
    file_and_rank(start)
    file_and_rank(end)
    if start == end:
        raise DiagramError(f"a mark from {start} to {end} goes nowhere: name two squares")


def _check_side(side: Side) -> None:
    if side not in ("white", "black"):
        raise DiagramError(f"the side of a mark is {side!r}: write 'white' or 'black'")
