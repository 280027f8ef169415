"""Lost tempi, counted from the moves. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import kinds_of, sketched

# the Scandinavian queen, driven on by 3. Nc3
SCANDINAVIAN = "1. e4 d5 2. exd5 Qxd5 3. Nc3 Qa5 {%s} 4. d4 *"
HOME_AGAIN = "1. e4 e5 2. Nf3 Nc6 3. Nc3 Nf6 4. Nb1 {%s} d5 *"


@pytest.mark.parametrize(
    "words",
    [
        "Black has lost a tempo.",
        "Black loses a tempo with the queen.",
        "This costs Black a tempo.",
        "This is a waste of time.",
        "The queen has lost a tempo.",
        "Black wastes time.",
    ],
)
def test_a_piece_driven_on_by_a_developing_move_has_lost_a_tempo(judge: Judge, words: str) -> None:
    finding = judge(SCANDINAVIAN % words)
    assert finding.claim.kind == "loses-tempo"
    assert finding.claim.side == "black"
    assert finding.outcome is Outcome.HOLDS


def test_a_piece_that_goes_home_has_lost_what_it_spent(judge: Judge) -> None:
    assert judge(HOME_AGAIN % "White has lost two tempi.").outcome is Outcome.HOLDS
    near = judge(HOME_AGAIN % "White has lost three tempi.")
    assert near.outcome is Outcome.FAILS
    assert "spent 2 moves where 0" in near.because


def test_a_capture_is_left_apart(judge: Judge) -> None:
    text = "1. e4 d5 2. exd5 Nf6 3. Nc3 Nxd5 {Black has lost a tempo.} *"
    assert judge(text).outcome is Outcome.FAILS


def test_the_side_that_developed_has_lost_nothing(judge: Judge) -> None:
    assert judge(SCANDINAVIAN % "White has lost a tempo.").outcome is Outcome.FAILS
    assert judge(SCANDINAVIAN % "White has not lost a tempo.").outcome is Outcome.HOLDS


def test_the_reply_shown_tells_that_a_move_loses_a_tempo() -> None:
    text = "1. e4 d5 2. exd5 Qxd5 {The capture costs Black a tempo.} 3. Nc3 Qa5 *"
    finding = sketched("loses-tempo", text)
    assert finding.outcome is Outcome.HOLDS
    assert "Nc3 attacks the queen" in finding.because


@pytest.mark.parametrize(
    "words",
    [
        "Black will lose a tempo.",
        "Black loses time on the clock.",
        "We have no time to lose.",
        "White loses a tempo.",  # which of his moves?
    ],
)
def test_other_times_are_not_read(words: str) -> None:
    assert "loses-tempo" not in kinds_of(SCANDINAVIAN % words)


ALEKHINE = "1. e4 Nf6 2. e5 Nd5 3. d4 d6 4. c4 Nb6 {%s} 5. exd6 *"


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("Black has moved the same knight three times.", Outcome.HOLDS),
        ("The knight has moved 3 times.", Outcome.HOLDS),
        ("Black has moved the same knight twice.", Outcome.FAILS),
        ("White has moved the same knight twice.", Outcome.FAILS),
    ],
)
def test_how_often_a_piece_has_moved_is_counted(judge: Judge, words: str, outcome: Outcome) -> None:
    assert judge(ALEKHINE % words).outcome is outcome
