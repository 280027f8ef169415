"""Mate threats: what happens if the opponent passes."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge

SCHOLAR = "1. e4 e5 2. Qh5 Nc6 3. Bc4 {%s} g6 *"


@pytest.mark.parametrize(
    "words",
    [
        "White threatens mate.",
        "White threatens mate on f7.",
        "The threat is Qxf7 mate.",
        "This threatens mate.",
        "We threaten Qxf7 mate.",
    ],
)
def test_a_true_threat_holds(judge: Judge, words: str) -> None:
    finding = judge(SCHOLAR % words)
    assert finding.outcome is Outcome.HOLDS
    assert "Qxf7" in finding.because


def test_a_threat_on_another_square_fails(judge: Judge) -> None:
    assert judge(SCHOLAR % "White threatens mate on e5.").outcome is Outcome.FAILS


def test_a_threat_of_another_move_fails(judge: Judge) -> None:
    assert judge(SCHOLAR % "The threat is Qxe5 mate.").outcome is Outcome.FAILS


def test_near_miss_a_defended_square_is_no_threat(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Qh5 Nc6 3. Bc4 Qe7 4. Nf3 {White threatens mate.} d6 *")
    assert finding.outcome is Outcome.FAILS


def test_a_side_in_check_is_not_asked(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. f4 Qh4+ {Black threatens mate.} 3. g3 *", taught="black")
    assert finding.outcome is Outcome.UNSETTLED


def test_a_denied_threat_is_not_read() -> None:
    from tests.claims.conftest import claims_of

    assert not claims_of(SCHOLAR % "White does not threaten mate.")
    assert not claims_of(SCHOLAR % "White no longer threatens mate.")
