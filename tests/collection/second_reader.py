"""The same counts by python-chess, game by game, in dictionaries."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import chess
import chess.pgn

PLIES = 40


@dataclass
class Position:
    """What the games of one position come to."""

    fen: str
    moves: Counter[str | None] = field(default_factory=Counter)
    results: dict[str | None, Counter[str]] = field(default_factory=lambda: defaultdict(Counter))
    ratings: list[int] = field(default_factory=list)
    years: Counter[int] = field(default_factory=Counter)
    orders: Counter[tuple[str, ...]] = field(default_factory=Counter)

    @property
    def games(self) -> int:
        return sum(self.moves.values())


def games(files: Iterable[Path]) -> Iterator[chess.pgn.Game]:
    for file in files:
        yield from _games(file)


@cache
def _games(file: Path) -> tuple[chess.pgn.Game, ...]:
    with file.open(encoding="utf-8") as stream:
        return tuple(iter(lambda: chess.pgn.read_game(stream), None))


def rating(text: str) -> int:
    return int(text) if text.isdecimal() and 100 <= int(text) < 4000 else 0


def count(files: Iterable[Path], between: tuple[int, int] | None = None) -> dict[str, Position]:
    """Positions by EPD with legal en passant only; a position counts once a game.

    between: ratings, from the first to below the second; only games whose players are both in it count.
    """
    found: dict[str, Position] = {}
    for game in games(files):
        ratings = [rating(game.headers.get(f"{side}Elo", "")) for side in ("White", "Black")]
        if between is not None and not all(between[0] <= one < between[1] for one in ratings):
            continue
        moves = list(game.mainline_moves())
        year = game.headers["Date"][:4]
        board = game.board()
        seen = set()
        for ply, move in enumerate([*moves, None][:PLIES]):
            key = board.epd(en_passant="legal")
            if key not in seen:
                seen.add(key)
                position = found.setdefault(key, Position(board.fen(en_passant="legal")))
                uci = move.uci() if move is not None else None
                position.moves[uci] += 1
                position.results[uci][game.headers["Result"]] += 1
                position.ratings += [one for one in ratings if one]
                if year.isdecimal():
                    position.years[int(year)] += 1
                position.orders[tuple(one.uci() for one in moves[:ply])] += 1
            if move is not None:
                board.push(move)
    return found
