"""The bishop pair. Definition: "Bishop Pair", Chess Programming Wiki (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

TAKES = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 {%s} dxc6 5. O-O *"
TAKEN = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {%s} 5. O-O *"


@pytest.mark.parametrize(
    "words",
    [
        "Black has the bishop pair.",
        "Black has both bishops.",
        "Black enjoys the advantage of the two bishops.",
        "In return Black has the pair of bishops.",
        "Black keeps the bishop pair.",
        "This leaves Black with the bishop pair.",
    ],
)
def test_a_side_with_both_bishops_has_the_pair(judge: Judge, words: str) -> None:
    finding = judge(TAKEN % words)
    assert (finding.claim.kind, finding.claim.side) == ("bishop-pair", "black")
    assert finding.outcome is Outcome.HOLDS
    assert finding.because == "Black has the bishop on c8 and the bishop on f8."


@pytest.mark.parametrize(
    "words",
    [
        "White gives up the bishop pair.",
        "We give up the bishop pair.",
        "Bxc6 gives up the bishop pair.",
        "White has given up the bishop pair for doubled pawns.",
        "This costs White the bishop pair.",
    ],
)
def test_giving_it_up_is_seen_after_the_recapture(judge: Judge, words: str) -> None:
    finding = judge(TAKES % words)
    assert (finding.claim.side, finding.claim.negated) == ("white", True)
    assert finding.outcome is Outcome.HOLDS
    assert finding.because == "After dxc6: the bishop on c1 is White's only bishop."


def test_getting_it_asks_that_the_other_side_has_not(judge: Judge) -> None:
    finding = judge(TAKES % "This gives Black the bishop pair.")
    assert finding.outcome is Outcome.HOLDS
    assert finding.because.startswith("After dxc6: ")
    start = "1. e4 {%s} e5 *"
    assert judge(start % "White has the advantage of the bishop pair.").outcome is Outcome.FAILS
    has = judge(start % "White has the bishop pair.")
    assert has.outcome is Outcome.HOLDS
    assert has.judgement.second == "Black has both bishops too."


def test_false_claims_and_denials(judge: Judge) -> None:
    assert judge(TAKEN % "White has the bishop pair.").outcome is Outcome.FAILS
    assert judge(TAKES % "Black gives up the bishop pair.").outcome is Outcome.FAILS
    gone = judge(TAKEN % "White no longer has the bishop pair.")
    assert gone.claim.negated
    assert gone.outcome is Outcome.HOLDS


def test_two_bishops_of_one_colour_are_no_pair(judge: Judge) -> None:
    words = "{White has the bishop pair.} 1. Kf1 *"
    both_dark = "4k3/8/8/8/8/4B3/1B6/4K3 w - - 0 1"
    assert judge(words, setup=both_dark).outcome is Outcome.FAILS
    assert judge(words, setup="4k3/8/8/8/8/4B3/4B3/4K3 w - - 0 1").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words", ["White would have the bishop pair.", "A pair of bishops smiled at us."]
)
def test_left_unread(words: str) -> None:
    assert not claims_of(TAKEN % words)
