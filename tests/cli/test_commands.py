"""The commands beside `prove`, and what all have in common."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from lineproof.report.schemas import Name, schema

from .command import Ran, lineproof


def valid(ran: Ran, name: Name) -> Any:
    assert (ran.status, ran.err) == (0, "")
    value = json.loads(ran.out)
    jsonschema.Draft202012Validator(schema(name)).validate(value)
    return value


def test_help_lists_the_commands_that_exist_and_no_others(tmp_path: Path) -> None:
    ran = lineproof(tmp_path, "--help")
    assert ran.status == 0
    commands = re.findall(r"^    (\w+)(?:  |$)", ran.out, re.M)
    assert commands == [
        "new",
        "desk",
        "prove",
        "opinion",
        "ask",
        "unanswered",
        "order",
        "follow",
        "weigh",
        "publish",
        "compare",
        "collect",
        "where",
        "engine",
    ]
    for command in commands:
        assert lineproof(tmp_path, command, "--help").status == 0


def test_help_imports_neither_the_engine_nor_rich(tmp_path: Path) -> None:
    """What keeps `--help` fast is what is not imported; the time itself is measured elsewhere."""
    import subprocess
    import sys

    code = (
        "import sys\nfrom lineproof.cli import main\ntry: main(['prove', '--help'])\n"
        "except SystemExit: pass\n"
        "print(sorted(m for m in sys.modules if m.split('.')[0] in ('rich', 'platformdirs', 'sqlite3')"
        " or m.startswith('lineproof') and not m.startswith('lineproof.cli')))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "['lineproof']"


def test_version(tmp_path: Path) -> None:
    ran = lineproof(tmp_path, "--version")
    assert ran.status == 0
    assert re.fullmatch(r"lineproof \d+\.\d+\.\d+\S*\n", ran.out)


@pytest.mark.parametrize(
    "arguments",
    [(), ("engine",), ("collect",), ("nothing",), ("engine", "nothing"), ("collect", "nothing")],
)
def test_without_a_command_one_line_says_what_to_do(
    tmp_path: Path, arguments: tuple[str, ...]
) -> None:
    ran = lineproof(tmp_path, *arguments)
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.count("\n") == 1
    assert "--help`" in ran.err


def test_where_lists_the_folders(tmp_path: Path) -> None:
    value = valid(lineproof(tmp_path, "where", "--json"), "where")
    assert value["folders"]["bare files"] == str(tmp_path / "data" / "bare")
    text = lineproof(tmp_path, "where").out
    for name, folder in value["folders"].items():
        assert re.search(rf"^{name} +{re.escape(folder)}$", text, re.M)


def test_new_makes_a_lesson_that_can_be_proved(home: Path) -> None:
    value = valid(
        lineproof(home, "new", "vienna", "--from", "vienna.pgn", "--side", "white", "--audience", "1400", "--json"),
        "new",
    )  # fmt: skip
    assert value == {
        "format": 1,
        "folder": "vienna",
        "lines": "vienna/lines.pgn",
        "title": "The Vienna Gambit for White",
        "side": "white",
        "audience": 1400,
    }
    assert (home / "vienna" / "lines.pgn").read_bytes() == (home / "vienna.pgn").read_bytes()
    ran = lineproof(home, "prove", "vienna", "--effort", "sketch")
    assert ran.status == 0
    assert "▲ fails  vienna/lines.pgn:4:47  3. f4" in ran.out


def test_new_says_what_to_do_next(home: Path) -> None:
    ran = lineproof(home, "new", "empty")
    assert ran.status == 0
    assert "lineproof prove empty" in ran.out


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (
            ("vienna.pgn",),
            "vienna.pgn: something is there already; choose a new or an empty folder",
        ),
        (("a", "--from", "nowhere.pgn"), "nowhere.pgn: there is no such file; check the name"),
        (("a", "--audience", "9"), "--audience is 9; give a rating from 400 to 2900"),
        (
            ("vienna.pgn/a",),
            "vienna.pgn/a: the folder cannot be made (not a directory); choose another place",
        ),
    ],
)
def test_new_refuses_in_one_line(home: Path, arguments: tuple[str, ...], message: str) -> None:
    ran = lineproof(home, "new", *arguments)
    assert (ran.status, ran.out, ran.err) == (2, "", message + "\n")


@pytest.mark.parametrize(("depth", "paths"), [(0, 1), (1, 20), (3, 8902), (4, 197281)])
def test_perft_of_the_initial_position(tmp_path: Path, depth: int, paths: int) -> None:
    """Source: Chess Programming Wiki, "Perft Results", initial position (from memory)."""
    value = valid(lineproof(tmp_path, "engine", "perft", str(depth), "--json"), "perft")
    assert (value["depth"], value["paths"]) == (depth, paths)


def test_perft_of_another_position(tmp_path: Path) -> None:
    """Source: Chess Programming Wiki, "Perft Results", position 3 (from memory)."""
    fen = "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1"
    ran = lineproof(tmp_path, "engine", "perft", "3", "--fen", fen)
    assert ran.status == 0
    assert ran.out.startswith("2,812 paths of 3 plies in ")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("-1",), "the depth is -1; give 0 to 15 plies"),
        (("99",), "the depth is 99; give 0 to 15 plies"),
        (("three",), "invalid int value: 'three'"),
        (("3", "--fen", "nonsense"), "--fen: "),
    ],
)
def test_perft_refuses_in_one_line(tmp_path: Path, arguments: tuple[str, ...], said: str) -> None:
    ran = lineproof(tmp_path, "engine", "perft", *arguments)
    assert (ran.status, ran.out) == (2, "")
    assert said in ran.err
    assert ran.err.count("\n") == 1


def test_perft_can_be_stopped(tmp_path: Path) -> None:
    import signal
    import subprocess
    import time

    from .command import COMMAND, environment

    process = subprocess.Popen(
        [COMMAND, "engine", "perft", "12"],
        env=environment(tmp_path),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    try:
        time.sleep(1)
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=20)
    finally:
        process.kill()
    assert (process.returncode, out) == (130, b"")
    assert err.decode().strip() == "Stopped."
