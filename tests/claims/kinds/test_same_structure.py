"""Pawn structures by name, and those of other lines. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

LONDON = "1. d4 d5 2. Bf4 c6 3. e3 e6 4. c3 {%s} Nf6 5. Nf3 *"


@pytest.mark.parametrize(
    "words",
    [
        "White has a London structure.",
        "It is a London structure.",
        "We have the London set-up.",
        "This is a reversed London.",
        "Black has a reversed London structure.",
        "The structure is that of a Slav.",
        "The pawn structure is the same as in the Slav.",
    ],
)
def test_a_named_structure_stands_there(judge: Judge, words: str) -> None:
    finding = judge(LONDON % words)
    assert finding.claim.kind == "same-structure"
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("It is a French structure.", "White has no pawn on e5"),
        ("We have a reversed Sicilian.", "White has no pawn on c4"),
        ("This is a Carlsbad structure.", "White still has a pawn on the c-file"),
    ],
)
def test_another_does_not(judge: Judge, words: str, why: str) -> None:
    finding = judge(LONDON % words)
    assert finding.outcome is Outcome.FAILS
    assert why in finding.because


def test_one_pawn_off_is_not_the_structure(judge: Judge) -> None:
    finding = judge("1. d4 d5 2. Bf4 Nf6 3. e3 {White has a London structure.} e6 4. c3 *")
    assert finding.because == "For the London structure: White has no pawn on c3."


def test_the_structure_of_another_line_of_the_lesson(judge: Judge) -> None:
    other = "1. e4 e5 2. Nf3 (2. Nc3 Nc6 {%s} 3. d3 {%s}) 2... Nf6 3. Nc3 Nc6 4. d4 *"
    same = other % ("This is the same structure as in the main line.", "")
    assert judge(same.replace("{}", "")).outcome is Outcome.HOLDS
    moved = other % ("", "This is the same structure as in the main line.")
    assert judge(moved.replace("{}", "")).outcome is Outcome.FAILS


def test_a_denial(judge: Judge) -> None:
    finding = judge(LONDON % "This is not a French structure.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "This is a London-like structure.",
        "Black has a London structure.",  # White has
        "The structure of this lesson is simple.",
        "It would be a London structure.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not claims_of(LONDON % words)
