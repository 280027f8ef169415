"""How often a position of the lesson is met: by the audience's games, when the taught side plays the lesson's moves.

Where the opponent is to move, each reply's share goes on to the position after it. Where the taught side is to move it plays the
lesson's move that leads to the position in question, but none that the lesson marks as bad; where several do, the one from which it is met
most often. Shares multiply along a line, and add up where the opponent's moves transpose.
"""

from __future__ import annotations

from collections.abc import Callable

from lineproof.lesson.graph import Graph

Share = Callable[[int, str], float]
"""The share (0 to 1) of a reply (UCI) at a position (key)."""


class Meeting:
    """Of one lesson. start: where the games begin that are counted. side: the one that is taught. mistakes: moves (position and UCI) of that side that
    the lesson marks as bad."""

    def __init__(
        self,
        graph: Graph,
        start: int,
        side: str,
        share: Share,
        mistakes: frozenset[tuple[int, str]] = frozenset(),
    ) -> None:
        self._graph = graph
        self._start = start
        self._side = side
        self._share = share
        self._mistakes = mistakes
        self._after = _order(graph, start)

    @property
    def met(self) -> list[int]:
        """The positions that can be met, later ones first."""
        return list(self._after)

    def chance(self, target: int) -> float:
        """The share (0 to 1) of the games that come to a position."""
        return self._walk({target: 1.0}, 0.0)

    def inside(self, ends: dict[int, float]) -> float:
        """The share of the games that stay inside the lesson until they come to one of some positions, each counting as it says."""
        return self._walk(ends, 0.0)

    def _walk(self, known: dict[int, float], without: float) -> float:
        found = dict(known)
        for key in self._after:
            if key in found:
                continue
            moves = self._graph.moves[key]
            if not moves:
                found[key] = without
            elif self._graph.turn(key) == self._side:
                found[key] = max(
                    (
                        found.get(after, without)
                        for uci, after in moves.items()
                        if (key, uci) not in self._mistakes
                    ),
                    default=without,
                )
            else:
                found[key] = sum(
                    self._share(key, uci) * found.get(after, without)
                    for uci, after in moves.items()
                    if found.get(after, without)
                )
        return found.get(self._start, 0.0)


def _order(graph: Graph, start: int) -> list[int]:
    """The positions below one, each after all that follow it; a position that leads back to itself is left at the second time."""
    found: list[int] = []
    done: set[int] = set()
    waiting = [(start, iter(graph.moves[start].values()))]
    open_ = {start}
    while waiting:
        key, rest = waiting[-1]
        for after in rest:
            if after not in open_ and after not in done:
                open_.add(after)
                waiting.append((after, iter(graph.moves[after].values())))
                break
        else:
            waiting.pop()
            done.add(key)
            found.append(key)
    return found
