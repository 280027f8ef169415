"""Slips: tempting moves that lose, of either side; and moves of the lesson that cost something."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.claims.bands import Mark, mark, seen_from
from lineproof.claims.claim import GameOver, Spot
from lineproof.claims.cost import Cost, weigh
from lineproof.lesson import Place

from .ahead import growing, since
from .course import Course
from .likely import Reply

COSTS = 15
"""Points that a slip costs at least."""
PLIES = 7
"""Or the refutation is a line of captures, checks and mate of so many plies at most."""


@dataclass(frozen=True)
class Slip:
    """A likely move that costs 15 points or more. seen: plies of the shallowest search from which on each sees it; None when none does up to 8.

    forcing: whether the refutation is captures, checks and mate alone. shown: whether the lesson plays the move, and answers it.
    """

    place: Place
    reply: Reply
    cost: Cost
    seen: int | None
    forcing: bool
    shown: bool

    @property
    def within_reach(self) -> bool:
        """Otherwise it is a footnote: the audience would not find the refutation."""
        return self.seen is not None or self.forcing


@dataclass(frozen=True)
class Costly:
    """A move that the lesson recommends and that is not as good as the best."""

    place: Place
    cost: Cost


def slips(course: Course, key: int) -> list[Slip]:
    """The slips at one position, the costliest first."""
    spot = course.spot(key)
    found = []
    for reply in course.likely(key).replies:
        if not reply.likely:
            break
        cost = _cost(course, spot, reply.uci)
        if cost is None or not cost.counted or cost.points < COSTS:
            continue
        after = spot.play(reply.uci)
        below = course.graph.moves[key].get(reply.uci)
        shown = below is not None and bool(course.graph.moves[below])
        found.append(
            Slip(
                course.graph.place[key],
                reply,
                cost,
                _seen(course, after, cost),
                _forcing(spot, cost),
                shown,
            )
        )
    return sorted(found, key=lambda slip: -slip.cost.points)


def costly(course: Course, key: int) -> list[Costly]:
    """The taught side's moves of the lesson at one position that cost more than a safe move may, and are not marked as bad."""
    if course.graph.turn(key) != course.side:
        return []
    spot = course.spot(key)
    found = []
    for place in course.graph.place[key].children:
        if place.uci is None or (key, place.uci) in course.mistakes:
            continue
        cost = _cost(course, spot, place.uci)
        if cost is not None and cost.counted and mark(cost.best, cost.played) is not Mark.GOOD:
            found.append(Costly(place, cost))
    return found


def _cost(course: Course, spot: Spot, uci: str) -> Cost | None:
    try:
        return weigh(course.ask, spot, uci)
    except GameOver:
        return None


def _seen(course: Course, after: Spot, cost: Cost) -> int | None:
    """From which depth on a search of the position after the move sees what it costs."""
    found = growing(after, course.replies.store, course.replies.stop)
    if not found:  # the game is over
        return 1
    return since(cost.best - seen_from(cost.side, points) >= COSTS for _, points in found)


def _forcing(spot: Spot, cost: Cost) -> bool:
    """Whether the line after the move is short, and all that the other side plays in it takes, checks or mates."""
    line = cost.line[1:]
    if not line or len(line) > PLIES:
        return False
    at = spot.play(cost.uci)
    for number, uci in enumerate(line):
        san = at.board.san(uci)
        if number % 2 == 0 and not ("x" in san or san.endswith(("+", "#"))):
            return False
        at = at.play(uci)
    return True
