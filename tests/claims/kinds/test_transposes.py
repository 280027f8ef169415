"""Transpositions. Source: FIDE Laws of Chess, article 9.2.3."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge

TWO_ROADS = "1. e4 e5 2. Nc3 Nf6 (2... Nc6 3. f4 Nf6 {%s}) 3. f4 Nc6 4. Nf3 *"


@pytest.mark.parametrize(
    "words",
    [
        "This transposes to the main line.",
        "This transposes to 1. e4 e5 2. Nc3 Nf6 3. f4 Nc6.",
        "We have transposed to the line with 3... Nc6.",
        "This is the same position as after 3... Nc6.",
        "And we are back in the main line.",
    ],
)
def test_the_same_position_by_another_road_holds(judge: Judge, words: str) -> None:
    assert judge(TWO_ROADS % words).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "This transposes to 1. e4 e5 2. Nc3 Nf6 3. f4 d5.",
        "This transposes to the line with 4... d5.",
    ],
)
def test_another_position_fails(judge: Judge, words: str) -> None:
    assert judge(TWO_ROADS % words, kind="transposes").outcome is Outcome.FAILS


def test_near_miss_castling_rights_tell_positions_apart(judge: Judge) -> None:
    text = "1. Nf3 Nf6 2. Ng1 Ng8 (2... Rg8 3. Nf3 Rh8 4. Ng1 Ng8 {This transposes to the main line.}) 3. Nf3 Nf6 4. Ng1 Ng8 *"
    assert judge(text).outcome is Outcome.FAILS


def test_a_legal_en_passant_capture_tells_positions_apart(judge: Judge) -> None:
    # after 3... d5 the pawn on e5 may take in passing; after 3... d6 4. Ng1 d5 it stands there likewise, but one move later
    text = "1. e4 Nc6 2. e5 a6 3. Nf3 d5 (3... d6 4. Ng1 d5 5. Nf3 Nb8 6. Ng1 Nc6 7. Nf3 {This is the same position as in the main line.} Nb8) 4. Ng1 *"
    finding = judge(text, kind="transposes")
    assert finding.outcome is Outcome.FAILS


def test_an_en_passant_square_without_a_capture_does_not(judge: Judge) -> None:
    moves = "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 Nc6 {This transposes to the main line.}) 3. d4 d6 *"
    assert judge(moves).outcome is Outcome.HOLDS


def test_the_same_position_is_the_same_now_not_later(judge: Judge) -> None:
    text = "1. e4 e5 2. Nc3 Nf6 (2... Nc6 {%s} 3. f4 Nf6) 3. f4 Nc6 *"
    assert judge(text % "This is the same position as in the main line.").outcome is Outcome.FAILS
    assert judge(text % "This transposes to the main line.").outcome is Outcome.HOLDS


def test_moves_from_the_branch_name_a_position_too(judge: Judge) -> None:
    text = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 Nf6 5. d3 d6 {This is the same position as after %s.} *"
    assert judge(text % "3... Nf6 4. d3 Bc5 5. c3 d6").outcome is Outcome.HOLDS
    assert judge(text % "3... Nf6 4. d3 Bc5 5. c3 O-O").outcome is Outcome.FAILS
