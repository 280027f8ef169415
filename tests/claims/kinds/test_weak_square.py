"""Weak squares. Definition: "Holes", Chess Programming Wiki (from memory), made exact in the kind."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

SICILIAN = "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 e5 {%s} 5. Nb5 d6 6. c4 *"


@pytest.mark.parametrize(
    "words",
    [
        "d5 is a hole.",
        "Black has a hole on d5.",
        "The square d5 is weak.",
        "There is a weak square on d5 in Black's position.",
        "No black pawn can ever protect d5.",
        "e5 leaves a hole on d5.",
        "d5 and d6 are weak.",
        "f7 is weak.",  # the king alone protects it
    ],
)
def test_a_square_that_no_own_pawn_can_protect_is_weak(judge: Judge, words: str) -> None:
    # d6: c- and e-pawn have gone
    finding = judge(SICILIAN % words)
    assert (finding.claim.kind, finding.claim.side) == ("weak-square", "black")
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("f5 is a hole.", "The pawn on g7 can come to protect f5."),
        ("b6 is weak.", "The pawn on a7 protects b6."),
        ("f7 is a hole.", "protects f7"),  # near miss: weak, but no hole
        ("d7 is weak.", "protect d7"),
        ("d4 is a hole.", "The pawn on c2 can come to protect d4."),
    ],
)
def test_other_squares_are_not(judge: Judge, words: str, why: str) -> None:
    finding = judge(SICILIAN % words)
    assert finding.outcome is Outcome.FAILS
    assert why in finding.because


def test_weakening_asks_whether_a_pawn_has_given_up_the_square(judge: Judge) -> None:
    for words in ("This weakens d5.", "4...e5 weakens the square d5.", "Black has weakened d5."):
        assert judge(SICILIAN % words).outcome is Outcome.HOLDS
    assert judge(SICILIAN % "This weakens b6.").outcome is Outcome.FAILS


def test_denials(judge: Judge) -> None:
    assert judge(SICILIAN % "d5 is not weak.").outcome is Outcome.FAILS
    assert judge(SICILIAN % "b6 is not weak.").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "White has a hole on d5.",  # a weakness of the other side
        "e5 is weak.",  # a pawn stands there
        "There is a hole in this argument.",
        "The doubled pawns on e5 and f7 are weak.",  # of which "f7 are weak" must not be read
        "d5 could be weak.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not [c for c in claims_of(SICILIAN % words) if c.kind == "weak-square"]
