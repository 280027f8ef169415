"""Stalemate. Definition: FIDE Laws of Chess, article 5.2.1."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

SETUP = "7k/8/8/6Q1/8/8/8/K7 w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "Stalemate!",
        "This is stalemate.",
        "Black is stalemated.",
        "1. Qg6 is stalemate.",
        "White stalemates Black.",
        "His king is stalemated.",
        "It is a draw by stalemate.",
        "Black has no legal move and is not in check.",
    ],
)
def test_a_true_stalemate_holds(words: str) -> None:
    finding = sketched("stalemate", "1. Qg6 {%s} *" % words, setup=SETUP)
    assert (finding.outcome, finding.claim.side) == (Outcome.HOLDS, "black")


def test_near_miss_one_square_is_left() -> None:
    finding = sketched("stalemate", "1. Qf6+ {This is stalemate.} *", setup=SETUP)
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "Black is in check."
    finding = sketched("stalemate", "1. Qf5 {This is stalemate.} *", setup=SETUP)
    assert finding.because == "Black can still play Kg7 or Kg8."


def test_mate_is_no_stalemate() -> None:
    mate = "1. f3 e5 2. g4 Qh4# {White is stalemated.} *"
    finding = sketched("stalemate", mate)
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "White is in check, and it is mate."


def test_the_side_that_has_just_moved_is_not_stalemated() -> None:
    assert outcome("stalemate", "1. Qg6 {White is stalemated.} *", setup=SETUP) is Outcome.FAILS


def test_a_denial_is_turned() -> None:
    assert outcome("stalemate", "1. Qg6 {It is not stalemate.} *", setup=SETUP) is Outcome.FAILS
    assert outcome("stalemate", "1. Qf5 {It is no stalemate.} *", setup=SETUP) is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "The talks ended in a stalemate.",
        "If White plays on, it is stalemate.",
        "Beware of stalemate tricks.",
    ],
)
def test_other_stalemates_are_not_read(words: str) -> None:
    assert not read_as("stalemate", "1. Qg6 {%s} *" % words, setup=SETUP)
