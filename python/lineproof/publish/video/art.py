"""The pictures of a film, as arrays of pixels: diagrams of the stage, laid together from parts that are drawn once."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, cast

import av
import numpy as np

from lineproof.diagram import STAGE, Mark, MarkedSquare, Pin, diagram, png
from lineproof.diagram.board import corner_of, layered
from lineproof.diagram.mark_drawing import draw_mark
from lineproof.diagram.pieces import UNIT
from lineproof.diagram.placement import read_placement
from lineproof.diagram.sprite import definitions, piece_id

from .layout import Page
from .motion import Motion, motion, shares
from .scenes import Scene, Still

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Pixels = NDArray[np.uint8]

KEPT: Final = 24
"""Stills that are kept for when they are shown again."""
MARGIN: Final = UNIT // 8
"""Room around what is drawn, in units of a board."""
TURNS_FROM: Final = 0.5
"""How far a move is when what it takes begins to go, and a pawn to turn."""


@dataclass(frozen=True)
class Patch:
    """A part of a picture. x, y: of its upper left corner, from that of the board or of a square. cover: from 0 to 255."""

    x: int
    y: int
    colour: NDArray[np.uint16]
    cover: NDArray[np.uint16]


class Art:
    """Of one film. flipped: seen from Black's side."""

    def __init__(self, page: Page, flipped: bool) -> None:
        self.page = page
        self.flipped = flipped
        self._stills: OrderedDict[Still, Pixels] = OrderedDict()
        self._pieces: dict[str, Patch] = {}
        self._marks: dict[tuple[Mark, frozenset[str]], Patch] = {}
        self._empty = np.empty((page.height, page.width, 3), np.uint8)
        self._empty[:] = _rgb(STAGE.ink)
        svg = diagram("8/8/8/8/8/8/8/8", theme=STAGE, size=page.board)
        self._ground = np.ascontiguousarray(decoded(png(svg, page.board))[:, :, :3])

    def pictures(self, scene: Scene) -> Iterator[Pixels]:
        """One for each frame that a scene has."""
        if scene.kind == "still" or scene.before is None:
            yield self.still(scene.still)
            return
        *between, _ = shares(scene.frames)
        if scene.kind == "move":
            yield from self._move(scene.before, scene.still, scene.uci, between)
        else:
            yield from self._fade(scene.before, scene.still, between)
        yield self.still(scene.still)

    def still(self, still: Still) -> Pixels:
        """The whole page."""
        if still in self._stills:
            self._stills.move_to_end(still)
            return self._stills[still]
        made = self._paged(self._board(still))
        if still.left is not None:
            self._rule(made, still.left)
        self._stills[still] = made
        if len(self._stills) > KEPT:
            self._stills.popitem(last=False)
        return made

    def _board(self, still: Still) -> Pixels:
        """The diagram of a position, laid together in the order in which `diagram` draws it."""
        board = self._ground.copy()
        pieces = read_placement(still.fen).pieces
        under, over = layered(still.marks)
        for mark in under:
            lay(board, self._mark(mark, pieces))
        for at, letter in pieces.items():
            lay(board, self._piece(letter), self._corner(at))
        for mark in over:
            lay(board, self._mark(mark, pieces))
        return board

    def _paged(self, board: Pixels) -> Pixels:
        made = self._empty.copy()
        left, top, size = self.page.left, self.page.top, self.page.board
        made[top : top + size, left : left + size] = board
        return made

    def _rule(self, page: Pixels, left: float) -> None:
        """What is left of a pause: a rule below the board, which shrinks towards its middle."""
        gap = max(self.page.square // 12, 2)
        wide = round(self.page.board * left / 2)
        middle, top = self.page.width // 2, self.page.top + self.page.board + gap
        page[top : top + gap, middle - wide : middle + wide] = _rgb(STAGE.paper)

    def _fade(self, before: Still, after: Still, between: list[float]) -> Iterator[Pixels]:
        old = self._board(before).astype(np.uint16)
        new = self._board(after).astype(np.uint16)
        for share in between:
            weight = round(256 * share)
            mixed = old * np.uint16(256 - weight) + new * np.uint16(weight) >> 8
            yield self._paged(mixed.astype(np.uint8))

    def _move(
        self, before: Still, after: Still, uci: str, between: list[float]
    ) -> Iterator[Pixels]:
        moved = motion(before.fen, after.fen, uci)
        base = self._ground.copy()
        for at, letter in moved.resting.items():
            lay(base, self._piece(letter), self._corner(at))
        for share in between:
            yield self._paged(self._moved(base.copy(), moved, share))

    def _moved(self, board: Pixels, moved: Motion, share: float) -> Pixels:
        late = max(share - TURNS_FROM, 0.0) / (1 - TURNS_FROM)
        for at, letter in moved.taken.items():
            lay(board, self._piece(letter), self._corner(at), 1 - late)
        for one in reversed(moved.sliding):
            start, end = self._corner(one.start), self._corner(one.end)
            place = (_between(start[0], end[0], share), _between(start[1], end[1], share))
            if one.becomes == one.letter:
                lay(board, self._piece(one.letter), place)
            else:
                lay(board, self._piece(one.letter), place, 1 - late)
                lay(board, self._piece(one.becomes), place, late)
        return board

    def _corner(self, square: str) -> tuple[int, int]:
        return self.page.corner(square, self.flipped)

    def _piece(self, letter: str) -> Patch:
        """A piece, from the corner of its square."""
        if letter not in self._pieces:
            drawn = definitions(STAGE, "film", pieces=(letter,), glyphs="")
            use = f'<use href="#{piece_id("film", letter)}"/>'
            box = (-MARGIN, -MARGIN, UNIT + 2 * MARGIN, UNIT + 2 * MARGIN)
            self._pieces[letter] = self._patch(drawn + use, box)
        return self._pieces[letter]

    def _mark(self, mark: Mark, pieces: Collection[str]) -> Patch:
        """A mark, from the corner of the board. pieces: squares that are taken."""
        crossed = frozenset(pieces) if isinstance(mark, Pin) else frozenset[str]()
        if (mark, crossed) not in self._marks:
            corner = corner_of(self.flipped)
            ends = (mark.square,) if isinstance(mark, MarkedSquare) else (mark.start, mark.end)
            across, down = zip(*map(corner, ends), strict=True)
            left, top = min(across) - MARGIN, min(down) - MARGIN
            wide, high = max(across) - left + UNIT + MARGIN, max(down) - top + UNIT + MARGIN
            drawn = draw_mark(mark, corner, STAGE, crossed)
            self._marks[mark, crossed] = self._patch(drawn, (left, top, wide, high))
        return self._marks[mark, crossed]

    def _patch(self, drawn: str, box: tuple[int, int, int, int]) -> Patch:
        """Some SVG as pixels. box: left, top, width and height, in units of a board, that lie on whole pixels."""
        left, top, wide, high = box
        pixel = self.page.square
        width, height = wide * pixel // UNIT, high * pixel // UNIT
        svg = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" '
            f'viewBox="{left} {top} {wide} {high}">{drawn}</svg>'
        )
        pixels = decoded(png(svg, width)).astype(np.uint16)
        at = left * pixel // UNIT, top * pixel // UNIT
        return Patch(*at, pixels[:, :, :3], pixels[:, :, 3:])


def lay(
    board: Pixels, patch: Patch, corner: tuple[int, int] = (0, 0), opacity: float = 1.0
) -> None:
    """Lays a part over a board; what stands out over the edge is cut off. corner: that the part is measured from."""
    x, y = corner[0] + patch.x, corner[1] + patch.y
    high, wide = patch.cover.shape[:2]
    left, top = max(-x, 0), max(-y, 0)
    right, bottom = min(wide, board.shape[1] - x), min(high, board.shape[0] - y)
    part = board[y + top : y + bottom, x + left : x + right]
    cover = patch.cover[top:bottom, left:right]
    if opacity < 1:
        cover = cover * np.uint16(round(256 * max(opacity, 0.0))) // np.uint16(256)
    under = part * (255 - cover)
    part[:] = (under + patch.colour[top:bottom, left:right] * cover + 127) // 255


def _between(start: int, end: int, share: float) -> int:
    return round(start + (end - start) * share)


def decoded(picture: bytes) -> Pixels:
    """The pixels of a PNG file, with their cover."""
    decoder = av.VideoCodecContext.create("png", "r")
    (frame,) = decoder.decode(av.Packet(picture))
    return cast("Pixels", frame.to_ndarray(format="rgba"))


def _rgb(colour: str) -> tuple[int, int, int]:
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return red, green, blue
