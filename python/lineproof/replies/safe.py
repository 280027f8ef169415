"""Safe moves: those that keep the verdict, and how deep the point of the best one lies."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.claims.bands import is_only, is_safe, seen_from
from lineproof.claims.claim import GameOver, Spot
from lineproof.claims.cost import LOST

from .ahead import ahead, growing, since
from .course import Course

FAR = 30.0
"""Points that a move seems to cost at five plies from which on it is not searched: it is not safe."""
ENOUGH = 3
"""Safe moves from which on a position asks nothing of anybody."""


@dataclass(frozen=True)
class Safe:
    """The safe moves at a position (UCI), the best first, no more than `ENOUGH`. best, second: points of the best move and of the next
    one, from the mover's side; second is None when there is one legal move."""

    moves: tuple[str, ...]
    best: int
    second: int | None
    line: tuple[str, ...]

    @property
    def only(self) -> bool:
        """Whether every other move costs 15 points or more, and the verdict's band with it."""
        return self.second is None or is_only(self.best, self.second)


def safe(course: Course, spot: Spot) -> Safe | None:
    """The safe moves; None where the game is over or the best move is lost."""
    side = spot.board.turn
    first = course.ask.best(spot)
    if first is None:
        return None
    seeming = ahead(spot, 5, course.replies.store, course.replies.stop)
    try:
        top = course.ask.move(spot, first.moves[0])
    except GameOver:
        return None
    best, line = seen_from(side, top.points), top.moves
    scores = {first.moves[0]: best}
    for uci in sorted(seeming, key=lambda uci: seeming[uci]):
        if uci in scores:
            continue
        if seeming[uci] > FAR and len(scores) > 1:
            break
        alone = course.ask.move(spot, uci)
        scores[uci] = seen_from(side, alone.points)
        if scores[uci] > best:
            best, line = scores[uci], alone.moves
        if sum(is_safe(best, points) for points in scores.values()) >= ENOUGH:
            break
    if best < LOST:
        return None
    ranked = sorted(scores, key=lambda uci: -scores[uci])
    moves = tuple(uci for uci in ranked if is_safe(best, scores[uci]))[:ENOUGH]
    second = scores[ranked[1]] if len(ranked) > 1 else None
    return Safe(moves, best, second, line)


def found_at(course: Course, spot: Spot, uci: str) -> int | None:
    """Plies of the shallowest search from which on each prefers a move, up to 8; None when the last does not."""
    found = growing(spot, course.replies.store, course.replies.stop)
    return since(move == uci for move, _ in found)
