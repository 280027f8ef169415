"""Gained tempi: a new attack that must be attended to. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import kinds_of

SCANDINAVIAN = "1. e4 d5 2. exd5 Qxd5 3. Nc3 {%s} Qa5 4. d4 *"


@pytest.mark.parametrize(
    "words",
    [
        "White gains a tempo.",
        "Nc3 gains a tempo on the queen.",
        "The knight comes out with tempo.",
        "This wins time.",
        "Developing with gain of time.",
        "Nc3 attacks the queen with tempo.",
        "With tempo.",
        "We win a tempo against the queen with Nc3.",
    ],
)
def test_an_attack_on_something_bigger_gains_a_tempo(judge: Judge, words: str) -> None:
    finding = judge(SCANDINAVIAN % words)
    assert finding.claim.kind == "gains-tempo"
    assert finding.outcome is Outcome.HOLDS
    assert "queen on d5" in finding.because


def test_a_move_that_attacks_nothing_gains_none(judge: Judge) -> None:
    assert judge("1. e4 e5 2. Nc3 {White gains a tempo.} *").outcome is Outcome.FAILS
    assert judge(SCANDINAVIAN % "White gains a tempo on the king.").outcome is Outcome.FAILS


def test_near_miss_a_protected_piece_of_the_same_worth_need_not_move(judge: Judge) -> None:
    protected = "1. e4 e5 2. Nf3 Nc6 3. Nc3 Bc5 4. Na4 {White gains a tempo.} *"
    assert judge(protected).outcome is Outcome.HOLDS  # nothing protects c5
    held = "1. e4 e5 2. Nf3 d6 3. Nc3 Bg4 4. d4 Nc6 5. d5 Nd4 6. h3 Bh5 7. Be3 {White gains a tempo on the knight.} *"
    assert judge(held).outcome is Outcome.FAILS


def test_a_piece_that_can_simply_be_taken_gains_none(judge: Judge) -> None:
    text = "1. e4 e5 2. Qg4 d5 3. Qg6 {White gains a tempo.} *"
    assert judge(text).outcome is Outcome.FAILS


def test_a_check_gains_a_tempo(judge: Judge) -> None:
    assert judge("1. e4 e5 2. Nf3 d6 3. Bb5+ {With tempo.} c6 *").outcome is Outcome.HOLDS


def test_a_denial_turns_the_answer(judge: Judge) -> None:
    assert judge(SCANDINAVIAN % "Nc3 does not win a tempo.").outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "White will gain a tempo.",
        "White could win a tempo.",
        "Black gains time.",
        "He gains a pawn.",
    ],
)
def test_other_gains_are_not_read(words: str) -> None:
    assert "gains-tempo" not in kinds_of(SCANDINAVIAN % words)
