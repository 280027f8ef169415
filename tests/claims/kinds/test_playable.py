"""Playable: no mistake. The marks' edges stand in test_bands."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.playable import check
from tests.claims.conftest import Judge, Scripted, claims_of

TEXT = "1. e4 e5 2. Nf3 {%s} *"


@pytest.mark.parametrize(
    ("words", "best", "played", "expected"),
    [
        ("Nf3 is playable.", 60, 49, Outcome.HOLDS),  # costs 11
        ("Nf3 is playable.", 60, 48, Outcome.FAILS),  # near miss: costs 12
        ("Nf3 is playable.", 20, 14, Outcome.FAILS),  # costs 6, and the game
        ("Nf3 is playable.", 14, 14, Outcome.UNSETTLED),  # lost anyway
        ("Nf3 cannot be played.", 60, 50, Outcome.HOLDS),  # costs 10
        ("Nf3 cannot be played.", 60, 51, Outcome.FAILS),
    ],
)
def test_both_sides_of_the_edges(words: str, best: int, played: int, expected: Outcome) -> None:
    (claim,) = claims_of(TEXT % words)
    assert claim.kind == "playable"
    assert check(claim, Scripted({"b1c3": best, "g1f3": played}, "b1c3")).outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "2. Nc3 can be played.",
        "2. Nc3 is playable too.",
        "White can also play Nc3.",
        "Nc3 is perfectly possible.",
        "Nc3 comes into consideration.",
        "Nc3 deserves attention.",
        "Nc3 is an option.",
        "There is nothing wrong with Nc3.",
        "Nc3 is worth a try.",
        "Another option is Nc3.",
    ],
)
def test_ways_to_say_it(words: str) -> None:
    (claim,) = claims_of(TEXT % words)
    assert (claim.kind, claim.params["move"], claim.negated) == ("playable", "b1c3", False)


def test_a_move_that_loses_the_queen_is_not_playable(judge: Judge) -> None:
    text = "1. e4 e5 2. Qh5 Nc6 {%s} 3. Bc4 *"
    assert judge(text % "3. Qxf7 is playable.").outcome is Outcome.FAILS
    assert judge(text % "3. Qxf7 is not playable.").outcome is Outcome.HOLDS
    assert judge(text % "3. Bc4 is playable.").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "White can play for the centre.",
        "Castling is possible.",  # nobody has castled
        "Black can play Nc3.",  # not his move
        "It is possible that Nc3 is better known.",
    ],
)
def test_other_meanings_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(TEXT % words) if c.kind == "playable"]
