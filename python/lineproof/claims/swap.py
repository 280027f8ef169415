"""Exchanges on one square, counted from the rules alone (static exchange evaluation, Chess Programming Wiki).

>>> from lineproof.engine import Board
>>> swap(Board("4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1"), "d5")
1
>>> swap(Board("4k3/8/2p5/3p4/8/8/3R4/4K3 w - - 0 1"), "d5")
0
"""

from __future__ import annotations

from lineproof.engine import Board

from .board import VALUES


def swap(board: Board, at: str) -> int:
    """Most material, in pawns, that the side to move gains by captures on `at` alone.

    Each side takes with its least piece and may stop at any time.
    """
    standing = board.piece_at(at)
    if standing is None:
        return 0
    takers = [m for m in board.legal_moves() if m[2:4] == at]
    if not takers:
        return 0
    least = min(takers, key=lambda m: _value(board, m[:2]))
    return max(0, VALUES[standing.lower()] - swap(board.play(least), at))


def taken_by(board: Board, uci: str) -> int:
    """Value in pawns of what a move takes, and of what it promotes to."""
    moved = (board.piece_at(uci[:2]) or "p").lower()
    standing = board.piece_at(uci[2:4])
    value = VALUES[standing.lower()] if standing else 0
    if standing is None and moved == "p" and uci[0] != uci[2]:
        value = 1  # in passing
    if len(uci) == 5:
        value += VALUES[uci[4]] - 1
    return value


def _value(board: Board, at: str) -> int:
    letter = (board.piece_at(at) or "p").lower()
    return 100 if letter == "k" else VALUES[letter]
