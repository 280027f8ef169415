"""Backward pawns. Definition: "Backward Pawn", Chess Programming Wiki (from memory), made exact in the kind."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# Sicilian Defence, Sveshnikov Variation: the pawn on d6 is the textbook's backward pawn (from memory)
SVESHNIKOV = "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 d6 {%s} 7. Bg5 *"


@pytest.mark.parametrize(
    "words",
    [
        "Black has a backward pawn on d6.",
        "The pawn on d6 is backward.",
        "The d6-pawn lags behind.",
        "Black's d-pawn is a backward pawn.",
        "This leaves Black with a backward d-pawn.",
        "The pawn on d6 has been left behind.",
        "There is a backward pawn on d6.",
    ],
)
def test_a_pawn_left_behind_and_held_is_backward(judge: Judge, words: str) -> None:
    finding = judge(SVESHNIKOV % words)
    assert (finding.claim.kind, finding.claim.side) == ("backward-pawn", "black")
    assert finding.outcome is Outcome.HOLDS
    assert "the pawn on e4 holds d5" in finding.because


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("The pawn on b7 is backward.", "the pawn on a7 level with it"),
        ("White has a backward pawn.", "White has no backward pawn."),
    ],
)
def test_other_pawns_are_not(judge: Judge, words: str, why: str) -> None:
    finding = judge(SVESHNIKOV % words)
    assert finding.outcome is Outcome.FAILS
    assert why in finding.because


def test_a_pawn_that_can_step_forward_safely_is_not_backward(judge: Judge) -> None:
    words = "{The pawn on d6 is backward.} 1. Kd2 *"
    held = "4k3/8/3p4/4p3/4P3/8/8/4K3 w - - 0 1"
    free = "4k3/8/3p4/4p3/5P2/8/8/4K3 w - - 0 1"
    alone = "4k3/8/3p4/8/4P3/8/8/4K3 w - - 0 1"
    assert judge(words, setup=held).outcome is Outcome.HOLDS
    assert judge(words, setup=free).because == "The pawn on d6 can step to d5 safely."
    assert "isolated" in judge(words, setup=alone).because


def test_a_piece_before_it_or_more_attackers_than_protectors_hold_it_too(judge: Judge) -> None:
    words = "{The pawn on d6 is backward.} 1. Kd2 *"
    blockaded = "4k3/8/3p4/3Np3/8/8/8/4K3 w - - 0 1"
    attacked = "4k3/8/3p4/4p3/8/2N5/8/4K3 w - - 0 1"
    protected = "4k3/8/1n1p4/4p3/8/2N5/8/4K3 w - - 0 1"
    assert judge(words, setup=blockaded).outcome is Outcome.HOLDS
    assert judge(words, setup=attacked).outcome is Outcome.HOLDS
    assert judge(words, setup=protected).outcome is Outcome.FAILS


def test_a_denial(judge: Judge) -> None:
    finding = judge(SVESHNIKOV % "The pawn on d6 is not backward.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words", ["This is a backward step.", "White lags behind.", "The d-pawn could be backward."]
)
def test_left_unread(words: str) -> None:
    assert not [c for c in claims_of(SVESHNIKOV % words) if c.kind == "backward-pawn"]
