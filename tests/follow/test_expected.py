"""What rating differences let expect: the published table."""

from __future__ import annotations

import pytest

from lineproof.follow.expected import expected


# FIDE Rating Regulations, table 8.1.2
@pytest.mark.parametrize(
    ("low", "high", "share"), [(0, 3, 0.50), (99, 106, 0.64), (198, 206, 0.76), (345, 357, 0.89)]
)
def test_the_published_steps(low: int, high: int, share: float) -> None:
    assert expected(low) == expected(high) == share
    assert expected(-low) == expected(-high) == pytest.approx(1 - share)
    if low:
        assert expected(low - 1) < share
    assert expected(high + 1) > share


def test_it_never_falls_as_the_difference_grows_and_ends_at_one() -> None:
    shares = [expected(difference) for difference in range(1000)]
    assert shares == sorted(shares)
    assert shares[0] == 0.5 and shares[735] == 0.99 and shares[736] == 1
