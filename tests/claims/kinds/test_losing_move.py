"""Losing moves: less than 15 points after them."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.losing_move import check
from tests.claims.conftest import Judge, Scripted, claims_of

TEXT = "1. e4 e5 2. Nf3 {%s} *"
# White is mated on the next move
SCHOLAR = "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {%s} 4. Qxf7# *"


@pytest.mark.parametrize(
    ("words", "best", "played", "expected"),
    [
        ("Nf3 loses.", 50, 14, Outcome.HOLDS),
        ("Nf3 loses.", 50, 15, Outcome.UNSETTLED),  # near miss: clearly worse, one band off
        ("Nf3 loses.", 50, 35, Outcome.FAILS),
        ("Nf3 loses.", 10, 10, Outcome.HOLDS),  # so does everything else
        ("This is the decisive mistake.", 10, 8, Outcome.UNSETTLED),
        ("This is the decisive mistake.", 50, 14, Outcome.HOLDS),
        ("Nf3 does not lose.", 50, 15, Outcome.HOLDS),
        ("Nf3 does not lose.", 50, 14, Outcome.FAILS),
    ],
)
def test_both_sides_of_the_edge(words: str, best: int, played: int, expected: Outcome) -> None:
    (claim,) = claims_of(TEXT % words)
    assert claim.kind == "losing-move"
    assert check(claim, Scripted({"b1c3": best, "g1f3": played}, "b1c3")).outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "3... Nf6 loses on the spot.",
        "This loses at once.",
        "Nf6 is a losing move.",
        "Nf6 throws the game away.",
        "It costs Black the game.",
        "The knight move leaves Black lost.",
        "Nf6 is fatal.",
        "The decisive mistake was Nf6.",
        "This leads to a lost position.",
        "Nf6 would lose.",
    ],
)
def test_ways_to_say_it_hold_of_a_move_that_allows_mate(judge: Judge, words: str) -> None:
    finding = judge(SCHOLAR % words)
    assert (finding.claim.kind, finding.claim.side) == ("losing-move", "black")
    assert finding.outcome is Outcome.HOLDS
    assert "White is winning" in finding.because


def test_a_sound_move_does_not_lose(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Nf3 {This loses.} *")
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.instead is not None
    assert finding.judgement.instead.startswith("Nf3 does not lose the game")


@pytest.mark.parametrize(
    "words",
    [
        "This loses time.",
        "Nf6 loses its bite.",
        "If he is careless, it loses.",
        "It costs White the game.",  # the move is Black's
        "3... g6 is the main move, but it loses.",  # which move: g6, or the one just played?
    ],
)
def test_what_loses_something_else_or_another_is_not_read(words: str) -> None:
    assert not [c for c in claims_of(SCHOLAR % words) if c.kind == "losing-move"]
