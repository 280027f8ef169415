"""A position as a standalone SVG, with its marks and its text alternative.

>>> svg = diagram("4k3/8/8/8/8/8/8/4K3 w - - 0 1", size=240)
>>> svg.count('class="piece"')
2
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final
from xml.sax.saxutils import escape

from .alternative import alternative
from .errors import DiagramError
from .mark_drawing import Corner, draw_mark
from .marks import JustPlayed, Mark, MarkedSquare
from .pieces import UNIT
from .placement import Placement, read_placement
from .sprite import (
    BOARD,
    checked_prefix,
    definitions,
    glyph_id,
    ground_id,
    piece_id,
    sprite_prefix,
)
from .squares import FILES, RANKS, file_and_rank
from .themes import PRINT, Theme

LARGEST: Final = 16_384
"""The largest width of a diagram, in pixels."""

_FRAME_MARGIN: Final = 8
_COORDINATE_MARGIN: Final = 22
_COORDINATE_AWAY: Final = 12.5

_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What no XML text may hold: XML 1.0, fifth edition, production 2 (Char), from memory."""


def diagram(
    fen: str,
    *,
    marks: Sequence[Mark] = (),
    theme: Theme = PRINT,
    flipped: bool = False,
    coordinates: bool = True,
    size: int = 360,
    title: str | None = None,
    id_prefix: str = "diagram",
    use_sprite: bool = False,
) -> str:
    """The SVG text of a diagram, `size` pixels wide and high.

    fen: a FEN or its first field; kings are not asked for.
    flipped: seen from Black's side, h1 at the upper left.
    coordinates: drawn where the theme has them (the stage has none).
    title: the accessible name; by default "White to move", "Black to move" or "Position".
    id_prefix: begins every id, so give each diagram of a page its own.
    use_sprite: point into the page's `sprite(theme)` instead of carrying board and pieces along.

    :raises DiagramError: if the placement, the size or the id prefix is wrong
    """
    if not 1 <= size <= LARGEST:
        raise DiagramError(f"a diagram of {size} px cannot be drawn: choose 1 to {LARGEST}")
    placement = read_placement(fen)
    own = checked_prefix(id_prefix)
    shared = sprite_prefix(theme) if use_sprite else own
    glyphs = FILES + RANKS if coordinates and theme.coordinates else ""
    corner = corner_of(flipped)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{size}" height="{size}" '
        f'viewBox="{_view_box(theme, bool(glyphs))}" role="img" '
        f'aria-labelledby="{own}-title" aria-describedby="{own}-desc">'
        f'<title id="{own}-title">{_text(title or _default_title(placement))}</title>'
        f'<desc id="{own}-desc">{_text(alternative(fen, marks))}</desc>'
    )
    parts = [head]
    if not use_sprite:
        parts.append(definitions(theme, own, pieces=set(placement.pieces.values()), glyphs=glyphs))
    if theme.page:
        parts.append(
            f'<rect x="-{UNIT}" y="-{UNIT}" width="{BOARD + 2 * UNIT}" '
            f'height="{BOARD + 2 * UNIT}" fill="{theme.page}"/>'
        )
    parts.append(f'<use href="#{ground_id(shared)}"/>')
    if glyphs:
        parts.append(_coordinates(shared, corner))
    under, over = layered(marks)
    occupied = placement.pieces.keys()
    parts += [draw_mark(mark, corner, theme, occupied) for mark in under]
    parts += [_piece(shared, square, letter, corner) for square, letter in placement.pieces.items()]
    parts += [draw_mark(mark, corner, theme, occupied) for mark in over]
    return "".join(parts) + "</svg>"


def layered(marks: Sequence[Mark]) -> tuple[list[Mark], list[Mark]]:
    """What lies under the pieces and what over them: corner marks under them, dots over strokes; lines over them."""
    under: list[Mark] = [mark for mark in marks if isinstance(mark, MarkedSquare)]
    under += [mark for mark in marks if isinstance(mark, JustPlayed)]
    return under, [mark for mark in marks if not isinstance(mark, MarkedSquare | JustPlayed)]


def _view_box(theme: Theme, has_glyphs: bool) -> str:
    """The board with room for its frame; coordinates stand to the left and below."""
    frame = _FRAME_MARGIN if theme.rule else 0
    wide = _COORDINATE_MARGIN if has_glyphs else frame
    side = BOARD + frame + wide
    return f"{-wide} {-frame} {side} {side}"


def corner_of(flipped: bool) -> Corner:
    """Where squares lie on a board that is seen from Black's side or not."""

    def corner(square: str) -> tuple[int, int]:
        file, rank = file_and_rank(square)
        column, row = (7 - file, rank) if flipped else (file, 7 - rank)
        return column * UNIT, row * UNIT

    return corner


def _piece(prefix: str, square: str, letter: str, corner: Corner) -> str:
    x, y = corner(square)
    return (
        f'<use class="piece" data-square="{square}" href="#{piece_id(prefix, letter)}" '
        f'x="{x}" y="{y}"/>'
    )


def _coordinates(prefix: str, corner: Corner) -> str:
    below, left, half = BOARD + _COORDINATE_AWAY, -_COORDINATE_AWAY, UNIT // 2
    files = [(file, corner(f"{file}1")[0] + half, below) for file in FILES]
    ranks = [(rank, left, corner(f"a{rank}")[1] + half) for rank in RANKS]
    uses = "".join(
        f'<use href="#{glyph_id(prefix, glyph)}" x="{x:g}" y="{y:g}"/>'
        for glyph, x, y in (*files, *ranks)
    )
    return f'<g class="coordinates">{uses}</g>'


def _default_title(placement: Placement) -> str:
    return f"{placement.to_move.capitalize()} to move" if placement.to_move else "Position"


def _text(words: str) -> str:
    return escape(_NOT_XML.sub("\ufffd", words))
