"""Advice against a move, with what it costs."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.not_recommended import check
from tests.claims.conftest import Judge, Scripted, claims_of

TEXT = "1. e4 e5 2. Nf3 {%s} *"


@pytest.mark.parametrize(
    ("played", "rival", "expected"),
    [
        (54, 60, Outcome.HOLDS),  # costs 6
        (55, 60, Outcome.UNSETTLED),  # near miss: costs 5, a matter of taste
        (60, 55, Outcome.UNSETTLED),  # another move is as good
        (60, 54, Outcome.FAILS),  # every other move is worse
    ],
)
def test_both_sides_of_the_edges(played: int, rival: int, expected: Outcome) -> None:
    (claim,) = claims_of(TEXT % "I do not recommend Nf3.")
    best = "b1c3" if rival > played else "g1f3"
    script = Scripted({"b1c3": rival, "g1f3": played}, best, "b1c3")
    assert check(claim, script).outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "I would leave Nf3 alone.",
        "I don't recommend Nf3.",
        "Nf3 is not recommended.",
        "Nf3 is not to be recommended.",
        "I can't recommend Nf3 to beginners.",
        "Avoid Nf3.",
        "Nf3 is unwise.",
        "I would steer clear of Nf3.",
        "I advise against Nf3.",
        "We would not play Nf3 here.",
        "Nf3 is best avoided.",
    ],
)
def test_ways_to_say_it(words: str) -> None:
    (claim,) = claims_of(TEXT % words)
    assert (claim.kind, claim.side, claim.params["move"]) == ("not-recommended", "white", "g1f3")
    assert not claim.negated


def test_the_cost_is_told(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Qh5 Nc6 {I would leave 3. Qxf7 alone.} 3. Bc4 *")
    assert finding.outcome is Outcome.HOLDS
    assert isinstance(finding.judgement.numbers["cost"], int)
    assert finding.judgement.numbers["cost"] >= 30


def test_a_denial_recommends() -> None:
    (claim,) = claims_of(TEXT % "Nf3 is not unwise.")
    assert claim.negated
    assert check(claim, Scripted({"b1c3": 60, "g1f3": 55}, "b1c3", "b1c3")).outcome is Outcome.HOLDS
    assert check(claim, Scripted({"b1c3": 60, "g1f3": 54}, "b1c3", "b1c3")).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "I recommend a good night's sleep.",
        "I would not play this opening.",
        "Avoid time trouble.",
        "Nf3 is advisable.",  # a recommendation
    ],
)
def test_other_advice_is_not_read(words: str) -> None:
    assert not [c for c in claims_of(TEXT % words) if c.kind == "not-recommended"]
