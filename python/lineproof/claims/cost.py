"""What a move costs: best less played, each searched alone at the same nodes.

>>> told(Cost("white", "Nf3", "Nc3", 60, 52, (), ()))
'Nf3 costs 8 points against Nc3: the position is level (52 of 100 for White), after Nc3 White is slightly better (60 of 100).'
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lineproof.engine import Line

from .bands import Mark, mark, seen_from, spoken
from .claim import SHOWN, Ask, GameOver, Spot

LOST = 15
"""Points of the best move below which what a move costs is not counted."""
SAFE = 5
"""Points that a move costs at most and still counts as good as the best (a safe, a sensible move)."""
MISTAKE = 12
"""Points from which a move is a mistake."""


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
        played_line.moves[:SHOWN],
        best_line.moves[:SHOWN],
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


def spelled(points: int) -> str:
    """ "nothing", "1 point", "7 points"."""
    return "nothing" if points <= 0 else f"{points} point{'s' if points != 1 else ''}"
