"""Castling: who has castled, and who can now. Source: FIDE Laws of Chess, article 3.8.2."""

from __future__ import annotations

from .board import other
from .claim import Spot

WINGS = ("king", "queen")
SAN = {"king": "O-O", "queen": "O-O-O"}


def castled(spot: Spot, side: str) -> str | None:
    """The wing on which a side has castled on the way here, "king" or "queen", or None."""
    king = "k" if side == "black" else "K"
    for board, uci in zip(spot.boards, spot.moves, strict=False):
        steps = ord(uci[2]) - ord(uci[0])
        if board.turn == side and board.piece_at(uci[:2]) == king and abs(steps) == 2:
            return "king" if steps > 0 else "queen"
    return None


def may_have_castled_before(spot: Spot, side: str) -> bool:
    """Whether castling may lie before the history of a spot: its king has no right left where the history begins."""
    return not any(spot.boards[0].may_castle(side, wing) for wing in WINGS)


def possible(spot: Spot, side: str, rights: list[str]) -> list[str] | None:
    """Castling moves in SAN that a side could play now, were it to move; None in check.

    rights: the wings on which it has the right.
    """
    board = spot.board
    if board.turn != side:
        passed = board.passed()
        if passed is None:  # the other side is in check: look at the squares alone
            return [SAN[wing] for wing in rights if _free(spot, side, wing)]
        board = passed
    if board.in_check:
        return None
    legal = {board.san(m).rstrip("+#") for m in board.legal_moves()}
    return [SAN[wing] for wing in WINGS if wing in rights and SAN[wing] in legal]


def _free(spot: Spot, side: str, wing: str) -> bool:
    board = spot.board
    rank = "1" if side == "white" else "8"
    between = "fg" if wing == "king" else "bcd"
    through = "fg" if wing == "king" else "cd"
    return all(board.piece_at(f + rank) is None for f in between) and not any(
        board.attackers(other(side), f + rank) for f in through
    )
