"""Unprotected pieces. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.board import attackers, defenders
from lineproof.engine import Board
from tests.claims.conftest import Judge

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
