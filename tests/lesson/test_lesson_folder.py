"""The lesson folder: made, read, and written with the author's comments kept."""

from __future__ import annotations

import errno
from dataclasses import replace
from pathlib import Path
from typing import Any

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
        "weighed openings": tmp_path / "weighed",
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


# What lesson.toml may hold

DEEP = "x = " + "[" * 5000 + "]" * 5000
LONG = "1" * 5000


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            f"format = 1\naudience = {LONG}\n",
            "2:12: a number has too many digits; TOML has whole numbers of 64 bits",
        ),
        (
            f"format = 1\n\naudience = 0x{'f' * 5000}\n",
            "3:1: a number has too many digits; TOML has whole numbers of 64 bits",
        ),
        (
            f"format = 0x{'f' * 5000}\n",
            "1:1: a number has too many digits; TOML has whole numbers of 64 bits",
        ),
        (
            f"format = 1\n{DEEP}\n",
            "2:25: tables or lists are nested more than 20 levels deep; write it flatter",
        ),
        (
            f"format = 1\n[decisions]\n{'.'.join('a' * 5000)} = 1\n",
            "2:1: tables or lists are nested more than 20 levels deep; write it flatter",
        ),
        (
            'format = 1\ntitle = "a\\nb"\n',
            "2:1: the title holds '\\n'; a title is one line of text without control characters",
        ),
        (
            f'format = 1\nside = "{"w" * 5000}"\n',
            f'2:1: side is \'{"w" * 58}\u2026; write side = "white" or side = "black"',
        ),
        (
            f"format = 1\n{'k' * 5000} = 1\n",
            f"2:1: {'k' * 59}\u2026 is no setting; the settings are format, title, side,"
            " audience, words_a_minute, decisions",
        ),
    ],
)
def test_extremes_in_settings_are_refused_with_their_place(
    lesson: Lesson, text: str, message: str
) -> None:
    assert lesson.folder is not None
    file = lesson.folder / "lesson.toml"
    file.write_text(text)
    with pytest.raises(errors.SettingsError) as caught:
        Lesson.open(lesson.folder)
    assert str(caught.value) == f"{file}:{message}"


def test_settings_that_are_not_utf8_name_the_place(lesson: Lesson) -> None:
    assert lesson.folder is not None
    file = lesson.folder / "lesson.toml"
    file.write_bytes(b'format = 1\ntitle = "caf\xe9"\n')
    with pytest.raises(errors.SettingsError) as caught:
        Lesson.open(lesson.folder)
    assert str(caught.value) == f"{file}:2:13: the file is not UTF-8; save it as UTF-8"


@pytest.mark.parametrize("broken", [b'title = "caf\xe9"', b"title = ", DEEP.encode()])
def test_settings_are_not_written_over_what_cannot_be_read(lesson: Lesson, broken: bytes) -> None:
    assert lesson.folder is not None
    file = lesson.folder / "lesson.toml"
    file.write_bytes(broken)
    with pytest.raises(errors.SettingsError):
        folder.write_settings(lesson, lesson.settings)
    assert file.read_bytes() == broken


def test_settings_are_not_written_over_a_folder(lesson: Lesson) -> None:
    assert lesson.folder is not None
    (lesson.folder / "lesson.toml").unlink()
    (lesson.folder / "lesson.toml").mkdir()
    with pytest.raises(errors.UnreadableError, match="this is a folder"):
        folder.write_settings(lesson, lesson.settings)


def test_linked_settings_stay_a_link_and_keep_their_history(lesson: Lesson, tmp_path: Path) -> None:
    assert lesson.folder is not None
    file = lesson.folder / "lesson.toml"
    real = tmp_path / "shared.toml"
    file.rename(real)
    file.symlink_to(real)
    folder.write_settings(lesson, replace(lesson.settings, audience=1600))
    assert file.is_symlink()
    assert "audience = 1600" in real.read_text()
    (kept,) = versions(lesson, "lesson.toml")
    assert kept.path.read_text() == TOML


@pytest.mark.parametrize("title", ["half \ud800", "two\nlines", "bell \x07", " "])
def test_a_title_that_is_no_line_of_text_is_refused(lesson: Lesson, title: str) -> None:
    assert lesson.folder is not None
    with pytest.raises(errors.SettingsError, match="title"):
        folder.write_settings(lesson, replace(lesson.settings, title=title))
    assert (lesson.folder / "lesson.toml").read_text() == TOML


def test_a_decision_that_toml_cannot_hold_is_refused(lesson: Lesson) -> None:
    assert lesson.folder is not None
    for value in (object(), "half \ud800", 2**64):
        with pytest.raises(errors.SettingsError):
            folder.write_settings(lesson, replace(lesson.settings, decisions={"a1": value}))
    assert (lesson.folder / "lesson.toml").read_text() == TOML


def test_decisions_that_were_no_table_make_way_for_one(lesson: Lesson) -> None:
    assert lesson.folder is not None
    (lesson.folder / "lesson.toml").write_text("format = 1\ndecisions = 5\n")
    folder.write_settings(lesson, lesson.settings)
    assert Lesson.open(lesson.folder).settings == lesson.settings


# What a new lesson may be called


@pytest.mark.parametrize("name", ["two\nlines", "bell\x07", "caf\udce9"])
def test_a_folder_name_that_is_no_title_makes_no_lesson(tmp_path: Path, name: str) -> None:
    with pytest.raises(errors.SettingsError) as caught:
        folder.new(tmp_path / name)
    assert str(caught.value).endswith(
        ", which is the folder's name; choose another name for the folder"
    )
    assert list(tmp_path.iterdir()) == []


def test_control_characters_of_an_event_tag_make_way_in_the_title(tmp_path: Path) -> None:
    (tmp_path / "old.pgn").write_bytes(
        b'[Event "The\x07 Vienna\tGambit"]\n\n1. e4 {a longer text} *'
    )
    made = folder.new(tmp_path / "vienna", tmp_path / "old.pgn")
    assert made.settings.title == "The Vienna Gambit"


@pytest.mark.parametrize("there_already", [False, True])
def test_a_new_lesson_that_fails_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, there_already: bool
) -> None:
    base = tmp_path / "a" / "vienna"
    if there_already:
        base.mkdir(parents=True)

    def refuse(made: Path, to: Path) -> None:
        if to.name == "lesson.toml":
            raise OSError(errno.ENOSPC, "No space left on device")
        made.rename(to)

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(errors.SaveError) as caught:
        folder.new(base)
    assert str(caught.value) == (
        f"{base}/lesson.toml: the file could not be saved (no space left on device);"
        " make room, or make the folder writable, and save again"
    )
    assert [path.name for path in tmp_path.rglob("*")] == (["a", "vienna"] if there_already else [])


def test_a_new_lesson_needs_a_place_that_can_be_made(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine")
    with pytest.raises(errors.SaveError, match="the folder cannot be made"):
        folder.new(tmp_path / "notes.txt" / "vienna")
    (tmp_path / "link").symlink_to("nowhere")
    with pytest.raises(errors.FolderNotEmptyError):
        folder.new(tmp_path / "link")


# Sides and audiences from outside


@pytest.mark.parametrize(
    ("wrong", "message"),
    [
        ({"side": "red"}, 'side is \'red\'; write side = "white" or side = "black"'),
        ({"side": ["white"]}, 'side is [\'white\']; write side = "white" or side = "black"'),
        ({"audience": 3000}, "audience is 3000; write a rating from 400 to 2900"),
        ({"audience": True}, "audience is True; write a rating from 400 to 2900"),
        (
            {"audience": 10**5000},
            "audience is too long to show; write a rating from 400 to 2900",
        ),
    ],
)
def test_a_wrong_side_or_audience_is_refused(
    lesson: Lesson, wrong: dict[str, Any], message: str
) -> None:
    assert lesson.folder is not None
    with pytest.raises(errors.SettingsError) as caught:
        Lesson.open(lesson.folder, **wrong)
    assert str(caught.value) == f"{lesson.folder}: {message}"
    with pytest.raises(errors.SettingsError) as caught:
        Lesson.from_text("1. e4 *", **wrong)
    assert str(caught.value) == f"lesson.pgn: {message}"
