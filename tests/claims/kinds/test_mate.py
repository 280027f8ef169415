"""Mate on the board. Source: FIDE Laws of Chess, article 1.4.1."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of


@pytest.mark.parametrize(
    "words", ["This is mate.", "Checkmate!", "And that is mate.", "Qh4 is mate.", "White is mated."]
)
def test_fools_mate_is_mate(judge: Judge, words: str) -> None:
    assert judge("1. f3 e5 2. g4 Qh4# {%s} *" % words, kind="mate").outcome is Outcome.HOLDS


def test_a_check_that_can_be_answered_is_not_mate(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. f4 Qh4+ {This is mate.} 3. g3 *")
    assert finding.outcome is Outcome.FAILS
    assert "g3" in finding.because and "Ke2" in finding.because


def test_near_miss_stalemate_is_not_mate(judge: Judge) -> None:
    finding = judge("1. Qg6 {This is mate.} *", setup="7k/8/5K2/8/8/8/6Q1/8 w - - 0 1")
    assert finding.outcome is Outcome.FAILS
    assert "not even in check" in finding.because


def test_not_mate_yet_is_read_as_denied(judge: Judge) -> None:
    assert judge("1. e4 e5 2. f4 Qh4+ {This is not mate yet.} *").outcome is Outcome.HOLDS


def test_a_move_that_cannot_be_played_is_not_taken_for_the_position() -> None:
    line = "1. e4 e5 2. Qh5 Nc6 3. Bc4 g6 4. Qf3 Nf6 {%s} 5. Ne2 *"
    words = "Were that knight of ours not on f6, queen takes f7 would be mate."
    assert [c.kind for c in claims_of(line % words, "black") if c.kind == "mate"] == []


def test_a_mate_that_is_to_come_is_played_first(judge: Judge) -> None:
    text = "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {%s} 4. Qxf7# *"
    assert judge(text % "The queen mates on f7.").outcome is Outcome.HOLDS
    assert judge(text % "The bishop mates on f7.").outcome is Outcome.FAILS
