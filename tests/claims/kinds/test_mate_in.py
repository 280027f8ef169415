"""Mate in n: it fails only when every move has been tried."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge

# Légal's mate; Hooper and Whyld, The Oxford Companion to Chess (from memory)
LEGAL = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 {%s} 6. Bxf7+ Ke7 7. Nd5# *"


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White mates in two.", Outcome.HOLDS),
        ("Now it is mate in two.", Outcome.HOLDS),
        ("White mates in three moves.", Outcome.HOLDS),  # at most three
        ("White mates by force.", Outcome.HOLDS),
        ("6. Bxf7+ mates in two.", Outcome.HOLDS),
        ("White mates in one.", Outcome.FAILS),
        ("White has mate in two.", Outcome.HOLDS),
        (
            "Black has mate in two.",
            Outcome.FAILS,
        ),  # whoever has it is no matter only in "it is mate in two"
        ("Bxf7+ is mate in two.", Outcome.HOLDS),
        ("Nxd1 is mate in two.", Outcome.FAILS),
    ],
)
def test_mate_in_n_is_at_most_n(judge: Judge, words: str, expected: Outcome) -> None:
    assert judge(LEGAL % words, kind="mate-in").outcome is expected


def test_near_miss_the_other_side_does_not_mate(judge: Judge) -> None:
    finding = judge(LEGAL % "Black mates in two.")
    assert finding.outcome is Outcome.FAILS


def test_a_mate_by_the_side_that_has_just_moved_counts_after_any_reply(judge: Judge) -> None:
    # common practice: two rooks, the ladder
    setup = "7k/8/8/8/8/8/1R6/R5K1 w - - 0 1"
    assert judge("1. Rb7 {White mates in one.} Kg8 2. Ra8# *", setup=setup).outcome is Outcome.HOLDS


def test_no_forced_mate_in_a_quiet_position_fails(judge: Judge) -> None:
    assert judge("1. e4 e5 2. Nf3 {White mates by force.} *").outcome is Outcome.FAILS
