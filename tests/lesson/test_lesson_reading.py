"""What a lesson gives: places, comments, positions, lines, settings of a bare file."""

from __future__ import annotations

import pickle
import subprocess
import sys
from pathlib import Path

import pytest

from lineproof.lesson import Lesson, errors

TEXT = """{Welcome}
1. e4 {king's pawn} e5 ({Or sharper} 1... c5 {Sicilian}) {Now}
2. Nc3! Nf6 3. f4 $14 exf4 *
"""


@pytest.fixture
def lesson() -> Lesson:
    return Lesson.from_text(TEXT, name="vienna.pgn")


def test_labels_read_as_printed(lesson: Lesson) -> None:
    assert [place.label for place in lesson.places] == [
        "start",
        "1. e4",
        "1... e5",
        "1... c5",
        "2. Nc3",
        "2... Nf6",
        "3. f4",
        "3... exf4",
    ]


def test_each_comment_speaks_of_its_position(lesson: Lesson) -> None:
    assert [(c.text, c.place.label, c.anchor.label, c.opening) for c in lesson.comments] == [
        ("Welcome", "start", "start", True),
        ("king's pawn", "1. e4", "1. e4", False),
        ("Or sharper", "1. e4", "1... c5", True),
        ("Sicilian", "1... c5", "1... c5", False),
        ("Now", "1... e5", "1... e5", False),
    ]


def test_a_comment_before_the_first_move_of_a_numbered_pair_opens_the_game() -> None:
    lesson = Lesson.from_text("1. {first} e4 {second} *")
    assert [(c.place.label, c.opening) for c in lesson.comments] == [
        ("start", True),
        ("1. e4", False),
    ]


def test_offsets_count_characters_not_bytes() -> None:
    lesson = Lesson.from_text("{∞é日} 1. e4 {ü} *")
    assert [lesson.text[c.start : c.end] for c in lesson.comments] == ["∞é日", "ü"]
    assert lesson.places[1].span == (9, 11)


def test_lines_are_the_last_places(lesson: Lesson) -> None:
    assert [place.label for place in lesson.lines()] == ["1... c5", "3... exf4"]


def test_the_first_child_is_the_one_shown_first(lesson: Lesson) -> None:
    assert [child.label for child in lesson.places[1].children] == ["1... e5", "1... c5"]
    assert lesson.places[1].next == lesson.places[2]
    assert [place.is_main for place in lesson.places] == [True, True, True, False, *[True] * 4]


def test_transpositions_meet_in_one_position_across_games() -> None:
    lesson = Lesson.from_text("1. d4 d5 2. c4 * 1. c4 d5 2. d4 *")
    first, second = lesson.lines()
    assert lesson.positions[first.key] == (first, second)
    assert first.board.fen.split()[:4] == second.board.fen.split()[:4]
    assert len(lesson.positions) == len(lesson.places) - 2
    assert lesson.positions.get(12345) is None


def test_en_passant_counts_for_sameness_only_where_it_is_legal() -> None:
    """FIDE Laws of Chess, 9.2.3."""
    lesson = Lesson.from_text("1. e4 e6 2. d4 * 1. d4 e6 2. e4 *")
    first, second = lesson.lines()
    assert first.key == second.key


def test_moves_lead_from_the_root_to_the_place(lesson: Lesson) -> None:
    place = lesson.places[3]
    assert place.moves() == ["e2e4", "c7c5"]
    assert [step.index for step in place.path()] == [0, 1, 3]
    assert place.parent == lesson.places[1]
    assert place.ply == 2


def test_locate_counts_lines_and_columns_from_one() -> None:
    lesson = Lesson.from_text("{a}\r\n1. e4\r e5\n *")
    assert lesson.locate(0) == (1, 1)
    assert lesson.locate(lesson.text.index("1.")) == (2, 1)
    assert lesson.locate(lesson.text.index("e5")) == (3, 2)
    assert lesson.locate(len(lesson.text)) == (4, 3)


def test_place_at_finds_the_move_under_an_offset(lesson: Lesson) -> None:
    at = lesson.place_at(TEXT.index("Sicilian"))
    assert at is not None and at.label == "1... c5"


def test_a_lesson_travels_to_another_process(lesson: Lesson) -> None:
    again = pickle.loads(pickle.dumps(lesson))
    assert again.text == lesson.text
    assert [p.key for p in again.places] == [p.key for p in lesson.places]


def test_a_bare_file_takes_its_settings_from_flags(tmp_path: Path) -> None:
    file = tmp_path / "vienna.pgn"
    file.write_text(TEXT)
    lesson = Lesson.open(file, side="white", audience=1400)
    assert (lesson.settings.title, lesson.settings.side) == ("vienna", "white")
    assert (lesson.settings.audience, lesson.settings.words_a_minute) == (1400, 150)
    assert lesson.folder is None
    assert lesson.name == str(file)


def test_comments_after_the_last_result_belong_to_the_last_game() -> None:
    lesson = Lesson.from_text("1. e4 e5 * {bye}\n; really\n")
    assert len(lesson.games) == 1
    assert [c.place.label for c in lesson.comments] == ["1... e5", "1... e5"]


def test_variations_nest_three_thousand_deep() -> None:
    text = "1. e4 " + "(1. d4 " * 3000 + ")" * 3000 + " *"
    lesson = Lesson.from_text(text)
    assert len(lesson.places) == 3002
    assert lesson.places[-1].depth == 3000
    assert len(lesson.places[0].children) == 3001


def test_importing_the_lesson_part_loads_no_heavy_module() -> None:
    code = (
        "import sys, lineproof.lesson, lineproof.lesson.edit, lineproof.lesson.save;"
        "print([m for m in ('tomlkit', 'rich', 'filelock', 'platformdirs', 'asyncio')"
        " if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


@pytest.mark.parametrize("offset", [-1, -5, 8, 10**30])
def test_an_offset_outside_of_the_text_is_refused(offset: int) -> None:
    lesson = Lesson.from_text("1. e4 *")
    for ask in (lesson.place_at, lesson.locate):
        with pytest.raises(errors.OutsideTextError) as caught:
            ask(offset)
        assert str(caught.value) == (
            f"lesson.pgn: offset {offset} is outside of the text;"
            " offsets are from 0 to the length of the text"
        )
    assert lesson.place_at(7) == lesson.places[1]
