"""Agreement of our verdicts with the handbook verdicts of `tests/verdicts/handbook.json`.

    python benchmarks/verdicts.py [--nodes 400000] [--at-once 2]

Searches every position as a claim about it would be searched, and prints its verdict in the handbook, what
was found, and how far the two are apart; then counts by kind of opening and over all. `unclear` is
counted apart: it allows so much that an agreement there says little. The README beside the set says how it was
made. It is never used for tuning.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from enum import IntEnum
from itertools import repeat
from pathlib import Path
from typing import Any

import chess

from lineproof.claims import GameOver, Outcome, Spot
from lineproof.claims.bands import Band, band, seen_from
from lineproof.claims.kinds.verdict import UNCLEAR, outcome
from lineproof.engine import ENGINE_VERSION, Board, search

HANDBOOK = Path(__file__).resolve().parents[1] / "tests" / "verdicts" / "handbook.json"

DEGREES: dict[str, Any] = {
    "level": Band.LEVEL,
    "slight": Band.SLIGHT,
    "clear": Band.CLEAR,
    "winning": Band.WINNING,
    "unclear": UNCLEAR,
}
"""The degree that a claim with the handbook's word would have."""

COMPENSATION = {
    "some compensation": (Band.SLIGHTLY_WORSE, Band.SLIGHTLY_WORSE),
    "enough compensation": (Band.LEVEL, Band.WINNING),
}
"""Lowest and highest band of the side that is behind: some compensation leaves it slightly worse, enough
brings it to level or above (common practice)."""


class Agreement(IntEnum):
    """How far what was found is from a verdict; the nearest first."""

    IN_BAND = 0
    ONE_OFF = 1
    OFF = 2

    def __str__(self) -> str:
        return ("in band", "one off", "off")[self]


@dataclass(frozen=True, slots=True)
class Verdict:
    """A handbook verdict. side: "white", "black", or None for level and unclear."""

    word: str
    side: str | None

    @property
    def seen_by(self) -> str:
        """The side from which the bands are read: without a side White's, as in a claim."""
        return self.side or "white"

    def __str__(self) -> str:
        return self.word if self.side is None else f"{self.word}, {self.side.capitalize()}"


@dataclass(frozen=True, slots=True)
class Tabiya:
    """A position of the set. moves: SAN from the initial position. verdicts: the first, then one also accepted."""

    name: str
    kind: str
    moves: tuple[str, ...]
    verdicts: tuple[Verdict, ...]

    @property
    def unclear(self) -> bool:
        """Whether "unclear" is accepted, so that an agreement says little."""
        return any(verdict.word == UNCLEAR for verdict in self.verdicts)


@dataclass(frozen=True, slots=True)
class Judged:
    """A position with what was found. points: White's, 0 to 100."""

    tabiya: Tabiya
    points: int

    @property
    def nearest(self) -> Verdict:
        """The accepted verdict that fits best; of two that fit alike, one read from White's side."""
        return min(
            self.tabiya.verdicts,
            key=lambda verdict: (agreement(verdict, self.points), verdict.seen_by != "white"),
        )

    @property
    def agreement(self) -> Agreement:
        return agreement(self.nearest, self.points)

    @property
    def found(self) -> Verdict:
        """What was found in the handbook's words, its band read from the side of the nearest verdict."""
        side = self.nearest.seen_by
        stands = band(seen_from(side, self.points))
        if stands is Band.LEVEL:
            return Verdict("level", None)
        other = "black" if side == "white" else "white"
        return Verdict(Band(abs(stands)).name.lower(), side if stands > 0 else other)


@dataclass(frozen=True, slots=True)
class Count:
    """Positions in band, within one band (those in band too), and in all."""

    in_band: int
    within_one: int
    of: int


def tabiyas(entries: Sequence[dict[str, Any]]) -> list[Tabiya]:
    """The positions of the set, from its JSON."""
    return [
        Tabiya(
            entry["name"],
            entry["kind"],
            tuple(word for word in entry["moves"].split() if not word.endswith(".")),
            tuple(
                Verdict(each["verdict"], each["side"])
                for each in (entry, entry.get("also"))
                if each is not None
            ),
        )
        for entry in entries
    ]


def agreement(verdict: Verdict, points: int) -> Agreement:
    """How far a score of White's, 0 to 100, is from a verdict.

    :raises KeyError: when the set has no such word.
    """
    seen = seen_from(verdict.seen_by, points)
    if verdict.word in COMPENSATION:
        lowest, highest = COMPENSATION[verdict.word]
        bands_off = max(lowest - band(seen), band(seen) - highest, 0)
        return Agreement(min(bands_off, Agreement.OFF))
    said, one_off = outcome(DEGREES[verdict.word], seen, hedged=False)
    if said is Outcome.HOLDS:
        return Agreement.IN_BAND
    return Agreement.ONE_OFF if one_off else Agreement.OFF


def points_found(tabiya: Tabiya, nodes: int) -> int:
    """White's points after best play: the search that a claim's first step asks for.

    :raises GameOver: when there is nothing to search.
    """
    spot = Spot(chess.STARTING_FEN, (), Board(chess.STARTING_FEN))
    for san in tabiya.moves:
        spot = spot.play(spot.board.parse_san(san))
    fen, moves = spot.short
    answer = search(fen, moves, nodes=nodes)
    if not answer.lines:
        raise GameOver(f"{tabiya.name}: {answer.finished}")
    return answer.lines[0].points


def judge(positions: Sequence[Tabiya], nodes: int, at_once: int) -> list[Judged]:
    """Searches all positions, so many at once in processes of their own; progress on standard error."""
    judged = []
    with ProcessPoolExecutor(at_once) as pool:
        found = pool.map(points_found, positions, repeat(nodes))
        for tabiya, points in zip(positions, found, strict=True):
            judged.append(Judged(tabiya, points))
            print(f"\r{len(judged)} of {len(positions)}", end="", file=sys.stderr, flush=True)
    print(file=sys.stderr)
    return judged


def count(judged: Sequence[Judged]) -> Count:
    in_band = sum(each.agreement is Agreement.IN_BAND for each in judged)
    one_off = sum(each.agreement is Agreement.ONE_OFF for each in judged)
    return Count(in_band, in_band + one_off, len(judged))


def counts(judged: Sequence[Judged]) -> dict[str, Count]:
    """By kind of opening in the set's order, then "all", both without the unclear positions; then "unclear"."""
    definite = [each for each in judged if not each.tabiya.unclear]
    kinds = dict.fromkeys(each.tabiya.kind for each in judged)
    return {
        **{kind: count([e for e in definite if e.tabiya.kind == kind]) for kind in kinds},
        "all": count(definite),
        "unclear": count([each for each in judged if each.tabiya.unclear]),
    }


def rows_of(judged: Sequence[Judged]) -> Iterator[tuple[str, ...]]:
    yield "kind", "position", "handbook", "points", "found", "agreement"
    for each in judged:
        tabiya = each.tabiya
        handbook = " or ".join(map(str, tabiya.verdicts))
        points, found = f"{each.points:3}", str(each.found)
        yield tabiya.kind, tabiya.name, handbook, points, found, str(each.agreement)


def summary_of(judged: Sequence[Judged]) -> Iterator[tuple[str, ...]]:
    yield "kind", "in band", "within one band"
    for kind, found in counts(judged).items():
        in_band = f"{found.in_band} of {found.of}"
        if kind == "unclear":  # it has no neighbouring band
            yield "unclear, apart", in_band, "-"
        else:
            yield kind, in_band, f"{found.within_one} of {found.of}"


def aligned(rows: Iterator[tuple[str, ...]]) -> str:
    """Rows of equal length as columns of text."""
    table = list(rows)
    widths = [max(map(len, column)) for column in zip(*table, strict=True)]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in table
    )


def positive(text: str) -> int:
    number = int(text)
    if number < 1:
        raise argparse.ArgumentTypeError("must be 1 or more")
    return number


def main() -> int:
    parser = argparse.ArgumentParser(description="Agreement with the handbook verdicts.")
    parser.add_argument("--nodes", type=positive, default=400_000, help="nodes a position")
    parser.add_argument("--at-once", type=positive, default=2, help="positions searched at once")
    options = parser.parse_args()

    positions = tabiyas(json.loads(HANDBOOK.read_text(encoding="utf-8")))
    judged = judge(positions, options.nodes, options.at_once)
    print(
        f"engine version {ENGINE_VERSION}, {options.nodes:,} nodes a position; points are White's"
    )
    print(f"\n{aligned(rows_of(judged))}\n\n{aligned(summary_of(judged))}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
