"""Exchanges on one square."""

from __future__ import annotations

import pytest

from lineproof.claims.swap import swap, taken_by
from lineproof.engine import Board


@pytest.mark.parametrize(
    ("fen", "at", "gain"),
    [
        ("4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1", "d5", 1),
        ("4k3/8/2p5/3p4/4P3/8/8/4K3 w - - 0 1", "d5", 0),  # pawn for pawn
        ("4k3/8/2p5/3p4/8/8/3R4/4K3 w - - 0 1", "d5", 0),  # a rook for a pawn is not taken
        ("4k3/8/2p5/3r4/8/8/6B1/4K3 w - - 0 1", "d5", 2),  # a rook for a bishop
        ("4k3/8/8/8/8/8/8/4K3 w - - 0 1", "d5", 0),  # nothing stands there
        ("3rk3/3r4/8/3n4/8/8/3R4/3RK3 w - - 0 1", "d5", 0),
        ("3rk3/8/8/3n4/8/8/3R4/3RK3 w - - 0 1", "d5", 3),
        ("4k3/8/8/3n4/1b6/8/3R4/4K3 w - - 0 1", "d5", 0),  # the rook is pinned
    ],
)
def test_gain_on_one_square(fen: str, at: str, gain: int) -> None:
    assert swap(Board(fen), at) == gain


def test_what_a_move_takes() -> None:
    board = Board("1n2k3/P7/8/3pP3/8/8/8/4K3 w - d6 0 1")
    assert taken_by(board, "a7b8q") == 3 + 8
    assert taken_by(board, "a7a8q") == 8
    assert taken_by(board, "e5d6") == 1  # in passing
    assert taken_by(board, "e1e2") == 0
