"""Bands of expected score, result classes and the marks of a move, as integers.

Points are expected score out of 100. Lower edges belong to the band, upper edges to the next.
All edges: common practice.
"""

from __future__ import annotations

from collections.abc import Callable
from enum import IntEnum


class Band(IntEnum):
    """How a side stands, from its point of view.

    The numbers are the order of the bands: for White from winning for Black over level to winning for White.
    Neighbours differ by one, so a difference says how many bands two verdicts are apart.
    """

    LOSING = -3
    CLEARLY_WORSE = -2
    SLIGHTLY_WORSE = -1
    LEVEL = 0
    SLIGHT = 1
    CLEAR = 2
    WINNING = 3


EDGES = (
    (15, Band.LOSING),
    (35, Band.CLEARLY_WORSE),
    (45, Band.SLIGHTLY_WORSE),
    (55, Band.LEVEL),
    (65, Band.SLIGHT),
    (85, Band.CLEAR),
)
"""Points below the number are in the band; from the last number on: winning."""


def band(points: float) -> Band:
    """The band of an expected score, 0 to 100, of the side spoken of."""
    for edge, name in EDGES:
        if points < edge:
            return name
    return Band.WINNING


def limits(of: Band) -> tuple[int, int]:
    """Lower and upper edge of a band: lower <= points < upper."""
    lower = 0
    for edge, name in EDGES:
        if name is of:
            return lower, edge
        lower = edge
    return lower, 101


def seen_from(side: str, points: int) -> int:
    """White's expected score (0 to 100) as that of a side."""
    return points if side == "white" else 100 - points


def result_class(points: float) -> str:
    """ "win" from 85, "hold" from 15, "loss" below, for the side spoken of."""
    return "win" if points >= 85 else "hold" if points >= 15 else "loss"


def spoken(side: str, points: int) -> str:
    """A verdict in words with the expected score of the side that stands better.

    points: of `side`, whose bands decide at an edge.
    """
    words = {1: "slightly better", 2: "clearly better", 3: "winning"}
    found = band(points)
    if found is Band.LEVEL:
        return f"the position is level ({points} of 100 for {side.capitalize()})"
    other = "black" if side == "white" else "white"
    better, score = (side, points) if found > 0 else (other, 100 - points)
    return f"{better.capitalize()} is {words[abs(found)]} ({score} of 100)"


class Mark(IntEnum):
    """The traditional move marks by what a move costs."""

    GOOD = 0
    DUBIOUS = 1
    MISTAKE = 2
    BLUNDER = 3


def is_safe(best: float, played: float) -> bool:
    """A safe move costs at most 5, or keeps at least 85 when the best has above 90."""
    return best - played <= 5 or (best > 90 and played >= 85)


ALONE = 15
"""Points that every other move costs at least where there is an only move."""


def is_only(own: float, second: float) -> bool:
    """Whether a move is the only one: the next best costs 15 points or more, and the verdict's band with it."""
    return own - second >= ALONE and band(second) != band(own)


def mark(best: float, played: float) -> Mark:
    """The mark that a move earns. best, played: points of the mover."""
    cost = best - played
    if cost <= 0 or is_safe(best, played):
        return Mark.GOOD
    before, after = result_class(best), result_class(played)
    turned = before in {"win", "hold"} and after == "loss"
    if cost >= 30 or (turned and cost >= 15):
        return Mark.BLUNDER
    if cost >= 12 or before != after:
        return Mark.MISTAKE
    return Mark.DUBIOUS


def edge(points: int, outcome: Callable[[int], object]) -> float:
    """Distance in points from a score to the nearest edge at which `outcome` becomes another; 100 without one.

    The edge is the lowest score of the upper side: 57 is two from the edge 55, 52 is three from it.
    """
    here = outcome(points)
    up = next((d for d in range(1, 101 - points) if outcome(points + d) != here), 100)
    down = next((d for d in range(1, points + 1) if outcome(points - d) != here), 101)
    return float(min(up, down - 1))


def edge_of_two(one: int, other: int, outcome: Callable[[int, int], object]) -> float:
    """As :func:`edge` for an outcome of two scores, each moved alone."""
    return min(edge(one, lambda p: outcome(p, other)), edge(other, lambda p: outcome(one, p)))
