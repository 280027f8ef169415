"""Perpetual check. Definition: common practice; worked out by trying every check and reply."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

SETUP = "6k1/6p1/8/7Q/8/8/1rq5/7K w - - 0 1"
"""The queen checks on e8 and h5, and nothing can come between."""
BLOCKED = "6k1/6p1/8/7Q/8/8/1r3q2/7K w - - 0 1"
"""The same, but the queen on f2 can go between on f8."""
QUIET = "1. Qe8+ Kh7 2. Qh5+ Kg8 {%s} *"
CHECK = "1. Qe8+ Kh7 2. Qh5+ {%s} 2... Kg8 *"


@pytest.mark.parametrize(
    "words",
    [
        "White has a perpetual.",
        "White has perpetual check.",
        "White draws by perpetual check.",
        "White can keep checking forever.",
        "White's checks never run out.",
        "White has a perpetual on e8 and h5.",
        "We save ourselves with a perpetual.",
        "White doesn't run out of checks.",
    ],
)
def test_a_perpetual_holds_and_is_shown(words: str) -> None:
    finding = sketched("perpetual", QUIET % words, setup=SETUP)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "white"
    assert finding.because.endswith("for example Qe8+ Kh7 Qh5+ Kg8.")


@pytest.mark.parametrize(
    "words",
    [
        "It's a perpetual.",
        "The checks never end.",
        "The game ends in perpetual check.",
        "The queen gives perpetual check.",
    ],
)
def test_after_a_check_every_reply_is_asked(words: str) -> None:
    assert outcome("perpetual", CHECK % words, setup=SETUP) is Outcome.HOLDS


def test_a_false_one_fails() -> None:
    assert outcome("perpetual", QUIET % "Black has a perpetual.", setup=SETUP) is Outcome.FAILS
    assert outcome("perpetual", "1. e4 {Black has a perpetual.} *") is Outcome.FAILS


def test_near_miss_a_piece_comes_between() -> None:
    words = QUIET % "White has a perpetual on e8 and h5."
    assert outcome("perpetual", words, setup=BLOCKED) is Outcome.FAILS


def test_mate_is_an_end_of_the_checks_that_the_checker_likes() -> None:
    setup = "7k/5Q2/6K1/8/8/8/8/8 w - - 0 1"
    assert outcome("perpetual", "{White has a perpetual.} 1. Kf6 *", setup=setup) is Outcome.HOLDS


def test_a_denial_is_turned() -> None:
    assert outcome("perpetual", CHECK % "There is no perpetual.", setup=SETUP) is Outcome.FAILS
    assert outcome("perpetual", CHECK % "This is not a perpetual.", setup=SETUP) is Outcome.FAILS
    assert outcome("perpetual", QUIET % "White runs out of checks.", setup=SETUP) is Outcome.FAILS
    assert outcome("perpetual", QUIET % "Black has no perpetual.", setup=SETUP) is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "He lives in perpetual fear.",
        "It's a perpetual.",  # nobody checks here
        "If White had a perpetual, he would take it.",
        "White would have a perpetual.",
    ],
)
def test_what_is_not_clear_is_not_read(words: str) -> None:
    assert not read_as("perpetual", QUIET % words, setup=SETUP)


@pytest.mark.parametrize(
    ("words", "setup", "expected"),
    [
        ("White gives check on e8 and h5 without end.", SETUP, Outcome.HOLDS),
        ("Black can't get out of the checks.", SETUP, Outcome.HOLDS),
        ("White gives check on e8 and h5 without end.", BLOCKED, Outcome.FAILS),
    ],
)
def test_checks_without_end_in_other_words(words: str, setup: str, expected: Outcome) -> None:
    assert outcome("perpetual", QUIET % words, setup=setup) is expected
