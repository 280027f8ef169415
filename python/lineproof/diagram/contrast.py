"""Contrast of two colours, as WCAG 2.2 defines it.

    >>> round(contrast_ratio("#000000", "#FFFFFF"), 2)
    21.0

Source: Web Content Accessibility Guidelines 2.2, section 6, "relative luminance" and "contrast
ratio" (formulas from memory). What must reach which ratio: success criteria 1.4.3 and 1.4.11.
"""

from __future__ import annotations

import re
from typing import Final

from .errors import DiagramError

NON_TEXT_MINIMUM: Final = 3.0
"""WCAG 2.2, success criterion 1.4.11 (Non-text Contrast)."""

TEXT_MINIMUM: Final = 4.5
"""WCAG 2.2, success criterion 1.4.3 (Contrast, Minimum)."""

_HEX = re.compile(r"#[0-9A-Fa-f]{6}", re.ASCII)


def relative_luminance(colour: str) -> float:
    """Relative luminance of `#RRGGBB` in sRGB, 0 (black) to 1 (white).

    :raises DiagramError: if `colour` is not of that form
    """
    if not _HEX.fullmatch(colour):
        raise DiagramError(f"{colour[:20]!r} is not a colour: write #RRGGBB")
    red, green, blue = (_linear(int(colour[at : at + 2], 16) / 255) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast_ratio(one: str, other: str) -> float:
    """Contrast ratio of two colours `#RRGGBB`, 1 to 21, the same in either order.

    :raises DiagramError: if a colour is not of that form
    """
    darker, lighter = sorted((relative_luminance(one), relative_luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else float(((channel + 0.055) / 1.055) ** 2.4)
