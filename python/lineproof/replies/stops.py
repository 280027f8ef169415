"""Early stops: lines that end in the middle of a fight."""

from __future__ import annotations

import re
from dataclasses import dataclass

from lineproof.claims.bands import seen_from
from lineproof.claims.claim import Spot
from lineproof.claims.showing import comes_to, shortest
from lineproof.lesson import Place

from .course import Course
from .words import named

GAINS = 15
"""Points that a capture or check at the end gains at least against every quiet move."""
_TOLD = re.compile(
    r"\b(?:threat\w*|next|falls?|wins?|winning|won|mates?|resigns?)\b", re.IGNORECASE
)


@dataclass(frozen=True)
class Stop:
    """A line that ends too early. side: whose capture or check it is; to_move: whether it is his move, otherwise it is a threat.

    line: the moves that would round it off, in UCI, from `spot`. what: what they come to, in words.
    """

    place: Place
    side: str
    to_move: bool
    spot: Spot
    line: tuple[str, ...]
    gain: int
    what: str


def stop(course: Course, key: int) -> Stop | None:
    """The early stop at the end of a line, or None."""
    if course.graph.moves[key]:
        return None
    spot = course.spot(key)
    place = course.graph.place[key]
    said = named(course.graph, key)
    told = any(
        _TOLD.search(comment.text) for at in course.graph.places(key) for comment in at.comments
    )
    for at in (spot, spot.passed()):
        if at is None or not at.board.legal_moves():
            continue
        found = _sharp(course, at)
        if found is None:
            continue
        line, gain = found
        if told or at.board.san(line[0]).rstrip("+#") in said:
            return None
        side = at.board.turn
        return Stop(place, side, at is spot, at, line, gain, comes_to(at, line, side))
    return None


def _sharp(course: Course, spot: Spot) -> tuple[tuple[str, ...], int] | None:
    """The best line, where it begins with a capture or check that gains a pawn or 15 points, and what it gains in points."""
    board = spot.board
    best = course.ask.best(spot)
    if best is None:
        return None
    san = board.san(best.moves[0])
    if not ("x" in san or san.endswith(("+", "#"))):
        return None
    sharp = [
        uci for uci in board.legal_moves() if "x" in (s := board.san(uci)) or s.endswith(("+", "#"))
    ]
    quiet = course.ask.best(spot, without=sharp)
    side = board.turn
    alone = course.ask.move(spot, best.moves[0])
    gain = seen_from(side, alone.points) - (
        seen_from(side, quiet.points) if quiet is not None else 0
    )
    if gain < GAINS and not (board.capture_gains_pawn() and "x" in san and gain > 0):
        return None
    return shortest(spot, alone.moves), gain
