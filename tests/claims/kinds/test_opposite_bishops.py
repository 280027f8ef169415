"""Opposite-coloured bishops. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

UNLIKE = "4k3/5ppp/4b3/8/8/4B3/5PPP/4K3 w - - 0 1"
ALIKE = "4k3/5ppp/3b4/8/8/4B3/5PPP/4K3 w - - 0 1"
PAIR = "4k3/5ppp/4b3/8/8/4B3/4BPPP/4K3 w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "We have opposite-coloured bishops.",
        "There are opposite-coloured bishops on the board.",
        "The bishops are of opposite colours.",
        "The bishops are on different colours.",
        "This is an ending with bishops of opposite colours.",
    ],
)
def test_one_bishop_each_on_different_colours(judge: Judge, words: str) -> None:
    finding = judge("{%s} 1. Kd2 *" % words, setup=UNLIKE)
    assert finding.claim.kind == "opposite-bishops"
    assert finding.outcome is Outcome.HOLDS
    assert judge("{%s} 1. Kd2 *" % words, setup=ALIKE).outcome is Outcome.FAILS
    # near miss: White has a second bishop
    assert judge("{%s} 1. Kd2 *" % words, setup=PAIR).outcome is Outcome.FAILS


def test_the_same_colour_is_a_denial_that_asks_for_one_bishop_each(judge: Judge) -> None:
    words = "{The bishops are of the same colour.} 1. Kd2 *"
    assert judge(words, setup=ALIKE).outcome is Outcome.HOLDS
    assert judge(words, setup=UNLIKE).outcome is Outcome.FAILS
    assert judge(words, setup=PAIR).outcome is Outcome.FAILS


def test_a_denial(judge: Judge) -> None:
    words = "{The bishops are not of opposite colours.} 1. Kd2 *"
    assert judge(words, setup=UNLIKE).outcome is Outcome.FAILS
    assert judge(words, setup=ALIKE).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words", ["Both sides have opposite plans.", "We would have opposite-coloured bishops."]
)
def test_left_unread(words: str) -> None:
    assert not claims_of("{%s} 1. Kd2 *" % words, setup=UNLIKE)
