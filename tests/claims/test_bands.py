"""Both sides of every edge. Edges: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.bands import (
    EDGES,
    Band,
    Mark,
    band,
    edge,
    is_only,
    is_safe,
    limits,
    mark,
    result_class,
)
from lineproof.claims.kinds.move_mark import outcome as mark_outcome
from lineproof.claims.kinds.verdict import BETTER, UNCLEAR, outcome

H, F, U = Outcome.HOLDS, Outcome.FAILS, Outcome.UNSETTLED


@pytest.mark.parametrize(
    ("points", "expected"),
    [
        (14, Band.LOSING),
        (15, Band.CLEARLY_WORSE),
        (34, Band.CLEARLY_WORSE),
        (35, Band.SLIGHTLY_WORSE),
        (44, Band.SLIGHTLY_WORSE),
        (45, Band.LEVEL),
        (54, Band.LEVEL),
        (55, Band.SLIGHT),
        (64, Band.SLIGHT),
        (65, Band.CLEAR),
        (84, Band.CLEAR),
        (85, Band.WINNING),
        (100, Band.WINNING),
    ],
)
def test_a_lower_edge_belongs_to_the_band(points: int, expected: Band) -> None:
    assert band(points) is expected
    lower, upper = limits(expected)
    assert lower <= points < upper


def test_bands_are_numbered_in_their_order_one_apart() -> None:
    rising = [*(name for _, name in EDGES), Band.WINNING]
    assert [int(name) for name in rising] == [-3, -2, -1, 0, 1, 2, 3]
    assert set(rising) == set(Band)


@pytest.mark.parametrize(
    ("points", "expected"), [(14, "loss"), (15, "hold"), (84, "hold"), (85, "win")]
)
def test_result_classes(points: int, expected: str) -> None:
    assert result_class(points) == expected


@pytest.mark.parametrize(
    ("degree", "points", "expected"),
    [
        (Band.WINNING, 85, H),
        (Band.WINNING, 84, U),
        (Band.WINNING, 65, U),
        (Band.WINNING, 64, F),
        (Band.CLEAR, 85, U),
        (Band.CLEAR, 65, H),
        (Band.CLEAR, 64, U),
        (Band.CLEAR, 55, U),
        (Band.CLEAR, 54, F),
        (Band.SLIGHT, 55, H),
        (Band.SLIGHT, 54, U),
        (Band.SLIGHT, 44, F),
        (Band.SLIGHT, 85, F),
        (Band.LEVEL, 45, H),
        (Band.LEVEL, 55, U),
        (Band.LEVEL, 65, F),
        (Band.LEVEL, 34, F),
        (BETTER, 53, H),
        (BETTER, 52, U),
        (BETTER, 44, F),
        (UNCLEAR, 30, H),
        (UNCLEAR, 70, H),
        (UNCLEAR, 71, F),
        (UNCLEAR, 29, F),
    ],
)
def test_a_verdict_holds_in_its_band_is_unsettled_one_off_and_fails_two_off(
    degree: object, points: int, expected: Outcome
) -> None:
    assert outcome(degree, points, hedged=False)[0] is expected


@pytest.mark.parametrize(
    ("degree", "points", "expected"),
    [
        (Band.SLIGHT, 50, H),  # five points wider
        (Band.SLIGHT, 49, U),
        (Band.SLIGHT, 44, F),  # the wrong side still fails
        (Band.CLEAR, 86, U),  # the wrong result class is not forgiven
        (Band.WINNING, 84, U),
        (BETTER, 50, H),
        (BETTER, 49, U),  # the wrong side is not forgiven
    ],
)
def test_a_hedge_widens_a_band_by_five_but_never_the_side_or_the_result(
    degree: object, points: int, expected: Outcome
) -> None:
    assert outcome(degree, points, hedged=True)[0] is expected


@pytest.mark.parametrize(
    ("best", "played", "expected"),
    [
        (60, 55, Mark.GOOD),
        (60, 54, Mark.DUBIOUS),
        (60, 49, Mark.DUBIOUS),
        (60, 48, Mark.MISTAKE),
        (60, 31, Mark.MISTAKE),
        (60, 30, Mark.BLUNDER),
        (88, 82, Mark.MISTAKE),  # a result class lost at a cost above 5
        (95, 85, Mark.GOOD),  # best above 90 and still 85: safe
        (90, 84, Mark.MISTAKE),
        (95, 84, Mark.MISTAKE),
        (28, 14, Mark.MISTAKE),  # hold turned to loss, but below 15
        (29, 14, Mark.BLUNDER),
    ],
)
def test_a_mark_is_earned_by_its_cost(best: int, played: int, expected: Mark) -> None:
    assert mark(best, played) is expected


@pytest.mark.parametrize(
    ("best", "played", "safe"),
    [(60, 55, True), (60, 54, False), (91, 85, True), (90, 84, False), (91, 84, False)],
)
def test_safe_moves(best: int, played: int, safe: bool) -> None:
    assert is_safe(best, played) is safe


# the cost and the band both count: 65 to 84 lie in one band, and 85 to 100
@pytest.mark.parametrize(
    ("own", "second", "only"),
    [(60, 45, True), (60, 46, False), (84, 69, False), (85, 70, True), (100, 85, False)],
)
def test_an_only_move_leaves_the_next_best_far_behind_and_in_another_band(
    own: int, second: int, only: bool
) -> None:
    assert is_only(own, second) is only


@pytest.mark.parametrize(
    ("written", "best", "played", "expected"),
    [
        ("!", 60, 55, H),
        ("!", 60, 54, U),
        ("!", 60, 48, F),
        ("?", 60, 48, H),
        ("?", 60, 49, U),
        ("?", 60, 55, F),
        ("??", 60, 30, H),
        ("??", 60, 31, U),
        ("??", 60, 49, F),
        ("?!", 60, 54, H),
        ("?!", 60, 55, U),
        ("!?", 60, 46, H),
        ("!?", 60, 45, F),
    ],
)
def test_a_mark_one_off_is_unsettled(
    written: str, best: int, played: int, expected: Outcome
) -> None:
    assert mark_outcome(written, best, played, shallow=False)[0] is expected


def test_two_exclamation_marks_are_not_for_the_move_that_first_strikes_the_eye() -> None:
    assert mark_outcome("!!", 60, 60, shallow=False)[0] is H
    assert mark_outcome("!!", 60, 60, shallow=True)[0] is U


def test_the_distance_to_an_edge_is_that_to_the_nearest_other_answer() -> None:
    assert [edge(p, band) for p in (51, 52, 54, 55, 57, 58, 59)] == [4, 3, 1, 0, 2, 3, 4]
    assert edge(50, lambda p: True) == 100
