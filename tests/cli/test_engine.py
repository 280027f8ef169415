"""`lineproof engine solve` and `lineproof engine speed`."""

from __future__ import annotations

import json
import signal
import subprocess
import time
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from lineproof.report.schemas import Name, schema

from .command import COMMAND, environment, lineproof

EPD = """6k1/5ppp/8/8/8/8/8/R3K3 w - - bm Ra8#; id "back; rank";
4k3/8/8/8/8/8/8/R3K3 w - - bm Kd1; id "not \x1b[31mbest";
7k/8/8/8/8/8/R7/1R4K1 w - - am Rb8+; c0 "the check comes too early";
"""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    (tmp_path / "set.epd").write_text(EPD)
    return tmp_path


def valid(text: str, name: Name) -> Any:
    value = json.loads(text)
    jsonschema.Draft202012Validator(schema(name)).validate(value)
    return value


def test_misses_come_first_and_the_count_last(home: Path) -> None:
    ran = lineproof(home, "engine", "solve", "set.epd", "--nodes", "20000")
    assert (ran.status, ran.err) == (0, "")
    missed, last = ran.out.splitlines()
    assert missed.startswith("set.epd:2: not ")
    assert missed.endswith(", expected Kd1")
    assert "\x1b" not in missed
    assert last == "solved 2 of 3"


def test_nodes_give_the_same_answers_every_time(home: Path) -> None:
    arguments = ("engine", "solve", "set.epd", "--nodes", "5000", "--json")
    one, two = (
        valid(lineproof(home, *arguments).out, "solve"),
        valid(lineproof(home, *arguments).out, "solve"),
    )
    for value in (one, two):
        for attempt in value["attempts"]:
            attempt["seconds"] = 0
    assert one == two
    assert one["limit"] == {"seconds": None, "nodes": 5000, "threads": 1}
    assert [attempt["name"] for attempt in one["attempts"]][::2] == ["back; rank", "line 3"]
    assert (one["positions"], one["solved"]) == (3, 2)


def test_seconds_are_kept_and_threads_are_taken(home: Path) -> None:
    ran = lineproof(
        home, "engine", "solve", "set.epd", "--seconds", "0.2", "--threads", "2", "--json"
    )
    value = valid(ran.out, "solve")
    assert value["limit"] == {"seconds": 0.2, "nodes": None, "threads": 2}
    (long,) = [attempt for attempt in value["attempts"] if attempt["line"] == 2]
    assert long["seconds"] < 5


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (
            ("set.epd", "--seconds", "1", "--nodes", "5"),
            "--seconds and --nodes contradict each other; give one of them",
        ),
        (("set.epd", "--seconds", "0"), "--seconds is 0; give a time above 0, up to 86,400"),
        (("set.epd", "--seconds", "nan"), "--seconds is nan; give a time above 0, up to 86,400"),
        (("set.epd", "--seconds", "inf"), "--seconds is inf; give a time above 0, up to 86,400"),
        (("set.epd", "--nodes", "0"), "--nodes is 0; give 1 or more"),
        (("set.epd", "--threads", "0"), "--threads is 0; give 1 or more"),
        (("nowhere.epd",), "nowhere.epd: there is no such file; check the name"),
        ((".",), ".: it cannot be read (is a directory); choose an EPD file"),
        (("empty.epd",), "empty.epd: there is no position in it; give a file with one a line"),
        (
            ("bad.epd",),
            "bad.epd:2:34: Rb2 is not legal here; that piece can play Ra2, Ra3, Ra4, Ra5, Ra6, Ra7,"
            " Ra8#, Rb1, Rc1, Rd1; correct the move or the position",
        ),
    ],
)
def test_bad_use_and_bad_input_are_one_line(
    home: Path, arguments: tuple[str, ...], message: str
) -> None:
    (home / "empty.epd").write_text("\n")
    back_rank = EPD.splitlines()[0]
    (home / "bad.epd").write_text(f"{back_rank}\n{back_rank.replace('Ra8#', 'Rb2')}\n")
    ran = lineproof(home, "engine", "solve", *arguments)
    assert (ran.status, ran.out, ran.err) == (2, "", message + "\n")


def test_too_many_threads_are_refused_in_one_line(home: Path) -> None:
    ran = lineproof(home, "engine", "solve", "set.epd", "--nodes", "9", "--threads", "99999")
    assert (ran.status, ran.out) == (2, "")
    assert "threads" in ran.err and ran.err.count("\n") == 1


def test_a_stopped_run_says_how_far_it_came(home: Path) -> None:
    process = subprocess.Popen(
        [COMMAND, "engine", "solve", "set.epd", "--seconds", "60"],
        cwd=home,
        env=environment(home),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    time.sleep(2)
    process.send_signal(signal.SIGINT)
    out, err = process.communicate(timeout=20)
    assert process.returncode == 130
    assert out.decode().endswith(" tried, of 3 in all\n")
    assert err.decode().strip() == "Stopped."


def test_speed_gives_a_rate_and_a_signature(tmp_path: Path) -> None:
    text, value = (
        lineproof(tmp_path, "engine", "speed").out.splitlines(),
        valid(lineproof(tmp_path, "engine", "speed", "--json").out, "speed"),
    )
    assert text[-1] == f"signature {value['signature']}"
    assert value["signature"] == value["nodes"] == sum(p["nodes"] for p in value["positions"])
    assert f"{value['nodes']:,} nodes in " in text[-2]
    assert value["nodes_a_second"] == pytest.approx(value["nodes"] / value["seconds"], rel=0.01)
