"""What a rating difference lets expect: the share of points of the higher rated player.

FIDE Rating Regulations, 8.1.2 (from memory): whole hundredths by steps of the difference.

>>> expected(0), expected(100), expected(-100), expected(800)
(0.5, 0.64, 0.36, 1.0)
"""

from __future__ import annotations

from bisect import bisect_right

_STEPS = (
    0, 4, 11, 18, 26, 33, 40, 47, 54, 62, 69, 77, 84, 92, 99, 107, 114, 122, 130, 138, 146, 154, 163, 171, 180, 189, 198, 207, 216, 226, 236, 246, 257, 268, 279,
    291, 303, 316, 329, 345, 358, 375, 392, 412, 433, 457, 485, 518, 560, 620, 736,
)  # fmt: skip
"""The least difference with .50, .51, ... 1.00."""


def expected(difference: int) -> float:
    """The share of points (0 to 1) of a player rated so much higher than the opponent; negative: lower."""
    share = (49 + bisect_right(_STEPS, abs(difference))) / 100
    return share if difference >= 0 else round(1 - share, 2)
