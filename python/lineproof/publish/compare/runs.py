"""Runs of moves that one lesson has and another has not, by position: a line that transposes into a known one ends there.

>>> from lineproof.lesson import Lesson
>>> old, new = Lesson.from_text("1. e4 e5 2. Nc3 *"), Lesson.from_text("1. e4 e5 (1... c5 2. Nc3) 2. Nc3 Nf6 *")
>>> [[place.san for place in run.places] for run in runs(Graph(new), Graph(old))]
[['c5', 'Nc3'], ['Nf6']]
"""

from __future__ import annotations

from dataclasses import dataclass, field

from lineproof.lesson import Place
from lineproof.lesson.graph import Graph


@dataclass
class Run:
    """start: the key of the position that it starts from, which the other lesson has too. places: its moves.

    more: moves of sidelines that part from it. joins: the key of the position of the other lesson that it comes to; None where it comes to none.
    alone: whether the other lesson ends at the start.
    """

    start: int
    places: list[Place]
    alone: bool
    more: int = 0
    joins: int | None = None
    within: set[int] = field(default_factory=set)


def runs(here: Graph, other: Graph) -> list[Run]:
    """In the order of the lesson. A position where a game of the lesson starts counts as one that the other has."""
    found: list[Run] = []
    of: dict[int, Run] = {}
    seen: set[tuple[int, str]] = set()
    dead: set[int] = set()
    for place in here.lesson.places:
        parent, uci = place.parent, place.uci
        if parent is None or uci is None:
            continue
        if parent.index in dead or uci not in here.moves.get(parent.key, {}):
            dead.add(place.index)
            continue
        known = uci in other.moves.get(parent.key, {})
        if known or (parent.key, uci) in seen:
            continue
        seen.add((parent.key, uci))
        run = of.get(parent.index)
        if run is None:
            run = Run(parent.key, [], not other.moves.get(parent.key))
            found.append(run)
        if not run.places or run.places[-1] == parent:
            run.places.append(place)
        else:
            run.more += 1
        if place.key in other.moves or place.key in other.place:
            run.joins = place.key if place == run.places[-1] else run.joins
        else:
            of[place.index] = run
    return found
