"""The line map in print: half-moves from left to right, each line a track that parts from another and ends at its number.

A line that comes to a position of another is joined to it by a dotted curve.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from lineproof.lesson import Place

from .lines import Line, by_place
from .meetings import Meeting

PLY: Final = 12.0
"""Units from a half-move to the next."""
ROW: Final = 11.5
LEFT: Final = 10.0
TOP: Final = 22.0
RIGHT: Final = 34.0
INK: Final = "#20242E"
FAINT: Final = "#B9B2A4"
PAPER: Final = "#FFFFFF"
BEND: Final = 10.0
"""Units in which a stem turns into its track."""
GAP: Final = 3.0
"""Units that a stem is broken by, beside a track that passes over it."""
FONT: Final = "Libertinus Serif"
MOST: Final = 60
"""Tracks of a map at most: more would be too fine for print."""


def drawn(lines: Sequence[Line]) -> tuple[Line, ...]:
    """The lines that the map shows: all, or the sections only, or none where even they are too many."""
    if len(lines) <= MOST:
        return tuple(lines)
    sections = tuple(line for line in lines if not line.inline)
    return sections if len(sections) <= MOST else ()


def line_map(shown: Sequence[Line], meetings: Sequence[Meeting]) -> str:
    """The SVG text."""
    return _Map(shown, meetings).svg()


def in_words(shown: Sequence[Line], meetings: Sequence[Meeting]) -> str:
    """The text alternative."""
    lines = by_place(shown)
    said = []
    for line in shown:
        above = line.first.parent
        if line.parent is None or above is None or above.index not in lines:
            said.append(f"Line {line.label} is {line.last.ply} half-moves long.")
        else:
            parts = f"parts from line {lines[above.index].label} with {line.first.label}"
            said.append(f"Line {line.label} {parts}.")
    for meeting in meetings:
        if meeting.place.index in lines and meeting.same.index in lines:
            mine, other = lines[meeting.place.index], lines[meeting.same.index]
            said.append(
                f"Line {mine.label} comes to line {other.label} with {meeting.place.label}."
            )
    return "The lines of the lesson as tracks. " + " ".join(said)


class _Map:
    def __init__(self, shown: Sequence[Line], meetings: Sequence[Meeting]) -> None:
        self.shown = shown
        self.lines = by_place(shown)
        self.row = {line: row for row, line in enumerate(shown)}
        self.meetings = [
            m for m in meetings if m.place.index in self.lines and m.same.index in self.lines
        ]
        self.plies = max((line.last.ply for line in shown), default=0)

    def svg(self) -> str:
        width = LEFT + self.plies * PLY + RIGHT
        height = TOP + max(0, len(self.shown) - 1) * ROW + 10
        parts = [
            *self._scale(height),
            *self._stems(),
            *self._tracks(),
            *self._joins(),
            *self._numbers(),
        ]
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:g}" height="{height:g}" '
            f'viewBox="0 0 {width:g} {height:g}">{"".join(parts)}</svg>'
        )

    def _x(self, ply: int) -> float:
        return LEFT + ply * PLY

    def _y(self, line: Line) -> float:
        return TOP + self.row[line] * ROW

    def _at(self, place: Place) -> tuple[float, float]:
        return self._x(place.ply), self._y(self.lines[place.index])

    def _scale(self, height: float) -> Iterator[str]:
        """Every fifth move has a hairline and its number."""
        for move in range(1, self.plies // 2 + 2):
            if move != 1 and move % 5:
                continue
            x = self._x(2 * move - 1)
            if x <= self._x(self.plies):
                yield _path(f"M{x:g} {TOP - 8:g}V{height:g}", FAINT, 0.4)
                yield _text(x, TOP - 12, f"move {move}" if move == 1 else str(move), 8, "middle")

    def _stems(self) -> Iterator[str]:
        """From where a line parts down to where it begins."""
        for line, x, y in self._parting():
            down = self._y(line)
            yield _path(
                f"M{x:g} {y:g}V{down - 5:g}Q{x:g} {down:g} {x + BEND:g} {down:g}", INK, _width(line)
            )

    def _tracks(self) -> Iterator[str]:
        """Over the stems, which break where they pass behind a track that is not theirs."""
        for line in self.shown:
            above = line.first.parent
            parts = above is not None and above.index in self.lines
            x = self._x(above.ply) + BEND if parts and above else self._x(line.first.ply)
            y, end, width = self._y(line), self._x(line.last.ply), _width(line)
            yield _path(f"M{x:g} {y:g}H{end:g}", PAPER, width + GAP)
            yield _path(f"M{x:g} {y:g}H{end:g}", INK, width)
            if not parts:
                yield _dot(x, y, 2.2)
        for line, x, y in self._parting():
            yield _path(f"M{x:g} {y:g}v{GAP:g}", INK, _width(line))

    def _parting(self) -> Iterator[tuple[Line, float, float]]:
        for line in self.shown:
            above = line.first.parent
            if above is not None and above.index in self.lines:
                yield line, *self._at(above)

    def _joins(self) -> Iterator[str]:
        for meeting in self.meetings:
            x, y = self._at(meeting.place)
            to_x, to_y = self._at(meeting.same)
            over = max(x, to_x) + PLY * 0.8
            yield _path(
                f"M{x:g} {y:g}C{over:g} {y:g} {over:g} {to_y:g} {to_x:g} {to_y:g}",
                INK,
                0.8,
                ' stroke-dasharray="1.2 2.2" stroke-linecap="round"',
            )
            yield _dot(to_x, to_y, 1.9)

    def _numbers(self) -> Iterator[str]:
        met = {place.index for meeting in self.meetings for place in (meeting.place, meeting.same)}
        for line in self.shown:
            x, y = self._x(line.last.ply), self._y(line)
            x += 6 if line.last.index in met else 0
            size = 10 if not line.inline else 8
            yield _text(x + 5, y + 3, line.label, size, "start", bold=not line.inline)


def _width(line: Line) -> float:
    return 0.9 if line.inline else 1.6


def _path(d: str, colour: str, width: float, more: str = "") -> str:
    return f'<path d="{d}" fill="none" stroke="{colour}" stroke-width="{width:g}"{more}/>'


def _dot(x: float, y: float, radius: float) -> str:
    return f'<circle cx="{x:g}" cy="{y:g}" r="{radius:g}" fill="{INK}"/>'


def _text(x: float, y: float, words: str, size: float, anchor: str, *, bold: bool = False) -> str:
    weight = ' font-weight="bold"' if bold else ""
    return (
        f'<text x="{x:g}" y="{y:g}" font-family="{FONT}" font-size="{size:g}" '
        f'text-anchor="{anchor}"{weight} fill="{INK}">{words}</text>'
    )
