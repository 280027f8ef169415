"""Squares by name, "a1" to "h8", and where they lie on the board.

>>> file_and_rank("e4")
(4, 3)
>>> path_between("b5", "e8")
('c6', 'd7')
"""

from __future__ import annotations

from typing import Final

from .errors import DiagramError

FILES: Final = "abcdefgh"
RANKS: Final = "12345678"


def file_and_rank(square: str) -> tuple[int, int]:
    """File and rank, each 0 to 7, counted from a1.

    :raises DiagramError: if `square` is not one of "a1" to "h8"
    """
    if len(square) != 2 or square[0] not in FILES or square[1] not in RANKS:
        raise DiagramError(f"{square[:20]!r} is not a square: write a file a-h and a rank 1-8")
    return FILES.index(square[0]), RANKS.index(square[1])


def square_at(file: int, rank: int) -> str:
    """The name of the square with this file and rank, each 0 to 7."""
    return FILES[file] + RANKS[rank]


def path_between(start: str, end: str) -> tuple[str, ...] | None:
    """The squares strictly between two squares of one rank, file or diagonal, from `start` on.

    None where the two squares lie on no common line; `start` and `end` differ.
    """
    (file, rank), (last_file, last_rank) = file_and_rank(start), file_and_rank(end)
    across, up = last_file - file, last_rank - rank
    steps = max(abs(across), abs(up))
    if across and up and abs(across) != abs(up):
        return None
    along, rise = across // steps, up // steps
    return tuple(square_at(file + along * n, rank + rise * n) for n in range(1, steps))
