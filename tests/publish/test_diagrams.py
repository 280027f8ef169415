"""The pictures of a lesson's moments."""

from __future__ import annotations

import re
import struct
import xml.etree.ElementTree as ElementTree
from dataclasses import replace

import pytest

from lineproof.diagram import JustPlayed, Pin, alternative
from lineproof.facade import Lesson
from lineproof.lesson.diagrams import with_diagram
from lineproof.publish import Choices, Found
from lineproof.publish.moments import Moment, moments
from lineproof.publish.products.diagrams import make
from lineproof.report.figure import marks_of

from .lessons import nothing_found, unstudied

SVG = "{http://www.w3.org/2000/svg}"


def size_of(png: bytes) -> tuple[int, int]:
    """Width and height; Portable Network Graphics, 11.2.2 (from memory)."""
    assert png[:8] == b"\x89PNG\r\n\x1a\n" and png[12:16] == b"IHDR"
    width, height = struct.unpack(">II", png[16:24])
    return width, height


def test_every_moment_is_drawn_from_both_sides_and_described(trap: Lesson, found: Found) -> None:
    files = make(trap, found, Choices(24))
    stems = [moment.name for moment in moments(trap, found)]
    assert sorted(files) == sorted(
        f"{stem}{end}"
        for stem in stems
        for end in (".txt", *(f"-from-{s}.{k}" for s in ("white", "black") for k in ("svg", "png")))
    )


@pytest.mark.parametrize("width", [1, 24, 2000])
def test_pictures_have_the_width_asked_for(width: int) -> None:
    lesson = Lesson.from_text("1. e4 e5 (1... c5) *", side="white")
    found = replace(nothing_found(lesson), study=unstudied(lesson))
    files = make(lesson, found, Choices(width))
    assert len(files) == 5
    for name, data in files.items():
        if name.endswith(".png"):
            assert size_of(data) == (width, width)
        elif name.endswith(".svg"):
            assert f'width="{width}" height="{width}"' in data.decode()


def test_a_width_that_no_picture_has_is_refused() -> None:
    lesson = Lesson.from_text("1. e4 e5 (1... c5) *", side="white")
    found = replace(nothing_found(lesson), study=unstudied(lesson))
    with pytest.raises(ValueError, match="0 px"):
        make(lesson, found, Choices(0))


def test_the_text_alternative_is_in_the_svg_and_beside_it(trap: Lesson, found: Found) -> None:
    files = make(trap, found, Choices(100))
    for moment in moments(trap, found):
        text = files[f"{moment.name}.txt"].decode()
        assert text == f"{moment.title}\n{alternative(moment.place.board.fen, moment.marks)}\n"
        for side in ("white", "black"):
            root = ElementTree.fromstring(files[f"{moment.name}-from-{side}.svg"])
            title, desc = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
            assert title is not None and desc is not None
            assert f"{title.text}\n{desc.text}\n" == text


def test_white_and_black_see_the_board_from_their_own_side(trap: Lesson, found: Found) -> None:
    files = make(trap, found, Choices(100))
    first = moments(trap, found)[0].name
    places = {}
    for side in ("white", "black"):
        svg = files[f"{first}-from-{side}.svg"].decode()
        (king,) = re.findall(r'data-square="e1" href="[^"]*" x="(\d+)" y="(\d+)"', svg)
        places[side] = tuple(map(int, king))
    (wx, wy), (bx, by) = places["white"], places["black"]
    assert wy > by and wx != bx


def test_names_sort_as_the_lesson_goes_and_say_line_and_move(trap: Lesson, found: Found) -> None:
    shown = moments(trap, found)
    names = [moment.name for moment in shown]
    assert names == sorted(names)
    assert [m.place.index for m in shown] == sorted(m.place.index for m in shown)
    for moment in shown:
        number, _, line, _, side, san, *kinds = moment.name.split("-")
        end = trap.lines()[int(line) - 1]
        assert moment.place in end.path()
        assert (side == "white") == (moment.place.board.turn == "black")
        assert san == re.sub(r"[+#]", "", moment.place.san or "")
        assert tuple(kinds) == moment.kinds and number.isdigit()
    assert all(re.fullmatch(r"[A-Za-z0-9-]+", name) for name in names)


def test_a_pause_point_does_not_give_the_answer_away(trap: Lesson, found: Found) -> None:
    """It has the move just played and no mark of a claim, also where claims hold at its position."""
    place = next(place for place in trap.places if place.label == "3... Bg4")
    (pin,) = [f for f in found.proof.findings if f.claim.place == place]
    assert pin.outcome.value == "holds" and marks_of(pin)
    pause = replace(found.studied.pauses[0], place=place)
    study = replace(found.studied, pauses=(pause, *found.studied.pauses))
    asked = [m for m in moments(trap, Found(found.proof, study)) if m.pause is not None]
    assert place in [moment.place for moment in asked]
    for moment in asked:
        assert [type(mark) for mark in moment.marks] == [JustPlayed]
        assert moment.kinds == ("pause",)


def of(text: str) -> tuple[Found, tuple[Moment, ...]]:
    """What is proved of a lesson, studied without a pause point, and its moments."""
    lesson = Lesson.from_text(text, side="white")
    found = Found(lesson.prove("sketch"), unstudied(lesson))
    return found, moments(lesson, found)


QUEEN = "1. e4 d5 2. exd5 Qxd5 3. Nc3 Qa2 4. Rxa2 {White is winning.} a6 (4... h6) 5. d4 {White is winning.} *"
"""Black leaves the queen, for nothing."""


def test_branches_and_changes_of_the_verdict_are_moments() -> None:
    found, shown = of(QUEEN.replace("Qa2", "Qxa2"))
    assert [finding.outcome.value for finding in found.proof.findings] == ["holds", "holds"]
    assert [(moment.place.label, moment.kinds) for moment in shown] == [
        ("4. Rxa2", ("branch", "verdict"))
    ]


def test_a_verdict_that_search_does_not_bear_out_is_no_moment() -> None:
    found, shown = of("1. e4 e5 {White is winning.} 2. Nf3 Nc6 *")
    assert [finding.outcome.value for finding in found.proof.findings] == ["fails"]
    assert shown == ()


def test_a_position_is_shown_once_whatever_the_road() -> None:
    _, shown = of("1. e4 e5 (1... Nf6 2. Nc3 e5 3. Nf3 (3. f4)) 2. Nc3 Nf6 3. Nf3 (3. f4) *")
    labels = [moment.place.label for moment in shown]
    assert labels == ["1. e4", "2... e5"]


def test_proved_claims_mark_the_diagram_of_their_position() -> None:
    found, (moment,) = of(
        "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 {The bishop pins the knight on f3 to the queen.} 4. Nc3 (4. h3) g6 *"
    )
    assert [finding.outcome.value for finding in found.proof.findings] == ["holds"]
    assert moment.place.label == "3... Bg4"
    assert moment.marks[0] == JustPlayed("c8", "g4")
    assert moment.marks[1:] == marks_of(found.proof.findings[0])
    assert Pin("g4", "d1", "black") in moment.marks
    assert "Pinned for Black: the knight on f3" in moment.text


def test_a_claim_that_fails_draws_nothing() -> None:
    found, (moment,) = of(
        "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 {The knight on f3 is pinned to the king.} 4. Nc3 (4. h3) *"
    )
    assert [finding.outcome.value for finding in found.proof.findings] == ["fails"]
    assert moment.marks == (JustPlayed("c8", "g4"),)


def test_the_same_lesson_gives_the_same_bytes(trap: Lesson, found: Found) -> None:
    assert make(trap, found, Choices(200)) == make(trap, found, Choices(200))


def put(lesson: Lesson, *indices: int) -> Lesson:
    for index in indices:
        lesson = lesson.with_settings(with_diagram(lesson.places[index], True))
    return lesson


def test_what_the_author_put_into_the_text_is_a_moment_too() -> None:
    lesson = put(Lesson.from_text("1. e4 e5 (1... c5) 2. Nf3 *", side="white"), 1, 4)
    found = replace(nothing_found(lesson), study=unstudied(lesson))
    told = [(moment.place.label, moment.kinds) for moment in moments(lesson, found)]
    assert told == [("1. e4", ("branch", "author")), ("2. Nf3", ("author",))]
    last = moments(lesson, found)[1]
    assert last.title == "After 2. Nf3 (line 2): the author's choice."
    assert last.name == "002-line-02-2-white-Nf3-author"
    assert f"{last.name}.txt" in make(lesson, found, Choices(24))


def test_the_author_overrides_where_a_position_is_shown() -> None:
    text = "1. e4 e5 (1... Nf6 2. Nc3 e5 3. f4 (3. Nf3)) 2. Nc3 Nf6 3. f4 (3. d3) *"
    lesson = Lesson.from_text(text, side="white")
    found = replace(nothing_found(lesson), study=unstudied(lesson))
    first, other = lesson.positions[lesson.places[-3].key]
    assert first.index < other.index
    assert [m.place.index for m in moments(lesson, found) if m.place.key == first.key] == [first.index]  # fmt: skip
    lesson = put(lesson, other.index)
    told = [m for m in moments(lesson, found) if m.place.key == first.key]
    assert [(m.place.index, m.kinds) for m in told] == [(other.index, ("branch", "author"))]
    lesson = put(lesson, first.index)
    assert [m.place.index for m in moments(lesson, found) if m.place.key == first.key] == [first.index, other.index]  # fmt: skip
