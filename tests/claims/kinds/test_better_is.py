"""One move better than another: more than 5 points."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.better_is import check
from tests.claims.conftest import Judge, Scripted, claims_of

TEXT = "1. e4 e5 2. Nf3 {%s} *"


@pytest.mark.parametrize(
    ("words", "better", "worse", "expected"),
    [
        ("2. Nc3 is better than Nf3.", 60, 54, Outcome.HOLDS),
        ("2. Nc3 is better than Nf3.", 60, 55, Outcome.UNSETTLED),  # near miss: within 5 points
        ("2. Nc3 is better than Nf3.", 55, 60, Outcome.UNSETTLED),
        ("2. Nc3 is better than Nf3.", 54, 60, Outcome.FAILS),
    ],
)
def test_both_sides_of_the_edge(words: str, better: int, worse: int, expected: Outcome) -> None:
    (claim,) = claims_of(TEXT % words)
    assert (claim.kind, claim.side) == ("better-is", "white")
    script = Scripted({"b1c3": better, "g1f3": worse}, "b1c3")
    assert check(claim, script).outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "2. Nc3 was better.",
        "Better was Nc3.",
        "Nc3 improves on Nf3.",
        "White should have played Nc3.",
        "It was better to play Nc3.",
        "Nc3 is stronger.",
        "Nc3 is more accurate than Nf3.",
        "A better move was Nc3.",
        "Nc3 is much better than Nf3.",
        "White does better with Nc3.",
        "Nc3 would have been better.",
    ],
)
def test_what_it_is_compared_with_is_named_or_just_played(words: str) -> None:
    (claim,) = claims_of(TEXT % words)
    assert (claim.params["move"], claim.params["than"]) == ("b1c3", "g1f3")


def test_before_the_move_it_is_compared_with_the_one_shown() -> None:
    (claim,) = claims_of("1. e4 e5 {2. Nc3 is better.} 2. Nf3 *")
    assert (claim.params["move"], claim.params["than"]) == ("b1c3", "g1f3")
    assert not claims_of("1. e4 e5 {2. Nc3 is better.} *")  # better than what?


def test_a_queen_kept_is_better_than_a_queen_lost(judge: Judge) -> None:
    text = "1. e4 e5 2. Qh5 Nc6 3. Qxf7+ {%s} Kxf7 *"
    assert judge(text % "3. Bc4 was better.").outcome is Outcome.HOLDS
    finding = judge(text % "3. Qxf7 is better than Bc4.")
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.instead == "Bc4 is better than Qxf7+."
    denial = judge(text % "3. Bc4 is not better than Qxf7.")
    assert denial.claim.negated
    assert denial.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "White is better.",  # a verdict
        "Black is better off with Nc3.",
        "Nothing is better than Nf3.",  # the best move
        "Nf3 is better than Nf3.",
        "Nc3 is better for Black.",  # not his move
    ],
)
def test_other_meanings_of_better_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(TEXT % words) if c.kind == "better-is"]
