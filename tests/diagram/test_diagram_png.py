"""The picture shows what the SVG says: real pixels of a real PNG file."""

from __future__ import annotations

import builtins
import struct
import zlib
from dataclasses import dataclass
from importlib.util import find_spec
from typing import Any

import pytest

from lineproof.diagram import (
    PRINT,
    STAGE,
    THEMES,
    DiagramError,
    MarkedSquare,
    RendererMissingError,
    Theme,
    diagram,
    png,
)

drawn = pytest.mark.skipif(find_spec("resvg_py") is None, reason="resvg-py is not installed")

KINGS = "4k3/8/8/8/8/8/8/4K3 w - - 0 1"
Pixel = tuple[int, int, int]


@dataclass(frozen=True)
class Picture:
    """An RGBA picture; `rows` holds four bytes a pixel."""

    width: int
    height: int
    rows: tuple[bytes, ...]

    def at(self, x: float, y: float) -> Pixel:
        red, green, blue, alpha = self.rows[int(y)][int(x) * 4 : int(x) * 4 + 4]
        assert alpha == 255, "a diagram leaves no pixel see-through"
        return red, green, blue


def read_picture(data: bytes) -> Picture:
    """Eight-bit RGBA without interlacing. Source: PNG specification, W3C, clauses 9 and 11
    (filters and chunks, from memory)."""
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    width, height, depth, colour_type, _, _, interlaced = struct.unpack(">IIBBBBB", data[16:29])
    assert (depth, colour_type, interlaced) == (8, 6, 0)
    packed, at = b"", 8
    while at < len(data):
        (length,) = struct.unpack(">I", data[at : at + 4])
        if data[at + 4 : at + 8] == b"IDAT":
            packed += data[at + 8 : at + 8 + length]
        at += length + 12
    raw, rows = zlib.decompress(packed), []
    above = bytearray(width * 4)
    for y in range(height):
        start = y * (width * 4 + 1)
        above = _unfiltered(raw[start], raw[start + 1 : start + 1 + width * 4], above)
        rows.append(bytes(above))
    return Picture(width, height, tuple(rows))


def _unfiltered(kind: int, line: bytes, above: bytearray) -> bytearray:
    row = bytearray(line)
    for i, value in enumerate(line):
        left = row[i - 4] if i >= 4 else 0
        corner = above[i - 4] if i >= 4 else 0
        guess = (0, left, above[i], (left + above[i]) // 2, _paeth(left, above[i], corner))[kind]
        row[i] = (value + guess) & 255
    return row


def _paeth(left: int, up: int, corner: int) -> int:
    first = left + up - corner
    return min((left, up, corner), key=lambda value: abs(first - value))


def colour(text: str) -> tuple[int, int, int]:
    return int(text[1:3], 16), int(text[3:5], 16), int(text[5:7], 16)


def stage(fen: str, **more: Any) -> Picture:
    """A stage board at one pixel a unit: no margin, so square a8 is at 0, 0."""
    return read_picture(png(diagram(fen, theme=STAGE, **more), 384))


@drawn
def test_a_picture_has_the_width_asked_for() -> None:
    shown = read_picture(png(diagram(KINGS, size=360), 240))
    assert (shown.width, shown.height) == (240, 240)


@drawn
def test_a_black_king_is_dark_and_a_white_king_light_in_the_middle() -> None:
    shown = stage(KINGS)
    assert shown.at(4 * 48 + 24, 24) == colour(STAGE.ink)
    assert shown.at(4 * 48 + 24, 7 * 48 + 24) == colour(STAGE.paper)


@drawn
def test_empty_squares_have_the_colours_of_the_theme() -> None:
    shown = stage(KINGS)
    assert shown.at(24, 24) == colour(STAGE.light)  # a8
    assert shown.at(24, 7 * 48 + 24) == colour(STAGE.dark)  # a1


@drawn
def test_an_empty_light_square_of_a_printed_board_is_paper_and_a_dark_one_hatched() -> None:
    # Without coordinates the margin is 8 units on each side: one pixel a unit at 400.
    shown = read_picture(png(diagram(KINGS, coordinates=False), 400))
    square = [(8 + x, 8 + y) for x in range(4, 44) for y in range(4, 44)]
    light = {shown.at(x, y) for x, y in square}  # a8
    dark = {shown.at(x, y + 48) for x, y in square}  # a7
    assert light == {colour(PRINT.paper)}
    assert len(dark) > 1
    assert max(sum(pixel) for pixel in dark) <= sum(colour(PRINT.dark))
    assert min(sum(pixel) for pixel in dark) < sum(colour(PRINT.dark)) * 0.85


@drawn
@pytest.mark.parametrize("theme", [theme for theme in THEMES if theme.hatching])
def test_paper_lies_between_a_black_piece_and_the_hatching(theme: Theme) -> None:
    # Only the pawn's square, a7, at four pixels a unit; the row runs through its base.
    whole = diagram("8/p7/8/8/8/8/8/8", theme=theme, coordinates=False)
    square = whole.replace('viewBox="-8 -8 400 400"', 'viewBox="0 48 48 48"')
    assert square != whole
    shown = read_picture(png(square, 192))
    row = [shown.at(x, 38 * 4) for x in range(192)]
    first_ink = next(x for x in range(20, 96) if row[x : x + 20] == [colour(theme.ink)] * 20)
    assert theme.knock_out is not None
    assert colour(theme.knock_out) in row[first_ink - 4 : first_ink]


@drawn
def test_the_board_is_flipped_in_the_picture() -> None:
    shown = stage("k7/8/8/8/8/8/8/8", flipped=True)
    assert shown.at(7 * 48 + 24, 7 * 48 + 24) == colour(STAGE.ink)
    assert shown.at(24, 24) == colour(STAGE.light)  # h1, a light square


@drawn
def test_a_marked_square_has_four_corners_in_the_side_s_colour() -> None:
    shown = stage("8/8/8/8/8/8/8/8", marks=[MarkedSquare("a8", "white")])
    near, far = 2, 45
    for x, y in ((near, near), (near, far), (far, near), (far, far)):
        assert shown.at(x, y) == colour(STAGE.white_idea)
    assert shown.at(24, near) == colour(STAGE.light)


@drawn
@pytest.mark.parametrize("letter", "kqrbnp")
def test_no_two_kinds_look_alike_at_24_pixels(letter: str) -> None:
    # A share of the 24 x 24 pixels must differ clearly (by a third of the whole range).
    def look(kind: str) -> list[int]:
        shown = read_picture(png(diagram(f"{kind}7/8/8/8/8/8/8/8", theme=STAGE), 192))
        return [sum(shown.at(x, y)) for x in range(24) for y in range(24)]

    own = look(letter)
    for other in set("kqrbnp") - {letter}:
        clear = sum(abs(one - two) > 255 for one, two in zip(own, look(other), strict=True))
        assert clear >= 24, f"{letter} and {other} differ in {clear} pixels"


@pytest.mark.parametrize("width", [0, -5, 16_385])
def test_a_width_out_of_range_is_refused(width: int) -> None:
    with pytest.raises(DiagramError, match="px wide cannot be made"):
        png(diagram(KINGS), width)


@drawn
def test_what_is_no_svg_is_refused() -> None:
    with pytest.raises(DiagramError, match="the SVG cannot be drawn"):
        png("<svg", 240)


def test_a_missing_renderer_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    real_import = builtins.__import__

    def without_resvg(name: str, *rest: Any, **more: Any) -> Any:
        if name == "resvg_py":
            raise ImportError(name)
        return real_import(name, *rest, **more)

    monkeypatch.setattr(builtins, "__import__", without_resvg)
    with pytest.raises(RendererMissingError, match=r"pip install 'lineproof\[publish\]'"):
        png(diagram(KINGS), 240)
