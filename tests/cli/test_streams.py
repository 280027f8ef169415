"""Standard streams that are closed or full: one line where it can be said, and never a traceback."""

from __future__ import annotations

import contextlib
import os
import pty
import re
import shlex
import subprocess
from pathlib import Path

import pytest

from .command import COMMAND, Ran, environment, lineproof

needs_full = pytest.mark.skipif(
    not Path("/dev/full").exists(), reason="this system has no /dev/full"
)
COMMANDS = [
    "--help",
    "--version",
    "prove --help",
    "where",
    "engine perft 2 --json",
    "prove vienna.pgn --effort sketch",
    "prove vienna.pgn --effort sketch --json",
    "prove vienna.pgn --effort sketch --show all --strict",
]


def in_shell(home: Path, line: str, **more: str) -> Ran:
    """Runs a line of the shell in which `lineproof` is the command."""
    done = subprocess.run(
        ["sh", "-c", f"{shlex.quote(str(COMMAND))} {line}"],
        cwd=home,
        env=environment(home, **more),
        capture_output=True,
        encoding="utf-8",
        timeout=120,
        check=False,
    )
    return Ran(done.returncode, done.stdout, done.stderr)


@pytest.mark.parametrize("command", COMMANDS)
def test_closed_output_is_an_error_in_one_line(home: Path, command: str) -> None:
    ran = in_shell(home, f"{command} >&-")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == "standard output is closed; send it to a file or a terminal\n"


@needs_full
@pytest.mark.parametrize("buffered", ["", "1"])
@pytest.mark.parametrize("command", COMMANDS)
def test_full_output_is_an_error_in_one_line(home: Path, command: str, buffered: str) -> None:
    ran = in_shell(home, f"{command} >/dev/full", PYTHONUNBUFFERED=buffered)
    assert ran.status == 2
    assert ran.err == (
        "standard output cannot be written (no space left on device);"
        " make room, or send it to another place\n"
    )


@pytest.mark.parametrize("where", ["2>&-", pytest.param("2>/dev/full", marks=needs_full)])
@pytest.mark.parametrize(
    ("command", "status"),
    [
        ("prove vienna.pgn --effort sketch", 0),
        ("prove vienna.pgn --effort sketch --strict", 1),
        ("prove nowhere.pgn", 2),
        ("prove vienna.pgn --effort sketch --report nowhere/a.html", 2),
        ("nothing", 2),
        ("--help", 0),
    ],
)
def test_without_standard_error_the_status_says_it(
    home: Path, command: str, status: int, where: str
) -> None:
    ran = in_shell(home, f"{command} {where}")
    assert (ran.status, ran.err) == (status, "")
    assert ("checked: 1 holds, 1 fails" in ran.out) == ("vienna.pgn" in command)
    assert "Traceback" not in ran.out and "nowhere" not in ran.out


def test_with_both_closed_the_status_is_left(home: Path) -> None:
    assert in_shell(home, "prove vienna.pgn >&- 2>&-") == Ran(2, "", "")
    assert in_shell(home, "prove vienna.pgn --effort sketch <&-").status == 0


def test_no_file_of_the_run_is_taken_for_a_closed_stream(home: Path) -> None:
    """A closed number is the next that the system gives out: the report must not get what is said."""
    ran = in_shell(home, "prove vienna.pgn --effort sketch --report a.html <&- 2>&-")
    assert ran.status == 0
    assert (home / "a.html").read_text(encoding="utf-8").rstrip().endswith("</html>")


@pytest.mark.parametrize("columns", ["0", "1", "20", "-1"])
def test_no_width_is_too_small_to_be_read(home: Path, columns: str) -> None:
    for arguments in (
        ("prove", "vienna.pgn", "--effort", "sketch", "--show", "all"),
        ("prove", "--help"),
    ):
        ran = lineproof(home, *arguments, COLUMNS=columns)
        assert (ran.status, ran.err) == (0, "")
        asked = lineproof(home, *arguments, COLUMNS="40")
        if int(columns) > 0:
            same = [re.sub(r"[\d.]+ seconds", "", out) for out in (ran.out, asked.out)]
            assert same[0] == same[1]
        assert max(map(len, ran.out.splitlines())) >= 35


@pytest.mark.parametrize("columns", ["0", "1"])
def test_progress_and_colours_have_room_on_a_terminal_of_no_width(home: Path, columns: str) -> None:
    controller, terminal = pty.openpty()
    process = subprocess.Popen(
        [COMMAND, "prove", "vienna.pgn", "--effort", "sketch"],
        cwd=home,
        env=environment(home, TERM="xterm", COLUMNS=columns),
        stdout=terminal,
        stderr=terminal,
    )
    os.close(terminal)
    told = b""
    with contextlib.suppress(OSError):  # how a pty says that nobody writes to it any more
        while more := os.read(controller, 4096):
            told += more
    os.close(controller)
    assert process.wait(30) == 0
    assert "2 claims in 2 sentences were checked" in told.decode()
    assert "Traceback" not in told.decode()
