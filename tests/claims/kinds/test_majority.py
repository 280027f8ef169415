"""Pawn majorities. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# Ruy Lopez, Exchange Variation: four against three on the kingside (from memory)
EXCHANGE = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. d4 exd4 6. Qxd4 Qxd4 7. Nxd4 {%s} Bd7 *"


@pytest.mark.parametrize(
    ("words", "side"),
    [
        ("White has a kingside majority.", "white"),
        ("White has the pawn majority on the kingside.", "white"),
        ("White has a healthy majority on the kingside.", "white"),
        ("White has four against three on the kingside.", "white"),
        ("It is four against three on the kingside.", "white"),
        ("White has more pawns on the kingside.", "white"),
        ("White has an extra pawn on the kingside.", "white"),
        ("Black's queenside majority is crippled.", "black"),
        ("Black has four pawns against three on the queenside.", "black"),
    ],
)
def test_more_pawns_on_a_wing_are_a_majority(judge: Judge, words: str, side: str) -> None:
    finding = judge(EXCHANGE % words)
    assert (finding.claim.kind, finding.claim.side) == ("majority", side)
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Black has the majority on the kingside.",
        "White has five pawns against three on the kingside.",
        "White has a majority on the queenside.",
        "Black has a healthy majority on the queenside.",  # near miss: it is doubled
        "White's kingside majority is crippled.",
    ],
)
def test_false_majorities(judge: Judge, words: str) -> None:
    assert judge(EXCHANGE % words).outcome is Outcome.FAILS


def test_a_wing_is_counted_with_its_centre_pawn_or_without(judge: Judge) -> None:
    # a, b against a, b, c without the d-file; level with it
    setup = "4k3/ppp2ppp/8/8/8/8/PP1P1PPP/4K3 w - - 0 1"
    finding = judge("{Black has a queenside majority.} 1. Ke2 *", setup=setup)
    assert finding.outcome is Outcome.HOLDS
    assert finding.because == "Black has 3 pawns against 2 on the queenside (a to c)."


def test_soundness_is_a_second_finding(judge: Judge) -> None:
    finding = judge(EXCHANGE % "Black has a queenside majority.")
    assert finding.judgement.second is not None
    assert "doubled or isolated" in finding.judgement.second


def test_a_denial(judge: Judge) -> None:
    finding = judge(EXCHANGE % "Black has no majority on the kingside.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "The majority of my pupils like this.",
        "White has nothing against d4.",
        "White has three against three on the queenside.",
        "White would have a majority on the kingside.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not [c for c in claims_of(EXCHANGE % words) if c.kind == "majority"]
