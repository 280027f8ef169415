"""Bishops: pairs, opposite colours, and which of them its own pawns hamper.

>>> from lineproof.engine import Board
>>> french = Board("rnbqkbnr/ppp2ppp/4p3/3pP3/3P4/8/PPP2PPP/RNBQKBNR b KQkq - 0 3")
>>> is_bad(french, "black", "c8"), is_good(french, "black", "f8")
(True, True)
"""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.engine import Board

from .board import other, pieces
from .structure import ahead, colour, pawns

CENTRAL = "cdef"
"""Files whose pawns make a bishop good or bad."""


def has_pair(board: Board, side: str) -> bool:
    """Whether a side has a bishop on each colour ("Bishop Pair", Chess Programming Wiki, from memory)."""
    return len({colour(at) for at in pieces(board, side, "b")}) == 2


def are_opposite(board: Board) -> bool:
    """Whether each side has exactly one bishop, and the two go on different colours."""
    white, black = pieces(board, "white", "b"), pieces(board, "black", "b")
    return len(white) == len(black) == 1 and colour(white[0]) != colour(black[0])


@dataclass(frozen=True)
class Hampered:
    """A side's pawns of the c- to f-files on the bishop's colour, on the other, and which of the first are fixed."""

    same: list[str]
    others: list[str]
    fixed: list[str]


def hampered(board: Board, side: str, at: str) -> Hampered:
    """What a side's central pawns mean for its bishop on a square."""
    central = pawns(board, side, CENTRAL)
    same = [p for p in central if colour(p) == colour(at)]
    return Hampered(
        same,
        [p for p in central if colour(p) != colour(at)],
        [p for p in same if _is_fixed(board, side, p)],
    )


def _is_fixed(board: Board, side: str, at: str) -> bool:
    """Whether a pawn cannot go on: a pawn stands before it, or an enemy pawn attacks the next square."""
    stop = ahead(side, at)
    if stop is None:
        return True
    standing = board.piece_at(stop)
    attackers = board.attackers(other(side), stop)
    return (standing is not None and standing.lower() == "p") or any(
        (board.piece_at(a) or "").lower() == "p" for a in attackers
    )


def is_bad(board: Board, side: str, at: str) -> bool:
    """A bad bishop: more of its side's pawns of the c- to f-files stand on its colour than on the other, and one of them is fixed
    ("Bad Bishop", Chess Programming Wiki, from memory; files and fixed pawn: common practice)."""
    found = hampered(board, side, at)
    return len(found.same) > len(found.others) and bool(found.fixed)


def is_good(board: Board, side: str, at: str) -> bool:
    """A good bishop: more of these pawns stand on the other colour than on its own."""
    found = hampered(board, side, at)
    return len(found.others) > len(found.same)


def is_hemmed_in(board: Board, side: str, at: str) -> bool:
    """Whether a bishop is bad, or attacks nothing but pawns of its own side."""
    return is_bad(board, side, at) or set(board.attacks(at)) <= set(pawns(board, side))
