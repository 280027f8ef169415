"""The letters a-h and the figures 1-8 of the coordinates, as strokes: no font is asked for.

    >>> COORDINATES["1"]
    'M-1.8 -2.4L.4 -4L.4 4'

Path data in board units about the middle of the glyph, to be stroked `STROKE` wide.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

STROKE: Final = 1.2

_BOWL: Final = "M-2.6 .3A2.6 2.6 0 0 1 2.6 .3A2.6 2.6 0 0 1 -2.6 .3Z"

COORDINATES: Final[Mapping[str, str]] = MappingProxyType(
    {
        "a": _BOWL + "M2.6 -2.4L2.6 3",
        "b": _BOWL + "M-2.6 -5L-2.6 3",
        "c": "M1.87 -1.51A2.6 2.6 0 1 0 1.87 2.11",
        "d": _BOWL + "M2.6 -5L2.6 3",
        "e": "M-2.6 .3L2.6 .3A2.6 2.6 0 1 0 1.7 2.27",
        "f": "M1.9 -4.9A2.3 2.3 0 0 0 -.5 -2.6L-.5 3M-2.3 -2.1L1.7 -2.1",
        "g": _BOWL + "M2.6 -2.4L2.6 3.2A2.6 2.6 0 0 1 -1.9 5",
        "h": "M-2.4 -5L-2.4 3M-2.4 .1A2.4 2.4 0 0 1 2.4 .1L2.4 3",
        "1": "M-1.8 -2.4L.4 -4L.4 4",
        "2": "M-2.3 -1.9A2.3 2.3 0 1 1 1.7 -.2L-2.4 4L2.5 4",
        "3": "M-1.8 -2.9A2 2 0 1 1 0 0A2.1 2.1 0 1 1 -2 2.7",
        "4": "M1.2 4L1.2 -4L-2.6 1.8L2.6 1.8",
        "5": "M2 -4L-1.7 -4L-2 -.4A2.5 2.4 0 1 1 -2.3 2.9",
        "6": "M1.4 -4L-2.1 .4M-2.4 1.6A2.4 2.4 0 0 1 2.4 1.6A2.4 2.4 0 0 1 -2.4 1.6Z",
        "7": "M-2.4 -4L2.4 -4L-.8 4",
        "8": "M-1.9 -2.1A1.9 1.9 0 0 1 1.9 -2.1A1.9 1.9 0 0 1 -1.9 -2.1Z"
        "M-2.1 1.9A2.1 2.1 0 0 1 2.1 1.9A2.1 2.1 0 0 1 -2.1 1.9Z",
    }
)
