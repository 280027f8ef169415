"""A diagram as a PNG picture, through resvg.

>>> from lineproof.diagram import diagram
>>> png(diagram("8/8/8/8/8/8/8/8"), 240)[:4]
b'\\x89PNG'
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from .board import LARGEST
from .errors import DiagramError, RendererMissingError


def png(svg: str, width: int, fonts: Sequence[Path] = ()) -> bytes:
    """The PNG file of a diagram's SVG text, `width` pixels wide.

    No fonts are loaded but those that are given: diagrams hold none. A diagram that uses a sprite has no parts of its own,
    so draw it with `use_sprite=False` for a picture.

    :raises DiagramError: if the width is not 1 to `LARGEST`, or `svg` cannot be read
    :raises RendererMissingError: if resvg-py is not installed
    """
    if not 1 <= width <= LARGEST:
        raise DiagramError(f"a picture {width} px wide cannot be made: choose 1 to {LARGEST}")
    try:
        import resvg_py
    except ImportError as missing:
        raise RendererMissingError(
            "PNG pictures need resvg-py: pip install 'lineproof[publish]'"
        ) from missing
    try:
        return resvg_py.svg_to_bytes(
            svg_string=svg,
            width=width,
            skip_system_fonts=True,
            font_files=[str(font) for font in fonts],
        )
    except ValueError as broken:
        raise DiagramError(f"the SVG cannot be drawn: {broken}") from broken
