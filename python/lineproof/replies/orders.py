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
        lines = _back(graph, after, _below(graph, key), BACK)
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


def _below(graph: Graph, key: int) -> set[_Move]:
    """The moves that the lesson plays within some plies below a position."""
    found: set[_Move] = set()
    layer = {key}
    for _ in range(BACK + 1):
        for at in layer:
            board = graph.place[at].board
            found.update(_spoken(board, uci) for uci in graph.moves[at])
        layer = {after for at in layer for after in graph.moves[at].values()}
    return found


def _back(graph: Graph, spot: Spot, moves: set[_Move], plies: int) -> Iterator[tuple[str, ...]]:
    """The lines of such moves into a position of the lesson, the shortest first; of several ways to a position on the way the first."""
    layer: list[tuple[Spot, tuple[str, ...]]] = [(spot, ())]
    seen = {spot.board.key}
    for _ in range(plies):
        after = []
        for at, line in layer:
            for uci in sorted(at.board.legal_moves()):
                if _spoken(at.board, uci) not in moves:
                    continue
                child = at.play(uci)
                if child.board.key in graph.moves:
                    yield (*line, uci)
                elif child.board.key not in seen:
                    seen.add(child.board.key)
                    after.append((child, (*line, uci)))
        layer = after


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
