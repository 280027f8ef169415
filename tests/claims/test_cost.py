"""What a move costs."""

from __future__ import annotations

import pytest

from lineproof.claims import Spot
from lineproof.claims.claim import GameOver
from lineproof.claims.cost import spelled, told, weigh
from lineproof.engine import Board
from tests.claims.conftest import Scripted

START = Board().fen


def _spot(*moves: str) -> Spot:
    return Spot(START, (), Board()).line(moves)


def test_the_cost_is_best_less_played_for_the_mover() -> None:
    cost = weigh(Scripted({"c7c5": 40, "e7e5": 60}, "c7c5"), _spot("e2e4"), "e7e5")
    assert (cost.side, cost.best, cost.played, cost.points) == ("black", 60, 40, 20)
    assert told(cost).startswith("e5 costs 20 points against c5")


def test_a_move_that_is_better_when_searched_alone_is_the_best() -> None:
    cost = weigh(Scripted({"e2e4": 50, "g1f3": 53}, "e2e4"), _spot(), "g1f3")
    assert (cost.better, cost.points) == ("Nf3", 0)


def test_a_game_that_is_over_has_no_costs() -> None:
    class Over(Scripted):
        def best(self, spot: Spot, *, without: tuple[str, ...] = ()) -> None:
            return None

    with pytest.raises(GameOver):
        weigh(Over({}, ""), _spot(), "e2e4")


def test_points_are_spelled() -> None:
    assert [spelled(n) for n in (-1, 0, 1, 7)] == ["nothing", "nothing", "1 point", "7 points"]
