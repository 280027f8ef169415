"""The parts that diagrams of one theme share: board, pieces, coordinate glyphs.

A page with many diagrams carries `sprite(theme)` once, and each diagram points into it:

    >>> from lineproof.diagram import PRINT
    >>> sprite(PRINT).startswith('<svg xmlns="http://www.w3.org/2000/svg"')
    True
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from .errors import DiagramError
from .glyphs import COORDINATES, STROKE
from .pieces import KNOCK_OUT, OUTLINE, PIECES, UNIT, PieceDrawing
from .placement import LETTERS
from .themes import Theme

BOARD: Final = 8 * UNIT
"""Side of the board in its own units."""

HATCH_PITCH: Final = 4
"""Distance of the hatching lines along an edge; it divides `UNIT`, so the lines never break."""

HATCH_WIDTH: Final = 0.5

_RULES: Final = ((1.0, 0.9), (3.8, 0.9))
"""The two rules of the frame: distance from the board to the middle of the line, and width."""

_JOIN: Final = 'stroke-linejoin="miter" stroke-miterlimit="3"'

_PREFIX = re.compile(r"[A-Za-z][A-Za-z0-9_-]{0,79}", re.ASCII)


def checked_prefix(prefix: str) -> str:
    """The prefix itself, if it can begin an id.

    :raises DiagramError: if it is not a letter with letters, digits, `-` and `_` behind it
    """
    if not _PREFIX.fullmatch(prefix):
        raise DiagramError(
            f"{prefix[:20]!r} cannot begin an id: write a letter, then letters, digits, - or _"
        )
    return prefix


def sprite_prefix(theme: Theme) -> str:
    """How the ids inside `sprite(theme)` begin."""
    return checked_prefix(f"sprite-{theme.name}")


def sprite(theme: Theme) -> str:
    """An SVG without size that holds the shared parts, for `diagram(..., use_sprite=True)`."""
    parts = definitions(theme, sprite_prefix(theme), pieces=LETTERS, glyphs=COORDINATES)
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" width="0" height="0" aria-hidden="true" '
        f'focusable="false" style="position:absolute">{parts}</svg>'
    )


def piece_id(prefix: str, letter: str) -> str:
    """The id of a piece by its FEN letter."""
    return f"{prefix}-{'w' if letter.isupper() else 'b'}{letter.lower()}"


def glyph_id(prefix: str, glyph: str) -> str:
    """The id of a coordinate glyph, "a" to "h" or "1" to "8"."""
    return f"{prefix}-at-{glyph}"


def ground_id(prefix: str) -> str:
    """The id of the empty board with its frame."""
    return f"{prefix}-ground"


def definitions(theme: Theme, prefix: str, *, pieces: Iterable[str], glyphs: Iterable[str]) -> str:
    """A `<defs>` element with the empty board, the given pieces (FEN letters) and glyphs."""
    parts = [_hatching(theme, prefix), _ground(theme, prefix)]
    parts += [_piece(theme, prefix, letter) for letter in LETTERS if letter in set(pieces)]
    parts += [
        f'<path id="{glyph_id(prefix, glyph)}" d="{COORDINATES[glyph]}" fill="none" '
        f'stroke="{theme.coordinates}" stroke-width="{STROKE}"/>'
        for glyph in glyphs
        if theme.coordinates
    ]
    return f"<defs>{''.join(parts)}</defs>"


def _hatching(theme: Theme, prefix: str) -> str:
    """The tile of a whole square: seams fall on the edges of squares, lines miss their corners."""
    if not theme.hatching:
        return ""
    lines = ""
    for sum_of_both in range(HATCH_PITCH // 2, 2 * UNIT, HATCH_PITCH):
        near, far = max(0, sum_of_both - UNIT) - 1, min(sum_of_both, UNIT) + 1
        lines += f"M{near} {far}L{far} {near}"
    return (
        f'<pattern id="{prefix}-hatch" patternUnits="userSpaceOnUse" width="{UNIT}" '
        f'height="{UNIT}"><path d="{lines}" fill="none" stroke="{theme.hatching}" '
        f'stroke-width="{HATCH_WIDTH}"/></pattern>'
    )


def _ground(theme: Theme, prefix: str) -> str:
    dark = "".join(
        f"M{column * UNIT} {row * UNIT}h{UNIT}v{UNIT}h-{UNIT}z"
        for row in range(8)
        for column in range(8)
        if (row + column) % 2
    )
    parts = [f'<rect width="{BOARD}" height="{BOARD}" fill="{theme.light}"/>']
    parts.append(f'<path d="{dark}" fill="{theme.dark}"/>')
    if theme.hatching:
        parts.append(f'<path d="{dark}" fill="url(#{prefix}-hatch)"/>')
    if theme.rule:
        parts += [
            f'<rect x="{-away}" y="{-away}" width="{BOARD + 2 * away}" height="{BOARD + 2 * away}" '
            f'fill="none" stroke="{theme.rule}" stroke-width="{width}"/>'
            for away, width in _RULES
        ]
    return f'<g id="{ground_id(prefix)}">{"".join(parts)}</g>'


def _piece(theme: Theme, prefix: str, letter: str) -> str:
    drawing = next(drawn for kind, drawn in PIECES.items() if kind == letter.lower())
    shape = [_knock_out(theme, drawing)]
    shape.append(
        f'<path d="{drawing.body}" fill="{theme.ink}" stroke="{theme.ink}" '
        f'stroke-width="{2 * OUTLINE}" {_JOIN}/>'
    )
    if letter.isupper():
        shape.append(f'<path d="{drawing.body}" fill="{theme.paper}"/>')
        shape.append(f'<path d="{drawing.crest + drawing.cuts}" fill="{theme.ink}"/>')
    else:
        shape.append(f'<path d="{drawing.crest}" fill="{theme.ink}"/>' if drawing.crest else "")
        shape.append(f'<path d="{drawing.cuts}" fill="{theme.paper}"/>')
    return f'<g id="{piece_id(prefix, letter)}">{"".join(shape)}</g>'


def _knock_out(theme: Theme, drawing: PieceDrawing) -> str:
    """The hairline around the whole silhouette, under everything else of the piece."""
    if not theme.knock_out:
        return ""
    layers = ((drawing.body, OUTLINE + KNOCK_OUT), (drawing.crest, KNOCK_OUT))
    return "".join(
        f'<path d="{path}" fill="{theme.knock_out}" stroke="{theme.knock_out}" '
        f'stroke-width="{2 * width:g}" {_JOIN}/>'
        for path, width in layers
        if path
    )
