"""Discoveries: what a move opens for the pieces behind it."""

from __future__ import annotations

from lineproof.engine import Board

from .board import other, pieces


def uncovered(before: Board, uci: str) -> dict[str, list[str]]:
    """Line pieces of the mover that did not move themselves, each with the enemy pieces that it attacks only since the move.

    >>> uncovered(Board("4k3/8/8/4N3/8/8/8/4R1K1 w - - 0 1"), "e5c6")
    {'e1': ['e8']}
    """
    side = before.turn
    after = before.play(uci)
    enemies = set(pieces(after, other(side)))
    found: dict[str, list[str]] = {}
    for at in pieces(after, side):
        letter = after.piece_at(at)
        if letter is None or letter.lower() not in "brq" or before.piece_at(at) != letter:
            continue
        if at == uci[2:4]:
            continue
        old = set(before.attacks(at))
        new = [to for to in after.attacks(at) if to in enemies and to not in old]
        if new:
            found[at] = new
    return found
