"""Bounds: what a claim, if it is true, says of the points of a position or of a move, as all the values that it leaves open.

Two claims whose values have none in common cannot both be true.

>>> sorted(verdict_points(Band.LEVEL, False, False, False))[:2]
[45, 46]
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache
from typing import Any

from .bands import Band, is_only, mark
from .claim import Claim, Outcome, Spot
from .cost import LOST, SAFE
from .kinds import (
    cannot_afford,
    compensation,
    losing_move,
    move_mark,
    not_recommended,
    playable,
    verdict,
    works_now,
)
from .passing import parsed

POINTS = range(101)
Points = frozenset[int]
Pairs = frozenset[tuple[int, int]]
"""Pairs of points: after the best move, and after the move spoken of."""


@cache
def verdict_points(degree: Any, hedged: bool, negated: bool, either: bool) -> Points:
    """Points of the side spoken of at which a verdict holds."""
    return frozenset(
        p for p in POINTS if verdict.outcome(degree, p, hedged, negated, either)[0] is Outcome.HOLDS
    )


@cache
def _compensated(degree: str, hedged: bool, negated: bool) -> Points:
    return frozenset(
        p for p in POINTS if compensation.outcome(degree, p, hedged, negated)[0] is Outcome.HOLDS
    )


def points_of(claim: Claim) -> tuple[Spot, Points] | None:
    """The position that a claim values, and the points of White that it leaves open there; None for a claim of another sort."""
    side, said = claim.side or "white", claim.params
    match claim.kind:
        case "verdict":
            either = claim.negated and bool(said.get("either"))
            own = verdict_points(said["degree"], claim.hedged, claim.negated, either)
        case "compensation":
            own = _compensated(said["degree"], claim.hedged, claim.negated)
        case "mate-in" if not claim.negated:
            own = frozenset({100})
        case "losing-move" if not claim.negated:
            return claim.spot.play(said["move"]), _for_white(side, range(LOST))
        case _:
            return None
    return claim.spot, _for_white(side, own)


def _for_white(side: str, points: Iterable[int]) -> Points:
    return frozenset(points if side == "white" else (100 - p for p in points))


def _pairs(holds: Callable[[int, int], bool]) -> Pairs:
    return frozenset((b, p) for b in range(LOST, 101) for p in range(b + 1) if holds(b, p))


_ALIKE = {"?!": ("?!", "?"), "?": ("?", "??"), "??": ("?", "??")}


@cache
def _marked(written: str, negated: bool) -> Pairs:
    if not negated:
        # a teacher calls a blunder a mistake, and a mistake dubious: neighbours among the bad marks go together
        marks = _ALIKE.get(written, (written,))
        return _pairs(
            lambda b, p: any(move_mark.outcome(w, b, p, False)[0] is Outcome.HOLDS for w in marks)
        )
    return _pairs(lambda b, p: move_mark.denied(written, b, p))


@cache
def _judged(kind: str, negated: bool) -> Pairs:
    match kind:
        case "playable":
            return _pairs(lambda b, p: playable.outcome(b, p, negated) is Outcome.HOLDS)
        case "cannot-afford":
            wanted = Outcome.FAILS if negated else Outcome.HOLDS
            return _pairs(lambda b, p: cannot_afford.outcome(b, p) is wanted)
        case "not-recommended":
            return _pairs(
                lambda b, p: not_recommended.outcome(b, p, None, negated) is Outcome.HOLDS
            )
        case "works-now":
            wanted = Outcome.FAILS if negated else Outcome.HOLDS
            return _pairs(lambda b, p: works_now.outcome(b, p) is wanted)
        case "losing-move":
            wanted = Outcome.HOLDS
            return _pairs(lambda b, p: losing_move.outcome(b, p, False, negated)[0] is wanted)
        case "only":
            return _pairs(lambda b, p: b - p <= SAFE)
        case "others":
            return _pairs(is_only)
        case "refuted":
            return _pairs(lambda b, p: mark(b, p) > 0)
    raise KeyError(kind)


@dataclass(frozen=True)
class Weighed:
    """What a claim says of one move: where, the move (UCI), and the pairs of points that it leaves open."""

    spot: Spot
    move: str
    pairs: Pairs


def move_of(claim: Claim) -> Weighed | None:
    """The move that a claim weighs; None for a claim of another sort."""
    said, spot = claim.params, claim.spot
    match claim.kind:
        case "move-mark" if not (claim.negated and said["mark"] == "!?"):
            return Weighed(spot, said["move"], _marked(said["mark"], claim.negated))
        case "playable" | "cannot-afford" | "not-recommended" | "losing-move":
            return Weighed(spot, said["move"], _judged(claim.kind, claim.negated))
        case "works-now":
            uci = parsed(spot, said["move"])
            return None if uci is None else Weighed(spot, uci, _judged(claim.kind, claim.negated))
        case "only-move" if not claim.negated and not said.get("legal"):
            return Weighed(spot, said["move"], _judged("only", False))
        case "refuted-by" if not claim.negated:
            return Weighed(spot, said["move"], _judged("refuted", False))
    return None


def others_of(claim: Claim) -> Weighed | None:
    """What an only move says of every other one: the move is the only one itself."""
    if claim.kind == "only-move" and not claim.negated and not claim.params.get("legal"):
        return Weighed(claim.spot, claim.params["move"], _judged("others", False))
    return None


def is_good(claim: Claim) -> bool:
    """Whether a claim says that its move is as good as the best."""
    found = move_of(claim)
    return found is not None and found.pairs <= _marked("!", False)


__all__ = ["Band", "Weighed", "is_good", "move_of", "others_of", "points_of", "verdict_points"]
