"""Pays: the second finding beside a tactical motif, whether best play wins material by it, and what falls."""

from __future__ import annotations

from dataclasses import dataclass

from .board import material, other, title
from .claim import Ask, Spot
from .gain import settled
from .showing import comes_to, shortest


@dataclass(frozen=True)
class Pays:
    """gain: pawns that best play wins. mates: whether it ends in mate for the side. line: the shortest that shows it, from `spot`.

    what: what falls, as the end of a sentence; "" where nothing does.
    """

    gain: int
    mates: bool
    spot: Spot
    line: tuple[str, ...]
    what: str

    def said(self, side: str) -> str:
        """As a sentence: "It pays: best play wins 5 pawns for White; the rook on a8 falls." """
        if self.gain >= 1:
            end = f"; {self.what}" if self.what else ""
            return f"It pays: best play wins {self.gain} pawn{'s' if self.gain != 1 else ''} for {title(side)}{end}."
        if self.mates:
            return "It pays: best play mates."
        return f"It does not pay: with best play {title(side)} gains no material by it."


def pays(ask: Ask, spot: Spot, side: str, base: int | None = None) -> Pays:
    """What best play from a spot wins for a side. base: the balance of material before, where it is not that of the spot."""
    count = settled(ask, spot, side)
    start = material(spot.board, side) if base is None else base
    moves = count.moves
    if count.mated is not None:
        best = ask.best(count.spot)
        moves = (*moves, *(best.moves if best is not None else ()))
    line = shortest(spot, moves)
    return Pays(
        count.balance - start, count.mated == other(side), spot, line, comes_to(spot, line, side)
    )
