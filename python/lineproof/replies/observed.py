"""Observed moves: positions of a collection with what was played there at several ratings, and how well a model foretells them."""

from __future__ import annotations

import heapq
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from lineproof.claims.claim import Spot
from lineproof.engine import Board

from .ahead import costs
from .natural import Natural
from .traits import traits

if TYPE_CHECKING:
    from lineproof.collection import Collection
    from lineproof.engine import Stop
    from lineproof.proof import EvidenceStore

RATINGS = (800, 1200, 1600, 2000, 2400)
"""Around these, within 200 points, moves are counted."""
LEAST = 20
"""Games of one rating at a position, at least, for it to be observed there."""
MOST = 400
"""Positions that are observed, those of the most games first."""

MADE = "Invented game, both players the model of natural moves"
"""The Event tag of games that the model has played itself (examples/demo_games.py): it is neither fitted to them nor judged by them."""

Traits = Mapping[str, Mapping[str, float]]
Progress = Callable[[int, int], None]


class OwnGamesError(ValueError):
    """There are games among those observed that the model has played itself."""

    def __init__(self) -> None:
        super().__init__(
            "the model of natural moves has played games of these itself; it is neither fitted to them nor judged by them"
        )


def refuse_own(file: Path) -> None:
    """:raises OwnGamesError: when the model has played a game of a PGN file itself.
    :raises OSError: when it cannot be read."""
    tag = f'[Event "{MADE}"]'.encode()
    with file.open("rb") as lines:
        if any(line.strip() == tag for line in lines):
            raise OwnGamesError


@dataclass(frozen=True)
class Observed:
    """One position at one rating. found: the traits of every legal move, as a player of that rating sees them. counts: games by move (UCI)."""

    key: int
    rating: int
    found: Traits
    counts: Mapping[str, int]

    @property
    def games(self) -> int:
        return sum(self.counts.values())


@dataclass(frozen=True)
class Quality:
    """How well a model foretells moves, over so many games at so many positions. first, three: percent of the games in which the move was the model's
    likeliest, or among its three. loss: mean negative log-likelihood of a move, in nats; uniform: the same when all legal moves are alike."""

    games: int
    positions: int
    first: float
    three: float
    loss: float
    uniform: float


def observed(
    collection: Collection,
    store: EvidenceStore,
    *,
    most: int = MOST,
    progress: Progress | None = None,
    stop: Stop | None = None,
) -> list[Observed]:
    """The positions of a collection with the most games, from the initial one on, each at every rating of which it has enough.

    :raises Interrupted: when `stop` was set.
    :raises CollectionError: when the collection cannot be read.
    :raises OwnGamesError: when a game that is looked at, the strongest and shortest of each position, was played by the model itself.
    """
    found: list[Observed] = []
    start = Spot(Board().fen, (), Board())
    waiting: list[tuple[int, int, Spot]] = [(-collection.look(start.board).games, 0, start)]
    seen, looked = {start.board.key}, 0
    while waiting and looked < most:
        games, _, spot = heapq.heappop(waiting)
        if -games < LEAST:
            break
        looked += 1
        if any(game.event == MADE for game in collection.model_games(spot.board)):
            raise OwnGamesError
        if progress is not None:
            progress(looked, most)
        for rating in RATINGS:
            near = collection.look(spot.board, audience=rating)
            counts = {move.uci: move.games for move in near.moves}
            if sum(counts.values()) >= LEAST:
                ahead = costs(spot, rating, store, stop)
                found.append(Observed(spot.board.key, rating, traits(spot, ahead), counts))
        for move in collection.look(spot.board).moves:
            after = spot.play(move.uci)
            if after.board.key not in seen:
                seen.add(after.board.key)
                heapq.heappush(waiting, (-move.games, len(seen), after))
    return found


def quality(natural: Natural, of: Sequence[Observed]) -> Quality:
    """:raises ValueError: when nothing was observed."""
    games = first = three = 0
    loss = uniform = 0.0
    for one in of:
        shares = natural.shares(one.found, one.rating)
        ranked = sorted(shares, key=lambda uci: (-shares[uci], uci))
        for uci, count in one.counts.items():
            games += count
            first += count * (uci == ranked[0])
            three += count * (uci in ranked[:3])
            loss -= count * math.log(shares[uci])
            uniform += count * math.log(len(shares))
    if not games:
        raise ValueError("no moves were observed")
    return Quality(
        games, len({one.key for one in of}), 100 * first / games, 100 * three / games, loss / games, uniform / games
    )  # fmt: skip
