"""Intervals are those of statsmodels (Wilson, 1927)."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from statsmodels.stats.proportion import proportion_confint

from lineproof.collection import Score, wilson


@given(
    st.integers(1, 10_000_000).flatmap(lambda of: st.tuples(st.integers(0, 2 * of), st.just(of)))
)
def test_wilson_is_that_of_statsmodels(case: tuple[int, int]) -> None:
    halves, of = case
    low, high = proportion_confint(halves / 2, of, alpha=0.05, method="wilson")
    found = wilson(halves / 2, of)
    assert found.low == pytest.approx(100 * max(low, 0), abs=6e-4)
    assert found.high == pytest.approx(100 * min(high, 1), abs=6e-4)
    assert 0 <= found.low <= 100 * halves / 2 / of + 1e-3
    assert 100 * halves / 2 / of - 1e-3 <= found.high <= 100


def test_a_draw_is_half_a_win() -> None:
    assert Score(4, 1, 2, 1).points == 50
    assert Score(4, 1, 2, 1).interval == wilson(2, 4)


@pytest.mark.parametrize(("successes", "of"), [(1, 0), (-1, 3), (4, 3)])
def test_what_is_no_share_is_refused(successes: int, of: int) -> None:
    with pytest.raises(ValueError, match="is no share"):
        wilson(successes, of)
