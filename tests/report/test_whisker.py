"""A dot stands where its share is, and its line reaches as far as the interval."""

from __future__ import annotations

import pytest

from lineproof.collection import Interval, wilson
from lineproof.report.whisker import WIDTH, scale, whisker


@pytest.mark.parametrize(
    ("share", "low", "high", "drawn"),
    [
        (50, 42, 61, "·         ·      ───•────     ·         ·"),
        (0, 0, 2.4, "•─        ·         ·         ·         ·"),
        (100, 90, 100, "·         ·         ·         ·     ────•"),
        (25, 25, 25, "·         •         ·         ·         ·"),
        (33, 0, 100, "─────────────•───────────────────────────"),
    ],
)
def test_the_dot_stands_at_the_share(share: float, low: float, high: float, drawn: str) -> None:
    assert whisker(share, Interval(low, high)) == drawn


def test_the_numbers_stand_above_their_ticks() -> None:
    empty = whisker(25, Interval(25, 25))
    for number in (0, 25, 50, 75, 100):
        at = scale().index(str(number)) + len(str(number)) // 2
        assert empty[min(at, WIDTH - 1)] in "·•", number


def test_the_line_is_never_shorter_than_the_interval_by_more_than_half_a_column() -> None:
    for games in (1, 7, 90, 1200):
        for times in (0, games // 3, games):
            interval = wilson(times, games)
            drawn = whisker(100 * times / games, interval)
            line = [place for place, cell in enumerate(drawn) if cell in "─•"]
            column = 100 / (WIDTH - 1)
            assert line[0] * column == pytest.approx(interval.low, abs=column / 2 + 0.01)
            assert line[-1] * column == pytest.approx(interval.high, abs=column / 2 + 0.01)
