"""Isolated pawns. Definition: "Isolated Pawn", Chess Programming Wiki (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

LONE = "rnbqkb1r/pp3ppp/4pn2/8/3P4/2N5/PP3PPP/R1BQKBNR w KQkq - 0 6"
"""White's d-pawn has neither a c- nor an e-pawn beside it."""


@pytest.mark.parametrize(
    "words",
    [
        "White has an isolated pawn on d4.",
        "White has an isolated queen's pawn.",
        "White has accepted an isolated pawn in the centre.",
        "The d-pawn is isolated.",
        "Our d-pawn is an isolani.",
        "The pawn on d4 has no neighbours.",
        "There is an isolated pawn on d4.",
        "We are left with an isolani.",
    ],
)
def test_a_pawn_without_neighbours_is_isolated(judge: Judge, words: str) -> None:
    finding = judge("{%s} 1. Nf3 *" % words, setup=LONE)
    assert (finding.claim.kind, finding.claim.side) == ("isolated-pawn", "white")
    assert finding.outcome is Outcome.HOLDS
    assert "c- or e-file" in finding.because


@pytest.mark.parametrize(
    "words",
    ["Black has an isolani.", "The pawn on b2 is isolated.", "White has two isolated pawns."],
)
def test_other_pawns_are_not(judge: Judge, words: str) -> None:
    assert judge("{%s} 1. Nf3 *" % words, setup=LONE).outcome is Outcome.FAILS


def test_a_neighbour_two_files_away_is_none_and_one_beside_is(judge: Judge) -> None:
    far = "4k3/8/8/8/3P1P2/8/8/4K3 w - - 0 1"
    near = "4k3/8/8/8/3P4/2P5/8/4K3 w - - 0 1"
    words = "{The pawn on d4 is isolated.} 1. Kd2 *"
    assert judge(words, setup=far).outcome is Outcome.HOLDS
    finding = judge(words, setup=near)
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "The pawn on d4 has the pawn on c3 on a neighbouring file."


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("Black has no isolated pawns.", Outcome.HOLDS),
        ("The d-pawn is not isolated.", Outcome.FAILS),
        ("The d-pawn is no longer isolated.", Outcome.FAILS),
    ],
)
def test_denials(judge: Judge, words: str, outcome: Outcome) -> None:
    finding = judge("{%s} 1. Nf3 *" % words, setup=LONE)
    assert finding.claim.negated
    assert finding.outcome is outcome


@pytest.mark.parametrize(
    "words",
    [
        "The knight on c3 is isolated.",
        "The a-pawn is isolated.",  # whose?
        "An isolated example is no proof.",
        "The knight on c3 and the pawn on d4 are isolated.",
        "White would have an isolated pawn.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not claims_of("{%s} 1. Nf3 *" % words, setup=LONE)
