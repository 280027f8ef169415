"""Departures: where students' games left the lesson, who left it, what it cost, and whether it was punished."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from lineproof.claims.bands import Mark, mark
from lineproof.claims.claim import GameOver, Spot
from lineproof.claims.cost import SAFE, Cost, weigh
from lineproof.collection.interval import Interval, wilson
from lineproof.lesson import Place
from lineproof.lesson.graph import Graph
from lineproof.proof import Effort, EvidenceStore, evidence_file
from lineproof.proof.asker import Asker
from lineproof.replies.start import starts

from .expected import expected
from .games import FollowError, Played

if TYPE_CHECKING:
    from lineproof.engine import Stop
    from lineproof.engine.outside.pool import OutsideEngine
    from lineproof.lesson import Lesson

Progress = Callable[[int, int], None]


@dataclass(frozen=True)
class Departure:
    """Where a game left the lesson. place: the last place of the lesson with a position of the game. spot: the same, as the game came to it.

    uci: the move that left it; None when the game ended there. by_student: whether the student played it. ended: the lesson's line had come to its end.
    taught: the lesson's moves there, in SAN. cost: of the move; None where there is none. answer: what the reply to it cost; None without one.
    """

    game: Played
    side: str
    place: Place
    spot: Spot
    uci: str | None
    by_student: bool
    ended: bool
    taught: tuple[str, ...]
    cost: Cost | None
    answer: Cost | None

    @property
    def san(self) -> str | None:
        return None if self.uci is None else self.spot.board.san(self.uci)

    @property
    def bad(self) -> bool:
        """Whether the move costs more than a safe one may."""
        return (
            self.cost is not None
            and self.cost.counted
            and mark(self.cost.best, self.cost.played) is not Mark.GOOD
        )

    @property
    def punished(self) -> bool | None:
        """Whether a bad move met a good reply; None when it was none, or the game ended with it."""
        return self.answer.points <= SAFE if self.bad and self.answer is not None else None


@dataclass(frozen=True)
class Common:
    """A departure that several games have, or one. games: how many; points: the students', of those with a result. first: one of them."""

    first: Departure
    games: int
    points: float
    results: int


@dataclass(frozen=True)
class Followed:
    """What came of the games. elsewhere: games that did not come to the lesson. other_side: of the student with the other colour.

    score: the students' points of `results` games that came to the lesson, with the 95 % interval; expected: what the ratings let expect (FIDE 8.1.2), over
    `rated` of them, which brought `rated_score`.
    """

    departures: tuple[Departure, ...]
    common: tuple[Common, ...]
    elsewhere: int
    other_side: int
    score: float
    results: int
    interval: Interval | None
    expected: float | None
    rated: int
    rated_score: float


def follow(
    lesson: Lesson,
    games: Sequence[tuple[Played, str]],
    effort: Effort = Effort.SKETCH,
    *,
    progress: Progress | None = None,
    store: EvidenceStore | None = None,
    stop: Stop | None = None,
    engine: OutsideEngine | None = None,
) -> Followed:
    """Follows games of students, each with the student's side. Games with the side that is not taught are only counted.

    :raises FollowError: when the lesson does not say which side is taught.
    """
    side = lesson.settings.side
    if side is None:
        raise FollowError(
            f"{lesson.name}: the lesson does not say which side is taught; say it with --side"
        )
    graph = Graph(lesson)
    begins = set(starts(graph))
    own = store is None
    evidence = EvidenceStore(evidence_file(lesson)) if store is None else store
    try:
        ask = Asker(evidence, effort.steps[0], stop, engine)
        found: list[Departure] = []
        elsewhere = other = 0
        for number, (game, colour) in enumerate(games):
            if progress is not None:
                progress(number, len(games))
            if colour != side:
                other += 1
                continue
            one = _departure(graph, begins, game, side, ask)
            if one is None:
                elsewhere += 1
            else:
                found.append(one)
    finally:
        if own:
            evidence.close()
    return _added_up(found, elsewhere, other)


def _departure(
    graph: Graph, begins: set[int], game: Played, side: str, ask: Asker
) -> Departure | None:
    spots = [game.spot]
    for move in game.moves:
        spots.append(spots[-1].play(move))
    if not any(spot.board.key in begins for spot in spots):
        return None
    last = max(n for n, spot in enumerate(spots) if spot.board.key in graph.moves)
    spot = spots[last]
    key = spot.board.key
    uci = game.moves[last] if last < len(game.moves) else None
    cost = _cost(ask, spot, uci)
    reply = game.moves[last + 1] if last + 1 < len(game.moves) else None
    answer = _cost(ask, spots[last + 1], reply) if uci is not None else None
    taught = tuple(spot.board.san(own) for own in graph.moves[key])
    # of several places with the position that on the game's own road, for its name is what the student played
    places = graph.places(key)
    place = next((p for p in places if p.moves() == list(spot.moves)), graph.place[key])
    return Departure(
        game, side, place, spot, uci, spot.board.turn == side, not graph.moves[key], taught, cost, answer
    )  # fmt: skip


def _cost(ask: Asker, spot: Spot, uci: str | None) -> Cost | None:
    if uci is None:
        return None
    try:
        return weigh(ask, spot, uci)
    except GameOver:
        return None


def _added_up(found: list[Departure], elsewhere: int, other: int) -> Followed:
    counts = Counter((one.spot.board.key, one.uci) for one in found if one.uci is not None)
    common = []
    for (key, move), games in counts.most_common():
        same = [one for one in found if (one.spot.board.key, one.uci) == (key, move)]
        scored = [points for one in same if (points := one.game.scored(one.side)) is not None]
        common.append(Common(same[0], games, sum(scored), len(scored)))
    results = [points for one in found if (points := one.game.scored(one.side)) is not None]
    wanted, brought = [], 0.0
    for one in found:
        mine = one.game.rating(one.side)
        yours = one.game.rating("black" if one.side == "white" else "white")
        points = one.game.scored(one.side)
        if mine is not None and yours is not None and points is not None:
            wanted.append(expected(mine - yours))
            brought += points
    return Followed(
        tuple(found),
        tuple(common),
        elsewhere,
        other,
        sum(results),
        len(results),
        wilson(sum(results), len(results)) if results else None,
        sum(wanted) if wanted else None,
        len(wanted),
        brought,
    )
