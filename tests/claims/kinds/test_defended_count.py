"""How often a square is protected. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} 4... d5 *"


@pytest.mark.parametrize(
    "words",
    [
        "f7 is protected only once.",
        "f7 is defended once.",
        "f7 has one defender.",
        "f7 has only one defender.",
        "The king is the only defender of f7.",
        "Only the king protects f7.",
        "Black defends f7 once.",
        "Black has one defender of f7.",
    ],
)
def test_a_true_count_holds(words: str) -> None:
    finding = sketched("defended-count", KNIGHTS % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "black"
    assert finding.because == "The pawn on f7 is protected once by the king on e8."


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("f7 is defended twice.", Outcome.FAILS),
        ("e5 has two defenders.", Outcome.FAILS),
        ("The knight on c6 is the only defender of e5.", Outcome.HOLDS),
        ("The queen on d8 is the only defender of f7.", Outcome.FAILS),
        ("f7 is not defended twice.", Outcome.HOLDS),
        ("f7 is not defended once.", Outcome.FAILS),
        ("f7 is defended as often as it is attacked.", Outcome.FAILS),
        ("Black covers d5 once.", Outcome.HOLDS),
        ("Black covers d5 twice.", Outcome.FAILS),
    ],
)
def test_counts_are_exact(words: str, expected: Outcome) -> None:
    assert outcome("defended-count", KNIGHTS % words) is expected


def test_near_miss_the_second_defender_stands_behind_the_first() -> None:
    setup = "3rk3/3r4/8/3p4/8/8/3Q4/3RK3 w - - 0 1"
    movetext = "{The pawn on d5 is protected %s.} 1. Kf1 *"
    assert outcome("defended-count", movetext % "once", setup=setup) is Outcome.HOLDS
    assert outcome("defended-count", movetext % "twice", setup=setup) is Outcome.HOLDS
    assert outcome("defended-count", movetext % "three times", setup=setup) is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "The knight on f6 protects d5 twice.",  # one piece does it once
        "White defends f7 once.",  # Black's pawn
        "d5 is guarded twice.",  # empty: by whom?
        "He defended well once.",
        "The defender has two pieces.",
        "If f7 were defended twice, we would castle.",
    ],
)
def test_what_is_not_clear_is_not_read(words: str) -> None:
    assert not read_as("defended-count", KNIGHTS % words)
