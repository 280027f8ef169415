"""The lesson folder: made, read, and written with the author's comments kept."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from lineproof.lesson import Lesson, errors, folder
from lineproof.lesson.save import versions
from lineproof.lesson.where import VARIABLE, bare_home, where

TOML = """# My Vienna, for Tuesday evenings
title = "The Vienna Gambit"   # as on the poster
audience = 1400
format = 1
side = "white"

[decisions]
# asked Anna about this one
"a1" = { opinion = true }
"b2" = "dismissed"
"""


@pytest.fixture
def lesson(tmp_path: Path) -> Lesson:
    (tmp_path / "lines.pgn").write_text("1. e4 e5 2. Nc3 *")
    (tmp_path / "lesson.toml").write_text(TOML)
    return Lesson.open(tmp_path)


def test_settings_are_read(lesson: Lesson) -> None:
    assert lesson.settings.title == "The Vienna Gambit"
    assert (lesson.settings.side, lesson.settings.audience) == ("white", 1400)
    assert lesson.settings.decisions == {"a1": {"opinion": True}, "b2": "dismissed"}


def test_flags_go_before_settings(lesson: Lesson) -> None:
    assert lesson.folder is not None
    again = Lesson.open(lesson.folder, side="black", audience=1800)
    assert (again.settings.side, again.settings.audience) == ("black", 1800)


def test_writing_the_same_settings_changes_no_byte(lesson: Lesson) -> None:
    folder.write_settings(lesson, lesson.settings)
    assert lesson.folder is not None
    text = (lesson.folder / "lesson.toml").read_text()
    assert text.replace("words_a_minute = 150\n", "") == TOML


def test_a_changed_setting_keeps_comments_and_order(lesson: Lesson) -> None:
    assert lesson.folder is not None
    decisions = {"a1": {"opinion": False}, "c3": {"source": "handbook"}}
    new = folder.write_settings(
        lesson, replace(lesson.settings, audience=1600, side=None, decisions=decisions)
    )
    text = (lesson.folder / "lesson.toml").read_text()
    assert text.startswith('# My Vienna, for Tuesday evenings\ntitle = "The Vienna Gambit"   # as')
    assert "audience = 1600\nformat = 1\n" in text
    assert "# asked Anna about this one" in text
    assert "side" not in text
    again = Lesson.open(lesson.folder)
    assert again.settings == new.settings
    assert again.settings.decisions == decisions
    (kept,) = versions(again, "lesson.toml")
    assert kept.path.read_text() == TOML


def test_wrong_settings_are_not_written(lesson: Lesson) -> None:
    assert lesson.folder is not None
    with pytest.raises(errors.SettingsError):
        folder.write_settings(lesson, replace(lesson.settings, audience=5000))
    assert (lesson.folder / "lesson.toml").read_text() == TOML


def test_a_bare_file_has_no_settings_to_write(tmp_path: Path) -> None:
    file = tmp_path / "a.pgn"
    file.write_text("1. e4 *")
    with pytest.raises(errors.SettingsError, match="make a folder of it"):
        lesson = Lesson.open(file)
        folder.write_settings(lesson, lesson.settings)


def test_a_new_lesson_is_one_that_opens(tmp_path: Path) -> None:
    lesson = folder.new(tmp_path / 'the "vienna"', side="white", audience=1500)
    assert lesson.settings.title == 'the "vienna"'
    assert lesson.settings.side == "white"
    assert len(lesson.places) == 1
    assert lesson.games[0].tag("Event") == 'the "vienna"'
    assert lesson.folder is not None
    found = sorted(
        p.relative_to(tmp_path / 'the "vienna"').as_posix() for p in lesson.folder.rglob("*")
    )
    assert found == [
        ".lineproof",
        ".lineproof/cache",
        ".lineproof/history",
        "lesson.toml",
        "lines.pgn",
        "talk",
    ]


def test_a_new_lesson_copies_its_file_byte_for_byte(tmp_path: Path) -> None:
    data = "\ufeff1. e4\r\n{é}  e5\n*".encode("utf-16-le")
    (tmp_path / "old.pgn").write_bytes(data)
    folder.new(tmp_path / "vienna", tmp_path / "old.pgn")
    assert (tmp_path / "vienna" / "lines.pgn").read_bytes() == data


def test_a_broken_file_makes_no_lesson(tmp_path: Path) -> None:
    (tmp_path / "old.pgn").write_text("1. e5 *")
    with pytest.raises(errors.IllegalMoveError):
        folder.new(tmp_path / "vienna", tmp_path / "old.pgn")
    assert not (tmp_path / "vienna").exists()


def test_a_wrong_audience_makes_no_lesson(tmp_path: Path) -> None:
    with pytest.raises(errors.SettingsError):
        folder.new(tmp_path / "vienna", audience=3000)
    assert not (tmp_path / "vienna").exists()


def test_a_new_lesson_never_goes_over_what_is_there(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine")
    with pytest.raises(errors.FolderNotEmptyError) as caught:
        folder.new(tmp_path)
    assert str(caught.value) == (
        f"{tmp_path}: something is there already; choose a new or an empty folder"
    )
    assert [p.name for p in tmp_path.iterdir()] == ["notes.txt"]


def test_an_older_format_is_migrated_step_by_step(
    lesson: Lesson, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert lesson.folder is not None
    (lesson.folder / "lesson.toml").write_text('format = 0\nname = "old"\n')
    step = {0: lambda values: {"format": 1, "title": values["name"]}}
    monkeypatch.setattr(folder, "MIGRATIONS", step)
    assert Lesson.open(lesson.folder).settings.title == "old"


def test_user_data_has_one_place_each(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(VARIABLE, str(tmp_path))
    assert where() == {
        "collections": tmp_path / "collections",
        "students": tmp_path / "students",
        "questions": tmp_path / "questions",
        "bare files": tmp_path / "bare",
    }
    monkeypatch.delenv(VARIABLE)
    assert all(path.is_absolute() for path in where().values())


def test_bare_files_are_told_apart_by_their_absolute_path(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert bare_home(Path("a.pgn")) == bare_home(tmp_path / "a.pgn")
    assert bare_home(tmp_path / "a.pgn") != bare_home(tmp_path / "b" / "a.pgn")
