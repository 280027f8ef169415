"""Fitting the model of natural moves to counted moves, by maximum likelihood.

A trait of which the games say nothing keeps the weight that it had: every weight is drawn to the one before, as if by a normal prior.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from .natural import AHEAD, MIDDLE, STEP, Natural
from .observed import Observed, Quality, quality
from .traits import TRAITS

HELD_BACK = 5
"""Of the positions every fifth, by its key, is not fitted and judges the fit."""
LEAST = 50
"""Positions without which nothing is fitted."""
PRIOR = 1.0
"""Standard deviation of a weight around the one before."""
ALPHAS = (2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0)
"""Games that the model's opinion may count as."""
_NAMES = tuple(TRAITS)


class FittingError(ValueError):
    """The weights cannot be fitted. The text says why and what to do."""


@dataclass(frozen=True)
class Fit:
    """New weights, and how well the old and the new ones foretell the moves that were held back."""

    natural: Natural
    before: Quality
    after: Quality


def fitted(of: Sequence[Observed], start: Natural, source: str) -> Fit:
    """Fits the weights. of: what was observed. source: whose games they are, in words.

    :raises FittingError: when there are too few positions, or the library that fits is missing.
    """
    held = [one for one in of if one.key % HELD_BACK == 0]
    used = [one for one in of if one.key % HELD_BACK]
    if len({one.key for one in used}) < LEAST or not held:
        raise FittingError(
            f"only {len({one.key for one in of})} positions have games enough of one rating; fitting needs more games of rated players"
        )
    weights, impulse = _weights(used, start)
    natural = Natural(weights, impulse, start.alpha, source)
    natural = Natural(weights, impulse, _alpha(natural, held), source)
    return Fit(natural, quality(start, held), quality(natural, held))


def _weights(
    of: Sequence[Observed], start: Natural
) -> tuple[dict[str, tuple[float, float]], tuple[float, float]]:
    try:
        import numpy
        from scipy.optimize import minimize
    except ImportError as error:
        raise FittingError(
            "fitting needs the package scipy; install it with: pip install 'lineproof[fit]'"
        ) from error
    tables = []
    for one in of:
        order = sorted(one.found)
        values = numpy.array([[one.found[uci][name] for name in _NAMES] for uci in order])
        counts = numpy.array([one.counts.get(uci, 0) for uci in order], dtype=float)
        # a position of very many games must not outweigh all others
        counts *= min(1.0, 100 / counts.sum())
        tables.append((values, counts, (one.rating - MIDDLE) / STEP))
    first = numpy.array(
        [start.of[n][0] for n in _NAMES] + [start.of[n][1] for n in _NAMES] + list(start.impulse)
    )
    size, ahead = len(_NAMES), _NAMES.index(AHEAD)

    def chosen(values: Any, now: Any) -> Any:
        worth = values @ now
        raised = numpy.exp(worth - worth.max())
        return raised / raised.sum()

    def loss(at: Any) -> tuple[float, Any]:
        total = float(((at - first) ** 2).sum()) / (2 * PRIOR**2)
        slope = (at - first) / PRIOR**2
        for values, counts, far in tables:
            now = at[:size] + far * at[size : 2 * size]
            rashly = now.copy()
            rashly[ahead] = 0
            blind = 1 / (1 + math.exp(-(at[-2] + far * at[-1])))
            looked, rash = chosen(values, now), chosen(values, rashly)
            share = blind * rash + (1 - blind) * looked
            total -= float((counts * numpy.log(share)).sum())
            pull = counts / share
            by_looked = (1 - blind) * pull * looked
            by_rash = blind * pull * rash
            one = values.T @ by_looked - by_looked.sum() * (values.T @ looked)
            other = values.T @ by_rash - by_rash.sum() * (values.T @ rash)
            other[ahead] = 0
            both = one + other
            slope[:size] -= both
            slope[size : 2 * size] -= far * both
            odds = blind * (1 - blind) * float((pull * (rash - looked)).sum())
            slope[-2] -= odds
            slope[-1] -= far * odds
        return total, slope

    best = minimize(loss, first, jac=True, method="L-BFGS-B", options={"maxiter": 300}).x
    weights = {
        name: (round(float(best[n]), 4), round(float(best[size + n]), 4))
        for n, name in enumerate(_NAMES)
    }
    return weights, (round(float(best[-2]), 4), round(float(best[-1]), 4))


def _alpha(natural: Natural, of: Sequence[Observed]) -> float:
    """Of some numbers of games, the one with which the model as a Dirichlet prior foretells the counts best (Dirichlet-multinomial likelihood)."""

    def likelihood(alpha: float) -> float:
        total = 0.0
        for one in of:
            shares = natural.shares(one.found, one.rating)
            total += math.lgamma(alpha) - math.lgamma(alpha + one.games)
            for uci, count in one.counts.items():
                weight = alpha * shares[uci]
                total += math.lgamma(weight + count) - math.lgamma(weight)
        return total

    return max(ALPHAS, key=likelihood)
