"""The published page as a file: all words as text, nothing fetched, small, the same bytes."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from datetime import date
from html.parser import HTMLParser
from pathlib import Path

from lineproof.facade import Lesson
from lineproof.publish import Choices, Found
from lineproof.publish.editions import due
from lineproof.publish.products.page import make

from .lessons import TRANSPOSING, nothing_found, unstudied

OURS = {
    "html", "head", "meta", "title", "style", "body", "header", "h1", "h2", "h3", "p", "div", "aside", "lesson-board", "main", "button", "ol", "li",
    "span", "details", "summary", "footer", "ul", "script",
}  # fmt: skip


class Read(HTMLParser):
    """What a browser makes of a page: its elements, their addresses, its words."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.elements: set[str] = set()
        self.addresses: list[str] = []
        self.words = ""
        self.data = ""
        self._inside = ""
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.add(tag)
        self._inside = "data" if ("id", "lesson") in attrs else tag
        self.addresses += [value or "" for name, value in attrs if name in {"src", "href", "srcset", "action"}]  # fmt: skip

    def handle_endtag(self, tag: str) -> None:
        self._inside = ""

    def handle_data(self, data: str) -> None:
        if self._inside == "data":
            self.data += data
        elif self._inside not in {"style", "script"}:
            self.words += data


def read(lesson: Lesson, found: Found, choices: Choices | None = None) -> Read:
    ((_, data),) = make(lesson, found, choices or Choices()).items()
    return Read(data.decode())


def test_what_the_author_wrote_stays_words(trap: Lesson, found: Found) -> None:
    page = read(trap, found)
    assert page.elements <= OURS and not page.addresses
    assert "<script>alert(1)</script> &amp; <b>bold</b>" in page.words
    for comment in trap.comments:
        if "[%" not in comment.text:
            assert " ".join(comment.text.split())[:40] in " ".join(page.words.split())


def test_every_move_is_there_with_its_position(trap: Lesson, found: Found) -> None:
    page = read(trap, found)
    places = json.loads(page.data)["places"]
    assert [place["fen"] for place in places] == [place.board.fen for place in trap.places]
    assert [place.get("san") for place in places] == [place.san for place in trap.places]


def test_the_wrong_answers_of_an_exercise_are_told(trap: Lesson, found: Found) -> None:
    exercises = json.loads(read(trap, found).data)["exercises"]
    asked = {one["place"]: one for one in exercises}
    pauses = [p for p in found.studied.pauses if p.place.board.turn == "white"]
    assert sorted(asked) == sorted(p.place.index for p in pauses) and pauses
    for pause in pauses:
        one = asked[pause.place.index]
        assert set(one["wrong"]) == {reply.uci for reply, _ in pause.wrong}
        assert one["safe"][0] == pause.place.board.parse_san(pause.best)
        assert {m["uci"] for m in one["moves"]} == set(pause.place.board.legal_moves())


def test_letters_are_those_of_the_language(trap: Lesson, found: Found) -> None:
    page = read(trap, found, Choices(language="de"))
    assert "6. Lxf7+" in page.words and "Bxf7" not in page.words


def test_games_and_their_branches_are_all_there() -> None:
    lesson = Lesson.from_text(TRANSPOSING, name="roads.pgn", side="white")
    page = read(lesson, replace(nothing_found(lesson), study=unstudied(lesson)))
    assert {"Two roads"} <= set(re.findall("Two roads", page.words))
    assert page.words.count("2. Nf3") == 1 and "Find the move" not in page.words


def test_the_same_lesson_gives_the_same_bytes(trap: Lesson, found: Found) -> None:
    assert make(trap, found, Choices()) == make(trap, found, Choices())


def test_an_edition_is_named(trap: Lesson, found: Found, tmp_path: Path) -> None:
    assert "Edition" not in read(trap, found).words
    path = tmp_path / "trap.pgn"
    path.write_text(trap.text, encoding="utf-8")
    edition, _ = due(Lesson.open(path), (), date(2026, 11, 3))
    page = read(trap, replace(found, edition=edition))
    assert "For White, players of about 1400. Edition 1, 3 November 2026." in page.words
