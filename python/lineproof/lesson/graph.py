"""The positions of a lesson as a graph: lines that transpose meet in one position.

>>> from lineproof.lesson import Lesson
>>> graph = Graph(Lesson.from_text("1. e4 e5 2. Nc3 (2. Nf3 Nf6 3. Nc3) 2... Nf6 3. Nf3 *"))
>>> len(graph.order), len(graph.moves[graph.order[2]])
(8, 2)
"""

from __future__ import annotations

from lineproof.lesson.lesson import Lesson
from lineproof.lesson.places import Place

NULL_MOVE = "0000"


class Graph:
    """Positions by key, in the order of the lesson, and the moves between them. What lies behind a null move is left out: no game passes."""

    def __init__(self, lesson: Lesson) -> None:
        self.lesson = lesson
        self.order: list[int] = []
        """Keys of the positions, in the order in which the lesson first comes to them."""
        self.place: dict[int, Place] = {}
        """The first place with a position."""
        self.root: dict[int, int] = {}
        """The first position of the line on which the lesson first comes to a position."""
        self.moves: dict[int, dict[str, int]] = {}
        """From a position the lesson's moves (UCI), and the position after each."""
        dead: set[int] = set()
        for place in lesson.places:
            parent = place.parent
            if parent is not None and (parent.index in dead or place.uci == NULL_MOVE):
                dead.add(place.index)
                continue
            if place.key not in self.place:
                self.order.append(place.key)
                self.place[place.key] = place
                self.root[place.key] = place.game.root.key
                self.moves[place.key] = {}
            if parent is not None and place.uci is not None:
                self.moves[parent.key][place.uci] = place.key

    def places(self, key: int) -> tuple[Place, ...]:
        """All places with a position."""
        return self.lesson.positions[key]

    def turn(self, key: int) -> str:
        return self.place[key].board.turn

    def line(self, key: int) -> tuple[str, ...]:
        """Moves of the lesson to the first place with a position, in SAN."""
        return tuple(place.san for place in self.place[key].path() if place.san is not None)
