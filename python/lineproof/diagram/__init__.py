"""Positions as diagrams: SVG, PNG and a text alternative, with the marks of a lesson.

>>> from lineproof.diagram import ShownMove, diagram
>>> fen = "rnbqkb1r/pppp1ppp/5n2/4p3/4P3/2N5/PPPP1PPP/R1BQKBNR w KQkq - 2 3"
>>> svg = diagram(fen, marks=[ShownMove("f2", "f4", "white")])
"""

from __future__ import annotations

from .alternative import alternative
from .board import diagram
from .contrast import contrast_ratio, relative_luminance
from .errors import DiagramError, RendererMissingError
from .marks import JustPlayed, Mark, MarkedSquare, Pin, ShownMove, Side
from .pieces import PIECES, PieceDrawing
from .png import png
from .sprite import sprite
from .themes import PRINT, PRINT_DARK, STAGE, THEMES, Theme

__all__ = [
    "PIECES",
    "PRINT",
    "PRINT_DARK",
    "STAGE",
    "THEMES",
    "DiagramError",
    "JustPlayed",
    "Mark",
    "MarkedSquare",
    "PieceDrawing",
    "Pin",
    "RendererMissingError",
    "ShownMove",
    "Side",
    "Theme",
    "alternative",
    "contrast_ratio",
    "diagram",
    "png",
    "relative_luminance",
    "sprite",
]
