"""Moves and positions as they are spoken."""

from __future__ import annotations

import pytest

from lineproof.engine import Board
from lineproof.order.landmarks import Landmark, Seen, words
from lineproof.order.spoken import move_words, words_in


@pytest.mark.parametrize(
    ("fen", "uci", "said"),
    [
        ("rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1", "e2e4", "e four"),
        ("rnbqkbnr/ppp1pppp/8/3p4/4P3/8/PPPP1PPP/RNBQKBNR w KQkq - 0 2", "e4d5", "e takes d five"),
        ("r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1", "e1g1", "castles"),
        ("r3k2r/8/8/8/8/8/8/R3K2R b KQkq - 0 1", "e8c8", "castles long"),
        ("4k3/8/8/8/8/8/8/R4RK1 w - - 0 1", "a1d1", "rook from a one to d one"),
        ("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 2", "e5d6", "e takes d six in passing"),
        ("6k1/1P6/8/8/8/8/8/4K3 w - - 0 1", "b7b8q", "b eight, making a queen, check"),
        ("2r3k1/1P6/8/8/8/8/8/4K3 w - - 0 1", "b7c8n", "b takes c eight, making a knight"),
        ("6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1", "a1a8", "rook to a eight, mate"),
        ("4k3/8/8/1N3N2/8/8/8/4K3 w - - 0 1", "b5d4", "knight from b five to d four"),
        ("4k3/8/8/8/8/8/8/4K3 b - - 0 1", "0000", "suppose Black passes"),
    ],
)  # fmt: skip
def test_a_move_is_said_as_teachers_say_it(fen: str, uci: str, said: str) -> None:
    assert move_words(Board(fen), uci) == said


@pytest.mark.parametrize(
    ("text", "count"),
    [("", 0), ("The knight on e4.", 5), ("e four", 2), ("don't take, please!", 3), ("3...d5", 3), ("… — !", 0)],
)  # fmt: skip
def test_words_are_counted_as_they_are_spoken(text: str, count: int) -> None:
    assert words_in(text) == count


def seen(*fens: str) -> tuple[Seen, list[Board]]:
    boards = [Board(fen) for fen in fens]
    found = Seen()
    for board in boards:
        found.add(board)
    return found, boards


@pytest.mark.parametrize(
    ("one", "other", "said"),
    [
        # only the mover differs
        ("4k3/8/8/8/8/8/4P3/4K3 w - - 0 1", "4k3/8/8/8/8/8/4P3/4K3 b - - 0 1", "with the white king still on e1 and White to move"),
        # only the right to castle
        ("4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1", "4k3/8/8/8/8/8/8/R3K2R w K - 0 1", "with the white rook still on a1 and White still to castle on either side"),
        # only a capture in passing
        ("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 2", "4k3/8/8/3pP3/8/8/8/4K3 w - - 0 2", "with the black pawn on d5 and a pawn to be taken in passing on d6"),
        # the other has all of these pieces and one more
        ("4k3/8/8/8/8/8/8/4K3 w - - 0 1", "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1", "with the white king still on e1 and nothing on e2"),
    ],
)  # fmt: skip
def test_positions_that_look_alike_are_told_apart(one: str, other: str, said: str) -> None:
    found, (board, second) = seen(one, other)
    marks = found.marks(board)
    assert words(marks) == said
    assert all(mark.holds(board) for mark in marks)
    assert not all(mark.holds(second) for mark in marks)


def test_pieces_of_one_sort_are_named_together_and_still_is_said_of_those_that_never_moved() -> (
    None
):
    marks = [
        Landmark("piece", "n", "b8"),
        Landmark("piece", "n", "g8"),
        Landmark("piece", "B", "c4"),
    ]
    assert words(marks) == "with the black knights still on b8 and g8 and the white bishop on c4"
    assert (
        words(marks[:2], moved=["g8"])
        == "with the black knight still on b8 and the black knight on g8"
    )


def test_what_moved_last_is_named_first() -> None:
    found = Seen()
    board = Board()
    for uci in ("e2e4", "e7e5", "g1f3", "b8c6"):
        found.add(board)
        board = board.play(uci)
    found.add(board)
    assert (
        words(found.marks(board, ["c6", "f3", "e5", "e4"]), ["c6"]) == "with the black knight on c6"
    )
