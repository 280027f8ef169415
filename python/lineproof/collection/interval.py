"""The interval of a share: that of Wilson (1927), "Probable inference, the law of succession, and statistical inference".

>>> wilson(50, 100)
Interval(low=40.383, high=59.617)
"""

from __future__ import annotations

import math
from dataclasses import dataclass

Z = 1.959963984540054
"""Of the normal distribution, for 95 %."""


@dataclass(frozen=True)
class Interval:
    """In percent."""

    low: float
    high: float


def wilson(successes: float, of: int) -> Interval:
    """The 95 % interval of a share; a draw counts as half a success.

    :raises ValueError: when there is nothing to share, or more successes than tries.
    """
    if of < 1 or not 0 <= successes <= of:
        raise ValueError(f"{successes} of {of} is no share")
    share = successes / of
    spread = Z * Z / of
    middle = (share + spread / 2) / (1 + spread)
    half = Z / (1 + spread) * math.sqrt(share * (1 - share) / of + spread / of / 4)
    return Interval(
        round(100 * max(0.0, middle - half), 3),
        round(100 * min(1.0, middle + half), 3),
    )
