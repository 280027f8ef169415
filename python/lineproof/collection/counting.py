"""From what segments hold of a position to its figures."""

from __future__ import annotations

from typing import TypeVar

from lineproof._engine import Board
from lineproof.collection.figures import Audience, Figures, MoveFigures, Tally
from lineproof.collection.segments import Segments

_T = TypeVar("_T")


def figures_of(segments: Segments, board: Board, audience: Audience | None) -> Figures:
    """What the segments of a collection say of a position, added up."""
    moves: dict[str | None, Tally] = {}
    bands: dict[int, Tally] = {}
    years: dict[int, Tally] = {}

    def count(group: dict[_T, Tally], name: _T, tally: Tally) -> None:
        group[name] = group.get(name, Tally()) + tally

    for (kind, name), tally in segments.cells(board.key, audience).items():
        if kind == "move":
            count(moves, _uci(name), tally)
        elif kind == "band":
            count(bands, name, tally)
        elif name:
            count(years, name, tally)
    for visit in segments.rare(board.key):
        if audience is not None and not audience.holds(visit.white, visit.black):
            continue
        count(moves, visit.move, visit.tally)
        if visit.band is not None:
            count(bands, visit.band, visit.tally)
        if visit.year:
            count(years, visit.year, visit.tally)
    total = sum(moves.values(), Tally())
    ended = moves.pop(None, Tally()).games
    going_on = total.games - ended
    return Figures(
        board.fen,
        audience,
        total,
        tuple(
            MoveFigures(uci, board.san(uci), tally, going_on)
            for uci, tally in sorted(
                moves.items(), key=lambda item: (-item[1].games, item[0] or "")
            )
            if uci is not None
        ),
        ended,
        tuple(sorted(bands.items())),
        tuple(sorted(years.items())),
    )


def _uci(bits: int) -> str | None:
    """A move of the figures in UCI spelling; None where the game ends."""
    if bits == 0:
        return None
    squares = (bits & 63, bits >> 6 & 63)
    text = "".join("abcdefgh"[square % 8] + str(square // 8 + 1) for square in squares)
    return text + ("", "p", "n", "b", "r", "q", "k")[bits >> 12]
