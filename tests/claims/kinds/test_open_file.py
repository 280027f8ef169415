"""Open files. Definition: "Open File", Chess Programming Wiki (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

EXCHANGE = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. d4 exd4 6. Qxd4 Qxd4 7. Nxd4 {%s} Bd7 *"
GAMBIT = "1. e4 e5 2. f4 exf4 {%s} 3. Nf3 *"


@pytest.mark.parametrize(
    "words",
    [
        "The d-file is open.",
        "The d-file is now completely open.",
        "The only open file is the d-file.",
        "There is only one open file.",
        "White has an open file.",
        "We have the open d-file.",
        "The d-file has been opened.",
    ],
)
def test_a_file_without_pawns_is_open(judge: Judge, words: str) -> None:
    finding = judge(EXCHANGE % words)
    assert finding.claim.kind == "open-file"
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("The e-file is open.", "The e-file is half-open for Black: the pawn on e4 still stands"),
        ("The c-file is open.", "The c-file is closed"),
        ("There are two open files.", "The d-file alone is open."),
        ("White controls the open d-file.", "no rook or queen of White stands on it"),
    ],
)
def test_a_file_with_a_pawn_is_not(judge: Judge, words: str, why: str) -> None:
    finding = judge(EXCHANGE % words)
    assert finding.outcome is Outcome.FAILS
    assert why in finding.because


@pytest.mark.parametrize(
    "words",
    [
        "This opens the f-file.",
        "This opens the f-file for White's rook.",
        "exf4 opens the f-file for White.",
        "2...exf4 opens the e-file.",
    ],
)
def test_opening_a_file_asks_only_that_one_side_has_no_pawn_left(judge: Judge, words: str) -> None:
    finding = judge(GAMBIT % words)
    assert finding.outcome is Outcome.HOLDS
    assert "half-open" in finding.because


def test_what_was_open_before_is_not_opened(judge: Judge) -> None:
    finding = judge(EXCHANGE % "This opens the d-file.")
    assert finding.outcome is Outcome.FAILS
    assert "no less open before" in finding.because


def test_control_asks_for_a_rook_or_queen_and_none_of_the_enemy(judge: Judge) -> None:
    mine = "3rk3/8/8/8/8/8/8/4K3 w - - 0 1"
    both = "3rk3/8/8/8/8/8/8/3RK3 w - - 0 1"
    words = "{Black controls the open d-file.} 1. Ke2 *"
    assert judge(words, setup=mine).outcome is Outcome.HOLDS
    assert judge(words, setup=both).outcome is Outcome.FAILS
    occupies = "{Black occupies the open d-file.} 1. Ke2 *"
    assert judge(occupies, setup=both).outcome is Outcome.HOLDS


def test_denials(judge: Judge) -> None:
    assert judge(EXCHANGE % "The d-file is not open.").outcome is Outcome.FAILS
    assert judge(EXCHANGE % "The e-file is not open.").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Open your eyes.",
        "The question is open.",
        "The diagonal and the e-file are open.",
        "White would open the f-file.",
    ],
)
def test_left_unread(words: str) -> None:
    assert not claims_of(GAMBIT % words)
