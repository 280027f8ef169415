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


@pytest.mark.parametrize(
    "words",
    [
        "Black, though a pawn behind, stands well.",
        "A pawn up, White can relax.",
        "So that's us a pawn up.",
        "How is Black doing? A pawn down.",
        "White's extra pawn is a trump.",
        "Black is a pawn light.",
        "White has a pawn more than Black.",
    ],
)
def test_who_is_ahead_is_said_in_many_places(judge: Judge, words: str) -> None:
    finding = judge(PAWN_UP % words, kind="material-count")
    assert (finding.claim.side, finding.outcome) == ("white", Outcome.HOLDS)


@pytest.mark.parametrize(
    "words",
    [
        "A pawn up would be nice.",
        "White hopes to end up a pawn ahead.",
        "The pawn moves up to d6.",
        "White is two moves ahead in development.",
    ],
)
def test_near_miss_what_is_hoped_for_or_counts_something_else(words: str) -> None:
    assert "material-count" not in [c.kind for c in claims_of(PAWN_UP % words)]


def test_an_extra_queen_is_one_whatever_was_given_for_it(judge: Judge) -> None:
    setup = "3qk3/8/8/8/8/8/8/2BBKN2 w - - 0 1"
    text = "{%s} 1. Kf2 *"
    assert judge(text % "Black's extra queen is a trump.", setup=setup).outcome is Outcome.HOLDS
    assert judge(text % "White's extra queen is a trump.", setup=setup).outcome is Outcome.FAILS
