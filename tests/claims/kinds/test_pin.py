"""Pins. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.board import pins
from lineproof.engine import Board
from tests.claims.conftest import Judge

RUY = "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 {%s} 4. d4 *"


@pytest.mark.parametrize(
    "words",
    [
        "The knight on c6 is pinned.",
        "The knight on c6 is absolutely pinned.",
        "The bishop pins the knight on c6 to the king.",
        "Black's knight on c6 is pinned to the king by the bishop on b5.",
        "The c6 knight is pinned.",
    ],
)
def test_a_true_pin_holds(judge: Judge, words: str) -> None:
    finding = judge(RUY % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.judgement.marks[0].squares == ("b5", "e8")


@pytest.mark.parametrize(
    "words", ["The knight on f3 is pinned.", "The bishop on b5 pins the knight on c6 to the queen."]
)
def test_a_false_pin_fails(judge: Judge, words: str) -> None:
    assert judge(RUY % words).outcome is Outcome.FAILS


def test_two_pieces_between_are_no_pin(judge: Judge) -> None:
    near_miss = "1. e4 e5 2. Nf3 Nc6 3. Bb5 Nf6 4. d3 Qe7 5. O-O Qd8 6. Bg5 Be7 {The knight on f6 is pinned.} *"
    assert judge(near_miss).outcome is Outcome.FAILS


def test_a_relative_pin_stands_before_a_bigger_piece_or_an_unprotected_one() -> None:
    board = Board("3qk3/8/5n2/6B1/8/8/8/4K3 w - - 0 1")
    (pin,) = pins(board, "black")
    assert (pin.pinner, pin.piece, pin.behind, pin.absolute) == ("g5", "f6", "d8", False)


def test_a_protected_piece_of_no_more_worth_behind_makes_no_pin() -> None:
    board = Board("4k3/3b4/5n2/6B1/8/8/8/4K3 w - - 0 1")  # e7 is empty: nothing behind f6 but d8
    assert pins(board, "black") == []


def test_a_denied_pin_is_read_as_denied(judge: Judge) -> None:
    assert judge(RUY % "The knight on c6 is not pinned.").outcome is Outcome.FAILS
    assert judge(RUY % "The knight on f3 is not pinned.").outcome is Outcome.HOLDS


def test_an_unprotected_piece_behind_makes_a_pin_whatever_its_worth() -> None:
    board = Board("4k3/8/1b6/2n5/3B4/8/8/4K3 w - - 0 1")
    # the bishop on d4 looks through c5 at b6, a bishop that nothing but the knight's going leaves alone
    assert [(p.piece, p.behind) for p in pins(board, "black")] == [("c5", "b6")]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        # the Elephant trap, Hooper and Whyld (from memory): the pinned knight takes all the same
        (
            "1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5 Nbd7 5. cxd5 exd5 6. Nxd5 {The knight on f6 is pinned.} *",
            "can be broken: Nxd5",
        ),
        (
            "1. d4 d5 2. Nf3 Nf6 3. Bg5 e6 {The knight on f6 is pinned.} *",
            "breaking it costs Black",
        ),
    ],
)
def test_whether_a_relative_pin_can_be_broken_is_searched(
    judge: Judge, text: str, said: str
) -> None:
    finding = judge(text)
    assert finding.outcome is Outcome.HOLDS
    assert finding.judgement.second is not None and said in finding.judgement.second


@pytest.mark.parametrize(
    "words",
    [
        "Bb5 pins the knight to the king.",
        "White has pinned the knight on c6.",
        "The bishop nails the knight to the king.",
        "White puts a pin on the knight on c6.",
        "The knight on c6 is nailed down by the bishop on b5.",
        "The knight on c6 is in a pin.",
        "Pinning the knight on c6 to the king.",
        "We are pinning the knight on c6.",
    ],
)
def test_a_pin_is_said_in_many_ways(judge: Judge, words: str) -> None:
    finding = judge("1. e4 e5 2. Nf3 Nc6 3. d4 d6 4. Bb5 {%s} *" % words)
    assert finding.claim.kind == "pin"
    assert finding.outcome is Outcome.HOLDS


def test_a_pin_that_a_verb_denies_is_read_as_denied(judge: Judge) -> None:
    assert judge(RUY % "The bishop does not pin the knight on c6.").outcome is Outcome.FAILS
    assert judge(RUY % "The bishop on b5 doesn't pin the pawn on d6.").outcome is Outcome.HOLDS


def test_a_move_that_breaks_a_pin_is_read_as_its_end(judge: Judge) -> None:
    broken = "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 4. d4 Bd7 {Black breaks the pin.} *"
    assert judge(broken).outcome is Outcome.HOLDS
    kept = "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 4. d4 a6 {This breaks the pin on the knight.} *"
    assert judge(kept).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "The bishop would pin the knight on c6.",
        "The bishop will pin the knight on c6.",
        "The knight on c6 was pinned.",
    ],
)
def test_a_pin_of_another_time_is_not_read(words: str) -> None:
    from tests.claims.conftest import claims_of

    assert not claims_of(RUY % words)


def test_a_pin_that_is_none_shows_what_stands_behind_the_piece(judge: Judge) -> None:
    text = "1. e4 e5 2. Nc3 Nf6 3. f4 d5 4. fxe5 Nxe4 5. Nf3 Bb4 6. Bd3 Nc6 7. a3 Nxc3 8. dxc3 Bc5 9. Bd2 Bb4 {The pawn on c3 is pinned.} *"
    finding = judge(text)
    assert finding.outcome is Outcome.FAILS
    assert (
        finding.because == "The bishop on b4 looks through the pawn on c3 only at the bishop on d2."
    )
