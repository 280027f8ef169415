"""Frequency: read and counted, but unsettled without a collection of games."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import kinds_of

ITALIAN = "1. e4 e5 2. Nf3 Nc6 3. Bc4 {%s} Nf6 4. d3 *"


@pytest.mark.parametrize(
    ("words", "side", "degree"),
    [
        ("Bc4 is often played.", "white", "most"),
        ("Most people play Nf6 here.", "black", "most"),
        ("Nf6 is the most common reply.", "black", "most"),
        ("Bc4 is rarely seen among club players.", "white", "rare"),
        ("80 percent of players choose Nf6.", "black", None),
        ("You will often meet Nf6.", "black", None),
        ("The most popular move is Nf6.", "black", "most"),
        ("This move is seldom seen.", "white", "rare"),
        ("Few players choose Qh4.", "black", "rare"),
        ("Nf6 is rare.", "black", "rare"),
    ],
)
def test_how_often_a_move_is_played_waits_for_a_collection(
    judge: Judge, words: str, side: str, degree: str | None
) -> None:
    finding = judge(ITALIAN % words)
    assert (finding.claim.kind, finding.claim.side) == ("frequency", side)
    assert finding.claim.params["degree"] == degree
    assert finding.outcome is Outcome.UNSETTLED
    assert "no collection" in finding.because


def test_a_share_is_kept(judge: Judge) -> None:
    assert judge(ITALIAN % "80 percent of players choose Nf6.").claim.params["share"] == 80


@pytest.mark.parametrize(
    "words",
    [
        "White usually wins.",
        "Bc4 is never bad.",
        "I often lose here.",
        "120 percent of players choose Nf6.",
        "Most people play Nf3 badly.",
    ],
)
def test_other_habits_are_not_read(words: str) -> None:
    assert "frequency" not in kinds_of(ITALIAN % words)
