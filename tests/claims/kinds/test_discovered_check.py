"""Discovered checks. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

SETUP = "4k3/8/8/4N3/8/8/8/4R1K1 w - - 0 1"
PETROFF = "1. e4 e5 2. Nf3 Nf6 3. Nxe5 Nxe4 4. Qe2 Nf6 5. Nc6+ {%s} *"
"""The old trap of the Petroff Defence (from memory)."""


@pytest.mark.parametrize(
    "words",
    [
        "Discovered check.",
        "This is a discovered check.",
        "5. Nc6 gives discovered check.",
        "5. Nc6 is a discovered check by the queen.",
        "The knight jumps to c6 with a discovered check.",
        "The queen gives check from behind the knight.",
        "The knight uncovers a check by the queen.",
        "White gives a discovered check from the queen.",
        "With a discovered check.",
    ],
)
def test_a_true_discovered_check_holds(words: str) -> None:
    finding = sketched("discovered-check", PETROFF % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.because == "Nc6+ opens the line of the queen on e2 to the king on e8."


def test_near_miss_the_piece_that_moved_gives_the_check_itself() -> None:
    finding = sketched(
        "discovered-check", "1. e4 e5 2. Bc4 d6 3. Bxf7+ {This is a discovered check.} *"
    )
    assert finding.outcome is Outcome.FAILS
    assert finding.because == (
        "Bxf7+ is check, but by the piece that moved: the bishop on f7 attacks the king."
    )


def test_no_check_fails_and_a_denial_is_turned() -> None:
    assert outcome("discovered-check", "1. e4 {This is a discovered check.} *") is Outcome.FAILS
    assert outcome("discovered-check", "1. e4 {This is not a discovered check.} *") is Outcome.HOLDS
    assert outcome("discovered-check", PETROFF % "It isn't a discovered check.") is Outcome.FAILS


def test_a_double_check_of_which_one_is_uncovered_counts() -> None:
    setup = "4k3/8/8/8/4N3/8/8/4R1K1 w - - 0 1"
    movetext = "1. Nf6+ {This is a discovered check.} *"
    assert outcome("discovered-check", movetext, setup=setup) is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White has a discovered check.", Outcome.HOLDS),
        ("White has a discovered check with 1. Nc6.", Outcome.HOLDS),
        ("Black has a discovered check.", Outcome.FAILS),
        ("There is no discovered check.", Outcome.FAILS),
    ],
)
def test_a_possible_one_is_a_legal_move(words: str, expected: Outcome) -> None:
    assert outcome("discovered-check", "{%s} 1. Nc6+ *" % words, setup=SETUP) is expected


@pytest.mark.parametrize(
    "words",
    [
        "If the knight moves, it is a discovered check.",
        "I discovered this check last summer.",
        "He discovers that it is check.",
    ],
)
def test_other_discoveries_are_not_read(words: str) -> None:
    assert not read_as("discovered-check", PETROFF % words)
