"""Verdict signs in words, for readers who do not know the signs of printed encyclopaedias.

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12, section 10 (numbers; from memory).
"""

from __future__ import annotations

from typing import Final

from lineproof.lesson import Place
from lineproof.report.printed import SIGNS

WORDS: Final = {
    7: "the only move", 8: "the only move",
    10: "the position is level", 11: "the position is level", 12: "the position is level",
    13: "the position is unclear",
    14: "White is slightly better", 15: "Black is slightly better",
    16: "White is clearly better", 17: "Black is clearly better",
    18: "White is winning", 19: "Black is winning", 20: "White is winning", 21: "Black is winning",
}  # fmt: skip
"""By glyph number; the words are those of the bands."""


def with_verdict(move: str, place: Place) -> tuple[str, str]:
    """The move with its marks, and its verdicts in words, "" without any. Other signs are left out."""
    known = dict.fromkeys(number for number in place.glyph_numbers if number is not None)
    marks = "".join(SIGNS[n] for n in known if n in SIGNS and n not in WORDS)
    return move + marks, ", ".join(dict.fromkeys(WORDS[n] for n in known if n in WORDS))
