"""Exchanges, to come and past."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

LINE = "1. e4 e5 2. d4 exd4 3. Qxd4 Qf6 {%s} 4. Qxf6 Nxf6 5. Nc3 *"
OFF = "1. e4 e5 2. d4 exd4 3. Qxd4 Qf6 4. Qxf6 Nxf6 {%s} 5. Nc3 *"


@pytest.mark.parametrize(
    ("words", "side"),
    [
        ("The queens come off.", None),
        ("White exchanges queens.", "white"),
        ("White trades off the queens on f6.", "white"),
        ("The queens will be exchanged.", None),
        ("The queens leave the board.", None),
        ("Black offers an exchange of queens.", "black"),
        ("This offers the exchange of queens.", "black"),
        ("The queens will come off.", None),
        ("White swaps queens at once.", "white"),
        ("The queens disappear.", None),
    ],
)
def test_queens_that_come_off_in_the_line_shown(judge: Judge, words: str, side: str | None) -> None:
    finding = judge(LINE % words)
    assert (finding.claim.kind, finding.claim.side) == ("exchange", side)
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    ["The queens are off.", "The queens have been exchanged.", "The queens have come off."],
)
def test_queens_that_are_off_are_not_on_the_board(judge: Judge, words: str) -> None:
    assert judge(OFF % words).outcome is Outcome.HOLDS
    finding = judge(LINE % words)
    assert finding.outcome is Outcome.FAILS  # near miss: they come off on the next move
    assert finding.because == "White has 1 queen left and Black 1 queen."


def test_other_pieces_do_not_come_off(judge: Judge) -> None:
    assert judge(OFF % "The rooks are off.").outcome is Outcome.FAILS
    assert judge(LINE % "The queens come off on d4.").outcome is Outcome.FAILS


def test_a_bishop_for_a_knight(judge: Judge) -> None:
    text = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 {%s} 4. Bxc6 dxc6 5. d3 *"
    assert judge(text % "White exchanges his bishop for the knight.").outcome is Outcome.HOLDS
    assert judge(text % "White exchanges his rook for the knight.").outcome is Outcome.FAILS


def test_no_exchange_is_offered_where_none_can_be_taken(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Nf3 {White offers an exchange of queens.} *")
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize("words", ["The queens stay on.", "The queens do not come off."])
def test_a_denial_is_turned_round(judge: Judge, words: str) -> None:
    finding = judge(LINE % words)
    assert finding.claim.negated
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "White is the exchange up.",  # a rook for a minor piece
        "White wins the exchange.",
        "The queen goes off on an adventure.",
        "White trades on his reputation.",
        "The queens may be exchanged.",
    ],
)
def test_other_exchanges_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(LINE % words) if c.kind == "exchange"]


def test_the_line_shown_ends_when_the_pieces_are_off(judge: Judge) -> None:
    text = "1. e4 e5 2. d4 exd4 3. Qxd4 Qf6 4. Qxf6 {The queens come off.} Nxf6 5. Nc3 Bb4 6. Bd3 O-O *"
    assert judge(text).evidence() == "4... Nxf6"
