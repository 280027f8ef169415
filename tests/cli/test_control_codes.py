"""Names, paths and words of files never command the terminal, whatever message they stand in."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from .command import Ran, lineproof
from .conftest import LESSON

RED = "\x1b[31m"
BELL = "\x07"
EIGHT_BITS = "\x9b31m"
TURNED = "\u202e"
EVIL = f"a{RED}b{BELL}c{EIGHT_BITS}d{TURNED}e"
SHOWN = "a\ufffd[31mb\ufffdc\ufffd31md\ufffde"
ESCAPED = EVIL.encode("unicode_escape").decode()


def commands_in(text: str) -> list[str]:
    return re.findall(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u202e]", text)


@pytest.fixture
def evil(home: Path) -> Path:
    """A folder with lessons that try, in their names and in their texts."""
    (home / f"{EVIL}.pgn").write_text(LESSON, encoding="utf-8")
    (home / "variant.pgn").write_text(f'[Variant "{EVIL}"]\n\n1. e4 *', encoding="utf-8")
    (home / "move.pgn").write_text(f"1. e4 {EVIL} *", encoding="utf-8")
    (home / "key").mkdir()
    (home / "key" / "lines.pgn").write_text(LESSON, encoding="utf-8")
    key = EVIL.encode("unicode_escape").decode().replace("\\x", "\\u00")
    (home / "key" / "lesson.toml").write_text(f'format = 1\n"{key}" = 2\n', encoding="utf-8")
    return home


@pytest.mark.parametrize(
    ("arguments", "status", "said"),
    [
        (("prove", f"{EVIL}.pgn", "--effort", "sketch"), 0, f"▲ fails  {SHOWN}.pgn:4:47"),
        (("prove", "vienna.pgn", "--effort", "sketch", "--report", f"{EVIL}.html"), 0, f"The report is in {SHOWN}.html."),
        (("prove", "vienna.pgn", "--effort", "sketch", "--report", f"{EVIL}/a.html"), 2, f"{SHOWN}/a.html: the report"),
        (("prove", "vienna.pgn", f"--{EVIL}"), 2, SHOWN),
        (("prove", f"no{EVIL}.pgn"), 2, f"no{ESCAPED}.pgn: there is no such file"),
        (("prove", "variant.pgn"), 2, "variant.pgn:"),
        (("prove", "move.pgn"), 2, "move.pgn:"),
        (("prove", "key"), 2, f"{SHOWN} is no setting"),
        (("new", f"new{EVIL}", "--from", "vienna.pgn"), 0, f"Made new{SHOWN}."),
        (("new", f"{EVIL}.pgn"), 2, f"{ESCAPED}.pgn: something is there already"),
        (("engine", "perft", "1", "--fen", EVIL), 2, "--fen: "),
        (("new", "two\nlines", "--from", "vienna.pgn"), 0, "Made two lines."),
        (("prove", "two\nlines"), 2, "two\\nlines: there is no such file"),
        ((EVIL,), 2, "lineproof: "),
    ],
)  # fmt: skip
def test_every_message_is_harmless(
    evil: Path, arguments: tuple[str, ...], status: int, said: str
) -> None:
    ran = lineproof(evil, *arguments)
    assert (ran.status, commands_in(ran.out + ran.err)) == (status, [])
    assert said in ran.out + ran.err
    if status == 2:
        assert ran.err.count("\n") == 1


def test_where_is_harmless(tmp_path: Path) -> None:
    ran = lineproof(tmp_path, "where", LINEPROOF_DATA=f"/{EVIL}")
    assert (ran.status, commands_in(ran.out)) == (0, [])
    assert f"/{SHOWN}/bare" in ran.out


def test_json_is_harmless_and_says_the_same(evil: Path) -> None:
    def value(ran: Ran) -> dict[str, object]:
        assert (ran.status, commands_in(ran.out)) == (0, [])
        found: dict[str, object] = json.loads(ran.out)
        return found

    lesson = value(lineproof(evil, "prove", f"{EVIL}.pgn", "--effort", "sketch", "--json"))[
        "lesson"
    ]
    assert isinstance(lesson, dict) and lesson["name"] == f"{EVIL}.pgn"
    made = lineproof(evil, "new", f"made{EVIL}", "--from", "vienna.pgn", "--json")
    assert value(made)["folder"] == f"made{EVIL}"
