"""Pieces that hang or do not. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import read_as, sketched

KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} 4... d5 *"
LEGAL = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 {%s} *"
"""Légal's mate (from memory): the queen can be taken, and it is mate."""


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("The pawn on e5 isn't hanging.", Outcome.HOLDS),
        ("The knight on g5 is not en prise.", Outcome.HOLDS),
        ("The e4-pawn is not hanging.", Outcome.HOLDS),
        ("The pawn on e4 only seems to hang.", Outcome.HOLDS),
        ("His queen is safe on d8.", Outcome.HOLDS),
        ("f7 isn't hanging.", Outcome.FAILS),
        ("The pawn on f7 is safe.", Outcome.FAILS),
    ],
)
def test_what_cannot_be_taken_with_profit_does_not_hang(words: str, expected: Outcome) -> None:
    finding = sketched("not-hanging", KNIGHTS % words)
    assert finding.outcome is expected
    assert not finding.claim.negated


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("The pawn on f7 is hanging.", Outcome.HOLDS),
        ("f7 hangs.", Outcome.HOLDS),
        ("The pawn on f7 is en prise.", Outcome.HOLDS),
        ("The pawn on e4 is en prise.", Outcome.FAILS),
        ("Our pawn on e4 hangs.", Outcome.FAILS),
        ("White leaves the pawn on e4 hanging.", Outcome.FAILS),
    ],
)
def test_what_hangs_is_the_denied_claim(words: str, expected: Outcome) -> None:
    finding = sketched("not-hanging", KNIGHTS % words)
    assert finding.outcome is expected
    assert finding.claim.negated


def test_near_miss_attacked_but_protected_well_enough() -> None:
    finding = sketched("not-hanging", KNIGHTS % "The pawn on e4 is hanging.")
    assert finding.outcome is Outcome.FAILS
    assert "attacked by the knight on f6, but protected well enough" in finding.because


def test_what_only_best_play_saves_may_be_called_either() -> None:
    denied = sketched("not-hanging", LEGAL % "Our queen isn't really hanging.")
    said = sketched("not-hanging", LEGAL % "Our queen is hanging.")
    assert (denied.outcome, said.outcome) == (Outcome.HOLDS, Outcome.HOLDS)
    assert "Bxd1 Black is mated" in denied.because


@pytest.mark.parametrize(
    "words",
    [
        "Our king is safe.",
        "The knight is en prise.",  # four knights
        "The knight is hanging in the balance.",
        "White plays it safe.",
        "If the pawn on e4 is hanging, we protect it.",
    ],
)
def test_what_is_not_clear_is_not_read(words: str) -> None:
    assert not read_as("not-hanging", KNIGHTS % words)
