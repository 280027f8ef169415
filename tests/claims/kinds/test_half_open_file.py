"""Half-open files. Definition: "Half-open File", Chess Programming Wiki (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

GAMBIT = "1. e4 e5 2. f4 exf4 {%s} 3. Nf3 *"


@pytest.mark.parametrize(
    "words",
    [
        "White has a half-open f-file.",
        "The f-file is now half-open for White.",
        "White gets the half-open f-file.",
        "This gives White a half-open f-file.",
        "White has pressure along the half-open f-file.",
        "The f-file is half-open.",
        "There is a semi-open f-file for White.",
    ],
)
def test_a_file_with_enemy_pawns_alone_is_half_open(judge: Judge, words: str) -> None:
    finding = judge(GAMBIT % words)
    assert (finding.claim.kind, finding.claim.side) == ("half-open-file", "white")
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("Black has a half-open f-file.", "Black still has the pawn on f4"),
        ("White has a half-open e-file.", "White still has the pawn on e4"),
        ("White has a half-open d-file.", "White still has the pawn on d2"),
    ],
)
def test_a_file_with_a_pawn_of_the_side_is_not(judge: Judge, words: str, why: str) -> None:
    finding = judge(GAMBIT % words)
    assert finding.outcome is Outcome.FAILS
    assert why in finding.because


def test_an_open_file_is_not_half_open(judge: Judge) -> None:
    setup = "4k3/ppp2ppp/8/8/8/8/PPP2PPP/4K3 w - - 0 1"
    finding = judge("{White has a half-open d-file.} 1. Kd2 *", setup=setup)
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "The d-file is open for both sides: no pawn stands on it."


def test_denials(judge: Judge) -> None:
    assert judge(GAMBIT % "The f-file is not half-open for White.").outcome is Outcome.FAILS
    assert judge(GAMBIT % "Black does not have a half-open f-file.").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "My mouth was half-open.",
        "The door is half-open.",
        "White could use the half-open f-file.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not claims_of(GAMBIT % words)
