"""The model of natural moves: chances, what attracts, what a rating changes, and files of weights."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lineproof.claims import Spot
from lineproof.engine import Board
from lineproof.proof import EvidenceStore
from lineproof.replies import Natural, NaturalError
from lineproof.replies.ahead import ahead, costs
from lineproof.replies.natural import depth
from lineproof.replies.traits import TRAITS, traits

START = Board()


def spot(line: str, fen: str = START.fen) -> Spot:
    found = Spot(fen, (), Board(fen))
    for san in line.split():
        found = found.play(found.board.parse_san(san))
    return found


def trait(line: str, san: str, name: str, fen: str = START.fen) -> float:
    at = spot(line, fen)
    return traits(at, {})[at.board.parse_san(san)][name]


@settings(deadline=None)  # the first example reads the weights
@given(st.lists(st.integers(0, 10**6), max_size=60), st.integers(400, 2900))
def test_chances_sum_to_one_at_any_position_and_rating(choices: list[int], rating: int) -> None:
    at = spot("")
    for choice in choices:
        legal = at.board.legal_moves()
        if not legal:
            break
        at = at.play(legal[choice % len(legal)])
    shares = Natural.shipped().shares(traits(at, {}), rating)
    assert set(shares) == set(at.board.legal_moves())
    if shares:
        assert math.isclose(sum(shares.values()), 1, rel_tol=1e-9)
        assert min(shares.values()) >= 0


# each: what the trait is, worked out on the board by hand
@pytest.mark.parametrize(
    ("line", "san", "name", "value"),
    [
        ("e4 d5", "exd5", "takes", 1 / 3),
        ("e4 d5", "e5", "takes", 0),
        ("e4 e5 Nf3 Nc6", "Nxe5", "takes", 0),  # protected: the exchange loses a piece for a pawn
        ("e4 e5 Nf3 d6 Nxe5", "dxe5", "gains", 1),
        ("e4 d5 exd5", "Qxd5", "recaptures", 1),
        ("e4 d5 exd5", "Nf6", "recaptures", 0),
        ("e4 f5", "Qh5+", "checks", 1),
        ("f3 e5 g4", "Qh4#", "mates", 1),
        ("e4 e5 Nf3", "d6", "develops", 0),
        ("e4 e5", "Nf3", "develops", 1),
        ("e4 e5 Nf3 Nc6", "Ng1", "retreats", 1),
        ("e4 e5 Nf3 Nc6", "Ng1", "again", 1),
        ("e4 e5 Nf3 Nc6 Bc4 Nf6", "O-O", "castles", 1),
        ("e4 e5", "Ke2", "walks", 1),
        ("e4 e5", "Qh5", "early queen", 1),
        ("e4 e5", "Na3", "rim", 1),
        ("", "d4", "centre", 1),
        ("", "d3", "centre", 0),
        ("e4 e5", "Qh5", "prepared", 1),  # 1. e4 has opened the diagonal
        ("e4 e5", "Nf3", "prepared", 0),
        ("e4 Nf6 e5", "Nd5", "escapes", 3 / 9),
        ("e4 Nf6 e5", "a6", "escapes", 0),
        ("e4 Nf6 e5", "a6", "leaves", 2 / 9),  # the knight is protected: three for one
        ("e4 e5 Nf3 Nc6 Bb5", "a6", "attacks", 3 / 9),
        ("e4 e5 Nf3 Nc6 Bb5", "h6", "attacks", 0),
    ],
)  # fmt: skip
def test_a_trait_is_what_strikes_the_eye(line: str, san: str, name: str, value: float) -> None:
    assert trait(line, san, name) == pytest.approx(value)


def test_a_promotion_is_a_trait() -> None:
    assert trait("", "b8=Q", "promotes", "8/1P6/8/8/8/4k3/8/4K3 w - - 0 1") == 1


def test_a_recapture_is_likelier_than_any_quiet_move() -> None:
    at = spot("e4 d5 exd5")
    found = traits(at, costs(at, 1500, EvidenceStore(None)))
    shares = Natural.shipped().shares(found, 1500)
    assert max(shares, key=lambda uci: shares[uci]) == "d8d5"


def test_a_stronger_player_falls_less_often_for_what_costs_a_piece() -> None:
    """Scholar's mate (common practice): after 3. Qh5 the natural-looking 3... Nf6 loses to 4. Qxf7#."""
    at = spot("e4 e5 Bc4 Nc6 Qh5")
    shares = []
    for rating in (800, 1500, 2200):
        found = traits(at, costs(at, rating, EvidenceStore(None)))
        shares.append(Natural.shipped().shares(found, rating)["g8f6"])
    assert shares[0] > shares[1] > shares[2]


def test_depth_grows_with_the_rating_between_whole_plies() -> None:
    assert depth(400) == 1 and depth(2900) == 5
    assert depth(100) == 1 and depth(3500) == 5
    assert depth(1500) == pytest.approx(1 + 4 * 1100 / 2500)


def test_costs_lie_between_those_of_the_plies_around_them() -> None:
    at, store = spot("e4 e5 Nf3 Nc6 Bc4 Nd4"), EvidenceStore(None)
    rating = 1650  # 3.0 plies
    assert depth(rating) == 3
    assert costs(at, rating, store) == ahead(at, 3, store)
    between, low, high = costs(at, 1800, store), ahead(at, 3, store), ahead(at, 4, store)
    for uci, cost in between.items():
        assert min(low[uci], high[uci]) <= cost <= max(low[uci], high[uci])


def test_weights_are_read_as_they_are_written() -> None:
    shipped = Natural.shipped()
    assert Natural.read(shipped.written()) == shipped
    assert set(shipped.of) == set(TRAITS)
    assert "guessed" in shipped.source


@pytest.mark.parametrize(
    "text",
    ["", "[]", "{}", '{"format": 2}', '{"format": 1, "source": "x", "alpha": 20, "weights": {"takes": [1, 2]}}'],
)  # fmt: skip
def test_a_file_that_is_none_of_ours_is_refused(text: str) -> None:
    with pytest.raises(NaturalError):
        Natural.read(text)


def test_no_chance_is_given_where_the_game_is_over() -> None:
    assert Natural.shipped().shares(traits(spot("f3 e5 g4 Qh4#"), {}), 1500) == {}
