"""Which pause points are asked: not too many, and the hardest first."""

from __future__ import annotations

from collections.abc import Sequence

from .cues import Cue
from .pausing import Point

APART = 120.0
"""Seconds from one pause to the next, at least (common practice); the pauses of the author's own words stay in any case."""


def spaced(points: Sequence[Point], cues: Sequence[Cue]) -> list[Point]:
    """The points that are asked. cues: of a telling in which all are."""
    taken = [cue.begins for cue in cues if cue.kind == "pause" and cue.asked]
    begins = {cue.place.key: cue.begins for cue in cues if cue.kind == "pause" and not cue.asked}
    chosen = []
    for point in sorted(points, key=lambda one: (-one.grade, begins.get(one.key, 0.0))):
        at = begins.get(point.key)
        if at is not None and all(abs(at - other) >= APART for other in taken):
            taken.append(at)
            chosen.append(point)
    return chosen
