"""What an outside engine says is read by the letter, and its line must be one that can be played.

Source of the lines: "Description of the universal chess interface (UCI)", April 2006, from memory.
"""

from __future__ import annotations

import pytest

from lineproof.engine import Board, points
from lineproof.engine.outside import WrongAnswerError
from lineproof.engine.outside.info import Info, chosen, line_of, read

START = Board()
AFTER_E4 = START.play("e2e4")


@pytest.mark.parametrize(
    ("line", "info"),
    [
        (
            "info depth 12 seldepth 20 multipv 1 score cp -13 nodes 1242 nps 100 time 12 pv e2e4 e7e5 g1f3",
            Info(-13, None, False, 1, 12, 1242, ("e2e4", "e7e5", "g1f3")),
        ),
        ("info score mate -3 pv e2e4", Info(None, -3, moves=("e2e4",))),
        ("info score cp 40 lowerbound pv e2e4", Info(40, None, True, moves=("e2e4",))),
        ("info score cp 40 upperbound nodes 7", Info(40, None, True, nodes=7)),
        ("info multipv 2 score cp 5 pv d2d4", Info(5, None, rank=2, moves=("d2d4",))),
        ("info pv e2e4 e7e5 score cp 9 depth 3", Info(9, None, depth=3, moves=("e2e4", "e7e5"))),
        ("info score cp 3 sunshine 400 pv A7A8Q", Info(3, moves=("a7a8q",))),
        ("info currmove e2e4 currmovenumber 1", Info()),
        ("info string score cp 9 pv e2e4", Info()),
        ("info score cp much pv e2e4", Info(moves=("e2e4",))),
        ("info depth", Info()),
        ("info score", Info()),
        ("info score cp", Info()),
        ("info", Info()),
    ],
)
def test_an_info_line_is_read_field_by_field(line: str, info: Info) -> None:
    assert read(line) == info


def test_the_last_exact_line_of_the_move_that_is_played_is_the_answer() -> None:
    old = Info(10, moves=("e2e4",))
    new = Info(20, moves=("e2e4", "e7e5"))
    bound = Info(90, bound=True, moves=("e2e4",))
    other = Info(30, moves=("d2d4",))
    second = Info(25, rank=2, moves=("e2e4",))
    assert chosen([old, new, bound, other, second], "e2e4") is new
    assert chosen([other, bound], "e2e4") is bound
    assert chosen([Info(8)], "e2e4") == Info(8)


@pytest.mark.parametrize(
    ("infos", "said"),
    [
        ([], "no score"),
        ([Info(nodes=5)], "no score"),
        ([Info(8, rank=2, moves=("e2e4",))], "no score"),
        ([Info(8, moves=("d2d4",))], "no score for that move"),
    ],
)
def test_without_a_score_for_its_move_there_is_no_answer(infos: list[Info], said: str) -> None:
    with pytest.raises(WrongAnswerError, match=said):
        chosen(infos, "e2e4")


def test_points_come_from_our_table_and_are_whites() -> None:
    white = line_of(Info(120, moves=("e2e4", "e7e5")), "e2e4", START)
    assert (white.points, white.centipawns, white.san) == (points(120), 120, ("e4", "e5"))
    black = line_of(Info(120, moves=("e7e5",)), "e7e5", AFTER_E4)
    assert (black.points, black.centipawns) == (points(-120), -120)


def test_a_mate_counts_for_the_side_that_mates() -> None:
    assert line_of(Info(None, 2, moves=("e2e4",)), "e2e4", START).mate == 2
    assert line_of(Info(None, -2, moves=("e2e4",)), "e2e4", START).mate == -2
    black = line_of(Info(None, 2, moves=("e7e5",)), "e7e5", AFTER_E4)
    assert (black.mate, black.points, black.centipawns) == (-2, 0, -29_998)


@pytest.mark.parametrize("huge", [40_000, 10**30, -(10**30)])
def test_a_huge_score_is_never_taken_for_a_mate(huge: int) -> None:
    line = line_of(Info(huge, moves=("e2e4",)), "e2e4", START)
    assert (line.mate, abs(line.centipawns)) == (None, 29_000)
    assert line.points == (100 if huge > 0 else 0)


@pytest.mark.parametrize("moves", [("e2e5",), ("e2e4", "e2e4"), ("e2e4", "0000"), ("e2e4", "x")])
def test_a_line_with_an_illegal_move_is_no_answer(moves: tuple[str, ...]) -> None:
    with pytest.raises(WrongAnswerError, match="is not legal"):
        line_of(Info(0, moves=moves), moves[0], START)


def test_a_mate_in_no_moves_is_no_answer() -> None:
    with pytest.raises(WrongAnswerError, match="is mated"):
        line_of(Info(None, 0, moves=("e2e4",)), "e2e4", START)
