"""Where the board stands on the page of a film.

>>> HORIZONTAL = Page(1920, 1080)
>>> HORIZONTAL.board, HORIZONTAL.left, HORIZONTAL.top
(1024, 448, 28)
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

ROOM: Final = 0.95
"""Of the shorter side, what the board may take; of the width, what a caption may."""
BAND: Final = 0.12
"""Of the height, what captions take."""


@dataclass(frozen=True)
class Page:
    """In pixels; both multiples of 16. words: whether captions are drawn below the board."""

    width: int
    height: int
    words: bool = False

    @property
    def square(self) -> int:
        """Side of a square; eight divides it, so that pieces and their margin lie on whole pixels."""
        return max(int(min(self.width, self.height - self._band) * ROOM) // 64 * 8, 8)

    @property
    def _band(self) -> int:
        """Below the board of a page that is wider than high."""
        return int(self.height * BAND) if self.words and self.width > self.height else 0

    @property
    def board(self) -> int:
        return 8 * self.square

    @property
    def left(self) -> int:
        return (self.width - self.board) // 2

    @property
    def top(self) -> int:
        return (self.height - self._band - self.board) // 4 * 2

    @property
    def letters(self) -> float:
        """Size of the letters of captions."""
        return min(0.38 * self.square, 0.035 * self.width)

    @property
    def line(self) -> int:
        """The longest line of a caption."""
        return int(self.width * ROOM)

    @property
    def words_top(self) -> int:
        """Where captions begin: below the board and the rule of a pause."""
        return self.top + self.board + round(0.3 * self.square)

    def corner(self, square: str, flipped: bool) -> tuple[int, int]:
        """The upper left corner of a square, from that of the board."""
        file, rank = "abcdefgh".index(square[0]), int(square[1]) - 1
        column, row = (7 - file, rank) if flipped else (file, 7 - rank)
        return column * self.square, row * self.square
