"""What a move opens. Rules of the game alone."""

from __future__ import annotations

from lineproof.claims.discovery import uncovered
from lineproof.engine import Board


def test_a_piece_behind_the_mover_is_uncovered() -> None:
    board = Board("4k3/8/8/4N3/8/8/8/4R1K1 w - - 0 1")
    assert uncovered(board, "e5c6") == {"e1": ["e8"]}


def test_the_mover_itself_and_a_castling_rook_uncover_nothing() -> None:
    assert uncovered(Board("4k3/8/8/8/8/8/8/3R2K1 w - - 0 1"), "d1e1") == {}
    assert uncovered(Board("5k2/8/8/8/8/8/8/4K2R w K - 0 1"), "e1g1") == {}


def test_taking_in_passing_opens_the_line_of_the_pawn_taken() -> None:
    board = Board("4k3/8/8/r2pP2R/8/8/8/4K3 w - d6 0 1")
    assert uncovered(board, "e5d6") == {"h5": ["a5"]}
