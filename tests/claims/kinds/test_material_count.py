"""Material on the board. Values: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

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


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White is not a pawn up.", Outcome.FAILS),
        ("Black is no longer a pawn up.", Outcome.HOLDS),
        ("White isn't two pawns up.", Outcome.HOLDS),
        ("Material is no longer level.", Outcome.HOLDS),
    ],
)
def test_a_denial_is_turned_round(judge: Judge, words: str, expected: Outcome) -> None:
    assert judge(PAWN_UP % words).outcome is expected


@pytest.mark.parametrize(
    "words", ["White was a pawn up.", "White will be a pawn up.", "White can be a pawn up."]
)
def test_what_was_or_will_be_is_not_counted_now(words: str) -> None:
    assert not claims_of(PAWN_UP % words)


def test_leaving_a_side_behind_counts_after_the_move(judge: Judge) -> None:
    finding = judge("1. e4 d5 {2. exd5 leaves Black a pawn down.} 2. exd5 *")
    assert finding.outcome is Outcome.HOLDS
