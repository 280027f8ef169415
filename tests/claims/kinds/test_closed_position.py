"""Closed positions. Definition: common practice, with numbers of our own."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

FRENCH = "1. e4 e6 2. d4 d5 3. e5 {%s} c5 *"
SCOTCH = "1. e4 e5 2. Nf3 Nc6 3. d4 exd4 4. Nxd4 {%s} Nge7 *"


@pytest.mark.parametrize(
    "words",
    [
        "The position is closed.",
        "The centre is locked.",
        "This closes the position.",
        "Everything is blocked.",
        "We have a closed centre.",
        "With e5 White closes the centre.",
    ],
)
def test_two_pairs_of_pawns_face_to_face_close_the_centre(judge: Judge, words: str) -> None:
    finding = judge(FRENCH % words)
    assert finding.claim.kind == "closed-position"
    assert finding.outcome is Outcome.HOLDS
    assert "d4 and d5, e5 and e6" in finding.because


def test_one_pair_is_not_enough(judge: Judge) -> None:
    finding = judge("1. d4 d5 2. c4 e6 {The position is closed.} 3. Nc3 *")
    assert finding.outcome is Outcome.FAILS
    assert "face to face: d4 and d5" in finding.because


def test_a_closed_game_is_also_a_family_of_openings(judge: Judge) -> None:
    assert judge("1. d4 d5 {This is a closed game.} 2. c4 *").outcome is Outcome.HOLDS
    assert judge("1. e4 e5 {This is a closed game.} 2. Nf3 *").outcome is Outcome.FAILS


def test_a_denial(judge: Judge) -> None:
    assert judge(FRENCH % "The centre is not closed.").outcome is Outcome.FAILS
    assert judge(SCOTCH % "The centre is not closed.").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    ["Close your books.", "It was a close game.", "White could close the centre."],
)
def test_left_unread(words: str) -> None:
    assert not claims_of(FRENCH % words)
