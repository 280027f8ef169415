"""Shut-in pieces. Definition: common practice; the count of squares is ours."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

PHILIDOR = "1. e4 e5 2. Nf3 d6 {%s} 3. d4 *"


@pytest.mark.parametrize(
    "words",
    [
        "2...d6 shuts in the bishop on f8.",
        "This shuts in the bishop.",
        "The bishop on f8 is shut in.",
        "Black's bishop on f8 is locked in behind its own pawns.",
        "The bishop on f8 is hemmed in by the d6 pawn.",
        "Black shuts the bishop in.",
        "The pawn on d6 shuts in the bishop on f8.",
        "The bishop on f8 is buried.",
        "Shutting in the bishop.",
        "Our bishop on f8 has hardly a move.",
    ],
)
def test_a_true_one_holds(words: str) -> None:
    finding = sketched("shut-in", PHILIDOR % words, "black")
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "black"
    assert finding.because == (
        "The bishop on f8 can go nowhere but to e7: the pawn on d6 and the pawn on g7 stand in its way."
    )


@pytest.mark.parametrize("words", ["The bishop on c8 is shut in.", "The bishop on f1 is buried."])
def test_a_piece_with_squares_is_not_shut_in(words: str) -> None:
    assert outcome("shut-in", PHILIDOR % words, "black") is Outcome.FAILS


def test_near_miss_two_squares_are_one_too_many() -> None:
    movetext = "1. e4 e5 2. Nf3 d6 3. d4 g6 4. Nc3 h6 {The bishop on f8 is shut in.} *"
    finding = sketched("shut-in", movetext, "black")
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "The bishop on f8 can go to e7 and g7."


def test_a_move_that_has_no_part_in_it_does_not_shut_it_in() -> None:
    movetext = "1. e4 e5 2. Nf3 d6 3. d4 h6 {The pawn on h6 shuts in the bishop on f8.} *"
    finding = sketched("shut-in", movetext, "black")
    assert finding.outcome is Outcome.FAILS
    assert "no part in it" in finding.because


def test_a_denial_is_turned() -> None:
    assert (
        outcome("shut-in", PHILIDOR % "The bishop on f8 isn't shut in.", "black") is Outcome.FAILS
    )
    assert (
        outcome("shut-in", PHILIDOR % "The bishop on c8 is not shut in.", "black") is Outcome.HOLDS
    )


@pytest.mark.parametrize(
    "words",
    [
        "The king on e8 is shut in.",
        "The bishop is shut in.",  # four bishops
        "This opens the door.",
        "Black locks in his bishop.",  # his or, in a lesson for Black, White's
        "The position is blocked.",
    ],
)
def test_what_is_not_clear_is_not_read(words: str) -> None:
    assert not read_as("shut-in", PHILIDOR % words, "black")
