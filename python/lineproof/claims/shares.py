"""Shares: what words of frequency mean in numbers, and whether a count bears them out.

What a word means is a range of the share that a move has among the games in which any move was played at the position. The
95 % interval of the share must lie inside the range, or outside it; where it does neither, the games are too few to tell.
"""

from __future__ import annotations

from .claim import Outcome, Played

NEARLY_ALWAYS = 90
"""Of 100 games; this number and all below are common practice, but for `LIKELY`."""
MOST = 50
OFTEN = 20
LIKELY = 5
"""A reply with so much is one that the audience meets: the limit of a likely reply."""
HARDLY = 1
ABOUT = 5
"""Points to both sides of a share that is said as a number; so much a hedge widens every range."""
MASTERS = (2200, 4000)
"""Ratings of masters: from the lowest title's on (FIDE Title Regulations, from memory)."""
BEGINNERS = (50, 1200)
"""Ratings of beginners (common practice)."""

RANGES: dict[str, tuple[float, float]] = {
    "nearly always": (NEARLY_ALWAYS, 100),
    "usually": (MOST, 100),
    "often": (OFTEN, 100),
    "likely": (LIKELY, 100),
    "sometimes": (HARDLY, MOST),
    "not often": (0, OFTEN),
    "rarely": (0, LIKELY),
    "hardly ever": (0, HARDLY),
}
_WORDINGS = ("nearly always", "usually", "often", "hardly ever", "rarely", "sometimes")
"""What can be said instead, those that say the most first."""


def inside(interval: tuple[float, float], low: float, high: float) -> Outcome:
    """Whether an interval lies in a range; the lower end belongs to the range, the upper to the next one."""
    least, most = interval
    if (low <= 0 or least >= low) and (high >= 100 or most < high):
        return Outcome.HOLDS
    if most < low or least >= high:
        return Outcome.FAILS
    return Outcome.UNSETTLED


def meaning(degree: str) -> str:
    """ "fewer than 5 of 100"."""
    low, high = RANGES[degree]
    if low == 0:
        return f"fewer than {high:g} of 100"
    if high < 100:
        return f"{low:g} up to {high:g} of 100"
    return f"{low:g} of 100 or more"


def counted(found: Played, move: str) -> str:
    """ "3. Bc4 was played in 812 of 1,204 games of the collection club, 67.4 of 100 (95 % interval 64.7 to 70.0)"."""
    low, high = found.share
    return (
        f"{move} was played in {found.times:,} of {found.games:,} {'game' if found.games == 1 else 'games'}{between(found)}"
        f" of the collection {found.collection}, {share(found.times, found.games)} of 100"
        f" (95 % interval {low:.1f} to {high:.1f})"
    )


def share(times: int, of: int) -> str:
    """Of 100, with one decimal."""
    return f"{100 * times / of:.1f}"


def between(found: Played) -> str:
    """ " between players rated 1300 to 1699"; "" where all games count."""
    if found.ratings is None:
        return ""
    low, high = found.ratings
    if low <= BEGINNERS[0]:
        return f" between players rated below {high}"
    if high >= MASTERS[1]:
        return f" between players rated {low} and more"
    return f" between players rated {low} to {high - 1}"


def wording(found: Played, move: str, but: str | None) -> str | None:
    """What the games do bear out, where they bear out anything; not the word `but`."""
    for degree in _WORDINGS:
        if degree != but and inside(found.share, *RANGES[degree]) is Outcome.HOLDS:
            return f"{move} is {degree} played here: in {found.times:,} of {found.games:,} games."
    return None
