"""Ctrl-C: what was found is kept, and the same command goes on from there."""

from __future__ import annotations

import json
import os
import pty
import re
import select
import signal
import sqlite3
import subprocess
import time
from pathlib import Path

import pytest

from lineproof.cli.progress import status

from .command import COMMAND, environment, lineproof

LESSON = """[Event "The Vienna Gambit for White"]
[Result "*"]

1. e4 {The position is level.} e5 2. Nc3 {White is winning.} Nf6 {Black is winning.}
3. f4 {White is winning.} d5 {Black is winning.} 4. fxe5 Nxe4 {White is winning.} *
"""


@pytest.fixture
def lesson(tmp_path: Path) -> Path:
    (tmp_path / "long.pgn").write_text(LESSON)
    return tmp_path


def answers(home: Path) -> dict[str, str]:
    """What the evidence store holds, by question."""
    stores = list(home.rglob("evidence.sqlite"))
    if not stores:
        return {}
    try:
        with sqlite3.connect(f"file:{stores[0]}?mode=ro", uri=True, timeout=5) as connection:
            return dict(connection.execute("SELECT key, value FROM answers"))
    except sqlite3.OperationalError:
        return {}  # it is just being made


def wait_for_answers(home: Path, process: subprocess.Popen[bytes], count: int) -> None:
    limit = time.monotonic() + 90
    while len(answers(home)) < count:
        assert process.poll() is None, "the run ended before it could be stopped"
        assert time.monotonic() < limit, "nothing was answered in 90 seconds"
        time.sleep(0.05)


def test_a_stopped_run_says_so_keeps_its_answers_and_goes_on(lesson: Path) -> None:
    process = subprocess.Popen(
        [COMMAND, "prove", "long.pgn", "--effort", "normal"],
        cwd=lesson,
        env=environment(lesson),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    wait_for_answers(lesson, process, 2)
    process.send_signal(signal.SIGINT)
    out, err = process.communicate(timeout=30)
    assert process.returncode == 130
    assert out == b""
    assert err.decode() == (
        "Stopped. What was found is kept; the same command goes on from there.\n"
    )
    kept = answers(lesson)
    assert len(kept) >= 2
    # A kept answer with a count of nodes that no search would give: if the next run searched anew, it
    # would not turn up in its sum.
    strange = 10**15
    (store,) = lesson.rglob("evidence.sqlite")
    with sqlite3.connect(store) as connection:
        key = next(iter(kept))
        value = json.loads(kept[key])
        value["nodes"] = strange
        connection.execute("UPDATE answers SET value=? WHERE key=?", (json.dumps(value), key))
    connection.close()
    again = lineproof(lesson, "prove", "long.pgn", "--effort", "normal", "--json")
    assert again.status == 0, again.err
    assert sum(f["nodes"] for f in json.loads(again.out)["findings"]) > strange
    assert kept.keys() <= answers(lesson).keys()


def test_a_stopped_run_that_could_not_keep_anything_says_so(lesson: Path) -> None:
    (lesson / "data").write_text("a file where the folder of the data should be")
    process = subprocess.Popen(
        [COMMAND, "prove", "long.pgn", "--effort", "thorough"],
        cwd=lesson,
        env=environment(lesson),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    time.sleep(2)
    assert process.poll() is None
    process.send_signal(signal.SIGINT)
    out, err = process.communicate(timeout=30)
    assert (process.returncode, out) == (130, b"")
    assert err.decode() == (
        "Stopped. What was found could not be kept, so the same command begins anew.\n"
    )


def test_a_terminal_sees_progress_with_the_time_left(lesson: Path) -> None:
    controller, terminal = pty.openpty()
    process = subprocess.Popen(
        [COMMAND, "prove", "long.pgn", "--effort", "normal"],
        cwd=lesson,
        env=environment(lesson, TERM="xterm", COLUMNS="80"),
        stdout=subprocess.PIPE,
        stderr=terminal,
    )
    os.close(terminal)
    told = b""
    limit = time.monotonic() + 60
    while b" of 6 claims, about" not in told and time.monotonic() < limit:
        if select.select([controller], [], [], 0.2)[0]:
            told += os.read(controller, 4096)
    process.send_signal(signal.SIGINT)
    while True:
        try:
            more = os.read(controller, 4096)
        except OSError:  # how a pty says that nobody writes to it any more
            break
        if not more:
            break
        told += more
    assert process.wait(30) == 130
    os.close(controller)
    assert process.stdout is not None and process.stdout.read() == b""
    process.stdout.close()
    words = re.sub(r"\x1b\[[\d;?]*[A-Za-z]", "", told.decode())
    assert re.search(r"Checking .* [1-9]\d* of 6 claims, about \d+ (s|min) left", words), words
    assert "Stopped. What was found is kept" in words


def test_a_terminal_sees_at_once_that_the_lesson_is_read(tmp_path: Path) -> None:
    """Some thousand games with words that claim nothing go before the lesson, so that reading takes its time."""
    idle = (
        "1. e4 {Patience is a virtue, and so is a good night's sleep before the match.} *\n\n"
        * 6000
    )
    (tmp_path / "long[red].pgn").write_text(idle + LESSON)
    controller, terminal = pty.openpty()
    process = subprocess.Popen(
        [COMMAND, "prove", "long[red].pgn", "--effort", "sketch"],
        cwd=tmp_path,
        env=environment(tmp_path, TERM="xterm", COLUMNS="80"),
        stdout=subprocess.PIPE,
        stderr=terminal,
    )
    os.close(terminal)
    told = b""
    limit = time.monotonic() + 30
    while told.count(b"Reading long[red].pgn") < 3 and time.monotonic() < limit:  # it moves
        if select.select([controller], [], [], 0.2)[0]:
            told += os.read(controller, 4096)
    assert told.count(b"Reading long[red].pgn") >= 3
    assert b"Checking" not in told
    while True:
        try:
            more = os.read(controller, 4096)
        except OSError:  # how a pty says that nobody writes to it any more
            break
        if not more:
            break
        told += more
    out, _ = process.communicate(timeout=60)
    os.close(controller)
    assert (process.returncode, b"6 claims in 6 sentences" in out) == (0, True)
    assert told.index(b"Reading") < told.index(b"Checking")
    assert b"6 of 6 claims" in told


@pytest.mark.parametrize(
    ("done", "total", "left", "said"),
    [
        (0, 1, None, "0 of 1 claim"),
        (3, 40, 12.4, "3 of 40 claims, about 12 s left"),
        (3, 40, 0.2, "3 of 40 claims, about 1 s left"),
        (3, 1200, 59.7, "3 of 1,200 claims, about 1 min left"),
        (3, 40, 150.1, "3 of 40 claims, about 3 min left"),
        (40, 40, 0.0, "40 of 40 claims"),
    ],
)
def test_the_time_left_in_words(done: int, total: int, left: float | None, said: str) -> None:
    assert status(done, total, left) == said


def test_a_pipe_sees_no_progress(lesson: Path) -> None:
    ran = lineproof(lesson, "prove", "long.pgn", "--effort", "sketch")
    assert (ran.status, ran.err) == (0, "")
