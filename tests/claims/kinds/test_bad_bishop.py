"""Bad bishops. Definition: "Bad Bishop", Chess Programming Wiki (from memory), made exact in the kind."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# French Defence, Advance Variation: the textbook's bad bishop on c8 (from memory)
FRENCH = "1. e4 e6 2. d4 d5 3. e5 {%s} c5 4. c3 *"


@pytest.mark.parametrize(
    "words",
    [
        "Black has a bad bishop.",
        "Black's bishop on c8 is bad.",
        "The bishop on c8 is a bad bishop.",
        "Black's light-squared bishop is bad.",
        "The bishop on c8 is hemmed in by its own pawns.",
        "His bad bishop is on c8.",
        "This leaves Black with a bad bishop.",
    ],
)
def test_a_bishop_of_the_colour_of_its_fixed_pawns_is_bad(judge: Judge, words: str) -> None:
    finding = judge(FRENCH % words)
    assert (finding.claim.kind, finding.claim.side) == ("bad-bishop", "black")
    assert finding.outcome is Outcome.HOLDS
    assert "on its colour are d5, e6, f7, those on the other c7" in finding.because


@pytest.mark.parametrize("words", ["The bishop on f8 is bad.", "The bishop on f1 is a bad bishop."])
def test_other_bishops_are_not(judge: Judge, words: str) -> None:
    assert judge(FRENCH % words).outcome is Outcome.FAILS


def test_without_a_fixed_pawn_no_bishop_is_bad(judge: Judge) -> None:
    words = "{Black has a bad bishop.} 1. Ke2 *"
    free = "2b1k3/5p2/4p3/3p4/8/8/3P4/4K3 w - - 0 1"
    fixed = "2b1k3/5p2/4p3/3p4/3P4/8/8/4K3 w - - 0 1"
    assert judge(words, setup=free).outcome is Outcome.FAILS
    assert judge(words, setup=fixed).outcome is Outcome.HOLDS


def test_a_denial(judge: Judge) -> None:
    assert judge(FRENCH % "The bishop on c8 is not bad.").outcome is Outcome.FAILS
    assert judge(FRENCH % "The bishop on f8 is not bad.").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "That is too bad.",
        "The bishop on c8 is a problem child.",
        "The light-squared bishop is bad.",  # whose?
        "The knight on g8 is bad.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not claims_of(FRENCH % words)
