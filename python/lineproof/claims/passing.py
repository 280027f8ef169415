"""Passing: what a side could do if the other did nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .bands import seen_from
from .board import material, other
from .claim import Ask, Spot
from .cost import SAFE, only
from .gain import Count, settled
from .showing import shortest

PAWN = 1
"""Pawns that a threat gains at least."""
POINTS = 15
"""Points that a threat gains at least over best play without the pass."""


def parsed(spot: Spot, text: str) -> str | None:
    """The move in UCI spelling that a SAN, with or without its number, means at a spot; None when it is not legal."""
    if "..." in text and spot.board.turn == "white":
        return None
    try:
        return spot.board.parse_san(text.split(".")[-1])
    except ValueError:
        return None


@dataclass(frozen=True)
class Gain:
    """What the best of some moves gains after a pass.

    uci: that move. mates: whether it mates, or leads to mate by force. material: pawns at the end of best play above what stands on
    the board. points: expected score of the side after it; base: of best play without the pass; best: of best play after the pass.
    line: the evidence, from `free`.
    """

    free: Spot
    uci: str
    mates: bool
    material: int
    points: int
    base: int
    best: int
    line: tuple[str, ...]

    @property
    def san(self) -> str:
        return self.free.board.san(self.uci)

    @property
    def taken(self) -> str:
        """The pieces that the side takes along the line, as FEN letters in lower case."""
        board, found = self.free.board, ""
        side = board.turn
        for uci in self.line:
            if board.turn == side:
                found += (board.piece_at(uci[2:4]) or "").lower()
            board = board.play(uci)
        return found

    def wins(self, amount: str, least: float) -> bool:
        """Whether an amount of material is won: `least` pawns net, and of the queen, a rook or the exchange the piece itself."""
        if self.mates:
            return True
        letter = {"queen": "q", "rook": "r", "exchange": "r"}.get(amount, "")
        return self.material >= least and letter in self.taken

    @property
    def takes(self) -> bool:
        return "x" in self.san

    def threatens(self, points: int, base: int) -> bool:
        """Whether it is a threat, were the scores these. A quiet move must be the one that gains: as good as the best."""
        if self.mates:
            return True
        best = self.best - points <= SAFE
        if self.material >= PAWN and (best or self.takes):
            return True
        return points - base >= POINTS and best


def gained(ask: Ask, spot: Spot, side: str, allowed: Sequence[str] | None = None) -> Gain | None:
    """What `side` gains when the other, who is to move, passes.

    allowed: the moves (UCI) that may be tried, None for all.

    :returns: None when the other side is in check, or no move is left.
    """
    free = spot.passed()
    if free is None:
        return None
    legal = free.board.legal_moves()
    tried = legal if allowed is None else [m for m in legal if m in allowed]
    if not tried:
        return None
    for uci in tried:
        if free.play(uci).board.is_checkmate:
            return Gain(free, uci, True, 0, 100, 50, 100, (uci,))
    whole = ask.best(free)
    line = whole if len(tried) == len(legal) else only(ask, free, tried)
    without = ask.best(spot)
    if line is None or whole is None:
        return None
    uci = line.moves[0]
    count = settled(ask, free.play(uci), side)
    won = count.balance - material(free.board, side)
    mates = count.mated == other(side)
    if line.mate is not None:
        mates = mates or (line.mate > 0) == (side == "white")
    points = seen_from(side, line.points)
    base = points if without is None else seen_from(side, without.points)
    best = max(points, seen_from(side, whole.points))
    return Gain(
        free, uci, mates, won, points, base, best, _shown(ask, free, (uci, *count.moves), count)
    )


def _shown(ask: Ask, free: Spot, moves: tuple[str, ...], count: Count) -> tuple[str, ...]:
    """The shortest line that shows what the pass gives away; to the mate where it mates."""
    if count.mated is not None:
        mating = ask.best(count.spot)
        moves = (*moves, *(mating.moves if mating is not None else ()))
    return shortest(free, moves)
