"""Games through a position, one by one: they are those that python-chess counts, also where games come back to a position."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof._engine import Board
from lineproof.collection import Collection

from .second_reader import count


@pytest.fixture(scope="module")
def collection(invented: dict[str, Path], tmp_path_factory: pytest.TempPathFactory) -> Collection:
    made = Collection.open("passing", tmp_path_factory.mktemp("passing"))
    made.add([invented["shared"]])
    return made


def test_all_games_of_a_rare_position_are_given(
    collection: Collection, invented: dict[str, Path]
) -> None:
    found = sorted(count([invented["shared"]]).values(), key=lambda one: one.games)
    few = [one for one in found if 2 <= one.games <= 60][::200][:8]
    assert len(few) == 8
    for position in few:
        games = collection.passing(position.fen, most=100)
        assert len(games) == position.games
        board = Board(position.fen)
        for game in games:
            at = board
            for uci in game.moves:
                assert uci in at.legal_moves()
                at = at.play(uci)


def test_of_many_games_each_move_has_its_part(collection: Collection) -> None:
    figures = collection.look("")
    games = collection.passing("", most=200)
    assert 180 <= len(games) <= 220
    for move in figures.moves[:3]:
        part = sum(game.moves[0] == move.uci for game in games) / len(games)
        assert part == pytest.approx(move.games / figures.games, abs=0.03)


def test_games_that_come_back_to_a_position_are_followed_once(tmp_path: Path) -> None:
    """Knights go out and home again: the initial position stands three times in each game."""
    moves = "1. Nf3 Nf6 2. Ng1 Ng8 3. Nf3 Nf6 4. Ng1 Ng8 5. "
    firsts = ("e4", "d4", "c4", "g3", "b3")
    games = [f'[Round "{n}"]\n\n{moves}{firsts[n % 5]} *\n' for n in range(500)]
    file = tmp_path / "games.pgn"
    file.write_text("\n".join(games), encoding="utf-8")
    with Collection.open("back", tmp_path / "collections") as collection:
        collection.add([file])
        read = collection.passing("", most=50)
        after = collection.passing("1. e4 Nf6", most=50)
    assert len(read) <= 50 and all(game.moves[0] == "g1f3" for game in read)
    assert after == ()
