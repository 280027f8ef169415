"""The six piece drawings: circles, straight cuts and trapezia on one base.

Every drawing is made for this project. It lies in a square of `UNIT` by `UNIT` units, y down, as
path strings that use only the commands `M`, `L`, `A` and `Z`, absolute:

    >>> PIECES["n"].name
    'knight'
    >>> PIECES["p"].body.startswith("M")
    True

A White piece is paper in an ink outline, a Black piece is ink.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal

UNIT: Final = 48
"""Side of the square that a drawing lies in; at 24 px every even coordinate is a pixel edge."""

OUTLINE: Final = 2
"""Width of the ink outline, outside the body."""

KNOCK_OUT: Final = 1.1
"""Width of the paper hairline outside the outline, where the theme asks for one."""

Kind = Literal["k", "q", "r", "b", "n", "p"]
Point = tuple[float, float]


@dataclass(frozen=True)
class PieceDrawing:
    """One kind of piece; the three strings are SVG path data in a `UNIT` by `UNIT` square.

    name: the English name, lower case.
    body: the silhouette less its outline, which is drawn outside it; overlapping closed contours
        that all turn the same way, so fill it non-zero.
    crest: what crowns it, ink for both sides and without an outline; may be empty.
    cuts: what is cut into it, ink in a White piece and paper in a Black one.
    """

    name: str
    body: str
    crest: str
    cuts: str


def _number(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")


def _polygon(*points: Point) -> str:
    """A closed contour, turned clockwise so that overlapping contours never cancel out."""
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)
    ordered: Sequence[Point] = points if area > 0 else points[::-1]
    return "M" + "L".join(f"{_number(x)} {_number(y)}" for x, y in ordered) + "Z"


def _circle(x: float, y: float, radius: float) -> str:
    left, right, at, r = (_number(v) for v in (x - radius, x + radius, y, radius))
    return f"M{left} {at}A{r} {r} 0 0 1 {right} {at}A{r} {r} 0 0 1 {left} {at}Z"


def _trapezium(top: float, top_half: float, bottom: float, bottom_half: float) -> str:
    """A trapezium about the middle line: `top` and `bottom` are heights, the rest half widths."""
    middle = UNIT / 2
    return _polygon(
        (middle - top_half, top),
        (middle + top_half, top),
        (middle + bottom_half, bottom),
        (middle - bottom_half, bottom),
    )


def _foot(half: float) -> str:
    """The base that all pieces stand on."""
    return _trapezium(36, half - 1, 40, half)


def _joint(half: float) -> str:
    """The straight cut over the base: the outline of the base's upper edge and a hair more."""
    return _trapezium(36 - OUTLINE - 0.12, half + 0.6, 36, half + 1.1)


def _slash(x: float, y: float, length: float, width: float = 2.4) -> str:
    """A cut at 45 degrees, the way of the hatching, up and right from its lower end."""
    run, side = length / 2**0.5, width / 2**0.5 / 2
    return _polygon(
        (x - side, y - side),
        (x + run - side, y - run - side),
        (x + run + side, y - run + side),
        (x + side, y + side),
    )


_PAWN: Final = PieceDrawing(
    name="pawn",
    body=_circle(24, 17.5, 6.5) + _trapezium(20, 4, 36, 8.5) + _foot(11),
    crest="",
    cuts=_joint(11),
)

_ROOK: Final = PieceDrawing(
    name="rook",
    body=_polygon(
        (10, 8),
        (14, 8),
        (14, 13),
        (22, 13),
        (22, 8),
        (26, 8),
        (26, 13),
        (34, 13),
        (34, 8),
        (38, 8),
        (38, 17),
        (34, 21),
        (14, 21),
        (10, 17),
    )
    + _trapezium(19, 10, 36, 10.5)
    + _foot(14),
    crest="",
    cuts=_joint(14) + _trapezium(20, 10, 22, 10),
)

_BISHOP: Final = PieceDrawing(
    name="bishop",
    body="M24 9.5A18 18 0 0 1 33 22.5L28 30L20 30L15 22.5A18 18 0 0 1 24 9.5Z"
    + _trapezium(28, 5, 36, 9)
    + _foot(14),
    crest=_circle(24, 7, 3),
    # The slit of the mitre, from the middle through to the far edge of the outline.
    cuts=_joint(14) + _polygon((23.65, 22.15), (31.78, 14.02), (33.04, 16.16), (25.35, 23.85)),
)

_QUEEN: Final = PieceDrawing(
    name="queen",
    body=_polygon(
        (8.5, 13.5),
        (15.5, 23),
        (16.4, 9.5),
        (22, 22),
        (24, 8),
        (26, 22),
        (31.6, 9.5),
        (32.5, 23),
        (39.5, 13.5),
        (34, 30),
        (14, 30),
    )
    + _trapezium(29, 10, 36, 11)
    + _foot(14),
    crest=_circle(8, 12.5, 2.8)
    + _circle(16.2, 8.6, 2.8)
    + _circle(24, 7, 2.8)
    + _circle(31.8, 8.6, 2.8)
    + _circle(40, 12.5, 2.8),
    cuts=_joint(14) + _trapezium(28, 10.5, 30, 10.5),
)

_KING: Final = PieceDrawing(
    name="king",
    body="M10 22A7 7 0 0 1 24 22A7 7 0 0 1 38 22L34 30L14 30Z"
    + _trapezium(29, 10, 36, 11)
    + _foot(14),
    crest=_trapezium(4, 2, 22, 1.4) + _trapezium(8, 6, 12, 6),
    cuts=_joint(14) + _trapezium(28, 10.5, 30, 10.5),
)

_KNIGHT: Final = PieceDrawing(
    name="knight",
    body="M14.5 36L23 25.5L14.5 28.5L9.5 27L8 22L17 12.5L18.5 6.5L24 9A23 23 0 0 1 36 36Z"
    + _foot(14),
    crest="",
    cuts=_joint(14)
    + _circle(19.2, 17, 1.7)
    + _slash(25.5, 21, 7)
    + _slash(27.5, 26, 7)
    + _slash(28.5, 31.5, 7),
)

PIECES: Final[Mapping[Kind, PieceDrawing]] = MappingProxyType(
    {"k": _KING, "q": _QUEEN, "r": _ROOK, "b": _BISHOP, "n": _KNIGHT, "p": _PAWN}
)
"""The drawings by FEN letter (lower case); both sides share them, in the other tones."""
