"""Games worth showing: decisive ones through a position, of strong players or short."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lineproof.collection.segments import Visit

DECISIVE = ("1-0", "0-1")
SHORTEST = 20
"""Plies; a shorter game shows nothing (our choice)."""


@dataclass(frozen=True)
class ModelGame:
    """A game through a position. Ratings and year are None where they are not known."""

    event: str
    site: str
    date: str
    round: str
    white: str
    black: str
    result: str
    white_rating: int | None
    black_rating: int | None
    year: int | None
    source: str
    before: tuple[str, ...]
    """Moves to the position, in SAN."""
    after: tuple[str, ...]
    """Moves from it, in SAN."""

    @property
    def plies(self) -> int:
        return len(self.before) + len(self.after)


def best(visits: Iterable[Visit], above: int | None, most: int) -> list[Visit]:
    """The decisive games of the highest average rating, both players' at least `above`; then the shortest of the others.

    Without ratings only brevity counts.
    """
    fit = {
        (visit.segment, visit.game): visit
        for visit in visits
        if visit.result in DECISIVE
        and visit.plies >= SHORTEST
        and (above is None or min(visit.white, visit.black) >= above)
    }
    rated = sorted(
        (visit for visit in fit.values() if visit.white and visit.black),
        key=lambda visit: (-(visit.white + visit.black), visit.segment, visit.game),
    )
    short = sorted(fit.values(), key=lambda visit: (visit.plies, visit.segment, visit.game))
    chosen: dict[tuple[int, int], Visit] = {}
    for one in [*rated[: (most + 1) // 2], *short, *rated]:
        if len(chosen) < most:
            chosen.setdefault((one.segment, one.game), one)
    return list(chosen.values())
