"""Tracks: where pieces came from, and moves that they did not need."""

from __future__ import annotations

import pytest

from lineproof.claims import Spot
from lineproof.claims.castling import castled
from lineproof.claims.tracks import develops, losses, needed, tracks
from tests.claims.conftest import lesson


def spot(moves: str) -> Spot:
    return Spot.of(lesson(f"{moves} *").lines()[0])


@pytest.mark.parametrize(
    ("letter", "origin", "to", "moves"),
    [
        ("n", "b1", "c3", 1),
        ("n", "b1", "d5", 2),
        ("n", "a1", "b2", 4),  # the longest short way of a knight
        ("b", "f1", "b5", 1),
        ("b", "f1", "b3", 2),
        ("r", "a1", "a8", 1),
        ("r", "a1", "b8", 2),
        ("q", "d1", "h5", 1),
        ("q", "d1", "e3", 2),
        ("p", "e2", "e4", 1),
        ("p", "e2", "e5", 2),
        ("p", "e3", "e5", 2),
        ("k", "e1", "e3", 2),
        ("n", "b1", "b1", 0),
    ],
)
def test_moves_needed_on_an_empty_board(letter: str, origin: str, to: str, moves: int) -> None:
    assert needed(letter, origin, to) == moves


def test_a_castled_rook_and_a_pawn_taken_in_passing_are_followed() -> None:
    end = spot("1. e4 a6 2. e5 d5 3. exd6 a5 4. Nf3 a4 5. Bc4 a3 6. O-O")
    by_square = {t.at: t for t in tracks(end) if t.side == "white"}
    assert by_square["f1"].origin == "h1"
    assert by_square["d6"].origin == "e2"
    assert not [t for t in tracks(end) if t.origin == "d7"]
    assert castled(end, "white") == "king"
    assert castled(end, "black") is None


def test_every_piece_on_the_board_has_one_track() -> None:
    end = spot("1. e4 d5 2. exd5 Qxd5 3. Nc3 Qa5 4. d4 c6 5. Nf3 Bg4 6. h3 Bxf3 7. Qxf3")
    assert sorted(t.at for t in tracks(end)) == sorted(at for at, _ in end.board.pieces())


def test_two_steps_where_one_would_do_lose_a_move() -> None:
    (pawn,) = losses(spot("1. e3 e5 2. e4"), "white")
    assert (pawn.at, pawn.moves) == ("e4", 1)


def test_an_only_move_is_left_apart() -> None:
    # 2... g6 is the only legal move; without it, g6 and g5 would be two steps for one
    end = spot("1. e4 f5 2. Qh5+ g6 3. Qh4 g5")
    assert losses(end, "black") == []
    free = spot("1. e4 g6 2. Nf3 g5")
    assert [loss.moves for loss in losses(free, "black")] == [1]


def test_a_pawn_that_frees_no_bishop_drives_nothing_on() -> None:
    driven = spot("1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Ba4")
    assert not any(loss.driven for loss in losses(driven, "white"))
    assert not develops(driven, 5)  # 3... a6
    assert develops(driven, 4)  # 3. Bb5
