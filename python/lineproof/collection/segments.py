"""Questions to the segments of a collection: DuckDB reads their Parquet files, the engine their games."""

from __future__ import annotations

import threading
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from lineproof._engine import SegmentGames
from lineproof.collection.figures import BAND, STEP, Audience, Tally
from lineproof.collection.manifest import Segment

if TYPE_CHECKING:
    import duckdb

CUT = 24
"""Bits of a key that the files of rare positions lack."""
ORDER = 65535
"""In the files of examples: not a move, but a move order."""


@dataclass(frozen=True)
class Visit:
    """A game that reaches a position."""

    segment: int
    game: int
    before: tuple[str, ...]
    move: str | None
    result: str
    white: int
    black: int
    year: int
    plies: int

    @property
    def tally(self) -> Tally:
        ratings = [rating for rating in (self.white, self.black) if rating]
        return Tally(
            1,
            int(self.result == "1-0"),
            int(self.result == "1/2-1/2"),
            int(self.result == "0-1"),
            len(ratings),
            sum(ratings),
        )

    @property
    def band(self) -> int | None:
        """As in `Figures.by_rating`."""
        if not (self.white and self.black):
            return None
        bands = self.white // BAND + self.black // BAND
        return bands * (BAND // 2) // STEP * STEP


KINDS = ("move", "band", "year")
"""Of totals, by number."""

Cells = dict[tuple[str, int], Tally]
"""By ("move", bits), ("band", points) and ("year", year)."""


class Segments:
    """Those of one state of a collection, opened."""

    def __init__(self, folder: Path, segments: Sequence[Segment]) -> None:
        self._folder = folder
        self._segments = segments
        self._games: dict[int, SegmentGames] = {}
        self._lock = threading.Lock()
        self._connection: duckdb.DuckDBPyConnection | None = None

    def close(self) -> None:
        if self._connection is not None:
            self._connection.close()
            self._connection = None

    def _ask(self, question: str) -> list[tuple[int, ...]]:
        with self._lock:
            if self._connection is None:
                import duckdb

                self._connection = duckdb.connect(
                    config={
                        "threads": "2",
                        "memory_limit": "200MB",
                        "preserve_insertion_order": "true",
                    }
                )
                self._connection.execute("SET parquet_metadata_cache = true")
            found: list[tuple[int, ...]] = self._connection.execute(question).fetchall()
            return found

    def _files(self, kind: str, key: int) -> list[str]:
        """The files that may have a key, one of each segment, as SQL writes them."""
        found = []
        for segment in self._segments:
            part = key >> (64 - segment.bits) if segment.bits else 0
            path = self._folder / segment.name / f"{kind}-{part:02x}.parquet"
            found.append("'" + str(path).replace("'", "''") + "'")
        return found

    def cells(self, key: int, audience: Audience | None) -> Cells:
        """What the positions of many games count, by move, by rating and by year."""
        if not self._segments:
            return {}
        rows = self._ask(self._totals(key) if audience is None else self._figures(key, audience))
        return {(KINDS[kind], value): Tally(*map(int, sums)) for kind, value, *sums in rows}

    def _totals(self, key: int) -> str:
        return (
            "SELECT kind, value, sum(games), sum(white), sum(draws), sum(black), sum(rated), sum(rating_sum)"
            f" FROM read_parquet([{', '.join(self._files('totals', key))}])"
            f" WHERE key = {key} GROUP BY kind, value"
        )

    def _figures(self, key: int, audience: Audience) -> str:
        # as whole numbers the sums would be of 128 bits, and slower
        low, high = audience.low // BAND, audience.high // BAND - 1
        inner = (
            f"SELECT move, (white_band::INT + black_band) * {BAND // 2} // {STEP} * {STEP} AS band, year,"
            " games::DOUBLE AS games, white::DOUBLE AS white, draws::DOUBLE AS draws, black::DOUBLE AS black,"
            " (white_sum + black_sum)::DOUBLE AS rating"
            f" FROM read_parquet([{', '.join(self._files('figures', key))}]) WHERE key = {key}"
            f" AND white_band BETWEEN {low} AND {high} AND black_band BETWEEN {low} AND {high}"
        )
        sums = "sum(games), sum(white), sum(draws), sum(black), 2 * sum(games), sum(rating)"
        parts = [
            f"SELECT {kind} AS kind, {name} AS value, {sums} FROM rows GROUP BY {name}"
            for kind, name in enumerate(("move", "band", "year"))
        ]
        return f"WITH rows AS MATERIALIZED ({inner}) {' UNION ALL '.join(parts)}"

    def rare(self, key: int) -> list[Visit]:
        """The games that reach a position, in the segments in which they are few."""
        if not self._segments:
            return []
        questions = [
            f"SELECT {number} AS segment, game FROM read_parquet({file}) WHERE prefix = {key >> CUT}"
            for number, file in enumerate(self._files("rare", key))
        ]
        by_segment: dict[int, list[int]] = {}
        for number, game in self._ask(" UNION ALL ".join(questions)):
            by_segment.setdefault(number, []).append(game)
        return [
            visit
            for number, games in sorted(by_segment.items())
            for visit in self.visits(number, key, sorted(games))
        ]

    def visits(self, number: int, key: int, games: Sequence[int]) -> list[Visit]:
        """Those of some games of a segment that reach a position."""
        return [
            Visit(number, game, tuple(before), move, result, white, black, year, plies)
            for game, before, move, result, white, black, year, plies in self.games(number).visits(
                key, games
            )
        ]

    def examples(self, key: int) -> tuple[list[Visit], list[tuple[Visit, int]]]:
        """Of a position of many games: its model games; and its move orders, an example and the games of each."""
        if not self._segments:
            return [], []
        questions = [
            f"SELECT {number} AS segment, move, game, games FROM read_parquet({file}) WHERE key = {key}"
            for number, file in enumerate(self._files("examples", key))
        ]
        models: list[Visit] = []
        orders: list[tuple[Visit, int]] = []
        for number, move, game, games in self._ask(" UNION ALL ".join(questions)):
            for visit in self.visits(number, key, [game]):
                if move == ORDER:
                    orders.append((visit, games))
                else:
                    models.append(visit)
        return models, orders

    def games(self, number: int) -> SegmentGames:
        """The games of a segment."""
        with self._lock:
            if number not in self._games:
                self._games[number] = SegmentGames(self._folder / self._segments[number].name)
            return self._games[number]
