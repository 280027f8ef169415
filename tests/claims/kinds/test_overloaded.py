"""Overloaded pieces. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

TWO = "6k1/3q1ppp/8/1b6/8/7P/5PP1/1R2R1K1 w - - 0 1"
"""The queen on d7 guards the bishop on b5 against the rook, and e8 against mate."""
HELPED = "r5k1/3q1ppp/8/1b6/8/7P/5PP1/1R2R1K1 w - - 0 1"
"""The same with a rook on a8, which guards e8 too."""
MOVETEXT = "{%s} 1. Rxb5 *"


@pytest.mark.parametrize(
    "words",
    [
        "The queen on d7 is overloaded.",
        "His queen has too much to do.",
        "Black's queen is overworked.",
        "The queen on d7 has two jobs.",
        "His queen can't guard both b5 and e8.",
        "The queen on d7 has to guard both the bishop and e8.",
        "His queen cannot be in two places at once.",
    ],
)
def test_a_true_overload_holds(words: str) -> None:
    finding = sketched("overloaded", MOVETEXT % words, setup=TWO)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "black"
    assert (
        finding.judgement.second
        == "White can use it: best play wins 3 pawns; the bishop on b5 falls."
    )


def test_near_miss_with_a_second_guard_one_duty_is_gone() -> None:
    finding = sketched("overloaded", MOVETEXT % "The queen on d7 is overloaded.", setup=HELPED)
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "The queen on d7 has to look after only the bishop on b5."
    named = sketched("overloaded", MOVETEXT % "His queen can't guard both b5 and e8.", setup=HELPED)
    assert named.outcome is Outcome.FAILS
    assert named.because == "The queen on d7 is not alone: the rook on a8 protects e8 too."


def test_a_duty_that_is_none_fails() -> None:
    words = "The queen on d7 guards both b5 and h7."
    finding = sketched("overloaded", MOVETEXT % words, setup=TWO)
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "The queen on d7 does not protect the pawn on h7."


def test_a_denial_is_turned() -> None:
    movetext = MOVETEXT % "The queen on d7 isn't overloaded."
    assert outcome("overloaded", movetext, setup=TWO) is Outcome.FAILS
    assert outcome("overloaded", movetext, setup=HELPED) is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "The club is overloaded on Tuesdays.",
        "You have too much to do already.",
        "If the queen on d7 were overloaded, we would win.",
        "White has two jobs here.",
    ],
)
def test_other_burdens_are_not_read(words: str) -> None:
    assert not read_as("overloaded", MOVETEXT % words, setup=TWO)


@pytest.mark.parametrize(
    "words",
    [
        "His queen is doing double duty.",
        "Two jobs the queen on d7 has.",
        "That overworked queen of his cannot hold everything.",
        "The queen on d7 has its hands full.",
    ],
)
def test_an_overload_is_said_in_many_ways(words: str) -> None:
    (claim,) = read_as("overloaded", MOVETEXT % words, setup=TWO)
    assert claim.params["at"] == "d7"


def test_one_duty_that_is_named_may_be_all_that_is_said() -> None:
    (claim,) = read_as(
        "overloaded", MOVETEXT % "The queen on d7 is tied to the defence of b5.", setup=TWO
    )
    assert claim.params["duties"] == ["b5"]
