"""`lineproof order`, as it is typed."""

from __future__ import annotations

from pathlib import Path

import pytest

from .command import lineproof
from .test_commands import valid

LESSON = """1. e4 e5 {Old.} 2. Nf3 d6 {Quiet.} (2... Nc6 {The usual move.} 3. Bc4 {Italian.}) 3. Bc4 Bg4 {A pin that is none.} 4. Nc3 g6 $2
5. Nxe5 $1 {He may take the queen.} Bxd1 6. Bxf7+ Ke7 7. Nd5# {Mate. That is all.} *
"""
"""Légal's mate; Hooper and Whyld, The Oxford Companion to Chess (from memory)."""


@pytest.fixture
def lesson(home: Path) -> Path:
    (home / "legal.pgn").write_text(LESSON, encoding="utf-8")
    return home


def test_it_says_the_order_and_how_it_compares(lesson: Path) -> None:
    ran = lineproof(lesson, "order", "legal.pgn")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith("legal.pgn: ")
    assert "Ways back: 1, in the file's own order 2." in ran.out
    assert "No order is better." in ran.out
    assert (
        "      1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5#\n"
        in ran.out
    )
    assert (
        "Back to the position with the white knight on f3 and the black pawn still on d7" in ran.out
    )


def test_its_json_has_the_published_shape(lesson: Path) -> None:
    found = valid(lineproof(lesson, "order", "legal.pgn", "--json"), "order")
    assert found["measure"] == {"ways_back": 1, "moves_again": 0, "mistake_to_punishment": 0}
    moves = [cue["move"] for cue in found["cues"] if cue["cue"] == "play"]
    assert len(moves) == 15 and moves[-2:] == ["Nc6", "Bc4"]
    assert found["cues"][-1]["words"] == "That is all."


def test_the_script_is_written(lesson: Path) -> None:
    ran = lineproof(lesson, "order", "legal.pgn", "--script", "script.md")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.endswith("\nThe script is in script.md.\n")
    text = (lesson / "script.md").read_text(encoding="utf-8")
    assert text.startswith("# legal\n")
    assert (
        "bishop takes f seven, check; king to e seven; knight to d five, mate. *(5... Bxd1 6. Bxf7+ Ke7 7. Nd5#)*"
        in text
    )


def test_the_script_never_takes_the_lesson_s_place(lesson: Path) -> None:
    ran = lineproof(lesson, "order", "legal.pgn", "--script", "legal.pgn")
    assert (ran.status, ran.out) == (2, "")
    assert "this belongs to the lesson" in ran.err
    assert (lesson / "legal.pgn").read_text(encoding="utf-8") == LESSON


def test_a_script_that_cannot_be_written_is_told(lesson: Path) -> None:
    ran = lineproof(lesson, "order", "legal.pgn", "--script", "nowhere/script.md")
    assert ran.status == 2 and "the script cannot be written" in ran.err


@pytest.mark.parametrize("minutes", ["0", "-3", "1001", "nan", "inf"])
def test_minutes_that_nobody_has_are_refused(lesson: Path, minutes: str) -> None:
    ran = lineproof(lesson, "order", "legal.pgn", "--side", "white", f"--minutes={minutes}")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == f"--minutes is {minutes}; give a number from 1 to 1000\n"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('[Event "Nothing"]\n\n*\n', "the lesson has no moves"),
        ("{Only words.} *\n", "the lesson has no moves"),
        ("1. e4 e5 *\n", "the lesson has no comments"),
        ("1. e4 {} e5 {[%clk 0:01:00]} *\n", "the lesson has no comments"),
    ],
)
def test_a_lesson_without_moves_or_words_is_refused(home: Path, text: str, said: str) -> None:
    (home / "bare.pgn").write_text(text, encoding="utf-8")
    ran = lineproof(home, "order", "bare.pgn")
    assert (ran.status, ran.out) == (2, "")
    assert said in ran.err and len(ran.err.splitlines()) == 1 and ran.err.startswith("bare.pgn: ")


@pytest.mark.parametrize("speed", ["0", "59", "301", "10000", '"fast"'])
def test_a_speed_at_which_nobody_speaks_is_refused(home: Path, speed: str) -> None:
    folder = home / "talk"
    folder.mkdir()
    (folder / "lines.pgn").write_text(LESSON, encoding="utf-8")
    (folder / "lesson.toml").write_text(
        f'format = 1\ntitle = "Talk"\nwords_a_minute = {speed}\n', encoding="utf-8"
    )
    ran = lineproof(home, "order", "talk")
    assert (ran.status, ran.out) == (2, "")
    assert "words_a_minute" in ran.err and "60" in ran.err and "300" in ran.err


def test_what_is_left_out_is_listed(lesson: Path) -> None:
    text = LESSON.replace(
        "The usual move.", "The usual move. " + "We talk and talk about it. " * 30
    )
    (lesson / "long.pgn").write_text(text, encoding="utf-8")
    ran = lineproof(lesson, "order", "long.pgn", "--side", "white", "--minutes", "1")
    assert (ran.status, ran.err) == (0, "")
    assert "Left out, to fit into 1 minute " in ran.out
    assert "2. Nf3 2... Nc6 (line 1): 2 moves" in ran.out and " of 100 games" in ran.out
    found = valid(
        lineproof(lesson, "order", "long.pgn", "--side", "white", "--minutes", "1", "--json"),
        "order",
    )
    assert found["seconds"] <= 60 < found["whole_seconds"]


def test_to_leave_something_out_the_taught_side_must_be_known(lesson: Path) -> None:
    text = LESSON.replace("Quiet.", "Quiet. " + "We talk and talk about it. " * 30)
    (lesson / "long.pgn").write_text(text, encoding="utf-8")
    ran = lineproof(lesson, "order", "long.pgn", "--minutes", "1")
    assert (ran.status, ran.out) == (2, "")
    assert "does not say which side is taught" in ran.err
    ran = lineproof(lesson, "order", "long.pgn", "--minutes", "1", "--side", "white")
    assert ran.status == 0 and "1 minute cannot be kept" in ran.out


def test_a_collection_that_is_not_there_is_told(lesson: Path) -> None:
    ran = lineproof(lesson, "order", "legal.pgn", "--side", "white", "--collection", "club")
    assert (ran.status, ran.out) == (2, "")
    assert "club" in ran.err and len(ran.err.splitlines()) == 1


def test_a_study_asks_the_audience(lesson: Path) -> None:
    ran = lineproof(lesson, "order", "legal.pgn", "--side", "white", "--study", "--json")
    found = valid(ran, "order")
    (one,) = [cue for cue in found["cues"] if cue["cue"] == "pause"]
    assert found["studied"] and one["words"] == "White to move: what would you play?"
    assert one["silence"] >= 10
    at = found["cues"].index(one)
    played = [cue["move"] for cue in found["cues"][:at] if cue["cue"] == "play"]
    answer = next(cue["move"] for cue in found["cues"][at:] if cue["cue"] == "play")
    assert answer in ("Nxe5", "Bxf7+") and answer not in played
