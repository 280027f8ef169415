"""Where lines of the handout meet: a position that another line has reached before, by another last move."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lineproof.lesson import Place
from lineproof.lesson.graph import NULL_MOVE

from .lines import Line


@dataclass(frozen=True)
class Meeting:
    """A later place and the first one with its position, in the order of the print."""

    place: Place
    same: Place


def meetings(lines: Sequence[Line]) -> tuple[Meeting, ...]:
    """In the order of the print. What follows a meeting by the same moves is none; nor is what a null move leads to."""
    first: dict[int, Place] = {}
    roads: set[tuple[int, int]] = set()
    found: list[Meeting] = []
    for line in lines:
        for place in line.places:
            parent = place.parent
            road = (place.key, 0 if parent is None else parent.key)
            same = first.setdefault(place.key, place)
            new = same != place and road not in roads and parent is not None
            if new and place.uci != NULL_MOVE and same.ply > 0:
                found.append(Meeting(place, same))
            roads.add(road)
    return tuple(found)
