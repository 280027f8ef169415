"""A mate that an engine announces counts only when every defence was tried."""

from __future__ import annotations

from lineproof.engine import Board, Line, mate
from lineproof.engine.outside.mates import proved

LADDER = "7k/8/8/8/8/8/R7/1R4K1 w - - 0 1"
"""White mates in two: the two rooks drive the king to the edge, where he already is (common practice)."""
PINNED = "6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1"
"""White mates at once on the back rank (common practice)."""


def announced(board: Board, uci: str, mate_in: int) -> Line:
    value = (30_000 - abs(mate_in)) * (1 if mate_in > 0 else -1)
    points = 100 if mate_in > 0 else 0
    return Line((uci,), (board.san(uci),), points, value, mate_in)


def test_a_true_mate_stays_one() -> None:
    board = Board(PINNED)
    line, _ = proved(announced(board, "a1a8", 1), board, None, 10_000, None)
    assert line.mate == 1
    board = Board(LADDER)
    assert mate(LADDER, 2, nodes=100_000)[0] is True
    line, nodes = proved(announced(board, "a2a7", 2), board, None, 100_000, None)
    assert line.mate == 2
    assert nodes > 0


def test_a_mate_by_another_move_than_the_one_played_does_not_count() -> None:
    board = Board(PINNED)
    line, _ = proved(announced(board, "a1a7", 1), board, None, 10_000, None)
    assert (line.mate, line.points, line.centipawns) == (None, 100, 29_000)


def test_a_mate_that_is_none_is_only_a_won_game() -> None:
    board = Board()
    for announced_mate in (1, 2, -1):
        line, _ = proved(announced(board, "e2e4", announced_mate), board, None, 10_000, None)
        assert line.mate is None
        assert line.points == (100 if announced_mate > 0 else 0)


def test_a_mate_of_the_mover_counts_when_no_move_of_his_helps() -> None:
    board = Board(LADDER).play("a2a7")
    assert len(board.legal_moves()) == 1
    line, _ = proved(announced(board, board.legal_moves()[0], 1), board, None, 10_000, None)
    assert line.mate == 1


def test_a_long_mate_is_not_tried_and_does_not_count() -> None:
    board = Board()
    assert proved(announced(board, "e2e4", 6), board, None, 10**9, None)[1] == 0


def test_nodes_are_a_limit() -> None:
    board = Board()
    line, nodes = proved(announced(board, "e2e4", 5), board, None, 1_000, None)
    assert line.mate is None
    assert nodes < 10_000
