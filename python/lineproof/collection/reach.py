"""How many of the audience's games come to each position of a lesson, when the taught side plays the lesson's moves.

Where the opponent is to move, each move's share of the audience's games there goes on to the position after it. Where the
taught side is to move, it plays the lesson's move that leads to the position in question, or, where several do, the one
from which the most games come there. Shares multiply along a line, and add up where the opponent's moves transpose.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from lineproof.collection.errors import CollectionError
from lineproof.collection.interval import Interval, wilson
from lineproof.lesson.graph import Graph

if TYPE_CHECKING:
    from lineproof.collection.collection import Collection
    from lineproof.collection.figures import Audience, Figures
    from lineproof.lesson import Lesson, Place


@dataclass(frozen=True)
class Reached:
    """A position of the lesson."""

    fen: str
    label: str
    """Of the first place with this position."""
    line: tuple[str, ...]
    """Moves of the lesson to that place, in SAN."""
    share: float
    """In percent, of the games at the first position of its line."""
    interval: Interval
    """Of 95 %: that of Wilson for as many games as would make the share as uncertain as the counts at the opponent's
    moves on the way do, taken as independent."""
    fewest: int | None
    """Of the opponent's moves on the way, the games at the one with the fewest: what the share rests on. None where he
    has no move on the way."""
    games: int
    """Games of the audience at the position itself, by whatever way."""


@dataclass(frozen=True)
class Reach:
    """Of a lesson."""

    side: str
    audience: Audience
    games: int
    """Of the audience, at the lesson's first position."""
    positions: tuple[Reached, ...]
    """In the order of the lesson; those that no game comes to included."""


@dataclass(frozen=True)
class _Way:
    """From one position to the one in question."""

    share: float
    variance: float
    fewest: int | None


_NONE = _Way(0.0, 0.0, None)


def reach(collection: Collection, lesson: Lesson, audience: int | None) -> Reach:
    """See `Collection.reach`.

    :raises CollectionError: when the lesson does not say which side is taught.
    """
    side = lesson.settings.side
    if side is None:
        raise CollectionError(
            f"{lesson.name}: the lesson does not say which side is taught; say it with --side"
        )
    rating = lesson.settings.audience if audience is None else audience
    reaching = _Reaching(collection, Graph(lesson), side, rating)
    order = reaching.graph.order
    found = tuple(reaching.reached(key) for key in order)
    first = reaching.figures(order[0])
    assert first.audience is not None
    return Reach(side, first.audience, first.games, found)


def reached(collection: Collection, place: Place) -> Reached | None:
    """The same of one place, for its lesson's audience. None where the lesson does not say which side is taught, or the place lies behind a null move."""
    settings, graph = place.lesson.settings, Graph(place.lesson)
    if settings.side is None or place.key not in graph.place:
        return None
    return _Reaching(collection, graph, settings.side, settings.audience).reached(place.key)


class _Reaching:
    """What the games of a collection say of the positions of a lesson."""

    def __init__(self, collection: Collection, graph: Graph, side: str, rating: int) -> None:
        self._collection = collection
        self._side = side
        self._rating = rating
        self._figures: dict[int, Figures] = {}
        self.graph = graph

    def figures(self, key: int) -> Figures:
        if key not in self._figures:
            board = self.graph.place[key].board
            self._figures[key] = self._collection.look(board, audience=self._rating)
        return self._figures[key]

    def reached(self, key: int) -> Reached:
        place = self.graph.place[key]
        way = self._ways(key)
        return Reached(
            place.board.fen,
            place.label,
            self.graph.line(key),
            100 * way.share,
            _interval(way),
            way.fewest,
            self.figures(key).games,
        )

    def _ways(self, target: int) -> _Way:
        """From the first position of its line to a position."""
        known: dict[int, _Way] = {target: _Way(1.0, 0.0, None)}
        root = self.graph.root[target]
        waiting = [root]
        open_: set[int] = set()
        while waiting:
            key = waiting[-1]
            if key in known:
                waiting.pop()
                continue
            later = [
                child
                for child in self.graph.moves[key].values()
                if child not in known and child not in open_
            ]
            if later and key not in open_:
                open_.add(key)
                waiting.extend(later)
                continue
            open_.add(key)
            # a position that leads back to itself adds nothing on the second time
            known[key] = self._one(key, known)
            waiting.pop()
        return known[root]

    def _one(self, key: int, known: dict[int, _Way]) -> _Way:
        ways = {uci: known.get(child, _NONE) for uci, child in self.graph.moves[key].items()}
        if not any(way.share for way in ways.values()):
            rests = [way.fewest for way in ways.values() if way.fewest is not None]
            return _Way(0.0, 0.0, min(rests, default=None))
        if self.graph.turn(key) == self._side:
            return max(ways.values(), key=lambda way: way.share)
        figures = self.figures(key)
        total = figures.games - figures.ended
        if not total:
            return _Way(0.0, 0.0, 0)
        shares = {uci: (move.games if (move := figures.move(uci)) else 0) / total for uci in ways}
        share = sum(shares[uci] * way.share for uci, way in ways.items())
        spread = sum(shares[uci] * way.share**2 for uci, way in ways.items()) - share**2
        variance = spread / total + sum(
            shares[uci] ** 2 * way.variance for uci, way in ways.items()
        )
        rests = [way.fewest for uci, way in ways.items() if way.share and way.fewest is not None]
        return _Way(share, variance, min([total, *rests]))


def _interval(way: _Way) -> Interval:
    if way.fewest is None:
        return Interval(100 * way.share, 100 * way.share)
    if way.fewest == 0:
        return Interval(0.0, 100.0)
    share = min(max(way.share, 0.0), 1.0)
    games = share * (1 - share) / way.variance if way.variance > 0 else float(way.fewest)
    whole = max(1, round(games))
    return wilson(share * whole, whole)
