"""How the marks look: each a stroke in its side's colour and dash pattern on a paper halo.

    >>> dash_pattern("move", "black") != dash_pattern("move", "white")
    True

A mark is drawn twice, first wider in paper, so that it stands out on any square and any piece.
The dash patterns say whose idea it is where colours are not seen.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from itertools import pairwise
from math import hypot
from types import MappingProxyType
from typing import Final, Literal

from .marks import JustPlayed, Mark, MarkedSquare, Pin, ShownMove, Side
from .pieces import UNIT
from .squares import path_between
from .themes import Theme

Stroke = Literal["corner", "move", "pin"]
Point = tuple[float, float]

HALO: Final = 1.3
"""Width of the paper halo on either side of a mark, in board units."""

WIDTHS: Final[Mapping[Stroke, float]] = MappingProxyType({"corner": 2.6, "move": 2.2, "pin": 2.6})

_DASHES: Final[Mapping[tuple[Stroke, Side], str]] = MappingProxyType(
    {
        ("corner", "white"): "20",
        ("corner", "black"): "4 2 8 2 4",
        ("move", "white"): "14 2.5",
        ("move", "black"): "3 3",
        ("pin", "white"): "7 5",
        ("pin", "black"): "7 3 2 3",
    }
)

CORNER_INSET: Final = 2.6
CORNER_ARM: Final = 10
RING_RADIUS: Final = 3.6
RING_AWAY: Final = 18
WEDGE_AWAY: Final = 13
WEDGE_LENGTH: Final = 10
WEDGE_HALF: Final = 5
_PIN_AWAY: Final = 15
_DOT_INSET: Final = 4.5
_DOT_RADIUS: Final = 2.6

Corner = Callable[[str], tuple[int, int]]
"""From a square's name to the upper left corner of its place on the board, in board units."""


def dash_pattern(stroke: Stroke, side: Side) -> str:
    """The SVG dash array of a side's strokes of this sort, in board units."""
    return _DASHES[stroke, side]


def draw_mark(mark: Mark, corner: Corner, theme: Theme, occupied: Collection[str] = ()) -> str:
    """The SVG of one mark, in board units; a pin breaks off at `occupied` squares it crosses."""
    if isinstance(mark, MarkedSquare):
        return _marked_square(mark, corner, theme)
    if isinstance(mark, ShownMove):
        return _shown_move(mark, corner, theme)
    if isinstance(mark, Pin):
        return _pin(mark, corner, theme, occupied)
    return _just_played(mark, corner, theme)


def _marked_square(mark: MarkedSquare, corner: Corner, theme: Theme) -> str:
    x, y = corner(mark.square)
    near, far = CORNER_INSET, UNIT - CORNER_INSET
    path = "".join(
        f"M{x + at_x + inward * CORNER_ARM:g} {y + at_y:g}H{x + at_x:g}"
        f"V{y + at_y + down * CORNER_ARM:g}"
        for at_x, inward in ((near, 1), (far, -1))
        for at_y, down in ((near, 1), (far, -1))
    )
    return _group("marked-square", mark.side, _stroke(path, "corner", mark.side, theme))


def _shown_move(mark: ShownMove, corner: Corner, theme: Theme) -> str:
    start, end, along = _ends(mark.start, mark.end, corner)
    ring = _step(start, along, RING_AWAY)
    tip = _step(end, along, -WEDGE_AWAY)
    base = _step(tip, along, -WEDGE_LENGTH)
    across = (-along[1], along[0])
    wedge = "L".join(
        _at(point)
        for point in (tip, _step(base, across, WEDGE_HALF), _step(base, across, -WEDGE_HALF))
    )
    colour = theme.idea(mark.side)
    line = f"M{_at(_step(ring, along, RING_RADIUS))}L{_at(base)}"
    width = WIDTHS["move"]
    circle = f'<circle cx="{ring[0]:.2f}" cy="{ring[1]:.2f}" r="{RING_RADIUS}" fill="none"'
    return _group(
        "shown-move",
        mark.side,
        f'<path d="M{wedge}Z" fill="{theme.paper}" stroke="{theme.paper}" '
        f'stroke-width="{2 * HALO}" stroke-linejoin="round"/>'
        f'{circle} stroke="{theme.paper}" stroke-width="{width + 2 * HALO:g}"/>'
        + _stroke(line, "move", mark.side, theme)
        + f'{circle} stroke="{colour}" stroke-width="{width}"/>'
        f'<path d="M{wedge}Z" fill="{colour}"/>',
    )


def _pin(mark: Pin, corner: Corner, theme: Theme, occupied: Collection[str]) -> str:
    between = path_between(mark.start, mark.end) or ()
    stops = (mark.start, *(square for square in between if square in occupied), mark.end)
    path = ""
    for start, end in pairwise(stops):
        here, there, along = _ends(start, end, corner)
        path += f"M{_at(_step(here, along, _PIN_AWAY))}L{_at(_step(there, along, -_PIN_AWAY))}"
    return _group("pin", mark.side, _stroke(path, "pin", mark.side, theme))


def _just_played(mark: JustPlayed, corner: Corner, theme: Theme) -> str:
    dots = "".join(
        f'<circle cx="{x + at:g}" cy="{y + at:g}" r="{_DOT_RADIUS}" fill="{theme.ink}" '
        f'stroke="{theme.paper}" stroke-width="{2 * HALO}" paint-order="stroke"/>'
        for x, y in (corner(mark.start), corner(mark.end))
        for at in (_DOT_INSET, UNIT - _DOT_INSET)
    )
    return f'<g class="mark just-played">{dots}</g>'


def _stroke(path: str, stroke: Stroke, side: Side, theme: Theme) -> str:
    width = WIDTHS[stroke]
    return (
        f'<path d="{path}" fill="none" stroke="{theme.paper}" stroke-width="{width + 2 * HALO:g}" '
        'stroke-linecap="square"/>'
        f'<path d="{path}" fill="none" stroke="{theme.idea(side)}" stroke-width="{width:g}" '
        f'stroke-dasharray="{dash_pattern(stroke, side)}"/>'
    )


def _group(name: str, side: Side, content: str) -> str:
    return f'<g class="mark {name} {side}">{content}</g>'


def _ends(start: str, end: str, corner: Corner) -> tuple[Point, Point, Point]:
    """The middles of two squares and the unit vector from one to the other."""
    (x0, y0), (x1, y1) = ((x + UNIT / 2, y + UNIT / 2) for x, y in (corner(start), corner(end)))
    length = hypot(x1 - x0, y1 - y0)
    return (x0, y0), (x1, y1), ((x1 - x0) / length, (y1 - y0) / length)


def _step(point: Point, along: Point, distance: float) -> Point:
    return point[0] + along[0] * distance, point[1] + along[1] * distance


def _at(point: Point) -> str:
    return f"{point[0]:.2f} {point[1]:.2f}"
