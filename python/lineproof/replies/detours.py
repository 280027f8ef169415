"""Detours: orders of the moves by which the opponent can come into the lesson on another road, and what he gains by choosing one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lineproof._engine import read_san
from lineproof.claims.bands import seen_from
from lineproof.claims.claim import GameOver, Spot
from lineproof.engine import Board
from lineproof.lesson import Place

from .course import Course
from .likely import Reply
from .orders import BACK, Road, returns

LEAST = 1.0
"""Percent of the opponents who choose the first move of an order, for it to be told."""


@dataclass(frozen=True)
class Detour:
    """An order of moves that the opponent can choose. place: where he leaves the taught road; reply: the move by which he does.

    line: from there on, in UCI, the reply first, to a position of the lesson, `into`. instead: the lesson's move there, in SAN.
    answers: the lesson's moves against the reply, in SAN; without one it does not answer it. best: the best answer.
    points: of the taught side after it, out of 100; taught: of the same side on the taught road, after `instead`; back: of the same side when it goes
    on with the line; None where it goes back at once.
    """

    place: Place
    reply: Reply
    line: tuple[str, ...]
    into: Place
    instead: str
    answers: tuple[str, ...]
    best: str
    points: int
    taught: int
    back: int | None

    @property
    def gain(self) -> int:
        """Points that the opponent gains by the order, against best play; negative where he loses some."""
        return self.taught - self.points


def detours(course: Course, roads: Sequence[Road]) -> list[Detour]:
    """The opponent's orders, those that the lesson does not answer first, then the likeliest. roads: the other orders to where it begins.

    Of several orders with the same first move the shortest is told.

    :raises Interrupted: when it was stopped.
    """
    found: dict[tuple[int, str], Detour] = {}
    for place, line, into, instead in (*_before(course, roads), *_within(course)):
        first = (place.key, line[0])
        if first in found and len(found[first].line) <= len(line):
            continue
        one = _weighed(course, place, line, into, instead)
        if one is not None:
            found[first] = one
    return sorted(found.values(), key=lambda one: (bool(one.answers), -one.reply.share))


_Order = tuple[Place, tuple[str, ...], Place, str]
"""Where the opponent leaves the taught road, his moves and ours from there, where they come to, and the taught move (UCI)."""


def _before(course: Course, roads: Sequence[Road]) -> Iterator[_Order]:
    """Orders to where the lesson begins in which the opponent is the first to leave the lesson's own."""
    into = course.graph.place[course.start]
    path = into.path()
    for road in roads:
        line = _uci(path[0].board, road.san)
        for place, after, uci in zip(path, path[1:], line, strict=False):
            if uci != after.uci:
                if place.board.turn != course.side and after.uci is not None:
                    yield place, line[place.ply :], into, after.uci
                break


def _within(course: Course) -> Iterator[_Order]:
    """Open replies that come back to the lesson, and the lesson's own lines that meet."""
    graph = course.graph
    for key in course.order:
        for one in returns(course, key):
            line = _uci(one.place.board, one.line)
            yield one.place, line, one.into, _towards(course, key, one.into.key)
        if graph.turn(key) == course.side:
            continue
        near = {uci: _near(course, after) for uci, after in graph.moves[key].items()}
        for number, (instead, there) in enumerate(near.items()):
            for uci in list(near)[number + 1 :]:
                meet = next((at for at in near[uci] if at in there), None)
                if meet is not None and near[uci][meet] and there[meet]:
                    yield graph.place[key], (uci, *near[uci][meet]), graph.place[meet], instead


def _near(course: Course, key: int) -> dict[int, tuple[str, ...]]:
    """The positions of the lesson within some plies of one, and the moves to each, the nearest first."""
    found: dict[int, tuple[str, ...]] = {key: ()}
    layer = [key]
    for _ in range(BACK):
        after = []
        for at in layer:
            for uci, below in course.graph.moves[at].items():
                if below not in found:
                    found[below] = (*found[at], uci)
                    after.append(below)
        layer = after
    return found


def _towards(course: Course, key: int, into: int) -> str:
    """The lesson's move that leads to a position below, else the one that it shows first."""
    moves = course.graph.moves[key]
    near = (uci for uci, after in moves.items() if into in _near(course, after))
    return next(near, next(iter(moves)))


def _weighed(
    course: Course, place: Place, line: tuple[str, ...], into: Place, instead: str
) -> Detour | None:
    spot = Spot.of(place)
    reply = course.replies.at(spot).reply(line[0])
    if reply.share < LEAST:
        return None
    after, own = spot.play(line[0]), spot.play(instead)
    best, taught = course.ask.best(after), course.ask.best(own)
    if best is None or taught is None:
        return None
    answer, points = best.moves[0], seen_from(course.side, best.points)
    back = None
    if len(line) > 1:
        try:
            back = seen_from(course.side, course.ask.move(after, line[1]).points)
        except GameOver:
            return None
        if back > points:  # searched alone, the way back is better than what was liked at first
            answer, points = line[1], back
    board = after.board
    answers = tuple(board.san(uci) for uci in course.graph.moves.get(board.key, {}))
    return Detour(
        place, reply, line, into, spot.board.san(instead), answers, board.san(answer), points,
        seen_from(course.side, taught.points), back,
    )  # fmt: skip


def _uci(board: Board, san: Sequence[str]) -> tuple[str, ...]:
    """A line as UCI."""
    found: list[str] = []
    for move in san:
        found.append(read_san(board, move)[0])
        board = board.play(found[-1])
    return tuple(found)
