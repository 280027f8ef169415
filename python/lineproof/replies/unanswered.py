"""Unanswered replies: what the opponent may play and the lesson says nothing of."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.claims.claim import GameOver, Spot
from lineproof.claims.cost import Cost, weigh
from lineproof.lesson import Place

from .course import Course
from .likely import Reply
from .words import named, speaks_of_all

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
    """The replies that the lesson leaves open at one position; none where a line ends, and where the taught side is to move."""
    graph = course.graph
    answered = graph.moves[key]
    if graph.turn(key) == course.side or not answered:
        return []
    said, all_said = named(graph, key), speaks_of_all(graph, key)
    spot = course.spot(key)
    found = []
    for reply in course.likely(key).replies:
        if reply.uci in answered or reply.share < DANGEROUS:
            continue
        after = spot.play(reply.uci)
        if after.board.key in graph.moves or reply.san.rstrip("+#") in said:
            continue  # it transposes, or words answer it
        one = Unanswered(
            graph.place[key],
            reply,
            100 * course.chance(key) * reply.share / 100,
            _natural(course, after),
        )
        if one.dangerous or (one.met and not all_said):
            found.append(one)
    return found


def _natural(course: Course, spot: Spot) -> Cost | None:
    likely = course.replies.at(spot)
    if not likely.replies:
        return None
    try:
        return weigh(course.ask, spot, likely.replies[0].uci)
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
