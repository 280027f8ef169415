"""Pause points: where the audience is asked to find the move; and what students must know by heart."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.claims.bands import band, is_safe
from lineproof.claims.board import other
from lineproof.claims.claim import GameOver
from lineproof.claims.cost import Cost, weigh
from lineproof.claims.showing import comes_to, shortest
from lineproof.lesson import Place

from .course import Course
from .likely import Reply
from .safe import Safe, found_at, safe

MOST = 2
"""Safe moves that a pause point has at most."""
APART = 2
"""Bands by which the verdict after the tempting move differs where nothing falls."""
UNNATURAL = 10.0
"""Percent below which an only move must be known by heart."""


@dataclass(frozen=True)
class Pause:
    """A pause point. best: the move to find, in SAN; line: what follows it, in UCI. point: what shows on the board, in words. grade: 1 to 5.

    deep: plies of the shallowest search that finds the move and keeps it, None beyond 8. wrong: answers that students will give, the likeliest first.
    """

    place: Place
    best: str
    share: float
    line: tuple[str, ...]
    point: str
    grade: int
    deep: int | None
    safe: tuple[str, ...]
    wrong: tuple[tuple[Reply, Cost], ...]


@dataclass(frozen=True)
class ByHeart:
    """An unnatural only move of the taught side, where the lesson plays it. share: percent of students who would play it unaided."""

    place: Place
    share: float
    next_best: int | None


def asked(course: Course, key: int) -> tuple[Pause | None, ByHeart | None]:
    """The pause point at a position, and what is to be known by heart there; None where there is none."""
    spot = course.spot(key)
    found = safe(course, spot) if spot.board.legal_moves() else None
    if found is None:
        return None, None
    return _pause(course, key, found), _by_heart(course, key, found)


def _by_heart(course: Course, key: int, found: Safe) -> ByHeart | None:
    graph = course.graph
    (best, *_) = found.moves
    if graph.turn(key) != course.side or key not in course.followed:
        return None
    if not found.only or best not in graph.moves[key]:
        return None
    share = course.likely(key).reply(best).share
    place = next(child for at in graph.places(key) for child in at.children if child.uci == best)
    return ByHeart(place, share, found.second) if share < UNNATURAL else None


def _pause(course: Course, key: int, found: Safe) -> Pause | None:
    if len(found.moves) > MOST:
        return None
    spot = course.spot(key)
    wrong = []
    for reply in course.likely(key).replies:
        if not reply.likely:
            break
        if reply.uci in found.moves:
            continue
        try:
            cost = weigh(course.ask, spot, reply.uci)
        except GameOver:
            continue
        if not is_safe(cost.best, cost.played):
            wrong.append((reply, cost))
    if not wrong:
        return None
    side = spot.board.turn
    line = shortest(spot, found.line)
    point = comes_to(spot, line, side)
    if spot.line(line).board.is_checkmate:
        point = "it mates"
    if not point:
        lost = next(((r, c) for r, c in wrong if abs(band(c.best) - band(c.played)) >= APART), None)
        if lost is None:
            return None
        falls = comes_to(spot, lost[1].line, other(side))
        point = f"{lost[0].san} loses: {falls}" if falls else f"{lost[0].san} turns the verdict"
    best = found.moves[0]
    share = course.likely(key).reply(best).share
    deep = found_at(course, spot, best)
    return Pause(
        course.graph.place[key], spot.board.san(best), share, line, point, _grade(deep, share), deep,
        tuple(spot.board.san(uci) for uci in found.moves), tuple(wrong),
    )  # fmt: skip


def _grade(deep: int | None, share: float) -> int:
    """1 to 5: one more for a point that lies deeper than 2 and than 5 plies, one more for a right move below 25 and below 10 percent."""
    plies = deep if deep is not None else 99
    return 1 + (plies > 2) + (plies > 5) + (share < 25) + (share < 10)
