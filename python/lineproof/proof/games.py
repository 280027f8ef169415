"""The games that a run asks: one collection, of those that the lesson's audience plays."""

from __future__ import annotations

import threading
from typing import TYPE_CHECKING

from lineproof.claims import Played, Spot
from lineproof.collection.collection import PLIES, Collection
from lineproof.collection.figures import Audience, Figures
from lineproof.collection.interval import Interval, wilson

if TYPE_CHECKING:
    from lineproof.lesson import Lesson


class Games:
    """Answers from a collection, for several threads. Nothing of them is kept from run to run: a look-up costs
    milliseconds, and the collection may have changed."""

    def __init__(self, collection: Collection, audience: int | None) -> None:
        """audience: a rating; None counts all games.

        :raises lineproof.collection.CollectionError: when there is no such collection, or it is damaged.
        """
        self._collection = collection
        self._audience = None if audience is None else Audience.of(audience)
        self._lock = threading.Lock()
        self._known: dict[tuple[int, Audience | None], Figures] = {}
        self.name = collection.name
        self.state = collection.state
        self.games = collection.games

    @staticmethod
    def of(collection: Collection, lesson: Lesson) -> Games:
        """Those of the lesson's audience, where the lesson says whom it is for; else all."""
        return Games(collection, _audience_of(lesson))

    def suit(self, lesson: Lesson) -> bool:
        """Whether these are the games of the lesson's audience, as it is now."""
        whom = _audience_of(lesson)
        return self._audience == (None if whom is None else Audience.of(whom))

    @property
    def identity(self) -> str:
        """Which games these are: another when the collection has changed, or the audience."""
        return f"{self.name}, {self.state}, {self.ratings}"

    @property
    def ratings(self) -> tuple[int, int] | None:
        """Of both players, from and below; None when all games count."""
        return None if self._audience is None else (self._audience.low, self._audience.high)

    def played(self, spot: Spot, uci: str, ratings: tuple[int, int] | None = None) -> Played:
        """See `lineproof.claims.Ask.played`.

        :raises lineproof.collection.CollectionError: when a file of the collection is damaged.
        """
        audience = self._audience if ratings is None else Audience(*ratings)
        figures = self._figures(spot, audience)
        moves = {move.uci: move.games for move in figures.moves}
        games, times = sum(moves.values()), moves.pop(uci, 0)
        rival = max(moves, key=lambda move: (moves[move], move), default=None)
        rival_times = 0 if rival is None else moves[rival]
        board = spot.board
        ply = 2 * (board.move_number - 1) + (board.turn == "black")
        return Played(
            collection=self.name,
            ratings=None if audience is None else (audience.low, audience.high),
            beyond=not figures.games and ply >= PLIES,
            games=games,
            times=times,
            share=_interval(times, games),
            rival=rival,
            rival_times=rival_times,
            ahead=_interval(times, times + rival_times),
        )

    def _figures(self, spot: Spot, audience: Audience | None) -> Figures:
        key = (spot.board.key, audience)
        with self._lock:
            if key not in self._known:
                self._known[key] = self._collection.look(spot.board, audience=audience)
            return self._known[key]


def _audience_of(lesson: Lesson) -> int | None:
    settings = lesson.settings
    return settings.audience if settings.audience_said else None


def _interval(times: int, of: int) -> tuple[float, float]:
    found = wilson(times, of) if of else Interval(0.0, 100.0)
    return found.low, found.high
