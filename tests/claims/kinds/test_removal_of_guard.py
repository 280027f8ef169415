"""Removal of the guard. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

EXCHANGE = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 {%s} 4... dxc6 *"
STEINITZ = "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 4. Bxc6+ {%s} 4... bxc6 *"
BEFORE = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 {%s} 4. Bxc6 *"


@pytest.mark.parametrize(
    "words",
    [
        "White takes the defender of e5.",
        "The bishop takes the knight, the defender of e5.",
        "We remove the guard.",
        "4. Bxc6 removes the only defender of the e5 pawn.",
        "Taking on c6 removes the defender of e5.",
        "The defender of e5 is gone.",
        "White eliminates the knight that guards e5.",
        "This capture removes the guard.",
        "We get rid of the protector of e5.",
    ],
)
def test_a_true_removal_holds_whether_it_pays_or_not(words: str) -> None:
    finding = sketched("removal-of-guard", EXCHANGE % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.because == "Bxc6 takes the knight on c6, which protected the pawn on e5."
    assert (finding.judgement.second or "").startswith("It does not pay")


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("This removes the defender of d5.", "which did not protect d5"),
        ("This removes the guard of d4.", "the pawn on e5 still protects d4"),
    ],
)
def test_a_false_removal_fails(words: str, why: str) -> None:
    finding = sketched("removal-of-guard", EXCHANGE % words)
    assert finding.outcome is Outcome.FAILS
    assert why in finding.because


def test_near_miss_another_guard_is_left() -> None:
    finding = sketched("removal-of-guard", STEINITZ % "White removes the defender of e5.")
    assert finding.outcome is Outcome.FAILS
    assert "the pawn on d6 still protects the pawn on e5" in finding.because
    one = STEINITZ % "White takes one of the defenders of e5."
    assert not read_as("removal-of-guard", one)  # "defenders": no phrase
    assert outcome("removal-of-guard", STEINITZ % "White takes a defender of e5.") is Outcome.HOLDS


def test_a_move_that_takes_nothing_removes_nothing() -> None:
    words = "1. e4 e5 2. Nf3 Nc6 3. Bb5 {3. Bb5 removes the guard of e5.} *"
    assert outcome("removal-of-guard", words) is Outcome.FAILS


def test_the_capture_may_be_the_next_of_the_line() -> None:
    words = BEFORE % "White can take the defender of e5."
    assert outcome("removal-of-guard", words) is Outcome.HOLDS


def test_a_denial_is_turned() -> None:
    words = "White does not remove the defender of e5."
    assert outcome("removal-of-guard", EXCHANGE % words) is Outcome.FAILS
    assert outcome("removal-of-guard", STEINITZ % words) is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Be on your guard here.",
        "The best defender of this line was a schoolboy.",
        "If White removes the defender of e5, he wins a pawn.",
    ],
)
def test_other_guards_are_not_read(words: str) -> None:
    assert not read_as("removal-of-guard", EXCHANGE % words)
