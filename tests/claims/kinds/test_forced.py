"""Forced: one legal move, or a recapture without which material is gone."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# the Fried Liver (from memory): 6. Nxf7 attacks queen and rook
FRIED = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 {%s} Kxf7 7. Qf3+ *"
ONE_MOVE = "6k1/5pp1/8/8/8/8/8/R3K3 w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "Black must recapture.",
        "Black is obliged to recapture.",
        "Black is forced to take.",
        "Black has to take the knight.",
        "Black has no choice but to take.",
        "6... Kxf7 is forced.",
        "The recapture is forced.",
        "Black has no choice.",
        "Kxf7 is compulsory.",
        "Black must take with the king.",
    ],
)
def test_a_recapture_without_which_material_is_gone_is_forced(judge: Judge, words: str) -> None:
    finding = judge(FRIED % words)
    assert (finding.claim.kind, finding.claim.side) == ("forced", "black")
    assert finding.claim.params["moves"] == ("e8f7",)
    assert finding.outcome is Outcome.HOLDS
    assert "gone" in finding.because


def test_the_only_legal_move_is_forced(judge: Judge) -> None:
    finding = judge("1. Ra8+ Kh7 {This is forced.} *", setup=ONE_MOVE)
    assert finding.outcome is Outcome.HOLDS
    assert finding.because == "Kh7 is the only legal move."


def test_a_free_choice_is_not_forced(judge: Judge) -> None:
    finding = judge("1. e4 e5 {This is forced.} 2. Nf3 *")
    assert finding.outcome is Outcome.FAILS
    assert (
        finding.judgement.instead is not None and "can be played too" in finding.judgement.instead
    )
    assert judge("1. e4 e5 {This is not forced.} 2. Nf3 *").outcome is Outcome.HOLDS


def test_near_miss_an_only_move_is_not_quite_forced(judge: Judge) -> None:
    # the queen is attacked by a rook and must move: many moves are legal, and only taking the rook keeps the game
    setup = "4r1k1/5ppp/8/8/8/8/4Q3/6K1 w - - 0 1"
    finding = judge("1. Qxe8# {This is forced.} *", setup=setup)
    assert finding.outcome is Outcome.UNSETTLED
    assert finding.judgement.one_off


def test_a_recapture_that_loses_nothing_when_left_out_is_not_forced(judge: Judge) -> None:
    # bishop takes knight, and Black may take a bishop elsewhere instead
    setup = "4k3/1p6/2n2b2/8/B7/8/3B4/4K3 w - - 0 1"
    finding = judge("1. Bxc6+ {Black must recapture.} bxc6 *", setup=setup)
    assert finding.outcome is Outcome.HOLDS  # nothing else wins the piece back


@pytest.mark.parametrize(
    "words",
    [
        "White must recapture.",  # it is Black's turn, and White has nothing to take
        "Black must take care.",
        "Black must take on e5.",  # nothing of his can be taken there
        "Black is forced to suffer.",
    ],
)
def test_other_duties_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(FRIED % words) if c.kind == "forced"]
