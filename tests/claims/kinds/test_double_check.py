"""Double checks. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

DOUBLE = "4k3/8/8/8/4N3/8/8/4R1K1 w - - 0 1"
SINGLE = "4k3/8/8/4N3/8/8/8/4R1K1 w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "Double check!",
        "It is double check.",
        "White gives a double check.",
        "1. Nf6 is a double check.",
        "The rook and the knight both give check.",
        "Rook and knight give check at the same time.",
        "Black's king is checked twice.",
        "The king is in double check.",
        "The king is checked by rook and knight at once.",
        "Both pieces check at once.",
    ],
)
def test_a_true_double_check_holds_and_names_both(words: str) -> None:
    finding = sketched("double-check", "1. Nf6+ {%s} Kd8 *" % words, setup=DOUBLE)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "white"
    assert "the rook on e1" in finding.because.lower() and "the knight on f6" in finding.because


@pytest.mark.parametrize("words", ["It is double check.", "The king is in double check."])
def test_near_miss_one_piece_alone_gives_the_check(words: str) -> None:
    finding = sketched("double-check", "1. Nc6+ {%s} Kd7 *" % words, setup=SINGLE)
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "Only the rook on e1 attacks Black's king on e8."


def test_no_check_is_no_double_check() -> None:
    assert outcome("double-check", "1. e4 {This is a double check.} *") is Outcome.FAILS


def test_a_denial_is_turned() -> None:
    movetext = "1. N%s {It's not a double check.} *"
    assert outcome("double-check", movetext % "f6+", setup=DOUBLE) is Outcome.FAILS
    assert outcome("double-check", movetext % "c6+", setup=SINGLE) is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Double-check the move order at home.",
        "If this were a double check, Black would have to move the king.",
        "I always double check my openings.",
    ],
)
def test_checking_twice_over_is_not_read(words: str) -> None:
    assert not read_as("double-check", "1. Nf6+ {%s} Kd8 *" % words, setup=DOUBLE)
