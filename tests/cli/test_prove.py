"""`lineproof prove`: what it prints, where, and with which exit status."""

from __future__ import annotations

import json
import re
import subprocess
from pathlib import Path

import jsonschema
import pytest

from lineproof.report.schemas import schema

from .command import COMMAND, environment, lineproof


def test_the_answer_comes_first_and_the_status_is_0(home: Path) -> None:
    ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch")
    assert ran.status == 0
    assert ran.out.splitlines()[:2] == [
        "The Vienna Gambit for White",
        "2 claims in 2 sentences were checked: 1 holds, 1 fails.",
    ]
    assert "▲ fails  vienna.pgn:4:47  3. f4" in ran.out
    assert ran.err == ""


def test_strict_gives_1_only_when_a_claim_fails(home: Path) -> None:
    failing = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--strict")
    assert failing.status == 1
    assert "1 fails" in failing.out
    assert lineproof(home, "prove", "sound.pgn", "--effort", "sketch", "--strict").status == 0


def test_strict_gives_1_when_two_claims_contradict_though_neither_fails(home: Path) -> None:
    roads = "1. e4 e5 2. Nf3 (2. Nc3 Nc6 3. Nf3 {The position is level.}) 2... Nc6 3. Nc3 {%s} *"
    for words, status in (("White is slightly better.", 1), ("The position is level.", 0)):
        (home / "roads.pgn").write_text(roads % words, encoding="utf-8")
        ran = lineproof(home, "prove", "roads.pgn", "--effort", "sketch", "--strict")
        assert (ran.status, "fails" in ran.out) == (status, False)
        assert ("contradicts itself" in ran.out) is (status == 1)


def test_json_has_the_published_shape_and_is_all_of_the_output(home: Path) -> None:
    ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--json", "--side", "white")
    value = json.loads(ran.out)
    jsonschema.Draft202012Validator(schema("proof")).validate(value)
    assert value["lesson"] == {
        "name": "vienna.pgn",
        "title": "The Vienna Gambit for White",
        "side": "white",
        "audience": 1500,
    }
    assert [f["outcome"] for f in value["findings"]] == ["holds", "fails"]
    strict = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--json", "--strict")
    assert strict.status == 1
    assert json.loads(strict.out)["answer"] == value["answer"]


def test_the_settings_of_the_command_go_before_those_of_the_lesson(home: Path) -> None:
    lineproof(home, "new", "vienna", "--from", "vienna.pgn", "--side", "white")
    ran = lineproof(
        home, "prove", "vienna", "--effort", "sketch", "--json", "--side", "black", "--audience", "1350",
    )  # fmt: skip
    lesson = json.loads(ran.out)["lesson"]
    assert (lesson["side"], lesson["audience"]) == ("black", 1350)
    assert lesson["name"] == "vienna/lines.pgn"


def test_show_read_and_show_all(home: Path) -> None:
    read = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--show", "read").out
    assert "Every sentence, as it was read" in read
    every = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--show", "all").out
    assert "● holds  vienna.pgn:4:28  3. f4" in every


def test_the_report_is_written_and_named(home: Path) -> None:
    ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--report", "proof.html")
    assert ran.status == 0
    assert ran.out.endswith("The report is in proof.html.\n")
    page = (home / "proof.html").read_text(encoding="utf-8")
    assert page.startswith("<!DOCTYPE html>")
    assert "2 claims in 2 sentences were checked" in re.sub(r"<[^>]+>", "", page)


@pytest.mark.parametrize(
    ("path", "reason"),
    [("nowhere/proof.html", "no such file or directory"), (".", "is a directory")],
)
def test_a_report_that_cannot_be_written_leaves_the_answer(
    home: Path, path: str, reason: str
) -> None:
    ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--report", path)
    assert ran.status == 2
    assert ran.err == (
        f"{path}: the report cannot be written ({reason}); choose another place with --report\n"
    )
    assert "2 claims in 2 sentences were checked: 1 holds, 1 fails." in ran.out
    assert "The report is in" not in ran.out


def test_a_read_only_folder_is_an_error_and_leaves_the_answer(home: Path) -> None:
    (home / "data").mkdir()
    home.chmod(0o555)
    try:
        ran = lineproof(
            home,
            "prove",
            "vienna.pgn",
            "--effort",
            "sketch",
            "--report",
            "proof.html",
            as_user=True,
        )
    finally:
        home.chmod(0o755)
    assert ran.status == 2
    assert ran.err == (
        "proof.html: the report cannot be written (permission denied);"
        " choose another place with --report\n"
    )
    assert ran.out.startswith("The Vienna Gambit for White\n2 claims in 2 sentences were checked")
    assert not (home / "proof.html").exists()


def test_a_report_that_may_not_be_written_over_stays(home: Path) -> None:
    (home / "proof.html").write_text("mine")
    (home / "proof.html").chmod(0o444)
    ran = lineproof(
        home, "prove", "vienna.pgn", "--effort", "sketch", "--report", "proof.html", as_user=True
    )
    assert (ran.status, (home / "proof.html").read_text()) == (2, "mine")
    assert "permission denied" in ran.err


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "1. e4 e5 2. Ke3 *",
            "bad.pgn:1:13: Ke3 is not legal here; that piece can play Ke2;"
            " correct it, or a move before it",
        ),
        ("1. e4 {never closed", "bad.pgn:1:7: this comment is never closed; write } where it ends"),
        ("", "bad.pgn: the file is empty; a lesson needs at least one game in PGN"),
    ],
)
def test_bad_input_is_one_line_with_place_and_way_out(home: Path, text: str, message: str) -> None:
    (home / "bad.pgn").write_text(text)
    ran = lineproof(home, "prove", "bad.pgn")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == message + "\n"


def test_a_missing_file_and_a_folder_that_is_no_lesson(home: Path) -> None:
    ran = lineproof(home, "prove", "nowhere.pgn")
    assert (ran.status, ran.err) == (2, "nowhere.pgn: there is no such file; check the name\n")
    (home / "empty").mkdir()
    ran = lineproof(home, "prove", "empty")
    assert ran.status == 2
    assert ran.err.startswith("empty: this folder is no lesson;")
    assert ran.err.count("\n") == 1


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((), "the following arguments are required"),
        (("vienna.pgn", "--effort", "huge"), "invalid choice: 'huge'"),
        (("vienna.pgn", "--side", "red"), "invalid choice: 'red'"),
        (("vienna.pgn", "--audience", "many"), "invalid int value: 'many'"),
        (("vienna.pgn", "--audience", "20"), "give a rating from 400 to 2900"),
        (("vienna.pgn", "--strickt"), "unrecognized arguments: --strickt"),
    ],
)
def test_bad_use_is_one_line(home: Path, arguments: tuple[str, ...], said: str) -> None:
    ran = lineproof(home, "prove", *arguments)
    assert (ran.status, ran.out) == (2, "")
    assert said in ran.err
    assert ran.err.count("\n") == 1
    assert "Traceback" not in ran.err


def test_no_colour_in_a_pipe_nor_under_no_color(home: Path) -> None:
    piped = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch")
    assert "\x1b" not in piped.out + piped.err
    asked = lineproof(
        home, "prove", "vienna.pgn", "--effort", "sketch", NO_COLOR="1", FORCE_COLOR="1"
    )
    assert not re.search(r"\x1b\[[\d;]*3\dm", asked.out)


def test_a_terminal_without_unicode_gets_words_and_no_traceback(home: Path) -> None:
    ran = lineproof(
        home, "prove", "vienna.pgn", "--effort", "sketch", PYTHONIOENCODING="ascii:strict"
    )
    assert (ran.status, ran.err) == (0, "")
    assert "? fails  vienna.pgn:4:47" in ran.out


def test_a_reader_that_goes_away_is_no_error(home: Path) -> None:
    process = subprocess.Popen(
        [COMMAND, "prove", "vienna.pgn", "--effort", "sketch", "--show", "read", "--strict"],
        cwd=home,
        env=environment(home),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    assert process.stdout is not None and process.stderr is not None
    process.stdout.close()
    told = process.stderr.read()
    process.stderr.close()
    assert process.wait(60) == 1  # the answer stays that of --strict
    assert told == b""


def test_the_second_run_says_what_changed(home: Path) -> None:
    lineproof(home, "prove", "vienna.pgn", "--effort", "sketch")
    again = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch")
    assert "Since the last run" not in again.out
    text = (home / "vienna.pgn").read_text()
    (home / "vienna.pgn").write_text(text.replace("Material is level.", "White is a pawn up."))
    ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch")
    assert "Since the last run 1 claim is new and 1 claim is gone." in ran.out
    assert "“White is a pawn up” (after 3. f4) is new and fails." in ran.out


@pytest.fixture
def folder(home: Path) -> Path:
    """The lesson as a folder, with files of the history and the cache."""
    assert lineproof(home, "new", "vienna", "--from", "vienna.pgn").status == 0
    (home / "vienna" / ".lineproof" / "history" / "old.pgn").write_text("an earlier text")
    (home / "vienna" / ".lineproof" / "cache" / "evidence.sqlite").write_text("evidence")
    (home / "linked.html").symlink_to("vienna/lines.pgn")
    (home / "twin.html").hardlink_to(home / "vienna" / "lines.pgn")
    (home / "inside").symlink_to("vienna/.lineproof/cache")
    return home


def contents(home: Path) -> dict[Path, bytes]:
    return {path: path.read_bytes() for path in home.rglob("*") if path.is_file()}


@pytest.mark.parametrize(
    "path",
    [
        "vienna/lines.pgn",
        "vienna/../vienna/lines.pgn",
        "vienna/lesson.toml",
        "vienna/.lineproof/history/old.pgn",
        "vienna/.lineproof/cache/evidence.sqlite",
        "vienna/.lineproof/new.html",
        "linked.html",
        "twin.html",
        "inside/new.html",
    ],
)
def test_a_report_is_never_written_over_the_lesson(folder: Path, path: str) -> None:
    before = contents(folder)
    ran = lineproof(folder, "prove", "vienna", "--report", path)
    assert (ran.status, ran.out) == (2, "")  # no answer: it is refused before the search
    assert ran.err == (
        f"{path}: this belongs to the lesson, and a report would destroy it;"
        " choose another place with --report\n"
    )
    assert contents(folder) == before


def test_a_report_is_never_written_over_a_bare_file_nor_its_cache(home: Path) -> None:
    lineproof(home, "prove", "vienna.pgn", "--effort", "sketch")
    (cache,) = (home / "data").rglob("cache")
    before = contents(home)
    for path in (home / "vienna.pgn", cache / "evidence.sqlite", cache / "new.html"):
        ran = lineproof(home, "prove", "vienna.pgn", "--effort", "sketch", "--report", path)
        assert (ran.status, ran.out) == (2, "")
        assert "this belongs to the lesson" in ran.err
    assert contents(home) == before


def test_a_report_beside_the_lines_is_welcome(folder: Path) -> None:
    ran = lineproof(folder, "prove", "vienna", "--effort", "sketch", "--report", "vienna/a.html")
    assert ran.status == 0
    assert (folder / "vienna" / "a.html").read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
