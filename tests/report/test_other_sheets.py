"""The sheets of students' games and of candidate openings."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof.collection.asked import asked
from lineproof.facade import Lesson
from lineproof.follow.weighing import Candidate, Weight
from lineproof.report.followed_html import followed_html
from lineproof.report.weighed_html import weighed_html

from .lessons import STUDIED
from .parsed import assert_in_order, assert_one_file, parsed

GAMES = """[White "Ann Quay"]
[Black "Ben <b>Jetty</b>"]
[Result "0-1"]

1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. d3 Bg7 0-1

[White "Ann Quay"]
[Black "Cat Mole"]
[Result "1-0"]

1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nf6 5. d3 Be7 1-0
"""
"""Invented."""


def test_departures_have_their_diagram_and_their_place(tmp_path: Path) -> None:
    file = tmp_path / "games.pgn"
    file.write_text(GAMES, encoding="utf-8")
    lesson = Lesson.from_text(STUDIED, name="legal/lines.pgn", side="white", audience=1400)
    sheet = followed_html(lesson.follow(file, player="Ann"), lesson)
    assert_one_file(sheet)
    assert_in_order(sheet)
    page = parsed(sheet)
    assert page.one("p", "answer").text == "All 2 games came to the lesson."
    assert "The students scored 1 of 2, 50 in 100" in page.one("div", "rest").text
    articles = {a.one("p", "words").text: a for a in page.all("article")}
    assert set(articles) == {"5. d3", "4... Nf6"}
    mine = dict(zip([n.text for n in articles["5. d3"].all("dt")], [n.text for n in articles["5. d3"].all("dd")], strict=True))  # fmt: skip
    assert (mine["Played"], mine["Lesson"]) == ("in 1 game by the student", "it plays Nxe5")
    assert articles["5. d3"].one("figcaption").text == "After 4... g6. White to move."
    his = [n.text for n in articles["4... Nf6"].all("dt")]
    assert "Teach" in his and "Lesson" not in his
    (script,) = [s for s in page.all("section") if s.attributes["id"] == "script"]
    assert "1 game left with 5. d3" in script.text
    (each,) = [s for s in page.all("section") if s.attributes["id"] == "each"]
    assert "Ann Quay against Ben <b>Jetty</b>" in each.text


def candidate(moves: str, positions: int) -> Weight:
    of = Candidate.of_moves(moves, asked(moves))
    return Weight(of, None, 12.0, positions, True, 81.0, 0, 2, 55, 40, None)


@pytest.mark.parametrize("games", [False, True])
def test_candidates_stand_one_below_the_other(games: bool) -> None:
    found = [candidate("1. e4 e5 2. Nc3", 30), candidate("1. d4 Nf6 2. c4 e5", 20)]
    uncounted = "" if games else "no games were counted"
    sheet = weighed_html(found, 1500, uncounted=uncounted)
    assert_one_file(sheet)
    assert_in_order(sheet)
    page = parsed(sheet)
    assert "1. d4 Nf6 2. c4 e5 asks for the fewest positions: 20." in page.one("p", "answer").text
    white, black = page.all("article")
    assert "30 positions to learn" in white.text and "2 unnatural only moves" in white.text
    assert ("no game of this audience" in white.text) == games
    assert ("whose weights are guesses" in page.one("header").text) == (not games)

    def height(number: int, square: str) -> float:
        use = next(n for n in (white, black)[number].all("use", "piece") if n.attributes["data-square"] == square)  # fmt: skip
        return float(use.attributes["y"])

    # each board as its side sees it
    assert height(0, "a8") < height(0, "a1") and height(1, "a8") > height(1, "a1")
