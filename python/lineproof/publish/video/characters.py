"""Which characters the letters of a film have; the others are shown as one sign, and said.

>>> shown("Légal’s mate"), shown("将")
('Légal’s mate', '\\ufffd')
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from typing import Final

LACKING: Final = "\ufffd"

COVERED: Final = (
    (0x20, 0x7E), (0xA0, 0x17F), (0x192, 0x192), (0x218, 0x21B), (0x2C6, 0x2DD), (0x300, 0x30C), (0x327, 0x328), (0x370, 0x377),
    (0x37A, 0x37F), (0x384, 0x38A), (0x38C, 0x38C), (0x38E, 0x3A1), (0x3A3, 0x45F), (0x490, 0x491), (0x1E80, 0x1E85), (0x1EF2, 0x1EF3),
    (0x2010, 0x2015), (0x2018, 0x201E), (0x2020, 0x2022), (0x2026, 0x2026), (0x2030, 0x2030), (0x2032, 0x2033), (0x2039, 0x203A),
    (0x2044, 0x2044), (0x2060, 0x2060), (0x20AC, 0x20AC), (0x2116, 0x2116), (0x2122, 0x2122), (0x2153, 0x2154), (0x215B, 0x215E),
    (0x2190, 0x2195), (0x2212, 0x2213), (0x221E, 0x221E), (0x2248, 0x2248), (0x2260, 0x2260), (0x2264, 0x2265), (0x2299, 0x2299),
    (0x25A0, 0x25A1), (0x25B2, 0x25B3), (0x25CB, 0x25CB), (0x25CF, 0x25D0), (0x2654, 0x265F), (0x2713, 0x2713), (0x2717, 0x2717),
    (0xFFFD, 0xFFFD),
)  # fmt: skip
"""First and last code point of each range of the font."""


def shown(text: str) -> str:
    """The text as it can be drawn; letters and their accents are one character where there is one."""
    return "".join(c if _is_there(c) else LACKING for c in unicodedata.normalize("NFC", text))


def lacking(lines: Iterable[str]) -> list[str]:
    """Characters that cannot be drawn, each once, in their order."""
    found = (c for line in lines for c in unicodedata.normalize("NFC", line) if not _is_there(c))
    return list(dict.fromkeys(found))


def _is_there(character: str) -> bool:
    return any(first <= ord(character) <= last for first, last in COVERED)
