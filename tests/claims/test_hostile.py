"""Words that try to hang the reader or to make it fall over. Each is read or left unread, in bounded time.

Time is bounded by the test run itself: what was exponential or cubic would not end.
"""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lineproof.claims import Outcome, all_kinds, read_lesson
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


WORDS = sorted(
    {
        word
        for kind in all_kinds()
        for frame in kind.frames
        for word in re.findall(r"[a-z']+", frame)
    }
    | {
        w
        for kind in all_kinds()
        for table in kind.slots.values()
        for text in table
        for w in text.split()
    }
    | {
        "White",
        "Black",
        "we",
        "you",
        "he",
        "she",
        "they",
        "it",
        "this",
        "that",
        "which",
        "not",
        "isn't",
        "can't",
        "and",
        "but",
        "so",
        "if",
        ",",
        ";",
        ":",
        ".",
        "?",
        "!",
        "the",
        "a",
        "his",
        "our",
        "knight",
        "queen",
        "rook",
        "bishop",
        "pawn",
        "king",
        "on",
        "at",
        "e4",
        "f7",
        "d5",
        "Nf3",
        "3...d5",
        "...Nxe4",
        "O-O",
        "e8=Q",
        "12.Qxf7+",
        "two",
        "three",
        "7",
        "White's",
        "he's",
    }
)


@settings(max_examples=400, deadline=None)
@given(
    st.lists(st.sampled_from(WORDS), max_size=25).map(" ".join),
    st.sampled_from(["white", "black", None]),
)
def test_no_heap_of_words_makes_the_reader_fall_over(words: str, taught: str | None) -> None:
    text = f"1. e4 e5 2. Nf3 {{{words}}} Nc6 (2... d6 {{{words}}}) 3. Bb5 *"
    for reading in readings(text, taught=taught):
        for claim in reading.claims:
            assert text[claim.start : claim.end] == claim.words


@settings(max_examples=60, deadline=None)
@given(st.lists(st.sampled_from(WORDS), max_size=12).map(" ".join))
def test_what_is_read_of_a_heap_of_words_can_be_checked(words: str) -> None:
    text = f"1. e4 e5 2. Nf3 Nc6 {{White is better. {words}}} 3. Bb5 *"
    proof = prove(lesson(text), Effort.SKETCH, store=STORE)
    assert len(proof.findings) == len(proof.reading.claims)


STORE = EvidenceStore(None)
