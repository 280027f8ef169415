"""The lines of the handout: how they are numbered, where they meet, how the map draws them."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from lineproof.lesson import Lesson
from lineproof.publish.handout.line_map import MOST, drawn, in_words, line_map
from lineproof.publish.handout.lines import Line, by_place, printed_lines
from lineproof.publish.handout.meetings import meetings

from .lessons import TRANSPOSING, random_lesson

SVG = "{http://www.w3.org/2000/svg}"


def lines_of(text: str) -> tuple[Line, ...]:
    return printed_lines(Lesson.from_text(text))


def test_sections_have_numbers_and_their_short_sidelines_letters() -> None:
    lines = lines_of(
        "1. e4 e5 (1... c5 (1... e6 2. d4) 2. Nf3) (1... c6 2. d4 d5 3. Nc3 dxe4 4. Nxe4 Nf6) 2. Nf3 (2. f4 exf4 (2... d5)) *"
    )
    told = [(line.label, line.first.label, line.inline) for line in lines]
    assert told == [
        ("1", "start", False),
        ("1a", "1... c5", True),
        ("1b", "1... e6", True),
        ("1c", "2. f4", True),
        ("1d", "2... d5", True),
        ("2", "1... c6", False),
    ]


def test_a_sideline_with_many_words_is_a_section() -> None:
    (_, short) = lines_of("1. e4 e5 (1... c5 {%s}) *" % ("word " * 50))
    (_, long) = lines_of("1. e4 e5 (1... c5 {%s}) *" % ("word " * 51))
    assert (short.label, long.label) == ("1a", "2")


def test_letters_go_on_after_z() -> None:
    others = (
        "a3",
        "a4",
        "b3",
        "b4",
        "c3",
        "c4",
        "d3",
        "d4",
        "e3",
        "f3",
        "f4",
        "g3",
        "g4",
        "h3",
        "h4",
        "Na3",
        "Nc3",
        "Nf3",
        "Nh3",
    )
    first = "1. e4 " + " ".join(f"(1. {move})" for move in others)
    replies = ("a6", "a5", "b6", "b5", "c6", "c5", "d6", "d5")
    text = f"{first} e5 " + " ".join(f"(1... {move})" for move in replies) + " *"
    assert [line.label for line in lines_of(text)][-3:] == ["1y", "1z", "1aa"]


@pytest.mark.parametrize("seed", range(8))
def test_every_place_is_on_one_line_and_every_line_of_the_lesson_has_its_own(seed: int) -> None:
    lesson = Lesson.from_text(random_lesson(seed))
    lines = printed_lines(lesson)
    places = [place.index for line in lines for place in line.places]
    assert sorted(places) == list(range(len(lesson.places)))
    assert {line.last.index for line in lines} == {end.index for end in lesson.lines()}
    assert len({line.label for line in lines}) == len(lines)
    assert by_place(lines).keys() == set(places)


def test_lines_meet_where_another_move_leads_to_a_known_position() -> None:
    lesson = Lesson.from_text(TRANSPOSING)
    found = meetings(printed_lines(lesson))
    assert [(m.place.label, m.same.label) for m in found] == [("3. Nc3", "3. Nf3")]


def test_the_map_has_every_number_and_says_in_words_how_lines_part_and_meet() -> None:
    lines = lines_of(TRANSPOSING)
    met = meetings(lines)
    shown = drawn(lines)
    root = ElementTree.fromstring(line_map(shown, met))
    numbers = [text.text for text in root.iter(f"{SVG}text")]
    assert numbers[0] == "move 1"
    assert [number for number in numbers if number in {line.label for line in lines}] == [
        line.label for line in lines
    ]
    words = in_words(shown, met)
    assert "Line 1a parts from line 1 with 2. Nf3." in words
    assert "Line 1a comes to line 1 with 3. Nc3." in words
    dotted = [p for p in root.iter(f"{SVG}path") if "stroke-dasharray" in p.attrib]
    assert len(dotted) == len(met) == 1


def test_a_map_that_would_be_too_fine_has_sections_only_or_is_left_out() -> None:
    short = " ".join("(1. d4 d5)" for _ in range(MOST))
    lines = lines_of(f"1. e4 {short} e5 *")
    assert [line.label for line in drawn(lines)] == ["1"]
    long = " ".join("(1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5)" for _ in range(MOST))
    assert drawn(lines_of(f"1. e4 {long} e5 *")) == ()


def test_the_map_stays_within_its_picture() -> None:
    lines = lines_of(random_lesson(3))
    svg = line_map(drawn(lines), meetings(lines))
    root = ElementTree.fromstring(svg)
    width, height = float(root.attrib["width"]), float(root.attrib["height"])
    for text in root.iter(f"{SVG}text"):
        assert 0 <= float(text.attrib["x"]) <= width - 10
        assert 0 < float(text.attrib["y"]) <= height
    for path in root.iter(f"{SVG}path"):
        for x, y in re.findall(r"[ML]([\d.]+) ([\d.]+)", path.attrib["d"]):
            assert 0 <= float(x) <= width and 0 <= float(y) <= height
