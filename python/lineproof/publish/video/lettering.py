"""Captions drawn into the pictures, in letters that come with the program: no font of the system is asked for."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final
from xml.sax.saxutils import escape

import numpy as np

from lineproof.diagram import STAGE, png

from .art import Patch, decoded, lay
from .characters import shown
from .layout import Page
from .scenes import FRAMES

if TYPE_CHECKING:
    from lineproof.publish.captioning import Caption

    from .art import Pixels

FONT: Final = Path(__file__).with_name("letters") / "DejaVuSans-part.ttf"
FAMILY: Final = "DejaVu Sans"
LEADING: Final = 1.3
"""From one line to the next, in sizes of the letters."""


class Lettering:
    """Of one film."""

    def __init__(self, page: Page, captions: Sequence[Caption]) -> None:
        self.page = page
        self._captions = [
            (one.begins * FRAMES / 1000, one.ends * FRAMES / 1000, one.lines) for one in captions
        ]
        self._at = 0
        self._drawn: tuple[tuple[str, ...], Patch] | None = None

    def cuts(self, begins: int, ends: int) -> list[int]:
        """A stretch of frames, cut where a caption comes or goes."""
        edges = {round(edge) for one in self._captions for edge in one[:2]}
        return sorted({begins, ends} | {edge for edge in edges if begins < edge < ends})

    def on(self, picture: Pixels, frame: int) -> Pixels:
        """The picture with what is said at a frame; frames are asked for one after the other."""
        while self._at < len(self._captions) and round(self._captions[self._at][1]) <= frame:
            self._at += 1
        if self._at == len(self._captions) or round(self._captions[self._at][0]) > frame:
            return picture
        made = picture.copy()
        lay(made, self._patch(self._captions[self._at][2]))
        return made

    def _patch(self, lines: tuple[str, ...]) -> Patch:
        if self._drawn is None or self._drawn[0] != lines:
            self._drawn = lines, self._draw([shown(line) for line in lines])
        return self._drawn[1]

    def _draw(self, lines: Sequence[str]) -> Patch:
        size = self.page.letters
        pixels = self._rendered(lines, size)
        wide = _wide(pixels)
        if wide > self.page.line:  # a line of broad letters
            size *= self.page.line / wide
            pixels = self._rendered(lines, size)
        left = (pixels.shape[1] - self.page.width) // 2
        part = pixels[:, left : left + self.page.width].astype(np.uint16)
        return Patch(0, self.page.words_top, part[:, :, :3], part[:, :, 3:])

    def _rendered(self, lines: Iterable[str], size: float) -> Pixels:
        """Twice as wide as the page, so that nothing is cut off before it is measured."""
        wide, high = 2 * self.page.width, round(self.page.letters * LEADING * 2.2)
        text = "".join(
            f'<text x="{self.page.width}" y="{size * (LEADING * number + 1):.2f}" fill="{STAGE.paper}" '
            f'font-family="{FAMILY}" font-size="{size:.2f}" text-anchor="middle">{escape(line)}</text>'
            for number, line in enumerate(lines)
        )
        svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}">{text}</svg>'
        return decoded(png(svg, wide, fonts=(FONT,)))


def _wide(pixels: Pixels) -> int:
    """Pixels from the first letter to the last."""
    columns = np.flatnonzero(pixels[:, :, 3].any(axis=0))
    return int(columns[-1] - columns[0]) + 1 if columns.size else 0
