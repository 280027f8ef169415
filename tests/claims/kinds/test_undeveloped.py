"""Undeveloped pieces: those on their first squares. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import kinds_of

# the queen's knight has been out and home again
ITALIAN = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Nc3 Bc5 5. Nb1 {%s} d6 *"


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Black's bishop on c8 is still at home.", Outcome.HOLDS),
        ("Black's queen's bishop is undeveloped.", Outcome.HOLDS),
        ("Black has not developed his queen's bishop yet.", Outcome.HOLDS),
        ("The bishop on c4 is undeveloped.", Outcome.FAILS),
        ("The knight on b1 is undeveloped.", Outcome.HOLDS),
        ("White's queen's knight has not stirred.", Outcome.FAILS),  # near miss: it has come back
        ("White's queen's bishop has not stirred.", Outcome.HOLDS),
        ("White's queenside is still asleep.", Outcome.HOLDS),
        ("Black's pieces are still at home.", Outcome.FAILS),
        ("All his pieces are at home except the knights.", Outcome.FAILS),
        ("Black has developed nothing.", Outcome.FAILS),
        ("Black is undeveloped.", Outcome.FAILS),
        ("Black's knights are not at home.", Outcome.HOLDS),
        ("The bishop on c4 has been developed.", Outcome.HOLDS),
        ("The knight on b1 is out.", Outcome.FAILS),
        ("Black's light-squared bishop is still at home.", Outcome.HOLDS),
        ("Black's dark-squared bishop is still at home.", Outcome.FAILS),
        ("Our rooks are at home.", Outcome.HOLDS),
    ],
)
def test_first_squares_decide(judge: Judge, words: str, expected: Outcome) -> None:
    finding = judge(ITALIAN % words)
    assert finding.claim.kind == "undeveloped"
    assert finding.outcome is expected


@pytest.mark.parametrize(
    ("moves", "expected"),
    [("1. e4 e5 2. Nf3 Nf6", Outcome.HOLDS), ("1. e4 e5 2. Nf3 Nf6 3. Bc4 Bc5", Outcome.FAILS)],
)
def test_one_piece_out_is_still_undeveloped_and_two_are_not(
    judge: Judge, moves: str, expected: Outcome
) -> None:
    assert judge(f"{moves} {{Black is undeveloped.}} *").outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "The knight has moved.",
        "The queen is out.",  # whose?
        "The knight is out of play.",
        "The pawn on d2 is at home.",
        "I feel at home here.",
    ],
)
def test_other_homes_are_not_read(words: str) -> None:
    assert "undeveloped" not in kinds_of(ITALIAN % words)
