"""The fit: `python -m pytest training`."""

from __future__ import annotations

import random
from pathlib import Path

import chess
import fit
import guesses
import layout
import model
import numpy as np
import pytest
import samples
import weights
from scipy import sparse  # type: ignore[import-untyped]
from weights import Weights

RANDOM_PLIES = 6


def random_game(seed: int) -> tuple[str, int]:
    """A game of random moves with invented scores, and how many of its positions are quiet, by python-chess."""
    chosen = random.Random(seed)
    board = chess.Board()
    words, quiet = [], 0
    while not board.is_game_over() and board.ply() < 160:
        move = chosen.choice(list(board.legal_moves))
        loud = (
            board.is_check() or board.is_capture(move) or move.promotion or board.gives_check(move)
        )
        bare = any(chess.popcount(board.occupied_co[color]) == 1 for color in chess.COLORS)
        mate = board.ply() % 50 == 49
        if board.ply() >= RANDOM_PLIES + 4 and not (loud or bare or mate):
            quiet += 1
        score = "?" if board.ply() < RANDOM_PLIES else 30000 if mate else chosen.randint(-300, 300)
        words.append(f"{move.uci()}/{score}")
        board.push(move)
    result = chosen.choice(["1-0", "1/2-1/2", "0-1"])
    return f"{result} {RANDOM_PLIES} {' '.join(words)}\n", quiet


@pytest.fixture(scope="module")
def taken(tmp_path_factory: pytest.TempPathFactory) -> tuple[samples.Samples, int]:
    """All quiet positions of some random games, and how many python-chess finds."""
    folder = tmp_path_factory.mktemp("samples")
    games = [random_game(seed) for seed in range(30)]
    file = folder / "games.txt"
    file.write_text("".join(line for line, _ in games))
    samples.take([file], folder, seed=1, most=1000)
    return samples.read(folder, layout.read()), sum(quiet for _, quiet in games)


def test_the_quiet_positions_are_those_that_another_library_finds(
    taken: tuple[samples.Samples, int],
) -> None:
    found, expected = taken
    assert len(found) == expected > 500


def test_the_model_has_the_value_of_the_engine_on_every_position(
    taken: tuple[samples.Samples, int],
) -> None:
    found, _ = taken
    built = weights.read(layout.read())
    assert (model.engine_value(found, built) == found.values).all()
    assert np.abs(model.value(found, built) - found.values).max() < 4


def test_the_gradient_is_the_slope_of_the_loss(taken: tuple[samples.Samples, int]) -> None:
    found, _ = taken
    of = layout.read()
    start = guesses.start(of)
    target = 0.5 * found.points + 0.5 * model.expected(found.scores)
    problem = model.Problem(
        found, target, start, 30.0, 30, np.zeros(2 * of.count + of.unit_count, bool)
    )
    row = problem.pack(start) + np.random.default_rng(1).normal(0, 3, 2 * of.count + of.unit_count)
    _, gradient = problem.loss(row)
    # some of all kinds, and every unit of danger
    for index in [*range(12), 100, 101, 900, *range(2 * of.count, len(row))]:
        step = np.zeros_like(row)
        step[index] = 1e-3
        slope = (problem.loss(row + step)[0] - problem.loss(row - step)[0]) / 2e-3
        assert slope == pytest.approx(gradient[index], rel=2e-3, abs=2e-8)


def test_a_fit_finds_the_weights_that_made_the_results() -> None:
    of = layout.read()
    rng = np.random.default_rng(2)
    count = 4000
    terms = np.zeros((count, of.count))
    terms[:, :4] = rng.integers(-3, 4, (count, 4))
    nothing = sparse.csr_array((count, of.unit_count))
    of_all = samples.Samples(
        games=np.arange(count),
        points=np.zeros(count),
        scores=np.zeros(count),
        values=np.zeros(count, np.int64),
        phase=rng.uniform(0, 1, count),
        scale=np.ones(count),
        terms=sparse.csr_array(terms),
        units=(nothing, nothing),
    )
    start = Weights(np.zeros((of.count, 2)), np.zeros(of.unit_count))
    truth = Weights(start.pairs.copy(), start.units)
    truth.pairs[:4] = [[80, 120], [300, 310], [-40, 20], [0, 450]]
    fixed = np.zeros(2 * of.count + of.unit_count, bool)
    fixed[6] = True
    target = model.expected(model.value(of_all, truth))
    found, _ = fit.fit(model.Problem(of_all, target, start, 1e4, count, fixed), 500)
    assert found.pairs[:3] == pytest.approx(truth.pairs[:3], abs=2)
    assert found.pairs[3, 0] == 0


def test_weights_are_read_as_they_were_written(tmp_path: Path) -> None:
    of = layout.read()
    written = guesses.start(of)
    weights.write(of, written, ["A header with pairs of words."], tmp_path / "weights.rs")
    again = weights.read(of, tmp_path / "weights.rs")
    assert (again.pairs == written.pairs).all()
    assert (again.units == written.units).all()


def test_a_game_with_an_illegal_move_stops_the_fit(tmp_path: Path) -> None:
    file = tmp_path / "games.txt"
    file.write_text("1-0 0 e2e5/10\n")
    with pytest.raises(samples.SampleError):
        samples.take([file], tmp_path, seed=1, most=12)


def test_a_coin_has_the_loss_of_one_bit() -> None:
    half = np.full(10, 0.5)
    assert model.log_loss(half, np.array([0.0, 1.0] * 5)) == pytest.approx(np.log(2))
