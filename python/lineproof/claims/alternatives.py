"""Alternatives: what each natural move loses where only one is good."""

from __future__ import annotations

from collections.abc import Sequence

from lineproof.lesson import Place

from .bands import seen_from, spoken
from .board import other
from .claim import SHOWN, Ask, Spot
from .exchange import losing, taken_by
from .showing import comes_to, numbered, shortest

NATURAL = 3
"""Alternatives that are shown at most."""


def alternatives(ask: Ask, place: Place, spot: Spot, move: str, rival: Sequence[str]) -> str | None:
    """What the best other move, and each natural one, loses; None where there is none.

    rival: the line of the best other move, which has been searched already, and is shown as the finding's own.
    """
    side = spot.board.turn
    parts = []
    others = [uci for uci in natural(place, spot) if uci not in (move, rival[0])]
    for uci in (rival[0], *others[: NATURAL - 1]):
        if uci == rival[0]:
            what = comes_to(spot, rival, other(side))
            if what:
                parts.append(f"After {spot.board.san(uci)} {what}.")
            continue
        found = ask.aside(spot, uci)
        line = shortest(spot, found.moves, most=SHOWN)
        what = comes_to(spot, line, other(side))
        end = what or spoken(side, seen_from(side, found.points))
        parts.append(f"{numbered(spot, line if what else line[:1])}: {end}.")
    return " ".join(parts) or None


def natural(place: Place, spot: Spot) -> list[str]:
    """Moves that strike the eye: those that the lesson plays here; recaptures; every answer to a check; captures, the biggest first;
    checks; moves of a piece that would be lost."""
    board = spot.board
    played = [c.uci or "" for p in place.lesson.positions.get(board.key, ()) for c in p.children]
    last = spot.moves[-1][2:4] if spot.moves else ""
    hanging = losing(board, board.turn)
    legal = board.legal_moves()

    def eye(uci: str) -> int:
        if uci in played:
            return 100
        if uci[2:4] == last and taken_by(board, uci):
            return 50
        if taken_by(board, uci):
            return 20 + taken_by(board, uci)
        if board.in_check:
            return 15
        if board.play(uci).in_check:
            return 10
        return 5 if uci[:2] in hanging else 0

    return sorted((m for m in legal if eye(m)), key=lambda m: (-eye(m), m))


__all__ = ["alternatives", "natural"]
