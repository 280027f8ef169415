"""What the games of a collection say of one position, counted."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.collection.interval import Interval, wilson

BAND = 50
"""Rating points by which games are counted apart."""
NEAR = 200
"""The audience's games: their players are within so many points of its rating."""
STEP = 200
"""Rating points of a line of `Figures.by_rating`."""


@dataclass(frozen=True)
class Audience:
    """Ratings from `low` to below `high`, both players'."""

    low: int
    high: int

    @staticmethod
    def of(rating: int) -> Audience:
        """Of an audience's rating, outward to whole bands."""
        low = (rating - NEAR) // BAND * BAND
        high = -(-(rating + NEAR) // BAND) * BAND
        return Audience(max(low, BAND), high)

    def holds(self, white: int, black: int) -> bool:
        return all(self.low <= rating < self.high for rating in (white, black))


@dataclass(frozen=True)
class Tally:
    """Games, added up. Ratings are summed over the rated players, each by himself."""

    games: int = 0
    white: int = 0
    draws: int = 0
    black: int = 0
    rated: int = 0
    rating_sum: int = 0

    def __add__(self, other: Tally) -> Tally:
        return Tally(
            self.games + other.games,
            self.white + other.white,
            self.draws + other.draws,
            self.black + other.black,
            self.rated + other.rated,
            self.rating_sum + other.rating_sum,
        )

    @property
    def score(self) -> Score | None:
        """None when no game has a known result."""
        known = self.white + self.draws + self.black
        return Score(known, self.white, self.draws, self.black) if known else None

    @property
    def rating(self) -> int | None:
        """Average of the rated players."""
        return round(self.rating_sum / self.rated) if self.rated else None


@dataclass(frozen=True)
class Score:
    """White's, of the games whose result is known."""

    games: int
    white: int
    draws: int
    black: int

    @property
    def points(self) -> float:
        """Out of 100."""
        return 100 * (self.white + self.draws / 2) / self.games

    @property
    def interval(self) -> Interval:
        return wilson(self.white + self.draws / 2, self.games)


@dataclass(frozen=True)
class MoveFigures:
    """A move at the position."""

    uci: str
    san: str
    tally: Tally
    of: int
    """Games in which any move was played here."""

    @property
    def games(self) -> int:
        return self.tally.games

    @property
    def share(self) -> float:
        """In percent."""
        return 100 * self.games / self.of

    @property
    def interval(self) -> Interval:
        """Of the share."""
        return wilson(self.games, self.of)


@dataclass(frozen=True)
class Order:
    """Moves that lead to the position, and in how many games."""

    san: tuple[str, ...]
    games: int


@dataclass(frozen=True)
class Figures:
    """Of one position. Move orders are of all games, whatever the audience."""

    fen: str
    audience: Audience | None
    tally: Tally
    moves: tuple[MoveFigures, ...]
    """The most played first."""
    ended: int
    """Games that end here."""
    by_rating: tuple[tuple[int, Tally], ...]
    """By the average rating of both players: from so many points, up to `STEP` more. Games with both ratings."""
    by_year: tuple[tuple[int, Tally], ...]
    """Games whose year is known."""

    @property
    def games(self) -> int:
        return self.tally.games

    @property
    def score(self) -> Score | None:
        return self.tally.score

    def move(self, uci: str) -> MoveFigures | None:
        return next((move for move in self.moves if move.uci == uci), None)
