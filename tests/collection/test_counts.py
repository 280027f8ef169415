"""Counts are those of python-chess, which reads the same files game by game."""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest

from lineproof._engine import Board
from lineproof.collection import Collection, Figures

from .conftest import Make
from .second_reader import Position, count, games


def same(figures: Figures, position: Position) -> None:
    """Every count of one position."""
    assert figures.games == position.games, position.fen
    assert figures.ended == position.moves[None]
    assert {move.uci: move.games for move in figures.moves} == {
        uci: games for uci, games in position.moves.items() if uci is not None
    }
    for move in figures.moves:
        results = position.results[move.uci]
        assert (move.tally.white, move.tally.draws, move.tally.black) == (
            results["1-0"],
            results["1/2-1/2"],
            results["0-1"],
        )
        assert move.of == position.games - position.moves[None]
    assert figures.tally.rated == len(position.ratings)
    assert figures.tally.rating_sum == sum(position.ratings)
    assert {year: tally.games for year, tally in figures.by_year} == position.years


def sample(found: dict[str, Position], few: int) -> list[Position]:
    """The positions of most games, and some of the others."""
    ranked = sorted(found.values(), key=lambda one: (-one.games, one.fen))
    return [*ranked[:60], *Random(1).sample(ranked[60:], few)]


@pytest.fixture(scope="module")
def collection(invented: dict[str, Path], tmp_path_factory: pytest.TempPathFactory) -> Collection:
    made = Collection.open("counted", tmp_path_factory.mktemp("counted"))
    made.add([invented["shared"], invented["random"]])
    made.add([invented["clocks"]])
    return made


@pytest.fixture(scope="module")
def reference(invented: dict[str, Path]) -> dict[str, Position]:
    return count(invented.values())


def test_every_game_is_there(collection: Collection, reference: dict[str, Position]) -> None:
    assert collection.games == 3000
    start = max(reference.values(), key=lambda one: one.games)
    assert collection.look("").games == start.games == 3000


def test_positions_count_what_python_chess_counts(
    collection: Collection, reference: dict[str, Position]
) -> None:
    positions = sample(reference, 200)
    # of both sorts: those counted beforehand, and those answered from the games
    assert positions[12].games >= 128
    assert positions[-1].games < 64
    for position in positions:
        same(collection.look(position.fen), position)


def test_an_audience_is_counted_alone(collection: Collection, invented: dict[str, Path]) -> None:
    found = count(invented.values(), (1300, 1700))
    for position in sample(found, 60):
        same(collection.look(position.fen, audience=1500), position)


def test_an_audience_between_bands_is_widened_to_whole_ones(collection: Collection) -> None:
    audience = collection.look("", audience=1510).audience
    assert audience is not None
    assert (audience.low, audience.high) == (1300, 1750)


def test_ratings_add_up_by_steps_of_200(
    collection: Collection, reference: dict[str, Position]
) -> None:
    for position in sample(reference, 20):
        figures = collection.look(position.fen)
        # every invented game has both ratings
        assert sum(tally.games for _, tally in figures.by_rating) == figures.games
        assert sum(tally.rating_sum for _, tally in figures.by_rating) == sum(position.ratings)
        assert all(low % 200 == 0 for low, _ in figures.by_rating)


def test_move_orders_are_those_of_the_games(
    collection: Collection, reference: dict[str, Position]
) -> None:
    several = [one for one in reference.values() if 1 < len(one.orders) <= 32]
    several = sorted(several, key=lambda one: (-len(one.orders), one.fen))[:60]
    assert len(several) == 60
    for position in several:
        found = collection.orders(position.fen)
        counts = [order.games for order in found]
        assert counts == sorted(counts, reverse=True)
        assert {order.san: order.games for order in found} == {
            tuple(Board().san_line(moves)): games for moves, games in position.orders.items()
        }


def test_a_position_that_no_game_has_counts_nothing(collection: Collection) -> None:
    figures = collection.look("8/8/4k3/8/8/4K3/4P3/8 w - - 0 1")
    assert (figures.games, figures.moves, figures.score) == (0, (), None)


def test_model_games_are_decisive_and_of_the_strongest_or_the_shortest(
    collection: Collection, invented: dict[str, Path], reference: dict[str, Position]
) -> None:
    for position in sample(reference, 40):
        for game in collection.model_games(position.fen):
            assert game.result in ("1-0", "0-1")
            assert game.plies >= 20
    best = collection.model_games("", most=1)[0]
    assert best.white_rating and best.black_rating
    decisive = [
        int(game.headers["WhiteElo"]) + int(game.headers["BlackElo"])
        for game in games(invented.values())
        if game.headers["Result"] != "1/2-1/2" and len(list(game.mainline_moves())) >= 20
    ]
    assert best.white_rating + best.black_rating == max(decisive)


def test_model_games_are_above_a_rating_when_asked(collection: Collection) -> None:
    found = collection.model_games("", above=1900, most=6)
    assert found
    for game in found:
        assert min(game.white_rating or 0, game.black_rating or 0) >= 1900


def test_model_games_of_moves_follow_them_the_longest(collection: Collection) -> None:
    game = collection.model_games("", most=1)[0]
    line = [*game.before, *game.after][:39]
    longest = collection.model_games(" ".join(line[:30]), most=1)[0]
    assert list(longest.before) == line[:30]
    # a move that nobody played leaves the games that came nearest
    astray = collection.model_games("1. Nf3 Nf6 2. Ng1 Ng8 3. Nf3 Nf6 4. Ng1 Ng8 5. a3 h6 6. a4 h5")
    assert astray and astray[0].plies >= 20


def test_compaction_changes_no_answer(
    make: Make, invented: dict[str, Path], reference: dict[str, Position], tmp_path: Path
) -> None:
    text = "".join(file.read_text() for file in invented.values())
    games = [f"[Event {part}" for part in text.split("[Event ")[1:]]
    split = make("split")
    for number in range(12):
        part = tmp_path / f"{number}.pgn"
        part.write_text("".join(games[number::12]))
        split.add([part])
    assert split.games == 3000
    segments = split._manifest().segments
    assert len(segments) < 12
    assert sum(segment.games for segment in segments) == 3000
    for position in sample(reference, 60):
        same(split.look(position.fen), position)
    assert sum(source.read for source in split.sources()) == 3000
