"""How often a square is attacked. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} 4... d5 *"


@pytest.mark.parametrize(
    "words",
    [
        "f7 is attacked twice.",
        "The pawn on f7 is hit twice.",
        "White attacks f7 twice.",
        "Two pieces attack f7.",
        "Two white pieces aim at f7.",
        "Two of our pieces attack f7.",
        "Bishop and knight both hit f7.",
        "f7 is attacked by two pieces.",
        "White has two attackers on f7.",
        "There are two attackers on f7.",
        "The knight attacks f7 a second time.",
        "f7 is attacked by both bishop and knight.",
    ],
)
def test_a_true_count_holds(words: str) -> None:
    finding = sketched("attacked-count", KNIGHTS % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "white"
    assert finding.because == (
        "The pawn on f7 is attacked twice by the bishop on c4 and the knight on g5."
    )


def test_two_counts_in_one_clause_are_two_claims() -> None:
    words = KNIGHTS % "f7 is attacked twice and defended once."
    assert outcome("attacked-count", words) is Outcome.HOLDS
    assert outcome("defended-count", words) is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("f7 is attacked three times.", Outcome.FAILS),
        ("f7 is attacked once.", Outcome.FAILS),
        ("f7 is not attacked twice.", Outcome.FAILS),
        ("f7 is not attacked three times.", Outcome.HOLDS),
        ("Nothing attacks f7.", Outcome.FAILS),
        ("Nothing attacks the pawn on e5.", Outcome.HOLDS),
        ("f7 is attacked more often than it is defended.", Outcome.HOLDS),
        ("White attacks d5 twice.", Outcome.HOLDS),
        ("We attack d5 three times.", Outcome.FAILS),
        ("Black attacks d5 once.", Outcome.HOLDS),
    ],
)
def test_counts_are_exact(words: str, expected: Outcome) -> None:
    assert outcome("attacked-count", KNIGHTS % words) is expected


def test_a_piece_lined_up_behind_may_count_and_the_finding_says_so() -> None:
    setup = "3rk3/3r4/8/3p4/8/8/3Q4/3RK3 w - - 0 1"
    once = sketched("attacked-count", "{The pawn on d5 is attacked once.} 1. Kf1 *", setup=setup)
    twice = sketched("attacked-count", "{The pawn on d5 is attacked twice.} 1. Kf1 *", setup=setup)
    three = sketched(
        "attacked-count", "{The pawn on d5 is attacked three times.} 1. Kf1 *", setup=setup
    )
    assert (once.outcome, twice.outcome) == (Outcome.HOLDS, Outcome.HOLDS)
    assert twice.because.startswith("Counting the pieces lined up behind")
    assert three.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "The bishop attacks f7 twice.",  # one piece does it once
        "Black attacks f7 twice.",  # his own pawn
        "d5 is attacked twice.",  # empty: by whom?
        "We played this twice.",
        "He attacks twice.",
        "f7 is attacked once again.",
        "The attack came twice.",
        "If White attacks f7 twice, it falls.",
    ],
)
def test_what_is_not_clear_is_not_read(words: str) -> None:
    assert not read_as("attacked-count", KNIGHTS % words)
