"""How verdicts found are counted against the handbooks' (benchmarks/verdicts.py), on both sides of the edges.

Edges: common practice. The scores are made up; only the last tests search, and none says how well the verdicts agree.
"""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest
from benchmarks.verdicts import (
    Agreement,
    Count,
    Judged,
    Tabiya,
    Verdict,
    agreement,
    counts,
    points_found,
    tabiyas,
)

IN, ONE, OFF = Agreement.IN_BAND, Agreement.ONE_OFF, Agreement.OFF
ROOT = Path(__file__).resolve().parents[2]

LEVEL, UNCLEAR = Verdict("level", None), Verdict("unclear", None)
SLIGHT, BLACK_SLIGHT = Verdict("slight", "white"), Verdict("slight", "black")


def judged(points: int, *verdicts: Verdict, kind: str = "open") -> Judged:
    return Judged(Tabiya("a position", kind, (), verdicts), points)


@pytest.mark.parametrize(
    ("verdict", "points", "expected"),
    [
        (LEVEL, 45, IN),
        (LEVEL, 54, IN),
        (LEVEL, 55, ONE),
        (LEVEL, 44, ONE),
        (LEVEL, 65, OFF),
        (LEVEL, 34, OFF),
        (SLIGHT, 55, IN),
        (SLIGHT, 64, IN),
        (SLIGHT, 54, ONE),
        (SLIGHT, 65, ONE),
        (SLIGHT, 84, ONE),
        (SLIGHT, 44, OFF),
        (SLIGHT, 85, OFF),
        (Verdict("clear", "white"), 65, IN),
        (Verdict("clear", "white"), 54, OFF),
        (Verdict("winning", "white"), 85, IN),
        (Verdict("winning", "white"), 84, ONE),
        (Verdict("winning", "white"), 64, OFF),
    ],
)
def test_a_verdict_is_in_band_one_off_or_off(
    verdict: Verdict, points: int, expected: Agreement
) -> None:
    assert agreement(verdict, points) is expected


@pytest.mark.parametrize(
    ("points", "expected"), [(45, IN), (36, IN), (46, ONE), (35, ONE), (56, OFF), (60, OFF)]
)
def test_a_verdict_for_black_is_read_from_blacks_side(points: int, expected: Agreement) -> None:
    assert agreement(BLACK_SLIGHT, points) is expected


@pytest.mark.parametrize(
    ("points", "expected"), [(29, OFF), (30, IN), (50, IN), (70, IN), (71, OFF)]
)
def test_unclear_is_never_one_band_off(points: int, expected: Agreement) -> None:
    assert agreement(UNCLEAR, points) is expected


@pytest.mark.parametrize(
    ("word", "side", "points", "expected"),
    [
        ("some compensation", "white", 35, IN),
        ("some compensation", "white", 44, IN),
        ("some compensation", "white", 45, ONE),
        ("some compensation", "white", 34, ONE),
        ("some compensation", "white", 55, OFF),
        ("some compensation", "white", 14, OFF),
        ("some compensation", "black", 60, IN),
        ("enough compensation", "white", 45, IN),
        ("enough compensation", "white", 90, IN),
        ("enough compensation", "white", 44, ONE),
        ("enough compensation", "white", 34, OFF),
        ("enough compensation", "black", 55, IN),
        ("enough compensation", "black", 56, ONE),
        ("enough compensation", "black", 66, OFF),
    ],
)
def test_some_compensation_is_slightly_worse_and_enough_is_level_or_above(
    word: str, side: str, points: int, expected: Agreement
) -> None:
    assert agreement(Verdict(word, side), points) is expected


def test_an_accepted_second_verdict_counts_as_much_as_the_first() -> None:
    assert judged(60, LEVEL).agreement is ONE
    assert judged(60, LEVEL, SLIGHT).agreement is IN
    assert judged(60, SLIGHT, LEVEL).agreement is IN
    assert judged(70, LEVEL, SLIGHT).agreement is ONE
    assert judged(90, LEVEL, SLIGHT).agreement is OFF


@pytest.mark.parametrize(
    ("points", "verdicts", "found"),
    [
        (50, (SLIGHT,), LEVEL),
        (40, (SLIGHT,), BLACK_SLIGHT),
        (90, (LEVEL,), Verdict("winning", "white")),
        (30, (LEVEL,), Verdict("clear", "black")),
        (45, (LEVEL,), LEVEL),
        (45, (BLACK_SLIGHT,), BLACK_SLIGHT),
        (55, (BLACK_SLIGHT, LEVEL), SLIGHT),
    ],
)
def test_the_band_found_is_the_one_that_decided(
    points: int, verdicts: tuple[Verdict, ...], found: Verdict
) -> None:
    assert judged(points, *verdicts).found == found


def test_the_counts_keep_unclear_apart_and_within_one_band_includes_in_band() -> None:
    found = counts(
        [
            judged(50, LEVEL),
            judged(60, LEVEL),
            judged(90, LEVEL),
            judged(50, UNCLEAR),
            judged(90, UNCLEAR, kind="gambit"),
            judged(60, LEVEL, SLIGHT, kind="gambit"),
            judged(50, LEVEL, UNCLEAR, kind="gambit"),
        ]
    )
    assert found == {
        "open": Count(1, 2, 3),
        "gambit": Count(1, 1, 1),
        "all": Count(2, 3, 4),
        "unclear": Count(2, 2, 3),
    }


def test_the_set_is_read_with_its_moves_and_both_verdicts() -> None:
    entry = {
        "name": "a line",
        "kind": "open",
        "moves": "1. e4 e5 2. Nf3",
        "verdict": "level",
        "side": None,
        "also": {"verdict": "slight", "side": "white", "reason": "Handbooks differ."},
    }
    assert tabiyas([entry]) == [Tabiya("a line", "open", ("e4", "e5", "Nf3"), (LEVEL, SLIGHT))]


# from memory: mate on the second move, and the queen left to a pawn; either is decided by the rules
@pytest.mark.parametrize(
    ("moves", "lowest", "highest"),
    [(("f3", "e5", "g4"), 0, 0), (("e4", "e5", "Qh5", "Nf6", "Qg6"), 0, 15)],
    ids=["Black mates", "Black takes the queen"],
)
def test_points_are_whites_whoever_moves(moves: tuple[str, ...], lowest: int, highest: int) -> None:
    assert lowest <= points_found(Tabiya("", "open", moves, (LEVEL,)), 2_000) <= highest


def test_the_program_lists_every_position_and_adds_them_up() -> None:
    ran = subprocess.run(
        [sys.executable, "benchmarks/verdicts.py", "--nodes", "100", "--at-once", "2"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    table, summary = ran.stdout.split("\n\n")[1:]
    said = re.findall(r"  (in band|one off|off)$", table, re.MULTILINE)
    assert len(said) == len(table.splitlines()) - 1 == 80
    rows = re.findall(r"^(.+?) {2,}(\d+) of (\d+) +(?:(\d+) of \d+|-)$", summary, re.MULTILINE)
    in_band, of = ({row[0]: int(row[at]) for row in rows} for at in (1, 2))
    assert in_band["all"] + in_band["unclear, apart"] == said.count("in band")
    assert of["all"] + of["unclear, apart"] == 80
    kinds = of.keys() - {"all", "unclear, apart"}
    assert sum(of[kind] for kind in kinds) == of["all"]
    assert sum(in_band[kind] for kind in kinds) == in_band["all"]
    assert ran.stderr.endswith("80 of 80\n")
