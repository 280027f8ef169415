"""The SVG of a diagram is well formed, complete, inert, and small where a sprite is shared."""

from __future__ import annotations

from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lineproof.diagram import (
    PRINT,
    STAGE,
    THEMES,
    DiagramError,
    JustPlayed,
    Mark,
    MarkedSquare,
    Pin,
    ShownMove,
    Theme,
    alternative,
    diagram,
    sprite,
)
from lineproof.diagram.mark_drawing import Stroke, dash_pattern

SVG = "{http://www.w3.org/2000/svg}"
START = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"
BUDAPEST_GAMBIT = "rnbqkb1r/pppp1ppp/5n2/4p3/2PP4/8/PP2PPPP/RNBQKBNR w KQkq e6 0 3"
MARKS: tuple[Mark, ...] = (
    MarkedSquare("e5", "black"),
    MarkedSquare("d5", "white"),
    ShownMove("d4", "e5", "white"),
    ShownMove("f6", "g4", "black"),
    Pin("f8", "b4", "black"),
    JustPlayed("e7", "e5"),
)


def tree(svg: str) -> ElementTree.Element:
    return ElementTree.fromstring(svg)


def pieces(svg: str) -> dict[str, tuple[str, int, int]]:
    """The drawn pieces: id of the drawing, x and y, by square."""
    return {
        use.attrib["data-square"]: (use.attrib["href"], int(use.attrib["x"]), int(use.attrib["y"]))
        for use in tree(svg).iter(f"{SVG}use")
        if use.get("class") == "piece"
    }


def ids(svg: str) -> list[str]:
    return [element.attrib["id"] for element in tree(svg).iter() if "id" in element.attrib]


def referred(svg: str) -> set[str]:
    targets = {use.attrib["href"].removeprefix("#") for use in tree(svg).iter(f"{SVG}use")}
    fills = (element.get("fill", "") for element in tree(svg).iter())
    return targets | {fill[5:-1] for fill in fills if fill.startswith("url(#")}


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
@pytest.mark.parametrize("flipped", [False, True])
def test_it_is_well_formed_and_every_reference_leads_somewhere(theme: Theme, flipped: bool) -> None:
    svg = diagram(BUDAPEST_GAMBIT, marks=MARKS, theme=theme, flipped=flipped)
    own = ids(svg)
    assert len(own) == len(set(own))
    assert referred(svg) <= set(own)
    assert tree(svg).tag == f"{SVG}svg"


@pytest.mark.parametrize("fen", [START, BUDAPEST_GAMBIT, "8/8/8/8/8/8/8/8", "8/8/3k4/8/8/8/4K3/8"])
def test_as_many_pieces_are_drawn_as_the_fen_has(fen: str) -> None:
    letters = [letter for letter in fen.split()[0] if letter.isalpha()]
    drawn = pieces(diagram(fen))
    assert len(drawn) == len(letters)
    expected = {f"#diagram-{'w' if at.isupper() else 'b'}{at.lower()}" for at in letters}
    assert {href for href, _, _ in drawn.values()} == expected


def test_white_sees_a1_at_the_lower_left_and_black_at_the_upper_right() -> None:
    assert pieces(diagram(START))["a1"] == ("#diagram-wr", 0, 7 * 48)
    assert pieces(diagram(START, flipped=True))["a1"] == ("#diagram-wr", 7 * 48, 0)


def test_flipping_moves_the_coordinates_along() -> None:
    def place(svg: str, glyph: str) -> tuple[float, float]:
        uses = tree(svg).iter(f"{SVG}use")
        found = next(use for use in uses if use.attrib["href"] == f"#diagram-at-{glyph}")
        return float(found.attrib["x"]), float(found.attrib["y"])

    white, black = diagram(START), diagram(START, flipped=True)
    assert place(white, "a") == place(black, "h")
    assert place(white, "1") == place(black, "8")
    assert place(white, "a") != place(black, "a")


def test_coordinates_can_be_left_out_and_the_stage_has_none() -> None:
    assert 'class="coordinates"' in diagram(START)
    assert 'class="coordinates"' not in diagram(START, coordinates=False)
    assert 'class="coordinates"' not in diagram(START, theme=STAGE)


def test_the_stage_has_two_colours_of_squares_and_nothing_else_on_the_page() -> None:
    svg = tree(diagram("8/8/8/8/8/8/8/8", theme=STAGE))
    assert svg.attrib["viewBox"] == "0 0 384 384"
    fills = {element.attrib["fill"] for element in svg.iter() if "fill" in element.attrib}
    assert fills == {"#E9DCD3", "#B08A95"}


def test_it_has_a_name_and_its_text_alternative() -> None:
    svg = tree(diagram(BUDAPEST_GAMBIT, marks=MARKS, id_prefix="third"))
    named, described = svg.find(f"{SVG}title"), svg.find(f"{SVG}desc")
    assert svg.attrib["role"] == "img"
    assert named is not None
    assert described is not None
    assert named.attrib["id"] == svg.attrib["aria-labelledby"] == "third-title"
    assert described.attrib["id"] == svg.attrib["aria-describedby"] == "third-desc"
    assert named.text == "White to move"
    assert described.text == alternative(BUDAPEST_GAMBIT, MARKS)


HOSTILE = '</title><script>alert("1")</script><title>&amp; ]]> \x00\x1b'


def test_a_hostile_title_stays_text() -> None:
    svg = diagram(START, title=HOSTILE)
    assert "<script" not in svg
    named = tree(svg).find(f"{SVG}title")
    assert named is not None
    assert named.text == HOSTILE.replace("\x00", "\ufffd").replace("\x1b", "\ufffd")


@given(st.text(min_size=1))
def test_any_title_leaves_the_svg_well_formed(title: str) -> None:
    assert len(pieces(diagram("4k3/8/8/8/8/8/8/4K3", title=title))) == 2


@pytest.mark.parametrize("prefix", ["", "1st", "a b", 'a"b', "a#b", "\u00e9t\u00e9", "a\n"])
def test_a_prefix_that_cannot_begin_an_id_is_refused(prefix: str) -> None:
    with pytest.raises(DiagramError, match="cannot begin an id"):
        diagram(START, id_prefix=prefix)


@pytest.mark.parametrize("size", [0, -1, 16_385])
def test_a_size_out_of_range_is_refused(size: int) -> None:
    with pytest.raises(DiagramError, match="cannot be drawn"):
        diagram(START, size=size)


@pytest.mark.parametrize("fen", ["", "8/8", "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBN w"])
def test_a_wrong_fen_is_refused(fen: str) -> None:
    with pytest.raises(DiagramError):
        diagram(fen)


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_sixty_diagrams_share_one_sprite(theme: Theme) -> None:
    shared = sprite(theme)
    diagrams = [
        diagram(BUDAPEST_GAMBIT, theme=theme, id_prefix=f"d{number}", use_sprite=True)
        for number in range(60)
    ]
    page = f"<html>{shared}{''.join(diagrams)}</html>"
    assert len(ids(page)) == len(set(ids(page)))
    assert referred(page) <= set(ids(page))
    alone = diagram(BUDAPEST_GAMBIT, theme=theme)
    assert len(page) < 60 * len(alone) / 2


def test_sprites_of_all_themes_can_stand_in_one_page() -> None:
    page = f"<html>{''.join(sprite(theme) for theme in THEMES)}</html>"
    assert len(ids(page)) == len(set(ids(page)))


def marks_of(svg: str, kind: str) -> list[ElementTree.Element]:
    return [group for group in tree(svg).iter(f"{SVG}g") if kind in group.get("class", "").split()]


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_each_mark_is_drawn_once_in_its_colour_on_a_paper_halo(theme: Theme) -> None:
    svg = diagram(BUDAPEST_GAMBIT, marks=MARKS, theme=theme)
    for kind, count in (("marked-square", 2), ("shown-move", 2), ("pin", 1), ("just-played", 1)):
        assert len(marks_of(svg, kind)) == count
    for side, colour in (("white", theme.white_idea), ("black", theme.black_idea)):
        for group in marks_of(svg, side):
            strokes = {part.attrib["stroke"] for part in group if "stroke" in part.attrib}
            assert strokes == {colour, theme.paper}


@pytest.mark.parametrize(
    ("stroke", "marks"),
    [
        ("corner", (MarkedSquare("e4", "white"), MarkedSquare("e5", "black"))),
        ("move", (ShownMove("e2", "e4", "white"), ShownMove("e7", "e5", "black"))),
        ("pin", (Pin("b5", "e8", "white"), Pin("b4", "e1", "black"))),
    ],
)
def test_the_sides_differ_in_more_than_colour(stroke: Stroke, marks: tuple[Mark, Mark]) -> None:
    white, black = (dash_pattern(stroke, "white"), dash_pattern(stroke, "black"))
    assert white != black
    for dashes, mark in zip((white, black), marks, strict=True):
        assert f'stroke-dasharray="{dashes}"' in diagram(START, marks=[mark])


def test_a_pin_breaks_off_at_the_piece_that_it_pins() -> None:
    def rules(fen: str) -> int:
        (group,) = marks_of(diagram(fen, marks=[Pin("b5", "e8", "white")]), "pin")
        return group[-1].attrib["d"].count("M")

    assert rules("4k3/8/8/1B6/8/8/8/4K3") == 1
    assert rules("4k3/8/2n5/1B6/8/8/8/4K3") == 2


def test_marks_follow_the_flipped_board() -> None:
    mark = [ShownMove("d1", "h5", "white")]
    (seen,) = marks_of(diagram(START, marks=mark), "shown-move")
    (turned,) = marks_of(diagram(START, marks=mark, flipped=True), "shown-move")
    ring = seen.find(f"{SVG}circle")
    turned_ring = turned.find(f"{SVG}circle")
    assert ring is not None
    assert turned_ring is not None
    for axis in ("cx", "cy"):
        assert float(ring.attrib[axis]) + float(turned_ring.attrib[axis]) == pytest.approx(384)


@pytest.mark.parametrize(
    ("make", "arguments", "said"),
    [
        (MarkedSquare, ("i1", "white"), "'i1' is not a square"),
        (MarkedSquare, ("", "white"), "'' is not a square"),
        (MarkedSquare, ("e4", "green"), "the side of a mark is 'green'"),
        (ShownMove, ("e4", "e9", "white"), "'e9' is not a square"),
        (ShownMove, ("e4", "e4", "white"), "goes nowhere"),
        (Pin, ("b5", "c8", "white"), "runs along a rank, file or diagonal"),
        (JustPlayed, ("e2", "e2"), "goes nowhere"),
    ],
)
def test_a_mark_that_cannot_be_drawn_is_refused(
    make: Any, arguments: tuple[str, ...], said: str
) -> None:
    with pytest.raises(DiagramError) as refused:
        make(*arguments)
    assert said in str(refused.value)


def test_no_text_element_is_needed_so_no_font_is() -> None:
    svg = tree(diagram(BUDAPEST_GAMBIT, marks=MARKS))
    assert {element.tag.removeprefix(SVG) for element in svg.iter()} == {
        "svg", "title", "desc", "defs", "pattern", "g", "path", "rect", "circle", "use",
    }  # fmt: skip


def test_the_same_diagram_is_the_same_text() -> None:
    assert diagram(START, marks=MARKS) == diagram(START, marks=MARKS)
    assert diagram(START, theme=PRINT) == diagram(START)
