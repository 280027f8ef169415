"""Games gathered for statistics: reading them by the million, and what they say of a position.

>>> from lineproof.collection import Collection
>>> games = Collection.open("club")  # doctest: +SKIP
>>> games.add(["evenings.pgn.gz"])  # doctest: +SKIP
>>> games.look("1. e4 e5 2. Nc3").games  # doctest: +SKIP
1204
"""

from __future__ import annotations

from lineproof._engine import StoppedError
from lineproof.collection.adding import Added, FileAdded
from lineproof.collection.collection import Collection
from lineproof.collection.errors import (
    BrokenCollectionError,
    CollectionError,
    CollectionLockedError,
    NoSuchCollectionError,
    NoSuchSourceError,
    NotAPositionError,
)
from lineproof.collection.figures import Audience, Figures, MoveFigures, Order, Score
from lineproof.collection.interval import Interval, wilson
from lineproof.collection.manifest import Source
from lineproof.collection.model_games import ModelGame
from lineproof.collection.openings import Opening, opening
from lineproof.collection.reach import Reach, Reached

__all__ = [
    "Added",
    "Audience",
    "BrokenCollectionError",
    "Collection",
    "CollectionError",
    "CollectionLockedError",
    "Figures",
    "FileAdded",
    "Interval",
    "ModelGame",
    "MoveFigures",
    "NoSuchCollectionError",
    "NoSuchSourceError",
    "NotAPositionError",
    "Opening",
    "Order",
    "Reach",
    "Reached",
    "Score",
    "Source",
    "StoppedError",
    "opening",
    "wilson",
]
