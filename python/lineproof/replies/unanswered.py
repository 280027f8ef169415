"""Unanswered replies: what the opponent may play and the lesson says nothing of."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lineproof.claims.bands import seen_from
from lineproof.claims.claim import GameOver, Spot
from lineproof.claims.cost import SAFE, Cost, weigh
from lineproof.engine import AmbiguousMoveError, IllegalMoveError, MoveSyntaxError
from lineproof.lesson import Place

from .course import Course
from .likely import Reply
from .words import Named, for_all, named, names

MET = 5.0
"""Percent from which an open reply is listed as met, however harmless."""
DANGEROUS = 1.0
"""Percent from which it is listed as dangerous when the natural answer costs enough."""
COSTLY = 15
"""Points that a student's natural answer then costs at least."""


@dataclass(frozen=True)
class Unanswered:
    """A reply that the lesson leaves open.

    place: the first with the position. chance: percent of the games from the lesson's beginning on in which it is met.
    natural: what a student would answer, weighed against the best; None where the game is over. `natural.better` is the answer to teach.
    """

    place: Place
    reply: Reply
    chance: float
    natural: Cost | None

    @property
    def met(self) -> bool:
        return self.reply.share >= MET

    @property
    def dangerous(self) -> bool:
        return self.natural is not None and self.natural.counted and self.natural.points >= COSTLY

    @property
    def weight(self) -> float:
        """Points that it costs students for each hundred games."""
        return self.chance / 100 * max(0, self.natural.points if self.natural else 0)


def unanswered(course: Course, key: int) -> list[Unanswered]:
    """The replies that the lesson leaves open at one position; none where a line ends, where the taught side is to move, and behind moves of its own
    that the lesson marks as bad."""
    graph = course.graph
    answered = graph.moves[key]
    if graph.turn(key) == course.side or not answered or key not in course.followed:
        return []
    said, all_else = named(graph, key), for_all(graph, key)
    spot = course.spot(key)
    found = []
    for reply in course.likely(key).replies:
        if reply.uci in answered or reply.share < DANGEROUS:
            continue
        after = spot.play(reply.uci)
        if after.board.key in graph.moves or names(said, spot.board, reply.san):
            continue  # it transposes, or words answer it
        certain = reply.share >= MET and all_else is None
        one = Unanswered(
            graph.place[key],
            reply,
            100 * course.chance(key) * reply.share / 100,
            _natural(course, after, only_if_wrong=not certain),
        )
        if certain or (one.dangerous and not _good(course, after, all_else or ())):
            found.append(one)
    return found


def _good(course: Course, spot: Spot, moves: Iterable[Named]) -> bool:
    """Whether one of some moves is as good as the best."""
    for move in moves:
        if not move.fits(spot.board):
            continue
        try:
            cost = weigh(course.ask, spot, spot.board.parse_san(move.san))
        except (AmbiguousMoveError, IllegalMoveError, MoveSyntaxError, GameOver):
            continue
        if cost.points <= SAFE:
            return True
    return False


def _natural(course: Course, spot: Spot, *, only_if_wrong: bool) -> Cost | None:
    """What the natural answer costs. only_if_wrong: None also where it is the best, or seems to cost no more than a safe move may before the best is
    searched alone."""
    likely = course.replies.at(spot)
    if not likely.replies:
        return None
    move = likely.replies[0].uci
    try:
        if only_if_wrong:
            best = course.ask.best(spot)
            if best is None or best.moves[0] == move:
                return None
            side = spot.board.turn
            alone = course.ask.move(spot, move)
            if seen_from(side, best.points) - seen_from(side, alone.points) <= SAFE:
                return None
        return weigh(course.ask, spot, move)
    except GameOver:
        return None


def answered(course: Course, move: int | None) -> float:
    """The share (0 to 1) of the games from the lesson's beginning on that stay inside it, up to a move number or, None, to the end.

    A game in which the lesson's line has come to its end has stayed inside.
    """
    graph = course.graph
    ends = {
        key: 1.0
        for key in course.order
        if not graph.moves[key] or (move is not None and graph.place[key].board.move_number > move)
    }
    return course.meeting.inside(ends)
