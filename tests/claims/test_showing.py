"""Showing: the shortest part of a line that convinces, and what falls in it."""

from __future__ import annotations

import pytest

from lineproof.claims import Spot
from lineproof.claims.alternatives import natural
from lineproof.claims.pays import pays
from lineproof.claims.showing import comes_to, falls, numbered, shortest
from lineproof.engine import Board
from lineproof.lesson import Lesson
from lineproof.proof import EvidenceStore
from lineproof.proof.asker import Asker


def spot_of(moves: str, fen: str | None = None) -> Spot:
    """The spot after a movetext."""
    head = f'[SetUp "1"]\n[FEN "{fen}"]\n\n' if fen else ""
    return Spot.of(Lesson.from_text(f"{head}{moves} *").lines()[0])


def line(spot: Spot, sans: str) -> tuple[str, ...]:
    found: list[str] = []
    board = spot.board
    for san in sans.split():
        found.append(board.parse_san(san))
        board = board.play(found[-1])
    return tuple(found)


FORK = "1. e4 e5 2. Nc3 Nf6 3. f4 exf4 4. e5 Qe7 5. Qe2 Ng8 6. Nf3 d6 7. Nd5 Qd8 8. Nxc7+"


def test_a_line_ends_where_what_it_wins_stands_on_the_board() -> None:
    spot = spot_of(FORK)
    whole = line(spot, "Kd7 Nxa8 Nc6 d4 g5 Bd2 g4 d5")
    assert numbered(spot, shortest(spot, whole)) == "8... Kd7 9. Nxa8"
    assert falls(spot, whole, "white") == "the rook on a8"
    assert falls(spot, whole, "black") == ""


def test_an_exchange_is_shown_to_its_end() -> None:
    """Cut before the recapture, the line would show a piece too many."""
    spot = spot_of("1. e4 e5 2. Nf3 Nc6 3. Bb5 a6")
    whole = line(spot, "Bxc6 dxc6 Nxe5 Qd4 Nf3 Qxe4+ Qe2 Qxe2+ Kxe2 Bf5")
    assert shortest(spot, whole) == whole[:10]  # level in the end: five moves of it
    assert falls(spot, whole[:3], "white") == "the pawn on e5"
    assert comes_to(spot, whole[:3], "white") == "the pawn on e5 falls"


def test_a_line_without_a_gain_is_shown_for_five_moves() -> None:
    spot = spot_of("1. e4 e5")
    whole = line(spot, "Nf3 Nc6 Bb5 a6 Ba4 Nf6 O-O Be7 Re1 b5 Bb3 d6")
    assert shortest(spot, whole) == whole[:10]


def test_a_mate_is_shown_to_the_end() -> None:
    spot = spot_of("1. f3 e5")
    whole = line(spot, "g4 Qh4#")
    assert shortest(spot, whole) == whole
    assert comes_to(spot, whole, "black") == "it ends in mate"
    assert comes_to(spot, whole, "white") == ""


def test_a_gain_that_stands_already_is_shown_with_the_best_defence() -> None:
    spot = spot_of("1. e4 e5 2. Nc3 Nf6 3. f4 exf4 4. e5 Nh5 5. Qxh5")
    whole = line(spot, "g6 Qf3 d6 Qxf4 dxe5 Qxe5+")
    assert numbered(spot, shortest(spot, whole, before=-1)) == "5... g6 6. Qf3"


@pytest.mark.parametrize(
    ("fen", "sans", "side", "what"),
    [
        ("r3k3/8/8/8/8/8/6B1/4K3 w - - 0 1", "Bxa8", "white", "the rook on a8 falls"),
        ("r2qk3/8/8/8/8/8/8/3QK3 w - - 0 1", "Qxd8+ Kxd8", "white", ""),
        ("3rk3/8/8/8/8/8/8/3QK3 w - - 0 1", "Qxd8+ Kxd8", "white", ""),
        ("3qk3/8/8/8/8/8/8/3RK3 w - - 0 1", "Rxd8+ Kxd8", "white", "White wins the queen on d8 for the rook"),
        ("4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1", "exd5", "white", "the pawn on d5 falls"),
        ("4k3/8/8/3pp3/8/4R3/8/4K3 w - - 0 1", "Rxe5+ Kd7 Rxd5+", "white", "two pawns fall"),
        ("4k3/8/8/8/3Pp3/8/8/4K3 b - d3 0 1", "exd3", "black", "the pawn on d4 falls"),
        ("8/P3k3/8/8/8/8/8/4K3 w - - 0 1", "a8=Q", "white", "a new queen falls"),
    ],
)  # fmt: skip
def test_what_falls_is_said_with_what_was_given_for_it(
    fen: str, sans: str, side: str, what: str
) -> None:
    board = Board(fen)
    spot = Spot(fen, (), board)
    assert comes_to(spot, line(spot, sans), side) == what


def test_a_fork_that_pays_shows_what_falls_and_one_that_does_not_shows_best_play() -> None:
    ask = Asker(EvidenceStore(None), 40_000)
    found = pays(ask, spot_of(FORK), "white")
    assert found.said("white").startswith("It pays: best play wins ")
    assert "the rook on a8" in found.what
    assert numbered(found.spot, found.line).endswith("Nxa8")
    bad = pays(ask, spot_of("1. e4 e5 2. Nf3 Nc6"), "white")
    assert bad.said("white") == "It does not pay: with best play White gains no material by it."
    assert len(bad.line) <= 10


def test_moves_that_strike_the_eye_come_before_the_others() -> None:
    lesson = Lesson.from_text("1. e4 d5 2. exd5 Nf6 (2... c6) *")
    place = lesson.places[3]
    spot = Spot.of(place)
    found = [spot.board.san(uci) for uci in natural(place, spot)]
    assert found[:3] == ["c6", "Nf6", "Qxd5"]
    assert "a6" not in found
    checked = Lesson.from_text("1. e4 f5 2. Qh5+ *").places[3]
    assert [Spot.of(checked).board.san(u) for u in natural(checked, Spot.of(checked))] == ["g6"]


def test_two_of_a_kind_are_told_as_two() -> None:
    spot = spot_of("", fen="4k3/8/8/3b4/4b3/8/8/3QKR2 w - - 0 1")
    whole = line(spot, "Qxd5 Bxd5 Rf5 Kd8 Rxd5+")
    assert falls(spot, whole, "black") == "the queen on d5 for two bishops"
