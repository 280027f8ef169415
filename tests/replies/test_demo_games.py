"""The program that invents demo games."""

from __future__ import annotations

import importlib.util
import io
import sys
from pathlib import Path
from types import ModuleType

import chess.pgn
import pytest

from lineproof.replies.observed import MADE


@pytest.fixture(scope="module")
def program() -> ModuleType:
    path = Path(__file__).parents[2] / "examples" / "demo_games.py"
    spec = importlib.util.spec_from_file_location("demo_games", path)
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules["demo_games"] = module
    spec.loader.exec_module(module)
    module.PLIES = 16  # type: ignore[attr-defined]
    return module


def test_a_game_is_legal_goes_through_the_opening_and_says_that_it_is_invented(
    program: ModuleType,
) -> None:
    for opening, moves in program.OPENINGS.items():
        game = chess.pgn.read_game(io.StringIO(program.invented(opening, 5, 3)))
        assert game is not None and game.errors == []
        board, played = game.board(), []
        for move in game.mainline_moves():
            played.append(board.san(move))
            board.push(move)
        assert " ".join(played).startswith(moves)
        assert game.headers["Event"] == MADE  # by which it is known that the model made it
        assert "invented" in MADE.casefold()
        assert game.headers["Result"] in {"1-0", "0-1", "1/2-1/2"}
        assert all(900 <= int(game.headers[f"{side}Elo"]) <= 2100 for side in ("White", "Black"))


def test_the_same_seed_gives_the_same_game_and_another_number_another(program: ModuleType) -> None:
    assert program.invented("vienna", 5, 3) == program.invented("vienna", 5, 3)
    assert program.invented("vienna", 5, 3) != program.invented("vienna", 5, 4)
