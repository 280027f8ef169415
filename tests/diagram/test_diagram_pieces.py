"""The piece drawings keep to their square, their base and their few path commands."""

from __future__ import annotations

import re

import pytest

from lineproof.diagram import PIECES, PieceDrawing
from lineproof.diagram.pieces import OUTLINE, UNIT

DRAWINGS = pytest.mark.parametrize("drawing", PIECES.values(), ids=lambda piece: piece.name)
PARTS = re.compile(r"([MLAZ])([^MLAZ]*)")


def contours(path: str) -> list[list[tuple[float, float]]]:
    """The corner points of each closed contour, arcs by their ends."""
    found: list[list[tuple[float, float]]] = []
    for command, text in PARTS.findall(path):
        numbers = [float(number) for number in text.split()]
        if command == "M":
            found.append([])
        if command != "Z":
            found[-1].append((numbers[-2], numbers[-1]))
    return found


def test_there_are_the_six_pieces() -> None:
    names = {letter: drawing.name for letter, drawing in PIECES.items()}
    assert names == {
        "k": "king", "q": "queen", "r": "rook", "b": "bishop", "n": "knight", "p": "pawn",
    }  # fmt: skip


def test_no_two_pieces_share_a_silhouette() -> None:
    assert len({drawing.body + drawing.crest for drawing in PIECES.values()}) == 6


@DRAWINGS
def test_paths_use_only_four_absolute_commands(drawing: PieceDrawing) -> None:
    for path in (drawing.body, drawing.crest, drawing.cuts):
        assert re.fullmatch(r"[MLAZ0-9. -]*", path)
        assert path.count("M") == path.count("Z")


@DRAWINGS
def test_contours_all_turn_clockwise_so_that_none_cancels_another(drawing: PieceDrawing) -> None:
    for path in (drawing.body, drawing.crest, drawing.cuts):
        for points in contours(path):
            pairs = zip(points, (*points[1:], points[0]), strict=True)
            assert sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs) >= 0
        arcs = re.findall(r"A\S+ \S+ \S+ \S+ (\S+)", path)
        assert set(arcs) <= {"1"}


@DRAWINGS
def test_every_piece_stands_on_the_same_base_line(drawing: PieceDrawing) -> None:
    lowest = max(y for points in contours(drawing.body) for _, y in points)
    assert lowest == 40


@DRAWINGS
def test_a_piece_with_its_outline_stays_in_its_square(drawing: PieceDrawing) -> None:
    points = [point for points in contours(drawing.body + drawing.crest) for point in points]
    for x, y in points:
        assert OUTLINE <= x <= UNIT - OUTLINE
        assert OUTLINE <= y <= UNIT - OUTLINE
