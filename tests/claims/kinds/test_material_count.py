"""Material on the board. Values: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge

PAWN_UP = "1. e4 d5 2. exd5 {%s} Nf6 *"
EXCHANGE = "4k3/8/8/8/8/8/8/R3K1b1 w - - 0 1"


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White is a pawn up.", Outcome.HOLDS),
        ("We are a clear pawn up.", Outcome.HOLDS),
        ("Black is a pawn down.", Outcome.HOLDS),
        ("White has an extra pawn.", Outcome.HOLDS),
        ("White is two pawns up.", Outcome.FAILS),
        ("Black is a pawn up.", Outcome.FAILS),
        ("Material is level.", Outcome.FAILS),
        ("White is a piece up.", Outcome.FAILS),
    ],
)
def test_pawns_are_counted_on_the_board(judge: Judge, words: str, expected: Outcome) -> None:
    assert judge(PAWN_UP % words).outcome is expected


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White is the exchange up.", Outcome.HOLDS),
        ("White is a rook up.", Outcome.FAILS),
        ("White is two pawns up.", Outcome.FAILS),
    ],
)
def test_near_miss_the_exchange_is_a_rook_for_a_minor_piece(
    judge: Judge, words: str, expected: Outcome
) -> None:
    assert judge("{%s} 1. Kd2 *" % words, setup=EXCHANGE).outcome is expected


def test_level_by_value_is_level(judge: Judge) -> None:
    finding = judge("1. e4 e5 {Material is level.} *")
    assert finding.outcome is Outcome.HOLDS


def test_a_denial_is_not_read() -> None:
    from tests.claims.conftest import claims_of

    assert not claims_of(PAWN_UP % "White is not a pawn up.")
