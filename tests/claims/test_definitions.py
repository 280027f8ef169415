"""The numbers of the definitions stand in the code as they were fixed before anything was measured.

All are `common practice`. Both sides of each edge are asked for in the tests of the bands and of the kinds.
"""

from __future__ import annotations

import pytest

from lineproof.claims.amounts import LEAST, MOST
from lineproof.claims.bands import ALONE, Band, Mark, is_safe, limits, mark, result_class
from lineproof.claims.board import VALUES
from lineproof.claims.cost import LOST, MISTAKE, SAFE
from lineproof.claims.kinds import (
    better_is,
    compensation,
    development_lead,
    idea,
    nothing_to_fear,
    playable,
    trapped,
    verdict,
)
from lineproof.claims.passing import PAWN, POINTS
from lineproof.proof.effort import NEAR, Effort


def test_effort() -> None:
    assert Effort.SKETCH.steps == (40_000,)
    assert Effort.NORMAL.steps == (400_000, 1_600_000, 6_400_000)
    assert Effort.THOROUGH.steps == (4_000_000, 16_000_000, 64_000_000)
    assert NEAR == 3


def test_piece_values() -> None:
    assert [VALUES[piece] for piece in "pnbrq"] == [1, 3, 3, 5, 9]


@pytest.mark.parametrize(
    ("of", "edges"),
    [(Band.LEVEL, (45, 55)), (Band.SLIGHT, (55, 65)), (Band.CLEAR, (65, 85)), (Band.WINNING, (85, 101))],
)  # fmt: skip
def test_bands(of: Band, edges: tuple[int, int]) -> None:
    assert limits(of) == edges


def test_better_alone_is_53_and_unclear_30_to_70() -> None:
    def holds(degree: str) -> list[int]:
        return [p for p in range(101) if str(verdict.outcome(degree, p, False)[0]) == "holds"]

    assert holds("better") == list(range(53, 101))
    assert holds("unclear") == list(range(30, 71))


def test_result_classes_and_safe_moves() -> None:
    assert [result_class(p) for p in (14, 15, 84, 85)] == ["loss", "hold", "hold", "win"]
    assert [is_safe(60, p) for p in (55, 54)] == [True, False]
    assert [is_safe(91, 85), is_safe(91, 84), is_safe(90, 84)] == [True, False, False]
    assert (SAFE, LOST, MISTAKE) == (5, 15, 12)


@pytest.mark.parametrize(
    ("best", "played", "earned"),
    [
        (60, 55, Mark.GOOD), (60, 54, Mark.DUBIOUS), (60, 49, Mark.DUBIOUS), (60, 48, Mark.MISTAKE), (60, 31, Mark.MISTAKE), (60, 30, Mark.BLUNDER),
        (88, 82, Mark.MISTAKE), (25, 14, Mark.MISTAKE), (29, 14, Mark.BLUNDER),
    ],
)  # fmt: skip
def test_marks(best: int, played: int, earned: Mark) -> None:
    assert mark(best, played) is earned


def test_only_move_and_what_cannot_be_played() -> None:
    assert ALONE == 15
    assert playable.NOT_ON == 10


@pytest.mark.parametrize(
    ("amount", "least", "clean", "most"),
    [("pawn", 1, 1, None), ("exchange", 1, 1, 2.5), ("piece", 1, 2, None), ("rook", 3, 3, None), ("queen", 3, 3, None)],
)  # fmt: skip
def test_amounts(amount: str, least: float, clean: float, most: float | None) -> None:
    assert LEAST[amount] == (least, clean)
    assert MOST.get(amount) == most


def test_threats() -> None:
    assert (PAWN, POINTS) == (1, 15)


def test_compensation() -> None:
    assert compensation.FROM == {
        **compensation.FROM,
        "some": 35,
        "enough": 45,
        "more than enough": 55,
    }
    assert compensation.HEDGE == 5


def test_development_and_trapped_pieces() -> None:
    assert development_lead.LEAD == 2
    assert trapped.WITHIN == 8  # attacked within three moves of both sides, then taken


def test_within_five_points_nothing_is_better_and_nothing_is_feared() -> None:
    assert [str(better_is.outcome(60, p)) for p in (54, 55, 65, 66)] == ["holds", "unsettled", "unsettled", "fails"]  # fmt: skip
    assert [str(nothing_to_fear.outcome(60, p)) for p in (55, 54)] == ["holds", "fails"]
    assert [str(idea._outcome(60, p)) for p in (55, 54, 49, 48)] == ["holds", "unsettled", "unsettled", "fails"]  # fmt: skip
