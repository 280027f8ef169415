"""Kings in the centre: uncastled on the d- or e-file. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import kinds_of

ITALIAN = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 {%s} d6 *"
GAMBIT = "1. e4 e5 2. Nc3 Nf6 3. f4 exf4 4. e5 Qe7 5. Qe2 Ng8 6. g4 {%s} *"


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Black's king is still in the centre.", Outcome.HOLDS),
        ("His king stands in the middle.", Outcome.HOLDS),
        ("Black's king has not left the centre.", Outcome.HOLDS),
        ("White's king is in the centre.", Outcome.FAILS),
        ("White's king has left the centre.", Outcome.HOLDS),
        ("Black's king is not in the centre.", Outcome.FAILS),
        ("The king on e8 is still on its original square.", Outcome.HOLDS),
        ("Black's king is stuck in the centre.", Outcome.FAILS),  # near miss: it can castle
    ],
)
def test_an_uncastled_king_on_its_file_is_in_the_centre(
    judge: Judge, words: str, expected: Outcome
) -> None:
    finding = judge(ITALIAN % words)
    assert finding.claim.kind == "king-centre"
    assert finding.outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "White's king is stuck on e1.",
        "Our king is caught in the middle.",
        "We have our king stuck in the centre.",
    ],
)
def test_a_king_that_cannot_castle_is_stuck(judge: Judge, words: str) -> None:
    assert judge(GAMBIT % words).outcome is Outcome.HOLDS


def test_a_king_stepped_aside_without_castling_is_left_open(judge: Judge) -> None:
    text = "1. e4 e5 2. f4 Qh4+ 3. g3 Qh5 4. Kf2 {White's king is in the centre.} *"
    assert judge(text).outcome is Outcome.UNSETTLED


@pytest.mark.parametrize(
    "words", ["The king is in the centre.", "The knight is in the centre.", "The king is on g1."]
)
def test_other_places_are_not_read(words: str) -> None:
    assert "king-centre" not in kinds_of(ITALIAN % words)
