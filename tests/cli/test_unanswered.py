"""`lineproof unanswered` and `lineproof ask`, as they are typed."""

from __future__ import annotations

import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from .command import lineproof
from .test_commands import valid

LESSON = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 {A pin that is none.} 4. Nc3 g6 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5# *\n"
"""Légal's mate; Hooper and Whyld, The Oxford Companion to Chess (from memory)."""


@pytest.fixture
def lesson(home: Path) -> Path:
    (home / "legal.pgn").write_text(LESSON, encoding="utf-8")
    return home


def test_it_says_what_is_open_and_where_to_pause(lesson: Path) -> None:
    ran = lineproof(lesson, "unanswered", "legal.pgn", "--side", "white")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith("legal.pgn: White is taught, to players of about 1500.\n")
    assert "whose weights are guesses: no games were counted" in ran.out
    assert "From 3... Bg4 (line 1) on" in ran.out
    assert "after 5. Nxe5 (line 1): 5... Bxd1," in ran.out
    assert "refuted by 6. Bxf7+ Ke7 7. Nd5#; the lesson shows it" in ran.out


@pytest.mark.parametrize(
    ("last", "says"),
    [
        ("", "4. Ng5 (line 1): White threatens 5. Nxf7"),
        (" a6", "4... a6 (line 1): White can still play 5. Nxf7"),
    ],
)
def test_it_says_whose_blow_a_line_stops_before(home: Path, last: str, says: str) -> None:
    """The fork on f7 is from the opening's handbooks, from memory."""
    text = f"1. e4 e5 2. Nf3 d6 3. Bc4 Nf6 4. Ng5{last} *\n"
    (home / "short.pgn").write_text(text, encoding="utf-8")
    ran = lineproof(home, "unanswered", "short.pgn", "--side", "white", "--effort", "sketch")
    _, stops = ran.out.split("Lines that stop early:\n")
    (told,) = stops.split("\n\n")[0].splitlines()
    assert told.strip().startswith(says)
    assert told.endswith("the rook on h8 and the pawn on f7 fall")


def test_its_json_has_the_published_shape(lesson: Path) -> None:
    ran = lineproof(lesson, "unanswered", "legal.pgn", "--side", "white", "--json")
    found = valid(ran, "study")
    (pause,) = [one for one in found["pause_points"] if one["place"]["label"] == "5... Bxd1"]
    assert (pause["find"], pause["safe_moves"]) == ("Bxf7+", ["Bxf7+"])
    (slip,) = [one for one in found["slips"] if one["reply"]["move"] == "Bxd1"]
    assert (
        slip["shown"]
        and slip["within_reach"]
        and slip["cost"]["line"][1:4] == ["Bxf7+", "Ke7", "Nd5#"]
    )


def test_its_report_is_one_file_and_never_one_of_the_lesson(lesson: Path) -> None:
    asked = ("unanswered", "legal.pgn", "--side", "white", "--report")
    ran = lineproof(lesson, *asked, "study.html")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.endswith("\nThe report is in study.html.\n")
    text = (lesson / "study.html").read_text(encoding="utf-8")
    assert "Study sheet of a lesson" in text and 'id="pauses-1"' in text
    refused = lineproof(lesson, *asked, "legal.pgn")
    assert (refused.status, refused.out) == (2, "")
    assert "this belongs to the lesson" in refused.err
    assert (lesson / "legal.pgn").read_text(encoding="utf-8") == LESSON
    nowhere = lineproof(lesson, *asked, "nowhere/study.html")
    assert nowhere.status == 2 and "the report cannot be written" in nowhere.err


def test_the_taught_side_must_be_known(lesson: Path) -> None:
    ran = lineproof(lesson, "unanswered", "legal.pgn")
    assert (ran.status, ran.out) == (2, "")
    assert (
        ran.err == "legal.pgn: the lesson does not say which side is taught; say it with --side\n"
    )


def test_a_collection_that_is_not_there_is_told(lesson: Path) -> None:
    ran = lineproof(lesson, "unanswered", "legal.pgn", "--side", "white", "--collection", "club")
    assert (ran.status, ran.out) == (2, "")
    assert "club" in ran.err and len(ran.err.splitlines()) == 1


@pytest.mark.parametrize("rating", ["399", "2901"])
def test_a_rating_that_nobody_has_is_refused(lesson: Path, rating: str) -> None:
    ran = lineproof(lesson, "ask", "legal.pgn", "1. e4", "--audience", rating)
    assert (ran.status, ran.err) == (2, f"--audience is {rating}; give a rating from 400 to 2900\n")


def test_ask_knows_a_position_on_another_road(lesson: Path) -> None:
    ran = lineproof(lesson, "ask", "legal.pgn", "1. Nf3 d6 2. e4 e5 3. Bc4", "--side", "white")
    assert (ran.status, ran.err) == (0, "")
    first, second, *_ = ran.out.splitlines()
    assert first == "legal.pgn has this position: 3. Bc4 (line 1)."
    assert second == "It goes on with Bg4."


def test_ask_says_where_the_question_leaves_the_lesson_and_what_to_answer(lesson: Path) -> None:
    ran = lineproof(
        lesson, "ask", "legal.pgn", "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nd4", "--side", "white"
    )
    assert ran.status == 2  # the knight on b8 cannot go there
    assert "Nd4" in ran.err
    ran = lineproof(
        lesson,
        "ask",
        "legal.pgn",
        "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Bxf3",
        "--side",
        "white",
        "--json",
    )
    found = valid(ran, "answer")
    assert found["places"] == [] and found["left"]["place"]["label"] == "4. Nc3"
    assert found["left"]["reply"]["move"] == "Bxf3" and not found["left"]["by_taught_side"]
    assert found["best"] == "Qxf3"
    assert found["sentence"].startswith("Play 5. Qxf3")


def test_ask_says_that_the_game_is_over(lesson: Path) -> None:
    ran = lineproof(lesson, "ask", "legal.pgn", "1. f3 e5 2. g4 Qh4#")
    assert ran.status == 0
    assert ran.out.splitlines()[-1] == "It is mate: Black has won."
    stalemate = lineproof(lesson, "ask", "legal.pgn", "7k/5Q2/6K1/8/8/8/8/8 b - - 0 1", "--json")
    assert json.loads(stalemate.out)["over"] == "It is stalemate: the game is drawn."


PLAYED = "".join(
    f'[Round "{n}"]\n[WhiteElo "1200"]\n[BlackElo "1200"]\n[Result "*"]\n\n1. {("e4", "e4", "d4")[n % 3]} {("e5", "c5")[n % 2]} *\n\n'
    for n in range(120)
)


def test_fit_says_how_well_the_model_foretells_a_file(home: Path) -> None:
    (home / "club.pgn").write_text(PLAYED, encoding="utf-8")
    ran = lineproof(home, "collect", "fit", "--check", "club.pgn", "--json")
    found = valid(ran, "collect-fit-check")
    # the initial position and those after 1. e4 and 1. d4, each with 20 games or more
    assert found["quality"]["positions"] == 3
    assert found["quality"]["games"] == 240
    assert found["quality"]["log_loss"] > 0 and "guessed" in found["weights"]
    assert not (home / "data" / "collections").exists()


def test_fit_refuses_a_collection_of_few_games(home: Path) -> None:
    (home / "club.pgn").write_text(PLAYED, encoding="utf-8")
    assert lineproof(home, "collect", "add", "club.pgn").status == 0
    ran = lineproof(home, "collect", "fit")
    assert (ran.status, ran.out) == (2, "")
    assert "fitting needs more games" in ran.err


def test_damaged_weights_are_told_with_the_way_out(home: Path) -> None:
    (home / "club.pgn").write_text(PLAYED, encoding="utf-8")
    assert lineproof(home, "collect", "add", "club.pgn").status == 0
    file = home / "data" / "collections" / "games" / "natural.json"
    file.write_text("{", encoding="utf-8")
    ran = lineproof(home, "ask", "club.pgn", "1. c4", "--collection", "games")
    assert (ran.status, ran.out) == (2, "")
    assert str(file) in ran.err and "delete it" in ran.err


STUDENTS = """[White "Ann Quay"]
[Black "Ben Jetty"]
[Result "0-1"]

1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. d3 Bg7 0-1
"""


def test_follow_says_where_a_game_left_the_lesson(lesson: Path) -> None:
    (lesson / "games.pgn").write_text(STUDENTS, encoding="utf-8")
    ran = lineproof(
        lesson, "follow", "legal.pgn", "games.pgn", "--player", "Ann", "--side", "white"
    )
    assert (ran.status, ran.err) == (0, "")
    assert (
        "line 1, Ann Quay against Ben Jetty: after 4... g6 (line 1) Ann Quay played 5. d3; the lesson plays Nxe5"
        in ran.out
    )
    found = valid(
        lineproof(lesson, "follow", "legal.pgn", "games.pgn", "--side", "white", "--json"), "follow"
    )
    assert found["departures"][0]["taught"] == ["Nxe5"]


def test_follow_and_weigh_write_their_reports(lesson: Path) -> None:
    (lesson / "games.pgn").write_text(STUDENTS, encoding="utf-8")
    asked = ("follow", "legal.pgn", "games.pgn", "--side", "white", "--report")
    ran = lineproof(lesson, *asked, "sheet.html")
    assert (ran.status, ran.err) == (0, "") and ran.out.endswith("The report is in sheet.html.\n")
    assert 'id="departures-1"' in (lesson / "sheet.html").read_text(encoding="utf-8")
    refused = lineproof(lesson, *asked, "games.pgn")
    assert refused.status == 2 and "a report would destroy it" in refused.err
    assert (lesson / "games.pgn").read_text(encoding="utf-8") == STUDENTS
    ran = lineproof(lesson, "weigh", "1. f3 e5 2. g4 Qh4#", "--report", "weigh.html")
    assert (ran.status, ran.err) == (0, "") and ran.out.endswith("The report is in weigh.html.\n")
    assert 'id="candidates-1"' in (lesson / "weigh.html").read_text(encoding="utf-8")


def test_follow_refuses_a_name_that_nobody_has(lesson: Path) -> None:
    (lesson / "games.pgn").write_text(STUDENTS, encoding="utf-8")
    ran = lineproof(
        lesson, "follow", "legal.pgn", "games.pgn", "--player", "Zoe", "--side", "white"
    )
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == "nobody in these games is called 'Zoe'; there are: Ann Quay, Ben Jetty\n"


def test_weigh_sets_candidates_side_by_side(lesson: Path) -> None:
    ran = lineproof(
        lesson, "weigh", "1. f3 e5 2. g4 Qh4#", "k7/8/1K6/8/8/8/8/7R w - - 0 1", "--json"
    )
    first, second = valid(ran, "weigh")["candidates"]
    assert (first["side"], first["positions"], second["side"], second["positions"]) == (
        "black",
        0,
        "white",
        1,
    )
    told = lineproof(lesson, "weigh", "1. f3 e5 2. g4 Qh4#")
    assert told.status == 0 and "for Black" in told.out and "whose weights are guesses" in told.out


def test_weigh_searches_nothing_twice(lesson: Path) -> None:
    first = lineproof(lesson, "weigh", "1. f3 e5 2. g4")
    assert first.status == 0 and "where it begins Black is winning (100 of 100)" in first.out
    assert lineproof(lesson, "weigh", "1. f3 e5 2. g4").out == first.out
    # an answer that is changed where it is kept is the answer of the next run
    file = lesson / "data" / "weighed" / "cache" / "evidence.sqlite"
    with closing(sqlite3.connect(file)) as store, store:
        changed = store.execute(
            """UPDATE answers SET value = replace(value, '"Qh4#"], 0,', '"Qh4#"], 77,')"""
            """ WHERE key LIKE '%"best"%'"""
        )
        assert changed.rowcount > 0
    second = lineproof(lesson, "weigh", "1. f3 e5 2. g4")
    assert "where it begins White is clearly better (77 of 100)" in second.out


def test_weigh_refuses_what_is_no_opening(lesson: Path) -> None:
    ran = lineproof(lesson, "weigh", "1. e9")
    assert (ran.status, ran.out) == (2, "")
    assert "e9" in ran.err
