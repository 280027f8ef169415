"""What the games of a collection did where a line of the lesson ends: how they went on, where the pieces stood ten moves later, and how they ended."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from lineproof.claims.board import side_of
from lineproof.collection.interval import Interval, wilson
from lineproof.engine import Board
from lineproof.lesson import Place

from .course import Course

if TYPE_CHECKING:
    from lineproof.collection import Collection
    from lineproof.collection.figures import Score

LEAST = 5
"""Games at the end of a line, and with a move of the commonest continuation, without which nothing is told."""
PLIES = 6
"""Of the commonest continuation that are told."""
LATER = 20
"""Plies after the end of the line at which the pieces are looked at: ten moves."""
MOSTLY = 3
"""A piece is told to stand on a square when it does in one of so many games."""
LOOKED_AT = 100
"""Games that are looked at for where the pieces stand, about, where there are more."""


@dataclass(frozen=True)
class Step:
    """A move of the commonest continuation. games: in which it was played, of so many that came to the position before it and went on."""

    uci: str
    san: str
    games: int
    of: int


@dataclass(frozen=True)
class Stood:
    """A piece of the taught side on a square ten moves later. piece: its letter, as White's: "N". games: in which it stood there."""

    piece: str
    square: str
    games: int


@dataclass(frozen=True)
class Result:
    """Of the taught side, in the games whose result is known. interval: of its points out of 100, 95 %."""

    won: int
    drawn: int
    lost: int
    interval: Interval

    @property
    def games(self) -> int:
        return self.won + self.drawn + self.lost

    @property
    def points(self) -> float:
        """Out of 100."""
        return 100 * (self.won + self.drawn / 2) / self.games


@dataclass(frozen=True)
class ModelGames:
    """At the end of a line, on whatever road the games came to it and whatever the players' ratings. result: None where none is known.

    line: the commonest continuation. looked_at: games whose moves were read; lasted: those of them that had ten moves more; stood: where the taught side's
    pieces were then, from the king to the knights, the commonest squares of each first.
    """

    place: Place
    side: str
    games: int
    result: Result | None
    line: tuple[Step, ...]
    looked_at: int
    lasted: int
    stood: tuple[Stood, ...]


def model_games(course: Course, key: int, collection: Collection) -> ModelGames | None:
    """What games did at the end of a line; None elsewhere, and where fewer than `LEAST` games came to it.

    :raises CollectionError: when the collection cannot be read.
    """
    if course.graph.moves[key]:
        return None
    place = course.graph.place[key]
    board = place.board
    figures = collection.look(board)
    if figures.games < LEAST:
        return None
    read = collection.passing(board, most=LOOKED_AT)
    ends = [_later(board, game.moves) for game in read if len(game.moves) >= LATER]
    return ModelGames(
        place,
        course.side,
        figures.games,
        _result(course.side, figures.score),
        _commonest(collection, board),
        len(read),
        len(ends),
        _stood(ends, course.side),
    )


def _result(side: str, score: Score | None) -> Result | None:
    if score is None:
        return None
    won, lost = (score.white, score.black) if side == "white" else (score.black, score.white)
    return Result(won, score.draws, lost, wilson(won + score.draws / 2, score.games))


def _commonest(collection: Collection, board: Board) -> tuple[Step, ...]:
    line: list[Step] = []
    for _ in range(PLIES):
        figures = collection.look(board)
        if not figures.moves or figures.moves[0].games < LEAST:
            break
        first = figures.moves[0]
        line.append(Step(first.uci, first.san, first.games, first.of))
        board = board.play(first.uci)
    return tuple(line)


def _later(board: Board, moves: tuple[str, ...]) -> Board:
    for uci in moves[:LATER]:
        board = board.play(uci)
    return board


def _stood(boards: list[Board], side: str) -> tuple[Stood, ...]:
    """Where the pieces stand in at least one of `MOSTLY` games, and in no fewer than two."""
    counts = Counter(
        (piece.upper(), square)
        for board in boards
        for square, piece in board.pieces()
        if side_of(piece) == side and piece.upper() != "P"
    )
    often = [
        Stood(piece, square, games)
        for (piece, square), games in counts.items()
        if games >= 2 and games * MOSTLY >= len(boards)
    ]
    return tuple(sorted(often, key=lambda one: ("KQRBN".index(one.piece), -one.games, one.square)))
