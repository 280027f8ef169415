"""What a move costs: best less played, each searched alone at the same nodes.

>>> told(Cost("white", "Nf3", "Nc3", 60, 52, (), ()))
'Nf3 costs 8 points against Nc3: the position is level (52 of 100 for White), after Nc3 White is slightly better (60 of 100).'
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lineproof.engine import Line

from .bands import Band, Mark, band, mark, seen_from, spoken
from .board import other
from .claim import SHOWN, Ask, GameOver, Spot
from .showing import comes_to, numbered, shortest

LOST = 15
"""Points of the best move below which what a move costs is not counted."""
SAFE = 5
"""Points that a move costs at most and still counts as good as the best (a safe, a sensible move)."""
MISTAKE = 12
"""Points from which a move is a mistake."""


WORSE = 45
"""Points below which a side stands worse: then what falls in the line is why."""
INSTEAD = 5
"""Plies that are shown of the better line beside a move that costs something."""


@dataclass(frozen=True)
class Cost:
    """A move weighed against the best. side: the mover. san, better: the move and the best one in SAN.

    best, played: points of the mover, 0 to 100. line, best_line: what follows each, in UCI, the move first.
    """

    side: str
    san: str
    better: str
    best: int
    played: int
    line: tuple[str, ...]
    best_line: tuple[str, ...]

    @property
    def points(self) -> int:
        return self.best - self.played

    @property
    def uci(self) -> str:
        return self.line[0]

    @property
    def is_best(self) -> bool:
        return self.line[0] == self.best_line[0]

    @property
    def counted(self) -> bool:
        """Whether the cost counts: not where the best move is lost already."""
        return self.best >= LOST

    @property
    def numbers(self) -> dict[str, int | float | str]:
        """As a finding shows them."""
        return {
            "cost": self.points,
            "points": self.played,
            "best": self.better,
            "best points": self.best,
        }


def weigh(ask: Ask, spot: Spot, *moves: str) -> Cost:
    """Weighs a move (UCI) that can be played at a spot, or the best of several.

    :raises GameOver: when the game is over before the move.
    """
    first = ask.best(spot)
    played_line = None if first is None else only(ask, spot, moves)
    if first is None or played_line is None:
        raise GameOver("the game is drawn before the move")
    side = spot.board.turn
    move = played_line.moves[0]
    best_line = played_line if first.moves[0] == move else ask.move(spot, first.moves[0])
    played = seen_from(side, played_line.points)
    best = seen_from(side, best_line.points)
    if best < played:  # searched alone, the move is better than what was liked at first
        best, best_line = played, played_line
    board = spot.board
    return Cost(
        side,
        board.san(move),
        board.san(best_line.moves[0]),
        best,
        played,
        shown(spot, played_line.moves, played),
        best_line.moves[:SHOWN],
    )


def shown(spot: Spot, moves: Sequence[str], points: int) -> tuple[str, ...]:
    """The evidence of a move: the shortest line where its score comes from what is won in it, else five moves.

    points: of the mover after the move.
    """
    return (
        shortest(spot, moves, most=SHOWN)
        if abs(band(points)) >= Band.CLEAR
        else tuple(moves[:SHOWN])
    )


def only(ask: Ask, spot: Spot, moves: Sequence[str]) -> Line | None:
    """The best line that begins with one of some moves (UCI)."""
    if len(moves) == 1:
        return ask.move(spot, moves[0])
    return ask.best(spot, without=[m for m in spot.board.legal_moves() if m not in moves])


def told(cost: Cost) -> str:
    """The cost in one sentence."""
    if mark(cost.best, cost.played) is Mark.GOOD:
        return (
            f"{cost.san} costs {spelled(cost.points)}: after it {spoken(cost.side, cost.played)}."
        )
    return (
        f"{cost.san} costs {spelled(cost.points)} against {cost.better}: {spoken(cost.side, cost.played)}, "
        f"after {cost.better} {spoken(cost.side, cost.best)}."
    )


def taught(cost: Cost, spot: Spot) -> str | None:
    """What a move that costs something loses, and what is better, as a teacher shows them; None for a move as good as the best.

    spot: where it is played.
    """
    if not cost.counted or mark(cost.best, cost.played) is Mark.GOOD:
        return None
    what = comes_to(spot, cost.line, other(cost.side)) if cost.played < WORSE else ""
    better = numbered(spot, cost.best_line[:INSTEAD])
    loses = f"{what[0].upper()}{what[1:]}. " if what else ""
    return f"{loses}Better is {better}."


def spelled(points: int) -> str:
    """ "nothing", "1 point", "7 points"."""
    return "nothing" if points <= 0 else f"{points} point{'s' if points != 1 else ''}"
