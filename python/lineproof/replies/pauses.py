"""Pause points: where the audience is asked to find the move; and what students must know by heart."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.claims import kind_of
from lineproof.claims.bands import band, is_safe
from lineproof.claims.board import other
from lineproof.claims.claim import GameOver
from lineproof.claims.cost import Cost, weigh
from lineproof.claims.showing import comes_to, numbered, shortest
from lineproof.lesson import Place

from .course import Course
from .likely import Reply
from .safe import Safe, found_at, safe

MOST = 2
"""Safe moves that a pause point has at most."""
APART = 2
"""Bands by which the verdict after the tempting move differs where nothing falls."""
WEIGHED = "wins-material"
"""The kind whose reasons weigh two positions against each other: no point that is seen on the board."""
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
    mates = spot.line(line).board.is_checkmate
    point = "it mates" if mates else comes_to(spot, line, side)
    point = _said(course, key, found.moves[0]) or point
    if not point:
        lost = next(((r, c) for r, c in wrong if abs(band(c.best) - band(c.played)) >= APART), None)
        if lost is None:
            return None
        falls = comes_to(spot, lost[1].line, other(side))
        false = numbered(spot, (lost[0].uci,))
        point = f"not {false}, which {f'loses: {falls}' if falls else 'turns the verdict'}"
    best = found.moves[0]
    share = course.likely(key).reply(best).share
    deep = found_at(course, spot, best)
    return Pause(
        course.graph.place[key], spot.board.san(best), share, line, point, _grade(deep, share), deep,
        tuple(spot.board.san(uci) for uci in found.moves), tuple(wrong),
    )  # fmt: skip


def _said(course: Course, key: int, uci: str) -> str:
    """What the words beside a move rightly say of a tactic of its side, as the proof gives the reason: a clause; "" where they say nothing of the kind."""
    graph = course.graph
    after = graph.moves[key].get(uci)
    side = graph.turn(key)
    for kept in course.proved if after is not None else ():
        claim, tactic = kept.claim, kind_of(kept.claim.kind).tactic
        parent = claim.place.parent
        if not tactic or claim.kind == WEIGHED or claim.negated or claim.hedged or parent is None:
            continue
        beside = (parent.key, claim.place.key, claim.place.uci) == (key, after, uci)
        whose = claim.side is None or (claim.side == side) == (tactic == "for")
        if beside and whose and claim.spot.board.key in (key, after):
            clause = _clause(kept.because)
            at = numbered(course.spot(key), (uci,))
            return f"after {at} {clause}" if claim.spot.board.key == after else clause
    return ""


def _clause(sentence: str) -> str:
    """A sentence as what follows a colon: without its full stop, and without a capital letter but that of a side or a move."""
    first, *_ = sentence.split(" ", 1)
    small = first in {"The", "It", "A", "An", "After", "Every", "There", "No"}
    return (sentence[0].lower() + sentence[1:] if small else sentence).removesuffix(".")


def _grade(deep: int | None, share: float) -> int:
    """1 to 5: one more for a point that lies deeper than 2 and than 5 plies, one more for a right move below 25 and below 10 percent."""
    plies = deep if deep is not None else 99
    return 1 + (plies > 2) + (plies > 5) + (share < 25) + (share < 10)
