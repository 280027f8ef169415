"""Weighing openings: what each candidate asks of a student, and what it gives, for one audience.

What is known of the candidate's own lesson is taken from it; beyond, the student is thought to learn the best move at the position that comes up most often, until
so many of the games are answered.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from lineproof.claims.bands import is_only, seen_from
from lineproof.claims.board import other
from lineproof.claims.claim import GameOver, Spot
from lineproof.collection.asked import Asked
from lineproof.collection.openings import Opening, opening
from lineproof.lesson.graph import Graph
from lineproof.proof.asker import Asker
from lineproof.replies import Replies
from lineproof.replies.pauses import UNNATURAL
from lineproof.replies.start import starts

if TYPE_CHECKING:
    from lineproof.collection.figures import Score
    from lineproof.lesson import Lesson

ANSWERED = 0.8
"""The share of games to be answered."""
MOVES = 2
"""Moves of the student, from where the candidate begins, up to which a game must be answered."""
MOST = 200
"""Positions that are learned at most."""


@dataclass(frozen=True)
class Candidate:
    """An opening to be weighed. name: as it was given. spot: where it begins; side: whose opening it is. graph: of its lesson, if it is one."""

    name: str
    spot: Spot
    side: str
    graph: Graph | None = None

    @staticmethod
    def of_lesson(lesson: Lesson, side: str) -> Candidate:
        """It begins where the lesson does; of several beginnings at the first."""
        graph = Graph(lesson)
        return Candidate(lesson.name, Spot.of(graph.place[starts(graph)[0]]), side, graph)

    @staticmethod
    def of_moves(name: str, asked: Asked) -> Candidate:
        """It is the opening of the side that made the last move; without a move, of the side to move."""
        spot = Spot(asked.boards[0].fen, asked.uci, asked.board)
        return Candidate(name, spot, other(spot.board.turn) if asked.uci else spot.board.turn)


@dataclass(frozen=True)
class Weight:
    """What a candidate asks and gives.

    opening: its name. reach: percent of the games with this side that come to it. positions: to be learned for 80 % of these games to be answered for three moves;
    whole: whether that many sufficed, or `MOST` were reached. answered: percent that they answer. from_lesson: how many of them the lesson has. by_heart: unnatural only
    moves among the answers. points: of the side where it begins, worst: after the worst of the answers, out of 100. score: of a collection's games of this audience at its
    beginning, White's; None without.
    """

    candidate: Candidate
    opening: Opening | None
    reach: float
    positions: int
    whole: bool
    answered: float
    from_lesson: int
    by_heart: int
    points: int
    worst: int
    score: Score | None


def weigh_openings(
    candidates: Sequence[Candidate],
    replies: Replies,
    ask: Asker,
    progress: Callable[[int, int], None] | None = None,
) -> list[Weight]:
    """Weighs candidates, in the order given. progress: called with the candidates done and in all.

    :raises Interrupted: when it was stopped.
    """
    found: list[Weight] = []
    for one in candidates:
        if progress is not None:
            progress(len(found), len(candidates))
        found.append(_weigh(one, replies, ask))
    return found


def _weigh(of: Candidate, replies: Replies, ask: Asker) -> Weight:
    reach = 1.0
    for ply, board in enumerate(of.spot.boards[:-1]):
        if board.turn != of.side:
            before = Spot(of.spot.root_fen, of.spot.moves[:ply], board)
            reach *= replies.at(before).reply(of.spot.moves[ply]).share / 100
    plan = _Plan(of, replies, ask)
    plan.learn()
    line = ask.best(of.spot)
    points = seen_from(of.side, line.points) if line is not None else 50
    figures = (
        None
        if replies.collection is None
        else replies.collection.look(of.spot.board, audience=replies.rating)
    )
    return Weight(
        of, opening(of.spot.moves), 100 * reach, len(plan.learned), plan.answered >= ANSWERED, 100 * plan.answered, plan.from_lesson, plan.by_heart, points,
        min([points, *plan.learned.values()]), None if figures is None else figures.score,
    )  # fmt: skip


class _Plan:
    """Positions learned one by one, the one met most often first."""

    def __init__(self, of: Candidate, replies: Replies, ask: Asker) -> None:
        self._of, self._replies, self._ask = of, replies, ask
        self.learned: dict[int, int] = {}
        """Points of the side after its answer, by position."""
        self._moves: dict[int, str] = {}
        self.answered = 0.0
        self.from_lesson = self.by_heart = 0
        self._waiting: list[tuple[float, int, int, Spot]] = []
        self._number = 0
        self._come(of.spot, 1.0, 0)

    def _come(self, spot: Spot, share: float, depth: int) -> None:
        """A share of the games comes to a position, the student having answered so often."""
        if depth == MOVES or not spot.board.legal_moves():
            self.answered += share
        elif spot.board.turn == self._of.side:
            self._number += 1
            heapq.heappush(self._waiting, (-share, self._number, depth, spot))
        else:
            for reply in self._replies.at(spot).replies:
                if share * reply.share > 0.01:  # a ten-thousandth of the games
                    self._come(spot.play(reply.uci), share * reply.share / 100, depth)

    def learn(self) -> None:
        while self._waiting and self.answered < ANSWERED and len(self.learned) < MOST:
            share, _, depth, spot = heapq.heappop(self._waiting)
            uci = self._answer(spot)
            if uci is None:
                self.answered -= share
                continue
            self._come(spot.play(uci), -share, depth + 1)

    def _answer(self, spot: Spot) -> str | None:
        """The move to learn; None where the game is over."""
        key = spot.board.key
        if key in self._moves:
            return self._moves[key]
        graph = self._of.graph
        own = graph.moves.get(key, {}) if graph is not None else {}
        try:
            best = self._ask.best(spot) if not own else self._ask.move(spot, next(iter(own)))
        except GameOver:
            return None
        if best is None:
            return None
        uci = best.moves[0]
        points = seen_from(self._of.side, best.points)
        self._moves[key] = uci
        self.learned[key] = points
        self.from_lesson += bool(own)
        self.by_heart += self._unnatural(spot, uci, points)
        return uci

    def _unnatural(self, spot: Spot, uci: str, points: int) -> bool:
        """Whether it is an only move that few would find."""
        if self._replies.at(spot).reply(uci).share >= UNNATURAL:
            return False
        second = self._ask.best(spot, without=(uci,))
        if second is None:
            return False
        others = seen_from(self._of.side, second.points)
        return is_only(points, others)
