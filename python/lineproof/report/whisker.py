"""A dot with its whisker, in characters: a share of 100 and its interval. The sentence beside it says the same in numbers.

>>> whisker(50, Interval(42.0, 61.0))
'·         ·      ───•────     ·         ·'
"""

from __future__ import annotations

from lineproof.collection.interval import Interval

WIDTH = 41
"""Columns, from 0 to 100."""
_TICKS = (0, 25, 50, 75, 100)


def _column(share: float) -> int:
    return min(max(int(share * (WIDTH - 1) / 100 + 0.5), 0), WIDTH - 1)


def whisker(share: float, interval: Interval) -> str:
    """The dot stands at the share, the whisker reaches over the interval."""
    cells = [" "] * WIDTH
    for tick in _TICKS:
        cells[_column(tick)] = "·"
    for column in range(_column(interval.low), _column(interval.high) + 1):
        cells[column] = "─"
    cells[_column(share)] = "•"
    return "".join(cells).rstrip()


def scale() -> str:
    """The numbers above such pictures."""
    cells = [" "] * (WIDTH + 2)
    for tick in _TICKS:
        at = _column(tick) - len(str(tick)) // 2
        for place, digit in enumerate(str(tick), max(at, 0)):
            cells[place] = digit
    return "".join(cells).rstrip()
