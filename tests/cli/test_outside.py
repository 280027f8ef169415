"""`lineproof prove --engine PATH`: what it prints, with which exit status, and that no process is left."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import time
from pathlib import Path

import pytest

from tests.outside.engines import Made, made

from .command import COMMAND, environment, lineproof

pytestmark = pytest.mark.skipif(os.name != "posix", reason="the programs are shell scripts")

LESSON = """[Event "The Vienna Gambit for White"]
[Result "*"]

1. e4 {White is winning.} e5 2. Nc3 {White is winning.} Nf6 {Black is winning.}
3. f4 {White is winning. Material is level.} d5 {Black is winning.} 4. fxe5 Nxe4 {White is winning.} *
"""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    (tmp_path / "vienna.pgn").write_text(LESSON)
    return tmp_path


def test_the_answer_names_the_engine(home: Path) -> None:
    boat = made(home)
    ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--engine", "boat/boat")
    assert (ran.status, ran.err) == (0, "")
    assert "Sketch effort, outside engine Paper Boat 2, " in ran.out
    assert boat.asked() == 6
    assert boat.alive() == []


def test_json_and_strict_are_as_ever(home: Path) -> None:
    made(home)
    ran = lineproof(
        home, "prove", "vienna.pgn", "--effort", "sketch", "--engine", "boat/boat", "--json", "--strict",
    )  # fmt: skip
    value = json.loads(ran.out)
    assert value["outside"]["name"] == "Paper Boat 2"
    assert ran.status == (1 if value["answer"]["fails"] else 0) == 1


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("nowhere", "--engine nowhere: there is no such program; check the path"),
        ("boat", "--engine boat: this is a folder; give the program inside it"),
        ("vienna.pgn", "--engine vienna.pgn: this file may not be run; allow it (chmod +x)"),
        ("boat/boat", "boat/boat: it ends at its start (exit status 1, “no sea to sail on”); give"),
    ],
)
def test_an_engine_that_cannot_be_used_is_one_line(home: Path, path: str, said: str) -> None:
    made(home, "ends at its start")
    ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--engine", path)
    assert (ran.status, ran.out) == (2, "")
    assert said in ran.err and ran.err.startswith("--engine ")
    assert ran.err.count("\n") == 1


def test_what_was_not_answered_is_said_after_the_answer_and_the_status_is_2(home: Path) -> None:
    boat = made(home, "dies")
    arguments = ("prove", "vienna.pgn", "--effort", "sketch", "--engine", "boat/boat")
    ran = lineproof(home, *arguments, "--report", "proof.html")
    assert ran.status == 2
    assert "7 claims in 7 sentences were checked: 1 holds, 6 are unsettled." in ran.out
    assert "Open: The outside engine did not answer." in ran.out
    assert ran.err.startswith("--engine: 6 claims are unsettled, and what was answered is kept. ")
    assert "Paper Boat 2 was asked twice for the best move in " in ran.err
    assert "exit status 3, “out of paper”" in ran.err
    assert ran.err.count("\n") == 1
    assert (home / "proof.html").exists()
    assert boat.alive() == []


def start(home: Path, *, effort: str = "sketch") -> subprocess.Popen[bytes]:
    return subprocess.Popen(
        [COMMAND, "prove", "vienna.pgn", "--effort", effort, "--engine", "boat/boat"],
        cwd=home,
        env=environment(home),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        start_new_session=True,
    )


def wait_until_asked(boat: Made, process: subprocess.Popen[bytes], count: int) -> None:
    limit = time.monotonic() + 30
    while boat.asked() < count:
        assert process.poll() is None, "the run ended before it could be stopped"
        assert time.monotonic() < limit, "nothing was asked in 30 seconds"
        time.sleep(0.02)


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
@pytest.mark.parametrize("behaviour", ["plays slowly", "hangs"])
def test_a_stopped_run_leaves_no_process(home: Path, behaviour: str, how: signal.Signals) -> None:
    boat = made(home, behaviour)
    process = start(home)
    wait_until_asked(boat, process, 1)
    os.killpg(process.pid, how)  # as a terminal does it
    out, err = process.communicate(timeout=20)
    assert (process.returncode, out) == (130, b"")
    assert err == b"Stopped. What was found is kept; the same command goes on from there.\n"
    assert boat.processes() and boat.alive() == []


def test_what_was_answered_before_a_stop_is_not_asked_again(home: Path) -> None:
    boat = made(home, "plays slowly")
    process = start(home)
    wait_until_asked(boat, process, 5)
    process.send_signal(signal.SIGINT)
    process.communicate(timeout=20)
    before = boat.asked()
    ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--engine", "boat/boat")
    assert ran.status == 0
    assert 1 <= boat.asked() - before < 6


def test_ctrl_c_while_it_starts(home: Path) -> None:
    boat = made(home, "is no engine")
    process = start(home)
    limit = time.monotonic() + 20
    while not boat.told() and time.monotonic() < limit:
        time.sleep(0.02)
    process.send_signal(signal.SIGINT)
    _, err = process.communicate(timeout=20)
    assert (process.returncode, err.decode().strip()) == (130, "Stopped.")
    assert boat.alive() == []


def test_help_does_not_import_the_client(home: Path) -> None:
    import sys

    code = (
        "import sys\nfrom lineproof.cli import main\nmain(['prove', '--help'])\n"
        "print('chess' in sys.modules, 'asyncio' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "False False"
    assert "--engine PATH" in done.stdout
