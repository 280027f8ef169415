"""A model of natural moves: how likely a player of some rating is to choose each legal move.

A conditional logit (McFadden 1974): each move has a worth, the sum of its traits times their weights, and is chosen with
a chance in proportion to e to its worth. Weights grow or shrink with the rating, and a stronger player's shallow search
looks deeper. A part of the choices, the larger the weaker the player, is made on impulse: without looking ahead.

The weights that ship were **guessed**: no games of people were there to fit them. `Natural.fitted` fits them to counted
moves of any collection. How well they foretell people is not claimed anywhere; `quality` measures it.
"""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from .traits import TRAITS

if TYPE_CHECKING:
    from lineproof.collection import Collection

FORMAT = 1
FITTED = "natural.json"
"""The file in a collection's folder with the weights fitted to it."""
MIDDLE = 1500
"""The rating at which the first of a trait's two weights stands alone."""
STEP = 500
"""Rating points by which the second is added once."""
LOWEST, HIGHEST = 400, 2900
SHALLOWEST, DEEPEST = 1.0, 5.0
"""Plies that the weakest and the strongest player looks ahead."""


AHEAD = "costs"
"""The trait that comes of looking ahead."""


class NaturalError(ValueError):
    """A file of weights is none."""


@dataclass(frozen=True)
class Natural:
    """Weights of the model. of: each trait's two weights, at 1500 points and for each 500 more. impulse: log odds, likewise, of a
    choice made without looking ahead. alpha: games that its opinion counts as beside games that were counted. source: where the
    weights come from, in words."""

    of: Mapping[str, tuple[float, float]]
    impulse: tuple[float, float]
    alpha: float
    source: str

    @staticmethod
    def shipped() -> Natural:
        """The weights in the package."""
        return Natural.read(files("lineproof.replies").joinpath("natural.json").read_text("utf-8"))

    @staticmethod
    def near(collection: Collection | None) -> Natural:
        """The weights fitted to a collection, where there are any; otherwise those that ship.

        :raises NaturalError: when its file is none of ours.
        """
        file = None if collection is None else collection.folder / FITTED
        if file is None or not file.is_file():
            return Natural.shipped()
        try:
            return Natural.read(file.read_text(encoding="utf-8"))
        except (NaturalError, OSError, UnicodeError) as error:
            raise NaturalError(
                f"{file}: {error}; delete it, or fit anew with: lineproof collect fit"
            ) from error

    @staticmethod
    def read(text: str) -> Natural:
        """Weights from JSON.

        :raises NaturalError: when it is none of ours.
        """
        try:
            value = json.loads(text)
            if value["format"] != FORMAT:
                raise NaturalError(f"these weights have format {value['format']}, not {FORMAT}")
            weights = {name: (float(a), float(b)) for name, (a, b) in value["weights"].items()}
            impulse = (float(value["impulse"][0]), float(value["impulse"][1]))
            alpha = float(value["alpha"])
            source = str(value["source"])
        except (LookupError, TypeError, ValueError) as error:
            if isinstance(error, NaturalError):
                raise
            raise NaturalError("this is no file of weights") from error
        if set(weights) != set(TRAITS) or alpha <= 0:
            raise NaturalError("these weights are of other traits")
        return Natural(weights, impulse, alpha, source)

    def written(self) -> str:
        """As JSON, as `read` reads it."""
        value: dict[str, Any] = {
            "format": FORMAT, "source": self.source, "alpha": self.alpha, "impulse": list(self.impulse),
            "weights": {name: list(pair) for name, pair in self.of.items()},
        }  # fmt: skip
        return json.dumps(value, indent=1) + "\n"

    def shares(self, found: Mapping[str, Mapping[str, float]], rating: int) -> dict[str, float]:
        """The chance of each move, 0 to 1, together 1; by UCI. found: the traits of every legal move."""
        if not found:
            return {}
        far = (rating - MIDDLE) / STEP
        now = {name: first + far * more for name, (first, more) in self.of.items()}
        blind = 1 / (1 + math.exp(-(self.impulse[0] + far * self.impulse[1])))
        looked = _chosen(found, now)
        rash = _chosen(found, {**now, AHEAD: 0.0})
        return {uci: blind * rash[uci] + (1 - blind) * looked[uci] for uci in found}


def _chosen(
    found: Mapping[str, Mapping[str, float]], weights: Mapping[str, float]
) -> dict[str, float]:
    worth = {
        uci: sum(weights[name] * value for name, value in of.items() if value)
        for uci, of in found.items()
    }
    top = max(worth.values())
    raised = {uci: math.exp(value - top) for uci, value in worth.items()}
    total = sum(raised.values())
    return {uci: value / total for uci, value in raised.items()}


def depth(rating: int) -> float:
    """How many plies a player looks ahead; between two whole numbers both count, by how near they are."""
    share = (rating - LOWEST) / (HIGHEST - LOWEST)
    return min(max(SHALLOWEST + share * (DEEPEST - SHALLOWEST), SHALLOWEST), DEEPEST)
