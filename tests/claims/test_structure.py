"""Board facts of the pawns, on positions set up for them."""

from __future__ import annotations

from lineproof.claims import structure
from lineproof.claims.bishops import are_opposite, has_pair, is_bad, is_good
from lineproof.claims.where import Where
from lineproof.engine import Board

FRENCH = Board("rnbqkbnr/ppp2ppp/4p3/3pP3/3P4/8/PPP2PPP/RNBQKBNR b KQkq - 0 3")


def test_ranks_are_seen_from_a_side() -> None:
    assert (structure.rank("white", "e5"), structure.rank("black", "e5")) == (5, 4)
    assert structure.ahead("black", "e5") == "e4"
    assert structure.ahead("white", "e8") is None


def test_neighbouring_files_end_at_the_edge() -> None:
    assert [structure.beside(f) for f in "aeh"] == ["b", "df", "g"]


def test_colours_of_squares() -> None:
    # FIDE Laws of Chess, article 2.1: the square in the right-hand corner is light
    assert [structure.colour(at) for at in ("h1", "a8", "a1", "h8")] == ["light", "light", "dark", "dark"]  # fmt: skip


def test_rams_of_the_advanced_french() -> None:
    assert structure.rams(FRENCH) == [("d4", "d5"), ("e5", "e6")]


def test_a_pawn_guards_a_square_from_behind_only() -> None:
    board = Board("4k3/8/8/2p5/8/8/8/4K3 w - - 0 1")
    assert structure.guards(board, "black", "d4") == ["c5"]
    assert structure.guards(board, "black", "d3") == ["c5"]
    assert structure.guards(board, "black", "d5") == []


def test_reversed_colours_mirror_the_ranks() -> None:
    assert structure.mirrored("e4") == "e5"


def test_the_french_bishops() -> None:
    assert is_bad(FRENCH, "black", "c8")
    assert is_good(FRENCH, "black", "f8")
    assert not is_bad(FRENCH, "white", "f1")
    assert has_pair(FRENCH, "white")
    assert not are_opposite(FRENCH)


def test_words_for_a_place_on_the_board() -> None:
    assert Where.read("on the c - and d files") == Where((), "cd", None)
    assert Where.read("on e5 and d6") == Where(("e5", "d6"), "", None)
    assert Where.read("on the king 's side") == Where((), "", "kingside")
    assert str(Where.read("on the c - and d files")) == " on the c- and d-files"
    assert Where.read("in the centre").holds("c4")
    assert not Where.read("on the queenside").holds("e4")
