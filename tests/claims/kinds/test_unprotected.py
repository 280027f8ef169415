"""Unprotected pieces. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.board import attackers, defenders
from lineproof.engine import Board
from tests.claims.conftest import Judge, claims_of

ITALIAN = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 {%s} 4. O-O *"


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("The bishop on c5 is unprotected.", Outcome.HOLDS),
        ("Black's bishop on c5 is undefended.", Outcome.HOLDS),
        ("Nothing protects the bishop on c5.", Outcome.HOLDS),
        ("The pawn on e5 is unprotected.", Outcome.FAILS),
        ("The pawn on e5 is protected.", Outcome.HOLDS),
        ("The knight on c6 protects the pawn on e5.", Outcome.HOLDS),
        ("The bishop on c5 is protected.", Outcome.FAILS),
        ("The pawn on e5 isn't protected.", Outcome.FAILS),
        ("The bishop on c5 is hanging.", Outcome.FAILS),  # unprotected, but nothing attacks it
    ],
)
def test_protection_is_counted(judge: Judge, words: str, expected: Outcome) -> None:
    assert judge(ITALIAN % words).outcome is expected


def test_near_miss_one_defender_behind_another_is_named_apart() -> None:
    board = Board("3rk3/3r4/8/3p4/8/8/3Q4/3RK3 w - - 0 1")
    assert defenders(board, "d5") == (["d7"], ["d8"])
    assert attackers(board, "d5") == (["d2"], ["d1"])


def test_a_piece_that_is_not_there_is_not_judged() -> None:
    from tests.claims.conftest import claims_of

    assert [c.kind for c in claims_of(ITALIAN % "The rook on c5 is unprotected.")] == ["stale"]


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Nobody is looking after the bishop on c5.", Outcome.HOLDS),
        ("The bishop on c5 isn't protected by anything.", Outcome.HOLDS),
        ("The bishop on c5 lacks protection.", Outcome.HOLDS),
        ("The bishop on c5 has no defender.", Outcome.HOLDS),
        ("The bishop on c5 is standing there without any protection.", Outcome.HOLDS),
        ("The bishop on c5 is protected by nothing.", Outcome.HOLDS),
        ("This leaves the bishop on c5 unprotected.", Outcome.HOLDS),
        ("Nothing is guarding the pawn on e5.", Outcome.FAILS),
        ("The pawn on e5 is no longer protected.", Outcome.FAILS),
        ("The bishop on c5 is no longer unprotected.", Outcome.FAILS),
    ],
)
def test_a_lack_of_protection_is_said_in_many_ways(
    judge: Judge, words: str, expected: Outcome
) -> None:
    finding = judge(ITALIAN % words)
    assert finding.claim.kind == "unprotected"
    assert finding.outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "The bishop on c5 would be unprotected.",
        "The bishop on c5 was unprotected.",
        "Nothing does not protect the bishop on c5.",
    ],
)
def test_a_lack_of_another_time_is_not_read(words: str) -> None:
    from tests.claims.conftest import claims_of

    assert not claims_of(ITALIAN % words)


@pytest.mark.parametrize(
    "words",
    [
        "Keep your king covered.",
        "The black king has no help.",
        "The pawn on f7 can't be protected by another piece.",
    ],
)
def test_kings_and_what_may_come_are_left(words: str) -> None:
    game = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} *"
    assert "unprotected" not in {c.kind for c in claims_of(game % words)}
