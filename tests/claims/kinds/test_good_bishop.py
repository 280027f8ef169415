"""Good bishops. Definition: the bad bishop's, turned round."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

FRENCH = "1. e4 e6 2. d4 d5 3. e5 {%s} c5 4. c3 *"


@pytest.mark.parametrize(
    "words",
    [
        "White has a good bishop.",
        "The bishop on f1 is a good bishop.",
        "The bishop on f1 is the good one.",
        "White's light-squared bishop is his good bishop.",
        "White has the good bishop on f1.",
    ],
)
def test_a_bishop_of_the_other_colour_than_its_pawns_is_good(judge: Judge, words: str) -> None:
    finding = judge(FRENCH % words)
    assert (finding.claim.kind, finding.claim.side) == ("good-bishop", "white")
    assert finding.outcome is Outcome.HOLDS
    assert "on the other f2, d4, e5" in finding.because


@pytest.mark.parametrize(
    "words", ["The bishop on c1 is a good bishop.", "The bishop on c8 is the good bishop."]
)
def test_other_bishops_are_not(judge: Judge, words: str) -> None:
    assert judge(FRENCH % words).outcome is Outcome.FAILS


def test_as_many_pawns_on_either_colour_make_it_neither(judge: Judge) -> None:
    setup = "4k3/8/8/8/3PP3/8/4B3/4K3 w - - 0 1"  # near miss: e4 is light, d4 is dark
    assert judge("{White has a good bishop.} 1. Kd2 *", setup=setup).outcome is Outcome.FAILS
    assert judge("{White has a bad bishop.} 1. Kd2 *", setup=setup).outcome is Outcome.FAILS


def test_a_denial(judge: Judge) -> None:
    finding = judge(FRENCH % "The bishop on c8 is not a good bishop.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    ["That is good.", "The bishop on f1 is well placed.", "White would have a good bishop."],
)
def test_left_unread(words: str) -> None:
    assert not [c for c in claims_of(FRENCH % words) if c.kind == "good-bishop"]
