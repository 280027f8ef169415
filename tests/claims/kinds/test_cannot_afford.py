"""What a side cannot afford: 10 points or more."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.cannot_afford import KIND
from tests.claims.conftest import Judge, Scripted, claims_of

TEXT = "1. e4 e5 {%s} 2. Nf3 *"


@pytest.mark.parametrize(
    ("words", "best", "played", "expected"),
    [
        ("White has no time for h3.", 60, 50, Outcome.HOLDS),
        ("White has no time for h3.", 60, 51, Outcome.FAILS),  # near miss: costs 9
        ("White has no time for h3.", 14, 0, Outcome.UNSETTLED),
        ("White can afford h3.", 60, 51, Outcome.HOLDS),
        ("White can afford h3.", 60, 50, Outcome.FAILS),
        ("h3 is not too slow.", 60, 51, Outcome.HOLDS),
    ],
)
def test_both_sides_of_the_edge(words: str, best: int, played: int, expected: Outcome) -> None:
    (claim,) = claims_of(TEXT % words)
    assert claim.kind == "cannot-afford"
    assert KIND.judge(claim, Scripted({"g1f3": best, "h2h3": played}, "g1f3")).outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "White cannot afford h3.",
        "White can't afford to play h3.",
        "We have no time for 2. h3.",
        "There is no time for h3.",
        "h3 is too slow.",
        "h3 is a luxury.",
        "White doesn't have time for h3.",
        "White hasn't the time for h3.",
        "White would love to play h3, but cannot.",
        "White cannot allow himself h3.",
        "h3 takes too long.",
    ],
)
def test_ways_to_say_it(words: str) -> None:
    (claim,) = claims_of(TEXT % words)
    assert (claim.side, claim.params["move"], claim.negated) == ("white", "h2h3", False)


def test_a_quiet_move_beside_mate_cannot_be_afforded(judge: Judge) -> None:
    text = "1. e4 e5 2. Qh5 Nc6 3. Bc4 {Black has no time for 3... a6.} 3... g6 *"
    assert judge(text).outcome is Outcome.HOLDS


def test_to_castle_is_a_move() -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 {White has no time to castle.} 4. Ng5 *")
    assert claim.params["move"] == "e1g1"


@pytest.mark.parametrize(
    "words",
    [
        "Black has no time for h3.",  # not his move
        "White has no time for tea.",
        "White is too slow.",
        "White has time.",
    ],
)
def test_other_lacks_of_time_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(TEXT % words) if c.kind == "cannot-afford"]
