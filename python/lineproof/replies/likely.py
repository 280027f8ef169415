"""How likely each legal reply is: counted games first, the model of natural moves where there are few or none.

The model's opinion counts as a number of games (`Natural.alpha`), the mean of a Dirichlet prior; counted games are added to it.
The more games there are, the nearer the shares come to the counts.
"""

from __future__ import annotations

import threading
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from lineproof.claims.claim import Spot
from lineproof.collection import CollectionError
from lineproof.collection.figures import Audience
from lineproof.collection.interval import Interval, wilson

from .ahead import costs
from .natural import Natural
from .traits import traits

if TYPE_CHECKING:
    from lineproof.collection import Collection
    from lineproof.engine import Board, Stop
    from lineproof.proof import EvidenceStore

LIKELY = 5.0
"""Percent from which a reply is likely."""

Counted = dict[str, int]
"""Games by the move (UCI) played in them."""

COUNTING = "`--collection NAME` counts games"
"""The way out on the command line, where no games were counted; the desk has another."""


@dataclass(frozen=True)
class Reply:
    """A legal move. share: in percent. natural: the model's alone, in percent. games: in which it was played, of so many at the position.
    interval: of 95 %, counted games and the model's opinion together."""

    uci: str
    san: str
    share: float
    natural: float
    games: int
    of: int
    interval: Interval

    @property
    def likely(self) -> bool:
        return self.share >= LIKELY


@dataclass(frozen=True)
class Likely:
    """The replies at one position, the likeliest first; without one the game is over."""

    rating: int
    games: int
    replies: tuple[Reply, ...]

    def reply(self, uci: str) -> Reply:
        """:raises KeyError: when the move is not legal there."""
        for reply in self.replies:
            if reply.uci == uci:
                return reply
        raise KeyError(uci)


class Replies:
    """Answers how likely replies are, for one audience."""

    def __init__(
        self,
        rating: int,
        store: EvidenceStore,
        *,
        natural: Natural | None = None,
        collection: Collection | None = None,
        stop: Stop | None = None,
    ) -> None:
        """rating: the audience's. collection: games to count, if there are any."""
        self.rating = rating
        self.natural = natural or Natural.near(collection)
        self.collection = collection
        self.store = store
        self.stop = stop
        self._known: dict[int, Likely] = {}
        self._lock = threading.Lock()

    def at(self, spot: Spot) -> Likely:
        """The replies at a position.

        :raises Interrupted: when it was stopped.
        :raises CollectionError: when the collection cannot be read.
        """
        key = spot.board.key
        if key not in self._known:
            found = traits(spot, costs(spot, self.rating, self.store, self.stop))
            shares = self.natural.shares(found, self.rating)
            self._known[key] = blended(
                spot.board, shares, self._counted(spot.board), self.natural.alpha, self.rating
            )
        return self._known[key]

    def uncounted(self, spots: Iterable[Spot]) -> str:
        """Why no games are counted at any of some positions, in words that follow a colon; "" where some are.

        :raises CollectionError: when the collection cannot be read.
        """
        if self.collection is None:
            return f"no games were counted. {COUNTING}"
        name = repr(self.collection.name)
        games = rated = 0
        with self._lock:
            for spot in spots:
                if self.collection.look(spot.board, audience=self.rating).games:
                    return ""
                tally = self.collection.look(spot.board).tally
                games, rated = max(games, tally.games), max(rated, tally.rated)
        if not games:
            return f"no game of {name} comes here"
        near = Audience.of(self.rating)
        ratings = "" if rated else ", for they have no ratings"
        return (
            f"no game of {name} that comes here ({games:,} do) is between two players rated {near.low} to {near.high - 1}{ratings}."
            " `--audience RATING` counts others"
        )

    def _counted(self, board: Board) -> Counted:
        if self.collection is None:
            return {}
        with self._lock:
            figures = self.collection.look(board, audience=self.rating)
        return {move.uci: move.games for move in figures.moves}


def blended(
    board: Board, natural: dict[str, float], counted: Counted, alpha: float, rating: int
) -> Likely:
    """Counted games and the model's shares (0 to 1) in one. Games in which no move followed do not count."""
    games = sum(counted.values())
    of = games + alpha
    replies = []
    for uci, share in natural.items():
        weight = counted.get(uci, 0) + alpha * share
        spread = wilson_of(weight, of)
        replies.append(
            Reply(
                uci,
                board.san(uci),
                100 * weight / of,
                100 * share,
                counted.get(uci, 0),
                games,
                spread,
            )
        )
    replies.sort(key=lambda reply: (-reply.share, reply.uci))
    return Likely(rating, games, tuple(replies))


def wilson_of(weight: float, of: float) -> Interval:
    """Wilson's interval for a share of whole and part games."""
    whole = max(1, round(of))
    return wilson(min(weight / of * whole, whole), whole)


__all__ = ["CollectionError", "Likely", "Replies", "Reply", "blended"]
