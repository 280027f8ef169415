"""Material regained in the line shown. Values: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# the Budapest Gambit (trade name): Black has given a pawn and takes it back
BUDAPEST = "1. d4 Nf6 2. c4 e5 3. dxe5 Ng4 {%s} 4. Nf3 Nc6 5. e3 Ngxe5 6. Nxe5 Nxe5 *"
DONE = "1. d4 Nf6 2. c4 e5 3. dxe5 Ng4 4. Nf3 Nc6 5. e3 Ngxe5 6. Nxe5 Nxe5 {%s} 7. Be2 *"


@pytest.mark.parametrize(
    "words",
    [
        "Black regains the pawn.",
        "Black will win the pawn back.",
        "Black gets his pawn back.",
        "Black recovers the pawn.",
        "He wins back the pawn.",
        "Black is sure to regain the pawn.",
        "The pawn will be regained by Black.",
        "Black is going to regain his pawn.",
        "Black takes the pawn back sooner or later.",
        "Black can regain the pawn.",
    ],
)
def test_a_pawn_taken_back_in_the_line_shown(judge: Judge, words: str) -> None:
    finding = judge(BUDAPEST % words)
    assert (finding.claim.kind, finding.claim.side) == ("regains", "black")
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize("words", ["Black has regained the pawn.", "Black has the pawn back."])
def test_what_has_been_regained_is_on_the_board(judge: Judge, words: str) -> None:
    assert judge(DONE % words).outcome is Outcome.HOLDS
    finding = judge(BUDAPEST % words)
    assert finding.outcome is Outcome.FAILS
    assert "still" in finding.because


def test_a_side_that_lost_nothing_regains_nothing(judge: Judge) -> None:
    finding = judge(BUDAPEST % "White regains the pawn.")
    assert finding.outcome is Outcome.FAILS
    assert "was not behind" in finding.because


def test_near_miss_a_recapture_in_an_exchange_of_queens_regains_no_pawn(judge: Judge) -> None:
    setup = "3qk3/8/8/8/8/8/8/3QK3 w - - 0 1"
    text = "1. Qxd8+ Kxd8 {Black regains %s.} 2. Kd2 *"
    assert judge(text % "the pawn", setup=setup).outcome is Outcome.FAILS
    assert judge(text % "the queen", setup=setup).outcome is Outcome.HOLDS


def test_a_piece_is_not_regained_by_pawns(judge: Judge) -> None:
    assert judge(BUDAPEST % "Black regains a piece.").outcome is Outcome.FAILS


def test_a_denial_is_turned_round(judge: Judge) -> None:
    finding = judge(BUDAPEST % "Black does not regain the pawn.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "Black regains his composure.",
        "Black comes back.",
        "Black would like the pawn back.",
        "If Black regains the pawn, he is fine.",
    ],
)
def test_other_words_of_coming_back_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(BUDAPEST % words) if c.kind == "regains"]


@pytest.mark.parametrize(
    "words",
    [
        "We are getting our pawn back.",
        "The pawn will be won back.",
        "Black is about to recover the pawn.",
        "Black wins back one of the pawns.",
    ],
)
def test_it_comes_back_in_other_words(judge: Judge, words: str) -> None:
    assert judge(BUDAPEST % words, taught="black").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words", ["The pawn is not to be regained.", "White never sees the pawn again."]
)
def test_what_is_not_to_be_regained_is_denied(words: str) -> None:
    (claim,) = claims_of(BUDAPEST % words)
    assert (claim.kind, claim.negated) == ("regains", True)
