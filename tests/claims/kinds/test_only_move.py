"""Only moves: 15 points and the verdict's band."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.only_move import check
from tests.claims.conftest import Judge, Scripted, claims_of

# White to move plays g1f3; the best other move is b1c3
TEXT = "1. e4 e5 2. Nf3 {%s} *"


@pytest.mark.parametrize(
    ("own", "other", "expected"),
    [
        (60, 45, Outcome.HOLDS),  # costs 15, and slight becomes level
        (60, 46, Outcome.FAILS),  # costs 14
        (84, 69, Outcome.FAILS),  # costs 15, but both are clear
        (84, 64, Outcome.HOLDS),
        (50, 60, Outcome.FAILS),  # another move is better
    ],
)
def test_both_sides_of_the_edge(own: int, other: int, expected: Outcome) -> None:
    (claim,) = claims_of(TEXT % "This is the only move.")
    script = Scripted({"g1f3": own, "b1c3": other}, "g1f3", "b1c3")
    assert check(claim, script).outcome is expected


@pytest.mark.parametrize(
    "words",
    ["The only move is Nf3.", "Nf3 is the only move.", "Everything else loses.", "An only move."],
)
def test_ways_to_say_it(words: str) -> None:
    (claim,) = claims_of(TEXT % words)
    assert (claim.kind, claim.side, claim.params["move"]) == ("only-move", "white", "g1f3")


def test_a_single_legal_move_is_an_only_move(judge: Judge) -> None:
    finding = judge("1. Ra8+ Kh7 {The only move.} *", setup="6k1/5pp1/8/8/8/8/8/R3K3 w - - 0 1")
    assert finding.outcome is Outcome.HOLDS
    assert "only legal" in finding.because


def test_near_miss_a_good_move_among_others_is_not_the_only_one(judge: Judge) -> None:
    finding = judge("1. e4 {This is the only move.} *")
    assert finding.outcome is Outcome.FAILS


def test_the_move_that_saves_the_queen_is_an_only_move(judge: Judge) -> None:
    setup = "4q2k/8/8/8/8/8/4Q3/4K3 w - - 0 1"
    finding = judge("1. Qxe8+ {This is the only move.} *", setup=setup)
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Nf3 is the only good move.",
        "Only Nf3 keeps the balance.",
        "White has only one move, Nf3.",
        "There is one defence, Nf3.",
        "White has nothing but Nf3.",
        "The only way to save the game is Nf3.",
        "Nf3 was the only way to hold.",
        "All other moves lose.",
        "Nothing else works.",
        "Nf3 is absolutely necessary.",
    ],
)
def test_more_ways_to_say_it(words: str) -> None:
    (claim,) = claims_of(TEXT % words)
    assert (claim.kind, claim.side, claim.params["move"]) == ("only-move", "white", "g1f3")


def test_a_denial_is_turned_round(judge: Judge) -> None:
    finding = judge("1. e4 {This is not the only move.} *")
    assert finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


def test_the_only_legal_move_is_counted(judge: Judge) -> None:
    setup = "6k1/5pp1/8/8/8/8/8/R3K3 w - - 0 1"
    text = "1. Ra8+ Kh7 {%s is the only legal move.} *"
    assert judge(text % "1... Kh7", setup=setup).outcome is Outcome.HOLDS
    finding = judge("1. e4 e5 {1... e5 is the only legal move.} *")
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "Black has 20 legal moves."


@pytest.mark.parametrize(
    "words",
    [
        "Nf3 is the only move for Black.",  # White's move
        "Other moves do not lose.",
        "Black is the only one to smile.",
        "Only Nf3 fans play this.",
    ],
)
def test_other_uses_of_only_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(TEXT % words) if c.kind == "only-move"]


def test_it_shows_what_the_natural_alternatives_lose(judge: Judge) -> None:
    text = "1. e4 e5 2. Nc3 Nf6 3. f4 d5 4. exd5 Nxd5 5. fxe5 Nxc3 6. bxc3 Qh4+ 7. Ke2 {This is the only move.} *"
    finding = judge(text)
    assert finding.outcome is Outcome.HOLDS
    assert finding.judgement.second == "After g3 the rook on h1 falls."
    assert finding.evidence() == "7. g3 Qe4+ 8. Kf2 Qxh1"
