"""Fitting the model of natural moves: it finds the weights by which invented players choose, and says how well it does."""

from __future__ import annotations

import math
import random
from collections import Counter
from pathlib import Path

import pytest

from lineproof.claims import Spot
from lineproof.collection import Collection
from lineproof.engine import Board
from lineproof.proof import EvidenceStore
from lineproof.replies import Natural
from lineproof.replies.fitting import FittingError, fitted
from lineproof.replies.natural import Natural as Model
from lineproof.replies.observed import Observed, observed, quality
from lineproof.replies.traits import traits

SHIPPED = Natural.shipped()


def invented(count: int, true: Model, games: int = 200) -> list[Observed]:
    """Positions of random legal games, with moves drawn by a model that is known. Nothing is searched: all moves seem to cost nothing."""
    rng = random.Random(7)
    found = []
    for number in range(count):
        spot = Spot(Board().fen, (), Board())
        for _ in range(rng.randrange(2, 20)):
            spot = spot.play(rng.choice(spot.board.legal_moves()))
            if not spot.board.legal_moves():
                break
        legal = spot.board.legal_moves()
        if len(legal) < 2:
            continue
        rating = rng.choice((800, 1200, 1600, 2000, 2400))
        of = traits(spot, dict.fromkeys(legal, 0.0))
        shares = true.shares(of, rating)
        drawn = rng.choices(legal, [shares[uci] for uci in legal], k=games)
        found.append(Observed(spot.board.key + number, rating, of, Counter(drawn)))
    return found


def changed(**weights: tuple[float, float]) -> Model:
    return Model({**SHIPPED.of, **weights}, SHIPPED.impulse, SHIPPED.alpha, "made for a test")


def test_it_finds_the_weights_by_which_moves_were_chosen() -> None:
    true = changed(checks=(2.0, 0.5), castles=(-1.0, 0.0), centre=(2.0, -0.5))
    fit = fitted(invented(300, true), SHIPPED, "invented")
    for name in ("checks", "centre"):
        assert fit.natural.of[name][0] == pytest.approx(true.of[name][0], abs=0.25)
        assert fit.natural.of[name][1] == pytest.approx(true.of[name][1], abs=0.25)
    assert fit.after.loss < fit.before.loss - 0.05
    assert fit.natural.source == "invented"


def test_a_trait_that_nobody_shows_keeps_its_weight() -> None:
    fit = fitted(invented(120, SHIPPED), SHIPPED, "invented")
    # nothing seemed to cost anything, so nothing was learned of what costs do
    assert fit.natural.of["costs"] == pytest.approx(SHIPPED.of["costs"], abs=0.01)


def test_too_few_positions_are_refused() -> None:
    with pytest.raises(FittingError, match="needs more games"):
        fitted(invented(20, SHIPPED), SHIPPED, "invented")


def test_quality_by_hand() -> None:
    legal = ["a2a3", "b2b3", "c2c3", "d2d3"]
    even = {uci: dict.fromkeys(SHIPPED.of, 0.0) for uci in legal}
    found = quality(SHIPPED, [Observed(1, 1500, even, {"a2a3": 3, "d2d3": 1})])
    # all alike: the first by name is called the likeliest
    assert (found.games, found.positions, found.first, found.three) == (4, 1, 75.0, 75.0)
    assert found.loss == found.uniform == pytest.approx(math.log(4))


def test_a_collection_is_observed_at_the_ratings_that_it_has(tmp_path: Path) -> None:
    file = tmp_path / "games.pgn"
    file.write_text(
        "".join(
            f'[Round "{n}"]\n[WhiteElo "{rating}"]\n[BlackElo "{rating}"]\n[Result "*"]\n\n1. {"e4" if n % 3 else "d4"} e5 *\n\n'
            for n, rating in enumerate([1200] * 60 + [2000] * 30 + [1600] * 5)
        )
    )
    with Collection.open("club", tmp_path / "all") as games:
        games.add([file])
        found = observed(games, EvidenceStore(None), most=2)
    first = [one for one in found if one.key == Board().key]
    assert [(one.rating, one.games) for one in first] == [(1200, 60), (2000, 30)]
    assert first[0].counts == {"e2e4": 40, "d2d4": 20}
