"""Move orders: other roads into the lesson, from other openings and by the opponent's choice."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lineproof.claims.claim import GameOver, Spot
from lineproof.claims.cost import SAFE, weigh
from lineproof.collection.openings import Opening, opening
from lineproof.engine import Board
from lineproof.lesson import Place
from lineproof.lesson.graph import Graph

from .course import Course
from .likely import Reply
from .words import named, names

BEFORE = 10
"""Plies from the first position to where the lesson begins, at most, for other orders to be tried."""
BACK = 4
"""Plies after an open reply within which it may come back to the lesson."""


@dataclass(frozen=True)
class Road:
    """Another order of the moves to where the lesson begins. opening: the name that it goes under on the way, None when it never has another."""

    san: tuple[str, ...]
    opening: Opening | None


@dataclass(frozen=True)
class Return:
    """An open reply after which the lesson's own moves come back to it; the taught side's cost 5 points at most there. line: from the place on,
    in SAN, the reply first."""

    place: Place
    reply: Reply
    line: tuple[str, ...]
    into: Place


def roads(graph: Graph, start: int) -> list[Road]:
    """The other orders in which the moves to a position can be played; the lesson's own is left out."""
    place = graph.place[start]
    path = place.path()
    moves = [p.uci for p in path[1:] if p.uci is not None]
    if not moves or len(moves) > BEFORE:
        return []
    first = Spot.of(path[0])
    own = {side: tuple(moves[n::2]) for n, side in enumerate(("first", "second"))}
    known = _opening(first.line(moves))
    found = []
    for order in _orders(first, own["first"], own["second"], place.key):
        if order == tuple(moves):
            continue
        name = None
        for ply in range(len(order), 0, -1):
            at = _opening(first.line(order[:ply]))
            if at is not None and at != known and not _on_the_way(first, moves, at):
                name = at
                break
        found.append(Road(tuple(first.board.san_line(list(order))), name))
    return found


def _opening(spot: Spot) -> Opening | None:
    """The name of the opening, of a game from the initial position."""
    return opening(spot.moves) if spot.boards[0].key == Board().key else None


def _on_the_way(first: Spot, moves: list[str], name: Opening) -> bool:
    return any(_opening(first.line(moves[:ply])) == name for ply in range(1, len(moves) + 1))


def _orders(
    spot: Spot, mine: tuple[str, ...], yours: tuple[str, ...], target: int
) -> Iterator[tuple[str, ...]]:
    """Every legal order of both sides' moves that ends in a position."""
    if not mine and not yours:
        if spot.board.key == target:
            yield spot.moves
        return
    legal = set(spot.board.legal_moves())
    for number, uci in enumerate(mine):
        if uci in legal:
            rest = (*mine[:number], *mine[number + 1 :])
            yield from _orders(spot.play(uci), yours, rest, target)


def returns(course: Course, key: int) -> list[Return]:
    """The open likely replies at a position after which both sides' moves of the lesson lead back into it; none that words name."""
    graph = course.graph
    if graph.turn(key) == course.side or not graph.moves[key] or key not in course.followed:
        return []
    found = []
    said = named(graph, key)
    for reply in course.likely(key).replies:
        if not reply.likely:
            break
        if reply.uci in graph.moves[key] or names(said, course.spot(key).board, reply.san):
            continue
        after = course.spot(key).play(reply.uci)
        if after.board.key in graph.moves:
            continue  # it is there at once
        lines = _back(graph, key, after)
        line = next((line for line in lines if _sensible(course, after, line)), None)
        if line is not None:
            spot = after.line(line)
            moves = tuple(course.spot(key).board.san_line([reply.uci, *line]))
            found.append(Return(graph.place[key], reply, moves, graph.place[spot.board.key]))
    return found


_Move = tuple[str, str]
"""A move as it is spoken of, from whatever square: the piece (a FEN letter), and where to, with what a pawn becomes."""


def _spoken(board: Board, uci: str) -> _Move:
    return board.piece_at(uci[:2]) or "", uci[2:]


def _back(graph: Graph, key: int, after: Spot) -> Iterator[tuple[str, ...]]:
    """From the position after an open reply at a position, the lines into a position that the lesson has some plies below, the shortest first: the
    moves of the lesson's way there in any order, the reply in place of one."""
    for length, moves, target in _ways(graph, key):
        yield from _ordered(after, moves, target, length - 1)


def _ways(graph: Graph, key: int) -> Iterator[tuple[int, tuple[_Move, ...], int]]:
    """The lesson's ways from a position, the shortest first: plies, moves, and the position that they come to."""
    layer: list[tuple[int, tuple[_Move, ...]]] = [(key, ())]
    for plies in range(1, BACK + 2):
        after = []
        for at, moves in layer:
            board = graph.place[at].board
            for uci, below in graph.moves[at].items():
                after.append((below, (*moves, _spoken(board, uci))))
        layer = after
        yield from ((plies, moves, at) for at, moves in layer)


def _ordered(
    spot: Spot, moves: tuple[_Move, ...], target: int, plies: int
) -> Iterator[tuple[str, ...]]:
    """The lines of so many of the moves, each played once, that come to a position."""
    if plies == 0:
        if spot.board.key == target:
            yield ()
        return
    left = set(moves)
    for uci in spot.board.legal_moves():
        move = _spoken(spot.board, uci)
        if move in left:
            number = moves.index(move)
            rest = (*moves[:number], *moves[number + 1 :])
            for line in _ordered(spot.play(uci), rest, target, plies - 1):
                yield (uci, *line)


def _sensible(course: Course, spot: Spot, line: tuple[str, ...]) -> bool:
    """Whether the taught side's moves in a line are as good as the best."""
    for uci in line:
        if spot.board.turn == course.side:
            try:
                cost = weigh(course.ask, spot, uci)
            except GameOver:
                return False
            if cost.points > SAFE:
                return False
        spot = spot.play(uci)
    return True
