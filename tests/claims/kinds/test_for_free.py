"""Material for nothing: kept at its whole value."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

LOOSE = "4k3/5p2/8/3r4/8/8/6B1/4K3 w - - 0 1"
GUARDED = "4k3/5p2/2p5/3r4/8/8/6B1/4K3 w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "White takes the rook for free.",
        "White gets a rook for nothing.",
        "White pockets a rook at no cost.",
        "The rook on d5 is there for the taking.",
        "The rook on d5 is for free.",
        "White gets a free rook.",
        "White takes the rook on d5 with impunity.",
        "White pays nothing for the rook.",
    ],
)
def test_an_unprotected_rook_is_for_free(judge: Judge, words: str) -> None:
    finding = judge("{%s} 1. Bxd5 *" % words, setup=LOOSE)
    assert (finding.claim.kind, finding.claim.side) == ("for-free", "white")
    assert finding.outcome is Outcome.HOLDS


def test_near_miss_a_rook_that_costs_a_bishop_is_not_for_free(judge: Judge) -> None:
    finding = judge("{White takes the rook for free.} 1. Bxd5 *", setup=GUARDED)
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.instead is not None and "not for free" in finding.judgement.instead


def test_said_after_the_capture(judge: Judge) -> None:
    text = "1. Bxd5 {White takes the rook for free.} *"
    assert judge(text, setup=LOOSE).outcome is Outcome.HOLDS
    assert judge(text, setup=GUARDED).outcome is Outcome.FAILS


def test_a_denial_is_turned_round(judge: Judge) -> None:
    finding = judge("{White does not get the rook for free.} 1. Bxd5 *", setup=GUARDED)
    assert finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "White has a free hand.",
        "White gets a free pawn.",  # may be a passed one
        "The rook is free to move.",
        "The king on e1 is there for the taking.",
        "White takes the rook.",
    ],
)
def test_other_freedoms_are_not_read(words: str) -> None:
    claims = claims_of("{%s} 1. Bxd5 *" % words, setup=LOOSE)
    assert not [c for c in claims if c.kind == "for-free"]


@pytest.mark.parametrize(
    "words",
    ["A whole rook for absolutely nothing.", "That's a free rook.", "It's a free rook for White."],
)
def test_the_taker_need_not_be_named(judge: Judge, words: str) -> None:
    finding = judge("{%s} 1. Bxd5 *" % words, setup=LOOSE)
    assert (finding.claim.side, finding.outcome) == ("white", Outcome.HOLDS)
    assert judge("{%s} 1. Bxd5 *" % words, setup=GUARDED).outcome is Outcome.FAILS
