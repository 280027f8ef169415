"""What is said of the board: a position to set up, the glyphs of a move, and what is different after a way back."""

from __future__ import annotations

from collections.abc import Iterable

from lineproof.engine import Board

_ANOTHER = {2: "a third", 3: "a fourth", 4: "a fifth", 5: "a sixth", 6: "a seventh", 7: "an eighth"}
"""By the moves that were shown there."""
GLYPHS = {
    1: "good move", 2: "poor move", 3: "very good move", 4: "very poor move", 5: "speculative move", 6: "questionable move",
    7: "forced", 8: "forced", 10: "level", 11: "level", 12: "level", 13: "unclear", 14: "White slightly better", 15: "Black slightly better",
    16: "White clearly better", 17: "Black clearly better", 18: "White winning", 19: "Black winning",
}  # fmt: skip
"""Glyphs in words (numbers and meanings: PGN standard, 1994-03-12, section 10)."""


def noted(nags: Iterable[int]) -> str:
    """A move's glyphs in words; "" where it has none that have any."""
    return ", ".join(dict.fromkeys(GLYPHS[nag] for nag in sorted(nags) if nag in GLYPHS))


_NAMES = (
    ("K", "king"),
    ("Q", "queen"),
    ("R", "rook"),
    ("B", "bishop"),
    ("N", "knight"),
    ("P", "pawn"),
)


def set_up(board: Board) -> str:
    """The whole position in words."""
    sides = []
    for side in ("white", "black"):
        parts = []
        for letter, name in _NAMES:
            own = letter if side == "white" else letter.lower()
            squares = [square for square, piece in board.pieces() if piece == own]
            if squares:
                parts.append(f"{name}{'s' if len(squares) > 1 else ''} {' '.join(squares)}")
        sides.append(f"{side.capitalize()} has {', '.join(parts)}.")
    return f"Set up this position. {' '.join(sides)} {board.turn.capitalize()} is to move."


def this_time(board: Board, uci: str, shown: int, bad: bool) -> str:
    """What is different this time, without giving the move away. shown: moves that were shown here. bad: the move is marked so."""
    side = board.turn.capitalize()
    san = board.san(uci)
    if not shown:
        return "where we stopped"
    if bad:
        return f"where {side} can also go wrong"
    if "x" in san:
        return f"where {side} can also take"
    if san.startswith("O-O"):
        return f"where {side} can also castle"
    if san[-1] in "+#":
        return f"where {side} can also give check"
    return f"where {side} has {_ANOTHER.get(shown, 'another')} move"
