"""What the games of a small collection did where a line ends, counted by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from lineproof.collection import Collection
from lineproof.collection.interval import wilson
from lineproof.facade import Lesson
from lineproof.replies.course import Course
from lineproof.replies.model_games import LEAST, model_games
from lineproof.report.modelled import modelled
from lineproof.report.schemas import schema
from lineproof.report.studied import studied
from lineproof.report.studied_json import study_json

from .test_ideas import course

LINE = "1. e4 e5 2. Nf3 Nc6 3. Bc4 {The Italian Game.} *"
ENDING = (
    "Bc5 4. O-O d6 5. d3 Nf6 6. c3 O-O 7. Nbd2 a6 8. Bb3 Ba7 9. h3 h6 10. Re1 Re8 11. Nf1 Be6 12. Ng3 Qd7"
    " 13. Be3 Bxe3 14. Rxe3"
)
"""Twenty-three plies after 3. Bc4, of which ten moves end with 13. Be3."""
LONG = [
    "d5",
    "a5",
    "Ne7",
    "Na5",
    "Nb4",
    "Nd8",
    "Nb8",
    "b5",
    "b6",
    "g6",
    "g5",
    "h5",
    "Rad8",
    "Rac8",
    "Rab8",
    "Ra7",
    "Kh7",
    "Kf8",
    "Kh8",
    "Qd8",
]
SHORT = [
    "O-O",
    "Nc3",
    "Nbd2",
    "c3",
    "a3",
    "a4",
    "b3",
    "h3",
    "h4",
    "g3",
    "Bb3",
    "Bd2",
    "Be3",
    "Bg5",
    "Nh4",
    "Ng1",
    "Ng5",
    "Qe2",
    "Qd2",
    "Rf1",
]
"""The last move of each, in turn, so that many games part in the end."""
ROADS = ("1. e4 e5 2. Nf3 Nc6 3. Bc4", "1. e4 e5 2. Bc4 Nc6 3. Nf3")
"""The second comes to the same position in another order."""


def games(long: int, short: int, results: str) -> str:
    """Games that go on as ENDING does, and short ones with another reply. results: + won, = drawn, - lost, of White, in turn."""
    written = {"+": "1-0", "=": "1/2-1/2", "-": "0-1"}
    found = []
    for number in range(long + short):
        last = number % 20
        moves = f"{ENDING} {LONG[last]}" if number < long else f"Nf6 4. d3 Be7 5. {SHORT[last]}"
        result = written[results[number % len(results)]]
        found.append(
            f'[Event "Club {number}"]\n[Round "{number}"]\n[Result "{result}"]\n\n{ROADS[number % 2]} {moves} {result}\n'
        )
    return "\n".join(found)


@pytest.fixture
def collection(tmp_path: Path) -> Collection:
    return Collection.open("club", tmp_path / "collections")


def added(collection: Collection, tmp_path: Path, text: str) -> Collection:
    file = tmp_path / "games.pgn"
    file.write_text(text, encoding="utf-8")
    collection.add([file])
    return collection


def end_of(of: Course) -> int:
    (key,) = [key for key in of.order if not of.graph.moves[key]]
    return key


def test_games_of_both_roads_are_counted(collection: Collection, tmp_path: Path) -> None:
    added(collection, tmp_path, games(8, 4, "++=-"))
    of = course(LINE)
    with collection:
        found = model_games(of, end_of(of), collection)
    assert found is not None and found.result is not None
    assert (found.place.label, found.games) == ("3. Bc4", 12)
    assert (found.result.won, found.result.drawn, found.result.lost) == (6, 3, 3)
    assert found.result.interval == wilson(7.5, 12)
    assert [(step.san, step.games, step.of) for step in found.line[:3]] == [
        ("Bc5", 8, 12),
        ("O-O", 8, 8),
        ("d6", 8, 8),
    ]
    assert (found.looked_at, found.lasted) == (12, 8)
    stood = {(one.piece, one.square, one.games) for one in found.stood}
    # after 13. Be3, by hand
    assert stood == {
        ("K", "g1", 8), ("Q", "d1", 8), ("R", "a1", 8), ("R", "e1", 8),
        ("B", "b3", 8), ("B", "e3", 8), ("N", "f3", 8), ("N", "g3", 8),
    }  # fmt: skip
    said = modelled(found)
    assert said.startswith("12 games come to it. White scores 62 of 100 (95 %: ")
    assert ": 6 won, 3 drawn, 3 lost. Mostly 3... Bc5 (8 of 12) 4. O-O (8 of 8) d6 (8 of 8)" in said
    assert "10 moves later, in the 8 games that last so long, White's pieces mostly stand so: king on g1 (8)" in said  # fmt: skip


def test_the_result_is_that_of_the_taught_side(collection: Collection, tmp_path: Path) -> None:
    added(collection, tmp_path, games(5, 0, "+"))
    of = course(LINE, "black")
    with collection:
        found = model_games(of, end_of(of), collection)
    assert found is not None and found.result is not None
    assert (found.result.won, found.result.lost, found.result.points) == (0, 5, 0)
    assert {one.square for one in found.stood if one.piece == "K"} == {"g8"}


@pytest.mark.parametrize("number", [LEAST - 1, LEAST])
def test_too_few_games_are_left_out(collection: Collection, tmp_path: Path, number: int) -> None:
    added(collection, tmp_path, games(number, 0, "="))
    of = course(LINE)
    with collection:
        found = model_games(of, end_of(of), collection)
    assert (found is not None) == (number >= LEAST)


def test_only_where_a_line_ends(collection: Collection, tmp_path: Path) -> None:
    added(collection, tmp_path, games(5, 0, "="))
    of = course(LINE)
    with collection:
        assert [key for key in of.order if model_games(of, key, collection)] == [end_of(of)]


def test_of_very_many_games_some_are_looked_at(collection: Collection, tmp_path: Path) -> None:
    """600 games: more than 64 come to the position, so it is one of those that are counted beforehand; two in three play 3... Bc5."""
    added(collection, tmp_path, games(400, 200, "+"))
    of = course(LINE)
    board = of.graph.place[end_of(of)].board
    with collection:
        found = model_games(of, end_of(of), collection)
        read = collection.passing(board, most=30)
    assert found is not None
    assert found.games == 600 and 90 <= found.looked_at <= 110
    assert 2 * found.looked_at / 3 == pytest.approx(found.lasted, abs=10)
    assert 25 <= len(read) <= 35
    bc5 = sum(game.moves[0] == "f8c5" for game in read)
    assert pytest.approx(bc5 / len(read), abs=0.1) == 2 / 3


def test_a_study_with_a_collection_tells_them(collection: Collection, tmp_path: Path) -> None:
    added(collection, tmp_path, games(6, 0, "+=-"))
    lesson = Lesson.from_text(LINE, side="white", audience=1500)
    with collection:
        study = lesson.study("sketch", collection=collection)
    told = study_json(study)
    Draft202012Validator(schema("study")).validate(told)
    (one,) = told["model_games"]
    assert (one["games"], one["place"]["label"]) == (6, "3. Bc4")
    text = studied(study, name="italian.pgn", everything=True)
    assert "3. Bc4 (line 1): 6 games come to it. White scores 50 of 100" in text
    assert lesson.study("sketch").model_games == ()
