"""What can be wrong with a diagram that somebody asked for.

>>> raise DiagramError("rank 8 has 9 squares, not 8")
Traceback (most recent call last):
    ...
lineproof.diagram.errors.DiagramError: rank 8 has 9 squares, not 8
"""

from __future__ import annotations


class DiagramError(ValueError):
    """A position, mark, size or id that cannot be drawn; the message names the place."""


class RendererMissingError(ImportError):
    """The library that turns SVG into PNG is not installed; the message names the way out."""
