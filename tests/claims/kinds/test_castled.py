"""Who has castled. Source: FIDE Laws of Chess, article 3.8.2."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of
from tests.claims.kinds.sketching import kinds_of, outcome

ITALIAN = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 {%s} d6 *"


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White has castled.", Outcome.HOLDS),
        ("White is castled short.", Outcome.HOLDS),
        ("White's king has castled.", Outcome.HOLDS),
        ("Black has castled.", Outcome.FAILS),
        ("White has castled long.", Outcome.FAILS),  # near miss: the other wing
        ("Black has not castled yet.", Outcome.HOLDS),
        ("Black hasn't castled.", Outcome.HOLDS),
        ("Black has yet to castle.", Outcome.HOLDS),
        ("Black is still uncastled.", Outcome.HOLDS),
        ("White is not castled.", Outcome.FAILS),
    ],
)
def test_the_moves_tell_who_has_castled(judge: Judge, words: str, expected: Outcome) -> None:
    finding = judge(ITALIAN % words)
    assert finding.claim.kind == "castled"
    assert finding.outcome is expected


def test_both_sides_are_two_claims() -> None:
    both = claims_of(ITALIAN % "Both sides have castled.")
    assert [(c.side, c.negated) for c in both] == [("white", False), ("black", False)]
    neither = claims_of(ITALIAN % "Neither side has castled.")
    assert [(c.side, c.negated) for c in neither] == [("white", True), ("black", True)]


def test_castling_is_told_of_the_move_just_played(judge: Judge) -> None:
    assert (
        judge("1. Nf3 Nf6 2. g3 g6 3. Bg2 Bg7 4. O-O {White castles.} *").outcome is Outcome.HOLDS
    )


def test_what_lies_before_a_set_up_position_is_not_known(judge: Judge) -> None:
    setup = "r4rk1/8/8/8/8/8/8/R3K2R w KQ - 0 1"
    assert judge("1. Ke2 {Black has castled.} *", setup=setup).outcome is Outcome.UNSETTLED
    assert judge("1. Ke2 {White has castled.} *", setup=setup).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "White castles.",
        "Black must castle.",
        "If Black has castled, all is well.",
        "Black would castle.",
    ],
)
def test_castling_that_may_come_is_not_read(words: str) -> None:
    assert "castled" not in kinds_of(ITALIAN % words)


SHORT = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O {%s} d6 *"


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("We have gone short.", Outcome.HOLDS),
        ("White has brought his king to the kingside.", Outcome.HOLDS),
        ("We have gone long.", Outcome.FAILS),
    ],
)
def test_going_short_is_castling(words: str, expected: Outcome) -> None:
    assert outcome("castled", SHORT % words) is expected
