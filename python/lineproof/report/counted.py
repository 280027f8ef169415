"""A count with its noun, in words.

>>> counted(1, "claim"), counted(3, "claim"), counted(1200, "search", "searches")
('1 claim', '3 claims', '1,200 searches')
"""

from __future__ import annotations

from collections.abc import Sequence


def counted(number: int, one: str, many: str | None = None) -> str:
    """The number and the noun in the right form. many: where it is not `one` and an s."""
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def listed(parts: Sequence[str]) -> str:
    """Parts of a sentence with commas and a last "and"."""
    return " and ".join(part for part in (", ".join(parts[:-1]), *parts[-1:]) if part)


def rare(percent: float) -> str:
    """A share of games that may be small: "4 in 100", "1 in 250"; no finer than two digits.

    >>> rare(3.7), rare(0.4), rare(0.00325), rare(0)
    ('4 in 100', '1 in 250', '1 in 31,000', 'fewer than 1 in 100,000')
    """
    if percent >= 1:
        return f"{percent:.0f} in 100"
    if percent <= 0.001:
        return "fewer than 1 in 100,000"
    games = round(100 / percent)
    return f"1 in {round(games, 2 - len(str(games))):,}"
