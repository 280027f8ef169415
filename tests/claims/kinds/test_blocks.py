"""Pieces in each other's way. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

COZIO = "1. e4 e5 2. Nf3 Nc6 3. Bb5 Nge7 {%s} 4. O-O g6 5. h3 *"


@pytest.mark.parametrize(
    "words",
    [
        "The knight blocks the bishop on f8.",
        "Nge7 blocks the bishop.",
        "This blocks the bishop on f8.",
        "The knight on e7 stands in the queen's way.",
        "The knight on e7 stands in the way of the queen on d8.",
        "The knight on c6 blocks the c-pawn.",
        "The knight on e7 blocks the e-file.",
        "Black plays Nge7, blocking the bishop.",
        "The bishop on f8 is blocked by the knight on e7.",
    ],
)
def test_what_stands_first_on_a_line_or_before_a_pawn_blocks(judge: Judge, words: str) -> None:
    finding = judge(COZIO % words, kind="blocks")
    assert finding.claim.side == "black"
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    ["The knight on e7 blocks the rook on h8.", "The knight on c6 blocks the pawn on d7."],
)
def test_others_do_not(judge: Judge, words: str) -> None:
    finding = judge(COZIO % words)
    assert finding.outcome is Outcome.FAILS
    assert "does not stand in the way" in finding.because


def test_a_pawn_with_an_empty_square_before_it_is_not_blocked(judge: Judge) -> None:
    finding = judge("1. Nf3 e5 {The pawn on e5 is blocked.} 2. e3 *")
    assert finding.because == "The pawn on e5 is not blocked: e4 is empty."


def test_its_own_pawns_may_block_a_bishop(judge: Judge) -> None:
    movetext = "1. e4 e6 {%s} 2. d4 *"
    words = "The bishop on c8 is blocked by its own pawns."
    assert judge(movetext % words).outcome is Outcome.HOLDS
    words = "The bishop on f8 is blocked by its own knight."
    assert judge(movetext % words).outcome is Outcome.FAILS


def test_a_pawn_at_home_is_blocked_on_either_of_its_two_squares(judge: Judge) -> None:
    words = "{The knight on d4 blocks the d-pawn.} 1. Kf1 *"
    home = "4k3/8/8/8/3N4/8/3P4/4K3 w - - 0 1"
    assert judge(words, setup=home).outcome is Outcome.HOLDS
    further = "{The knight on d5 blocks the pawn on d3.} 1. Kf1 *"
    moved = "4k3/8/8/3N4/8/3P4/8/4K3 w - - 0 1"
    assert judge(further, setup=moved).outcome is Outcome.FAILS


def test_a_denial(judge: Judge) -> None:
    finding = judge(COZIO % "The knight on e7 does not block the queen on d8.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "We block the check.",
        "The bishop blocks the rook.",  # which?
        "The pawn on d7 blocks the knight on c6.",  # nothing stands in a knight's way
        "The knight would block the bishop on f8.",
        "He has a mental block.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not [c for c in claims_of(COZIO % words) if c.kind == "blocks"]


def test_a_diagonal_is_closed_by_a_piece_on_one(judge: Judge) -> None:
    assert judge(COZIO % "The knight on e7 closes the diagonal.").outcome is Outcome.HOLDS
    words = "The knight on e7 blocks the queen's diagonal."
    assert judge(COZIO % words).outcome is Outcome.HOLDS


def test_a_pawn_takes_the_natural_square_of_a_knight_or_not(judge: Judge) -> None:
    alapin = "1. e4 c5 2. c3 {%s} d5 *"
    words = "The pawn on c3 occupies the knight's natural square."
    assert judge(alapin % words).outcome is Outcome.HOLDS
    words = "The pawn on e4 occupies the knight's natural square."
    assert judge(alapin % words).outcome is Outcome.FAILS


def test_a_piece_between_shelters_a_square_and_one_beside_does_not(judge: Judge) -> None:
    queen = "1. e4 e5 2. Qf3 Nf6 {%s} 3. Bc4 *"
    assert judge(queen % "The knight on f6 shelters f7.").outcome is Outcome.HOLDS
    assert judge(queen % "The pawn on e5 shelters f7.").outcome is Outcome.FAILS


def test_what_opens_a_path_or_stands_beside_it_is_not_read() -> None:
    words = "The knight on e7 stands beside the king."
    assert [c.kind for c in claims_of(COZIO % words) if c.kind == "blocks"] == []
