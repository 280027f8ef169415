"""Exchanges on a square. Values: common practice."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lineproof.claims.board import bound, pins
from lineproof.claims.exchange import exchange, gained, losing, safe_squares, taken_by
from lineproof.engine import Board


@pytest.mark.parametrize(
    ("fen", "at", "by", "gain"),
    [
        ("4k3/8/8/4p3/8/5N2/8/4K3 w - - 0 1", "e5", "white", 1),  # nobody protects the pawn
        ("4k3/8/3p4/4p3/8/5N2/8/4K3 w - - 0 1", "e5", "white", 0),  # a pawn does
        ("4k3/8/3p4/4q3/8/5N2/8/4K3 w - - 0 1", "e5", "white", 6),  # knight for queen
        ("3rk3/3r4/8/3p4/8/8/3Q4/3RK3 w - - 0 1", "d5", "white", 0),  # the queen would go first
        ("3qk3/8/8/3p4/8/8/3R4/3RK3 w - - 0 1", "d5", "white", 1),  # the second rook stands behind
        ("4k3/4p3/8/8/8/8/4R3/4K3 w - - 0 1", "e7", "white", 0),  # the king takes back
        ("4k3/4p3/8/8/1B6/8/4R3/4K3 w - - 0 1", "e7", "white", 1),  # he may not: two attack it
    ],
)
def test_what_an_exchange_gains(fen: str, at: str, by: str, gain: int) -> None:
    assert exchange(Board(fen), at, by) == gain


def test_a_pinned_piece_takes_no_part_off_its_line() -> None:
    pinned = Board("4k3/4n3/8/3p4/8/2N5/8/4R1K1 w - - 0 1")
    assert exchange(pinned, "d5", "white") == 1
    free = Board("4k3/4n3/8/3p4/8/2N5/8/6K1 w - - 0 1")
    assert exchange(free, "d5", "white") == 0


def test_an_idle_piece_does_not_take_back() -> None:
    board = Board("4k3/8/3p4/4p3/8/5N2/8/4K3 w - - 0 1")
    assert exchange(board, "e5", "white", idle=("d6",)) == 1


def test_losing_lists_what_can_be_taken_with_a_gain() -> None:
    assert losing(Board("4k3/8/8/4p3/8/5N2/8/4K3 w - - 0 1"), "black") == ["e5"]
    assert losing(Board("4k3/8/3p4/4p3/8/5N2/8/4K3 w - - 0 1"), "black") == []


def test_safe_squares_are_those_where_less_than_a_pawn_is_lost() -> None:
    board = Board("6k1/8/8/8/8/1p6/p1p5/N6K w - - 0 1")
    # b3 can be taken for nothing; c2 is protected by it
    assert safe_squares(board, "a1") == ["b3"]
    # on b3 two pawns would take it back, and b3 covers c2
    guarded = Board("6k1/8/8/8/p1p5/1p6/8/N6K w - - 0 1")
    assert safe_squares(guarded, "a1") == []


def test_a_piece_pinned_to_its_king_keeps_to_the_line() -> None:
    board = Board("4k3/4r3/8/8/8/8/4R3/4K3 w - - 0 1")
    assert all(at[0] == "e" for at in safe_squares(board, "e2"))
    assert any(at[0] != "e" for at in safe_squares(board, "e2", pinned=False))


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
def test_gain_of_the_side_to_move(fen: str, at: str, gain: int) -> None:
    assert exchange(Board(fen), at, "white") == gain


def test_what_a_move_takes() -> None:
    board = Board("1n2k3/P7/8/3pP3/8/8/8/4K3 w - d6 0 1")
    assert taken_by(board, "a7b8q") == 3 + 8
    assert taken_by(board, "a7a8q") == 8
    assert taken_by(board, "e5d6") == 1  # in passing
    assert taken_by(board, "e1e2") == 0


@pytest.mark.parametrize(
    ("fen", "uci", "gain"),
    [
        ("4k3/8/8/4p3/8/5N2/8/4K3 w - - 0 1", "f3e5", 1),
        ("4k3/8/3p4/4p3/8/5N2/8/4K3 w - - 0 1", "f3e5", -2),  # three for one
        ("4k3/8/3p4/4q3/8/5N2/8/4K3 w - - 0 1", "f3e5", 6),
        ("4k3/8/8/4p3/8/5N2/8/4K3 w - - 0 1", "f3d4", 0),  # it takes nothing
    ],
)
def test_what_one_capture_gains(fen: str, uci: str, gain: int) -> None:
    assert gained(Board(fen), uci) == gain


@settings(deadline=None)  # up to 80 boards an example
@given(st.lists(st.integers(0, 10**6), max_size=80))
def test_pieces_bound_to_their_king_are_those_of_the_absolute_pins(choices: list[int]) -> None:
    board = Board()
    for choice in choices:
        legal = board.legal_moves()
        if not legal:
            break
        board = board.play(legal[choice % len(legal)])
        for side in ("white", "black"):
            absolute = {(p.pinner, p.piece, p.behind) for p in pins(board, side) if p.absolute}
            assert set(bound(board, side)) == absolute
