"""Games that pass through a position: how each went on. Of very many games some are taken, each move in proportion to how often it is played."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lineproof._engine import Board
from lineproof.collection.counting import figures_of
from lineproof.collection.segments import Segments, Visit

DEEP = 40
"""Positions of a way that are followed, as many as are kept of a game."""


@dataclass(frozen=True)
class Passing:
    """A game through a position. result: as in PGN. moves: from the position on, in UCI, to the end of the game."""

    result: str
    moves: tuple[str, ...]


def passing(segments: Segments, board: Board, most: int) -> tuple[Passing, ...]:
    """The games through a position, about `most` of them where there are more."""
    found: dict[tuple[int, int], Visit] = {}
    _gather(segments, (board,), most, found)
    games = []
    for segment, number in sorted(found):
        *_, moves = segments.games(segment).game(number)
        at = _first(moves, board.key)
        if at is not None:
            games.append(Passing(found[segment, number].result, tuple(moves[at:])))
    return tuple(games)


def _gather(
    segments: Segments,
    way: tuple[Board, ...],
    quota: int,
    found: dict[tuple[int, int], Visit],
) -> None:
    """Takes games that come to the end of a way, and before that to its beginning; those of its moves where a segment has too many to list.

    A move that leads back to a position of the way is left out: its games are among those of the others.
    """
    board, target = way[-1], way[0].key
    visits = [
        visit
        for visit in segments.rare(board.key)
        if (visit.segment, visit.game) not in found
        and (board.key == target or _first(visit.before, target) is not None)
    ]
    for visit in _evenly(visits, quota):
        found[visit.segment, visit.game] = visit
    left = quota - len(visits)
    if left <= 0:
        return
    figures = figures_of(segments, board, None)
    if figures.games <= len(visits):
        return
    before = 0
    known = {at.key for at in way}
    for move in figures.moves:
        after = before + move.games
        share = left * after // move.of - left * before // move.of
        child = board.play(move.uci)
        if share and child.key not in known and len(way) < DEEP:
            _gather(segments, (*way, child), share, found)
        before = after


def _evenly(visits: Sequence[Visit], most: int) -> list[Visit]:
    if len(visits) <= most:
        return list(visits)
    return [visits[number * len(visits) // most] for number in range(most)]


def _first(moves: Sequence[str], key: int) -> int | None:
    """How many of the moves lead from the initial position to one with a key, the first time."""
    board = Board()
    for number, uci in enumerate(moves):
        if board.key == key:
            return number
        board = board.play(uci)
    return len(moves) if board.key == key else None
