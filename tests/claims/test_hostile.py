"""Words that try to hang the reader or to make it fall over. Each is read or left unread, in bounded time.

Time is bounded by the test run itself: what was exponential or cubic would not end.
"""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome, read_lesson
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, prove
from tests.claims.conftest import claims_of, lesson, readings

MOVE = "1. e4 {%s} e5 *"


@pytest.mark.parametrize(
    "words",
    [
        "The knight forks a pawn and " + "a pawn and " * 200 + "so it goes",
        "White is better " + "despite the now now now " * 200,
        "White is fine " + "so, " * 500,
        "White " + "and " * 1000 + "wins",
        "( wins a pawn ) " * 400,
        "White is better and " * 400,
        "the " * 5000,
        "!" * 50_000 + "x",
        "." + ")" * 50_000 + "x",
        "a" * 50_000 + " b. White is better.",
        "After " + "e5 " * 1000 + "White is better",
        "Nf3 " * 2000,
        "White is better. " * 4000,
    ],
    ids=lambda w: f"{w[:24]}... {len(w)}",
)
def test_long_and_repetitive_words_are_read_in_bounded_time(words: str) -> None:
    assert readings(MOVE % words)


@pytest.mark.parametrize(
    "words",
    [
        "1" * 5000 + ". e5 is good.",
        "White is " + "9" * 5000 + " tempi ahead in development.",
        "White mates in " + "9" * 5000 + ".",
        "White mates in 300.",
        "The pawns are " + "9" * 5000 + " against 2.",
    ],
)
def test_numbers_that_no_board_knows_make_no_claim(words: str) -> None:
    assert not [c for c in claims_of(MOVE % words) if c.kind != "stale"]


def test_a_mark_after_a_null_move_is_left_alone() -> None:
    assert not read_lesson(Lesson.from_text("1. e4 -- 2. d4! $7 $8 *")).claims


@pytest.mark.parametrize(
    ("setup", "text"),
    [
        ("8/8/4k3/8/8/3K4/8/8 w - - 0 1", "1. Kd4! $7 {The only move is Ke7.} *"),
        (
            "8/8/4k3/8/8/3K4/3R4/8 w - - 150 200",
            "1. Rd1! {White mates in two. White threatens mate.} *",
        ),
        (
            "4k3/8/8/8/8/8/8/4K2R w K - 0 1",
            "1. Rh8+ {White wins a rook. White is winning. Black is in zugzwang.} *",
        ),
    ],
)
def test_a_game_that_is_over_by_the_rules_is_said_to_be(setup: str, text: str) -> None:
    proof = prove(lesson(text, setup=setup), Effort.SKETCH, store=EvidenceStore(None))
    assert proof.findings
    assert all(f.outcome in set(Outcome) for f in proof.findings)


def test_a_long_line_with_words_at_every_move_is_read() -> None:
    shuffle = ["Nf3", "Nf6", "Ng1", "Ng8"]
    moves = " ".join(f"{shuffle[i % 4]} {{Then Qg4 comes.}}" for i in range(300))
    assert len(readings(f"{moves} *")) == 300
