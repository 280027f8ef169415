"""The evaluation as a function of its weights, and how badly it foretells results.

White's expected score is `1 / (1 + exp(-0.006 * centipawns))`, a fixed curve of this fit that says what a centipawn
means; it is not the engine's table of expected scores (`expected_score.py`). The loss is the log-loss (cross-entropy,
in nats a position) against a target between 0 and 1. Fitting weights to results of games by such a loss is logistic
regression ("Automated Tuning", Chess Programming Wiki); the danger of the kings alone is not linear.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from layout import Layout
from numpy.typing import NDArray
from samples import FULL_PHASE, WHOLE, Samples
from scipy.optimize import minimize_scalar  # type: ignore[import-untyped]
from weights import Weights

SLOPE = 0.006
# As in sink.rs.
DANGER_MAX = 600.0
DANGER_SQUARED = 400.0

Array = NDArray[np.float64]


def expected(centipawns: Array, slope: float = SLOPE) -> Array:
    """White's expected score, 0 to 1."""
    result: Array = 1.0 / (1.0 + np.exp(-slope * np.clip(centipawns, -4000.0, 4000.0)))
    return result


def slope_of_scores(samples: Samples) -> float:
    """The slope with which the search scores foretell the results best, in 1 / centipawns: an evaluation that was
    not fitted may have larger or smaller centipawns than the logistic of `expected` means."""

    def loss(slope: float) -> float:
        return log_loss(expected(samples.scores, slope), samples.points)

    return float(minimize_scalar(loss, bounds=(0.001, 0.03), method="bounded").x)


def log_loss(forecast: Array, target: Array) -> float:
    """Mean log-loss of forecasts, in nats."""
    sure = np.clip(forecast, 1e-12, 1.0 - 1e-12)
    return float(-np.mean(target * np.log(sure) + (1.0 - target) * np.log(1.0 - sure)))


def value(samples: Samples, weights: Weights) -> Array:
    """White's value of each position in centipawns, without the rounding of the engine's integers."""
    both = samples.terms @ weights.pairs
    mg, eg = both[:, 0].astype(np.float64), both[:, 1].astype(np.float64)
    for side, sign in zip(samples.units, (-1.0, 1.0), strict=True):
        danger = np.clip(side @ weights.units, 0.0, DANGER_MAX)
        mg += sign * danger**2 / DANGER_SQUARED
    result: Array = (mg * samples.phase + eg * (1.0 - samples.phase)) * samples.scale
    return result


def engine_value(samples: Samples, weights: Weights) -> NDArray[np.int64]:
    """White's value as the engine rounds it: integers, each division towards zero."""
    both = np.rint(samples.terms @ weights.pairs).astype(np.int64)
    mg, eg = both[:, 0].copy(), both[:, 1].copy()
    for side, sign in zip(samples.units, (-1, 1), strict=True):
        danger = np.clip(np.rint(side @ weights.units), 0, DANGER_MAX).astype(np.int64)
        mg += sign * (danger**2 // int(DANGER_SQUARED))
    phase = np.rint(samples.phase * FULL_PHASE).astype(np.int64)
    scale = np.rint(samples.scale * WHOLE).astype(np.int64)
    blended = _towards_zero(mg * phase + eg * (FULL_PHASE - phase), FULL_PHASE)
    return _towards_zero(blended * scale, WHOLE)


def _towards_zero(number: NDArray[np.int64], divisor: int) -> NDArray[np.int64]:
    result: NDArray[np.int64] = np.sign(number) * (np.abs(number) // divisor)
    return result


@dataclass(frozen=True)
class Problem:
    """What is minimised: the log-loss plus a pull towards the weights at the start.

    The pull is `sum(((weight - start) / spread) ** 2) / 2 / games`: a weight has before the fit a normal distribution
    round the start with the standard deviation `spread` in centipawns (or units), and each game counts as one
    observation, since positions of one game have one result. `fixed` weights keep their value at the start.
    """

    samples: Samples
    target: Array
    start: Weights
    spread: float
    games: int
    fixed: NDArray[np.bool_]

    def pack(self, weights: Weights) -> Array:
        """The weights in one row."""
        return np.concatenate([weights.pairs.ravel(), weights.units])

    def unpack(self, row: Array) -> Weights:
        """The other way round."""
        at = self.start.pairs.size
        return Weights(row[:at].reshape(-1, 2), row[at:])

    def loss(self, row: Array) -> tuple[float, Array]:
        """What is minimised, and its gradient."""
        samples, weights = self.samples, self.unpack(row)
        both = samples.terms @ weights.pairs
        mg, eg = both[:, 0].astype(np.float64), both[:, 1].astype(np.float64)
        raw = [side @ weights.units for side in samples.units]
        danger = [np.clip(units, 0.0, DANGER_MAX) for units in raw]
        mg += (danger[1] ** 2 - danger[0] ** 2) / DANGER_SQUARED
        part_mg = samples.phase * samples.scale
        part_eg = (1.0 - samples.phase) * samples.scale
        forecast = expected(mg * part_mg + eg * part_eg)
        slope = SLOPE * (forecast - self.target) / len(samples)
        by_mg, by_eg = slope * part_mg, slope * part_eg

        by_pairs = samples.terms.T @ np.stack([by_mg, by_eg], axis=1)
        by_units = np.zeros_like(weights.units)
        for side, units, clipped, sign in zip(samples.units, raw, danger, (-1.0, 1.0), strict=True):
            inside = (units > 0.0) & (units < DANGER_MAX)
            steep = by_mg * 2.0 * clipped / DANGER_SQUARED
            by_units += side.T @ (sign * steep * inside)
        away = (row - self.pack(self.start)) / self.spread
        pull = float(away @ away) / 2.0 / self.games
        gradient = np.concatenate([by_pairs.ravel(), by_units])
        gradient += away / self.spread / self.games
        gradient[self.fixed] = 0.0
        return log_loss(forecast, self.target) + pull, gradient

    def curvature(self) -> Array:
        """About how strongly the loss bends in each weight at the start, to give all weights one step size."""
        samples = self.samples
        forecast = expected(value(samples, self.start))
        bend = SLOPE**2 * forecast * (1.0 - forecast) / len(samples)
        squares = samples.terms.copy()
        squares.data = squares.data**2
        part_mg = samples.phase * samples.scale
        part_eg = (1.0 - samples.phase) * samples.scale
        by_pairs = squares.T @ np.stack([bend * part_mg**2, bend * part_eg**2], axis=1)
        by_units = np.zeros_like(self.start.units)
        for side in samples.units:
            danger = np.clip(side @ self.start.units, 0.0, DANGER_MAX)
            steep = part_mg * 2.0 * danger / DANGER_SQUARED
            counts = side.copy()
            counts.data = counts.data**2
            by_units += counts.T @ (bend * steep**2)
        result: Array = np.concatenate([by_pairs.ravel(), by_units])
        result += 1.0 / self.spread**2 / self.games
        return result


def count_of_material(layout: Layout) -> Weights:
    """The trade's 1, 3, 3, 5, 9 and nothing else, in centipawns."""
    pairs = np.zeros((layout.count, 2))
    pairs[:6] = np.array([[100.0, 300.0, 300.0, 500.0, 900.0, 0.0]]).T
    return Weights(pairs, np.zeros(layout.unit_count))
