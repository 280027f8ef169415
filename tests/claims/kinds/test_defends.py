"""Defence: which piece protects what. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import kinds_of

PETROFF = "1. e4 e5 2. Nf3 d6 3. Bc4 h6 4. d3 {%s} Nf6 *"


@pytest.mark.parametrize(
    "words",
    [
        "The pawn on d6 protects e5.",
        "Now d3 guards the pawn on e4.",
        "This defends the pawn on e4.",
        "The pawn on e4 is protected by the pawn on d3.",
        "White defends the pawn on e4 with d3.",
        "We protect our e4 pawn.",
        "The knight on f3 keeps an eye on d4.",
        "Our knight guards d4.",
        "d3 comes to the aid of the bishop on c4.",
        "The bishop on f1 is gone, so the pawn on d3 supports the bishop on c4.",
    ],
)
def test_a_piece_that_attacks_the_square_defends_it(judge: Judge, words: str) -> None:
    assert judge(PETROFF % words, kind="defends").outcome is Outcome.HOLDS


def test_a_piece_that_does_not_is_found_out(judge: Judge) -> None:
    finding = judge(PETROFF % "The knight on f3 defends the pawn on e4.")
    assert finding.outcome is Outcome.FAILS
    assert "it is protected by the pawn on d3" in finding.because


def test_near_miss_a_piece_in_between_is_said_to_stand_in_front(judge: Judge) -> None:
    lined = "4k3/8/8/4p3/8/8/4R3/4Q2K w - - 0 1"
    text = "1. Kh2 Kd8 {The queen on e1 covers e4.} *"
    assert judge(text, setup=lined).outcome is Outcome.FAILS  # the rook stands in the way
    own = "4k3/8/8/8/4P3/8/4R3/4Q2K w - - 0 1"
    behind = judge("1. Kh2 Kd8 {The queen on e1 protects the pawn on e4.} *", setup=own)
    assert behind.outcome is Outcome.HOLDS
    assert "from behind" in behind.because


def test_a_move_defends_what_it_lets_another_piece_defend(judge: Judge) -> None:
    text = "1. e4 e5 2. Be2 Nc6 3. Bf3 Nf6 4. Ne2 d6 5. d3 {This protects the pawn on e4.} *"
    assert judge(text).outcome is Outcome.HOLDS


def test_a_denial_turns_the_answer(judge: Judge) -> None:
    assert judge(PETROFF % "The knight on f3 does not defend e4.").outcome is Outcome.HOLDS
    assert judge(PETROFF % "d3 does not defend e4.").outcome is Outcome.FAILS


def test_the_only_defender_is_counted(judge: Judge) -> None:
    only = "The pawn on d3 is the only defender of the pawn on e4."
    assert judge(PETROFF % only).outcome is Outcome.HOLDS
    two = "1. e4 e5 2. Nc3 Nf6 3. d3 {The pawn on d3 is the only defender of the pawn on e4.} *"
    assert judge(two).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "White defends against the threat.",
        "Black defends well.",
        "The queen protects the pawn on e4.",  # which queen?
        "Nothing protects the bishop on c4.",
        "White guards the pawn on d6.",
        "Our knights guard the pawn on d3.",
    ],
)
def test_other_defences_are_not_read(words: str) -> None:
    assert "defends" not in kinds_of(PETROFF % words)
