from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from lineproof._engine import invent_games
from lineproof.collection import Collection

Make = Callable[[str], Collection]


@pytest.fixture
def make(tmp_path: Path) -> Make:
    """Collections in a folder of their own."""
    return lambda name: Collection.open(name, tmp_path / "collections")


@pytest.fixture(scope="session")
def invented(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """Invented games: 300 random-legal ones, 2,400 of shared prefixes, 300 more of these with clocks."""
    folder = tmp_path_factory.mktemp("invented")
    files = {name: folder / f"{name}.pgn" for name in ("random", "shared", "clocks")}
    invent_games(files["random"], 300, seed=5, plies=60)
    invent_games(files["shared"], 2400, seed=6, plies=44, shared=True)
    invent_games(files["clocks"], 300, seed=6, first=2400, plies=44, shared=True, clocks=True)
    return files
