"""Passed pawns. Definition: "Passed Pawn", Chess Programming Wiki (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

FREE = "4k3/p4ppp/8/3P4/2P5/8/5PPP/4K3 w - - 0 1"
"""White's c- and d-pawn and Black's a-pawn are passed."""


@pytest.mark.parametrize(
    "words",
    [
        "White has a passed pawn on d5.",
        "White has a passed d-pawn.",
        "The pawn on d5 is passed.",
        "The pawn on d5 is a protected passed pawn.",
        "White has two connected passed pawns.",
        "We have a free pawn on d5.",
        "Our d-pawn is a passer.",
        "There is a passed pawn on d5.",
        "The pawn on d5 will be a passed pawn.",
    ],
)
def test_a_pawn_with_a_free_way_is_passed(judge: Judge, words: str) -> None:
    finding = judge("{%s} 1. Kd2 *" % words, setup=FREE)
    assert (finding.claim.kind, finding.claim.side) == ("passed-pawn", "white")
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "The pawn on f2 is passed.",
        "White has three passed pawns.",
        "The pawn on c4 is a protected passed pawn.",  # near miss: passed, but no pawn protects it
        "Black has a protected passed pawn.",
    ],
)
def test_other_pawns_are_not(judge: Judge, words: str) -> None:
    assert judge("{%s} 1. Kd2 *" % words, setup=FREE).outcome is Outcome.FAILS


def test_a_pawn_on_a_neighbouring_file_stands_in_the_way_while_it_is_ahead(judge: Judge) -> None:
    words = "{The pawn on e5 is passed.} 1. Kd2 *"
    ahead = "4k3/3p4/8/4P3/8/8/8/4K3 w - - 0 1"
    level = "4k3/8/8/3pP3/8/8/8/4K3 w - - 0 1"
    assert judge(words, setup=ahead).outcome is Outcome.FAILS
    assert "the pawn on d7" in judge(words, setup=ahead).because
    assert judge(words, setup=level).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("Black has no passed pawn.", Outcome.FAILS),
        ("The pawn on f2 is not passed.", Outcome.HOLDS),
    ],
)
def test_denials(judge: Judge, words: str, outcome: Outcome) -> None:
    finding = judge("{%s} 1. Kd2 *" % words, setup=FREE)
    assert finding.claim.negated
    assert finding.outcome is outcome


@pytest.mark.parametrize(
    "words",
    [
        "The moment has passed.",
        "White gets a free pawn.",  # a pawn for nothing
        "Black could have a passed pawn.",
        "The c-pawn was passed.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not claims_of("{%s} 1. Kd2 *" % words, setup=FREE)
