"""Work is never lost: by a killed server, a full disk, or a folder that cannot be written to."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
from pathlib import Path

import httpx
import pytest

from lineproof.desk.lessons import Lessons
from lineproof.desk.opened import OpenLesson
from lineproof.lesson.errors import LockedError
from lineproof.proof import Effort

from .conftest import Desk
from .lessons import VIENNA
from .waiting import until

COMMAND = [sys.executable, "-c", "import sys; from lineproof.cli import main; sys.exit(main())"]


class Running:
    """The real command in a process of its own."""

    def __init__(self, path: Path, *more: str) -> None:
        environment = {**os.environ, "PYTHONUNBUFFERED": "1"}
        self.process = subprocess.Popen(
            [*COMMAND, "desk", str(path), "--no-browser", "--effort", "sketch", *more],
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            env=environment,
            text=True,
        )
        assert self.process.stdout is not None
        said = self.process.stdout.readline()
        found = re.fullmatch(r"The desk is at (http://127\.0\.0\.1:\d+)/#token=(\S+)\n", said)
        assert found, said + self.process.stdout.read()
        headers = {"Authorization": f"Bearer {found[2]}", "Origin": found[1]}
        self.client = httpx.Client(base_url=found[1], headers=headers, timeout=60)

    def words(self, version: int, text: str) -> int:
        """Changes a comment; the version after it."""
        edit = {"op": "change_words", "comment": 1, "text": text}
        answer = self.client.post("/api/lessons/1/edits", json={"version": version, "edit": edit})
        assert answer.status_code == 200, answer.text
        return answer.json()["lesson"]["version"]

    def end(self, number: int) -> int:
        """Sends a signal, and gives the exit status."""
        self.process.send_signal(number)
        status = self.process.wait(60)
        assert self.process.stdout is not None
        self.process.stdout.close()
        self.client.close()
        return status


def test_a_desk_that_is_killed_in_the_middle_of_edits_loses_none_that_it_answered(
    path: Path,
) -> None:
    running = Running(path)
    version = 0
    for number in range(30):
        version = running.words(version, f"Version {number}.")
    running.end(signal.SIGKILL)
    on_disk = (path / "lines.pgn").read_text()
    assert on_disk == VIENNA or "Version" in on_disk  # whole in any case
    again = OpenLesson("1", path)
    try:
        assert again.lesson.text == VIENNA.replace("White develops a knight.", "Version 29.")
        assert len(again.shown().places) == 11
        assert again.shown().undo == 30
        again.save()
        assert (path / "lines.pgn").read_text() == again.lesson.text
    finally:
        again.close()


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_a_desk_that_is_stopped_saves_first(path: Path, number: int) -> None:
    running = Running(path)
    running.words(0, "The last words.")
    running.end(number)
    assert "The last words." in (path / "lines.pgn").read_text()
    again = OpenLesson("1", path)
    try:
        assert again.notice is None
    finally:
        again.close()


def test_a_window_that_listens_does_not_keep_the_desk_from_stopping(path: Path) -> None:
    running = Running(path)
    with running.client.stream("GET", "/api/lessons/1/events") as stream:
        lines = stream.iter_lines()
        assert next(lines) == "event: lesson"
        assert running.end(signal.SIGINT) == 130


def test_two_processes_cannot_have_the_same_lesson_on_the_desk(path: Path) -> None:
    running = Running(path)
    try:
        with pytest.raises(LockedError):
            OpenLesson("1", path)
    finally:
        running.end(signal.SIGKILL)
    OpenLesson("1", path).close()


def test_a_disk_that_refuses_is_told_of_and_tried_again(desk: Desk, monkeypatch) -> None:
    real = os.write

    def full(handle: int, data: bytes) -> int:
        raise OSError(28, "No space left on device")

    desk.on_desk.keeper.stop()
    opened = desk.on_desk.opened
    monkeypatch.setattr(os, "write", full)
    desk.edit(op="change_words", comment=1, text="One.")
    desk.edit(op="change_words", comment=1, text="Two.")
    opened.save()
    assert "no space left" in str(opened.problem)
    assert desk.on_disk == VIENNA
    monkeypatch.setattr(os, "write", real)
    opened.save()
    assert opened.problem is None
    assert "Two." in desk.on_disk
    desk.lessons.close()
    other = Desk(Lessons(Effort.SKETCH), desk.path)
    try:
        assert (other.lesson["undo"], other.lesson["notice"]) == (2, None)
    finally:
        other.lessons.close()


def test_what_is_answered_is_in_the_steps_before_the_file_is_saved(desk: Desk) -> None:
    desk.on_desk.keeper.stop()
    desk.edit(op="change_words", comment=1, text="Not saved yet.")
    steps = desk.path / ".lineproof" / "history" / "steps.jsonl"
    assert "Not saved ye" in steps.read_text()
    assert desk.on_disk == VIENNA
    until(lambda: desk.on_desk.opened.save() or "Not saved yet." in desk.on_disk)
