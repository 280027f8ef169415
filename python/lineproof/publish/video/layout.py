"""Where the board stands on the page of a film.

>>> HORIZONTAL = Page(1920, 1080)
>>> HORIZONTAL.board, HORIZONTAL.left, HORIZONTAL.top
(1024, 448, 28)
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

ROOM: Final = 0.95
"""Of the shorter side, what the board may take."""


@dataclass(frozen=True)
class Page:
    """In pixels; both even, as video codecs want them."""

    width: int
    height: int

    @property
    def square(self) -> int:
        """Side of a square; eight divides it, so that pieces and their margin lie on whole pixels."""
        return max(int(min(self.width, self.height) * ROOM) // 64 * 8, 8)

    @property
    def board(self) -> int:
        return 8 * self.square

    @property
    def left(self) -> int:
        return (self.width - self.board) // 2

    @property
    def top(self) -> int:
        return (self.height - self.board) // 2

    def corner(self, square: str, flipped: bool) -> tuple[int, int]:
        """The upper left corner of a square, from that of the board."""
        file, rank = "abcdefgh".index(square[0]), int(square[1]) - 1
        column, row = (7 - file, rank) if flipped else (file, 7 - rank)
        return column * self.square, row * self.square
