"""Diagrams that the author puts into the text: found again after edits nearby."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from lineproof.lesson import Lesson, Place, edit
from lineproof.lesson.diagrams import diagrams, with_diagram
from lineproof.lesson.folder import write_settings

TWO_ROADS = "1. e4 e5 (1... Nf6 2. Nc3 e5 3. f4) 2. Nc3 Nf6 3. f4 {The gambit.} d5 *\n"
TWO_GAMES = "1. e4 e5 *\n\n1. e4 e5 2. Nc3 *\n"


def put(lesson: Lesson, index: int, wanted: bool = True) -> Lesson:
    return lesson.with_settings(with_diagram(lesson.places[index], wanted))


def shown(lesson: Lesson) -> list[int]:
    return [place.index for place in diagrams(lesson)]


def place(lesson: Lesson, *sans: str) -> Place:
    at = lesson.places[0]
    for san in sans:
        at = next(child for child in at.children if child.san == san)
    return at


@pytest.fixture
def lesson() -> Lesson:
    return Lesson.from_text(TWO_ROADS)


def test_each_place_can_have_one_and_lose_it_again(lesson: Lesson) -> None:
    for index in range(len(lesson.places)):
        assert shown(put(lesson, index)) == [index]
        assert put(put(lesson, index), index, False).settings == lesson.settings
    every = lesson
    for index in reversed(range(len(lesson.places))):
        every = put(every, index)
    assert shown(every) == list(range(len(lesson.places)))
    assert put(every, 3).settings is every.settings


def test_it_stands_on_the_line_where_it_was_put_though_another_reaches_the_position(
    lesson: Lesson,
) -> None:
    main = place(lesson, "e4", "e5", "Nc3", "Nf6", "f4")
    other = place(lesson, "e4", "Nf6", "Nc3", "e5", "f4")
    assert main.key == other.key
    for each in (main, other):
        assert diagrams(put(lesson, each.index))[0].index == each.index
    both = put(put(lesson, other.index), main.index)
    assert shown(put(both, other.index, False)) == [main.index]


def test_it_stands_in_the_game_where_it_was_put() -> None:
    lesson = Lesson.from_text(TWO_GAMES)
    for index in range(len(lesson.places)):
        assert shown(put(lesson, index)) == [index]
    (entry,) = put(lesson, 4).settings.decisions["diagrams"]
    assert (entry["line"], entry["game"]) == ("1. e4", 2)


def test_it_survives_edits_before_and_after_it(lesson: Lesson) -> None:
    at = place(lesson, "e4", "e5", "Nc3", "Nf6", "f4")
    edited = put(lesson, at.index)
    edited, _ = edit.add_line(edited.places[0], ["d4", "d5"])
    edited, _ = edit.add_comment(place(edited, "e4"), "The centre.")
    edited, _ = edit.promote(place(edited, "e4", "Nf6"))
    (found,) = diagrams(edited)
    assert found == place(edited, "e4", "e5", "Nc3", "Nf6", "f4")


def test_where_its_line_is_cut_it_stands_where_the_same_move_reaches_the_position(
    lesson: Lesson,
) -> None:
    at = place(lesson, "e4", "Nf6", "Nc3", "e5", "f4")
    edited, _ = edit.cut(place(put(lesson, at.index), "e4", "Nf6"))
    assert diagrams(edited) == (place(edited, "e4", "e5", "Nc3", "Nf6", "f4"),)
    gone, _ = edit.cut(place(edited, "e4", "e5"))
    assert diagrams(gone) == ()
    assert gone.settings.decisions["diagrams"]


@pytest.mark.parametrize(
    "entry",
    [
        3,
        {},
        {"position": "9a44e0b1c37d5f02"},
        {"position": "9a44e0b1c37d5f02", "line": "1. e4"},
        {"position": "nothing", "line": "1. e4"},
        {"position": "9a44e0b1c37d5f02", "line": 1},
        {"position": "9a44e0b1c37d5f02", "line": "1. e4", "game": 0},
        {"position": "9a44e0b1c37d5f02", "line": "1. e4", "game": "one"},
    ],
)
def test_an_entry_that_is_none_counts_as_not_there_and_stays(lesson: Lesson, entry: Any) -> None:
    from dataclasses import replace

    lesson = lesson.with_settings(replace(lesson.settings, decisions={"diagrams": [entry]}))
    assert diagrams(lesson) == ()
    assert put(put(lesson, 2), 2, False).settings.decisions == {"diagrams": [entry]}


def test_it_is_written_and_read_again(tmp_path: Path) -> None:
    (tmp_path / "lines.pgn").write_text(TWO_ROADS)
    (tmp_path / "lesson.toml").write_text("format = 1  # ours\n")
    lesson = Lesson.open(tmp_path)
    at = place(lesson, "e4", "e5", "Nc3", "Nf6")
    write_settings(lesson, with_diagram(at, True))
    text = (tmp_path / "lesson.toml").read_text()
    assert 'line = "1. e4 e5 2. Nc3 Nf6"' in text and "# ours" in text
    assert shown(Lesson.open(tmp_path)) == [at.index]


def test_a_line_that_black_begins_has_its_number() -> None:
    lesson = Lesson.from_text(
        '[SetUp "1"]\n[FEN "4k3/8/8/8/8/8/4P3/4K3 b - - 3 10"]\n\n10... Kd7 11. Kd2 Ke6 *\n'
    )
    (entry,) = put(lesson, 3).settings.decisions["diagrams"]
    assert entry["line"] == "10... Kd7 11. Kd2 Ke6"
