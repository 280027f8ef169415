"""Open positions. Definition: common practice, with numbers of our own."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

SCOTCH = "1. e4 e5 2. Nf3 Nc6 3. d4 exd4 4. Nxd4 {%s} Nge7 *"
FRENCH = "1. e4 e6 2. d4 d5 3. e5 {%s} c5 *"


@pytest.mark.parametrize(
    "words",
    [
        "The position is open.",
        "The position is wide open.",
        "The centre is now open.",
        "We have an open position.",
        "This is an open game.",
        "The position has opened up.",
    ],
)
def test_a_centre_without_locked_pawns_is_open(judge: Judge, words: str) -> None:
    finding = judge(SCOTCH % words)
    assert finding.claim.kind == "open-position"
    assert finding.outcome is Outcome.HOLDS
    assert judge(FRENCH % words).outcome is Outcome.FAILS


def test_an_open_file_outweighs_one_pair_of_pawns_face_to_face(judge: Judge) -> None:
    # French Exchange: the e-file is open, d4 and d5 stand face to face
    assert (
        judge("1. e4 e6 2. d4 d5 3. exd5 exd5 {The position is open.} *").outcome is Outcome.HOLDS
    )
    # near miss, Queen's Gambit Exchange: d4 and d5 face to face, and the e-file is only half-open
    words = "{The position is open.}"
    exchange = f"1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. cxd5 exd5 {words} *"
    assert judge(exchange).outcome is Outcome.FAILS


def test_an_open_game_is_also_a_family_of_openings(judge: Judge) -> None:
    assert judge("1. e4 e5 {This is an open game.} 2. Nf3 *").outcome is Outcome.HOLDS
    assert judge("1. e4 e5 {The position is open.} 2. Nf3 *").outcome is Outcome.FAILS


def test_a_denial(judge: Judge) -> None:
    assert judge(SCOTCH % "The position is not open.").outcome is Outcome.FAILS
    assert judge(FRENCH % "The position is not open.").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    ["The game is open to everybody.", "Our club is open.", "The position would be open."],
)
def test_left_unread(words: str) -> None:
    assert not claims_of(SCOTCH % words)
