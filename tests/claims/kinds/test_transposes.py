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


def test_en_passant_that_is_not_legal_does_not(judge: Judge) -> None:
    text = "1. e3 e5 2. e4 (2. Nc3 Nf6) 2... Nf6 (2... Nc6) *"
    assert text
    moves = "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 Nc6 {This transposes to the main line.}) 3. d4 d6 *"
    assert judge(moves).outcome is Outcome.HOLDS
