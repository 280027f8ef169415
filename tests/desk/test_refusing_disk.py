"""A folder that can only be read opens, and says so; a disk that is full loses nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof.desk.lessons import Lessons
from lineproof.lesson import Lesson
from lineproof.proof import Effort

from .conftest import Desk
from .lessons import SETTINGS, VIENNA
from .refusing import fill_disk, forbid


def files(folder: Path) -> dict[str, bytes]:
    return {str(f.relative_to(folder)): f.read_bytes() for f in folder.rglob("*") if f.is_file()}


def test_a_folder_that_can_only_be_read_opens_and_is_left_as_it_is(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    forbid(monkeypatch, path)
    lessons = Lessons(Effort.SKETCH)
    try:
        desk = Desk(lessons, path)
        assert desk.lesson["unwritable"].startswith("the lesson cannot be locked for writing (read-only file system)")  # fmt: skip
        assert "only be looked at; make its folder writable" in desk.lesson["unwritable"]
        assert len(desk.lesson["places"]) == 11
        assert desk.finding("Black cannot castle now")["outcome"] != "waiting"
        for edit in (
            {"op": "change_words", "comment": 1, "text": "One."},
            {"op": "settings", "title": "Another"},
            {"op": "undo"},
        ):
            answer = desk.ask(**edit)
            assert answer.status_code == 422
            assert "only be looked at" in answer.json()["error"]["message"]
        assert desk.look()["version"] == 0
    finally:
        lessons.close()
    assert files(path) == {"lines.pgn": VIENNA.encode(), "lesson.toml": SETTINGS.encode()}


def test_what_another_program_writes_into_it_is_shown(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lessons = Lessons(Effort.SKETCH)
    with monkeypatch.context() as patch:
        forbid(patch, path)
        desk = Desk(lessons, path)
    try:
        (path / "lines.pgn").write_text(VIENNA.replace("a knight", "another knight"))
        desk.on_desk.opened.look()
        assert "another knight" in desk.text
        assert (desk.look()["undo"], desk.lesson["conflict"]) == (0, None)
    finally:
        lessons.close()
    assert not (path / ".lineproof" / "history").exists()


def test_a_lesson_that_another_process_has_is_not_opened_to_be_looked_at(path: Path) -> None:
    from lineproof.desk.opened import OpenLesson
    from lineproof.lesson.errors import LockedError

    from .test_saving import Running

    running = Running(path)
    try:
        with pytest.raises(LockedError):
            OpenLesson("1", path)
    finally:
        running.end(9)


def test_a_full_disk_loses_nothing_and_says_so(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    opened = desk.on_desk.opened
    desk.edit(op="change_words", comment=1, text="Before.")
    opened.save()
    before = files(desk.path)
    with monkeypatch.context() as patch:
        fill_disk(patch)
        desk.edit(op="change_words", comment=1, text="Meanwhile.")
        desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["c5"])
        opened.save()
        assert "no space left" in str(opened.problem)
        # What is decided cannot be written, so it is refused; nothing else of it is there.
        answer = desk.ask(op="settings", title="Another")
        assert answer.status_code == 422
        assert "no space left" in answer.json()["error"]["message"]
        assert desk.look()["title"] == "The Vienna Gambit for White"
        kept = {name: data for name, data in files(desk.path).items() if name in before}
        assert {n: d for n, d in kept.items() if "cache" not in n and "lock" not in n} == {
            n: d for n, d in before.items() if "cache" not in n and "lock" not in n
        }
    opened.save()
    assert opened.problem is None
    assert "Meanwhile." in desk.on_disk and "c5" in desk.on_disk
    desk.edit(op="settings", title="Another")
    for _ in range(4):
        desk.edit(op="undo")
    opened.save()
    assert desk.on_disk == VIENNA
    assert Lesson.open(desk.path).settings.title == "The Vienna Gambit for White"
