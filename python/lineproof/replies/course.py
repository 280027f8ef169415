"""A lesson as its students meet it: its graph, the side taught, where it begins, and who answers what may be asked of a position."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from lineproof.claims.claim import Spot
from lineproof.lesson.graph import Graph
from lineproof.proof.asker import Asker
from lineproof.proof.kept import Kept

from .likely import Likely, Replies
from .meeting import Meeting

OWN_UP = frozenset({2, 4, 6})
"""Glyphs with which the author says himself that a move is bad: ?, ??, ?!."""


class Course:
    """One beginning of a lesson. side: the one taught. start: key of the position at which it begins. proved: claims of the lesson that a proof found to
    hold."""

    def __init__(
        self,
        graph: Graph,
        start: int,
        side: str,
        replies: Replies,
        ask: Asker,
        proved: Sequence[Kept] = (),
    ) -> None:
        self.graph = graph
        self.start = start
        self.side = side
        self.replies = replies
        self.ask = ask
        self.proved = proved
        self._spots: dict[int, Spot] = {}
        self._chances: dict[int, float] = {}

    @cached_property
    def mistakes(self) -> frozenset[tuple[int, str]]:
        """The taught side's moves that the lesson shows and marks as bad: at which position, and the move (UCI). Nobody plays them who has learned it."""
        graph = self.graph
        return frozenset(
            (key, child.uci)
            for key in graph.order
            if graph.turn(key) == self.side
            for place in graph.places(key)
            for child in place.children
            if child.uci is not None and OWN_UP & set(child.nags)
        )

    @cached_property
    def meeting(self) -> Meeting:
        return Meeting(self.graph, self.start, self.side, self.share, self.mistakes)

    @cached_property
    def followed(self) -> frozenset[int]:
        """The positions that somebody comes to who plays what the lesson teaches."""
        found, waiting = {self.start}, [self.start]
        while waiting:
            key = waiting.pop()
            for uci, after in self.graph.moves[key].items():
                if (key, uci) not in self.mistakes and after not in found:
                    found.add(after)
                    waiting.append(after)
        return frozenset(found)

    @cached_property
    def order(self) -> tuple[int, ...]:
        """The positions from its beginning on, in the order of the lesson."""
        below = set(self.meeting.met)
        return tuple(key for key in self.graph.order if key in below)

    def spot(self, key: int) -> Spot:
        if key not in self._spots:
            self._spots[key] = Spot.of(self.graph.place[key])
        return self._spots[key]

    def likely(self, key: int) -> Likely:
        return self.replies.at(self.spot(key))

    def share(self, key: int, uci: str) -> float:
        """Of a reply at a position, 0 to 1."""
        return self.likely(key).reply(uci).share / 100

    def chance(self, key: int) -> float:
        """The share (0 to 1) of the games from its beginning on that come to a position."""
        if key not in self._chances:
            self._chances[key] = self.meeting.chance(key)
        return self._chances[key]
