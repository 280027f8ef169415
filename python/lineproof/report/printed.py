"""Standard glyphs as they are printed.

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12, section 10 (numbers and
meanings); the signs are those of printed opening encyclopaedias (common practice).
"""

from __future__ import annotations

from typing import Final

from lineproof.lesson import Place

SIGNS: Final = {
    1: "!", 2: "?", 3: "!!", 4: "??", 5: "!?", 6: "?!", 7: "□", 8: "□",
    10: "=", 11: "=", 12: "=", 13: "∞", 14: "+=", 15: "=+", 16: "±", 17: "∓", 18: "+−", 19: "−+", 20: "+−", 21: "−+",
}  # fmt: skip
"""Sign by glyph number; a number that is not here is printed as it is written."""


def signs_of(place: Place) -> tuple[tuple[int, int, str], ...]:
    """Each glyph beside a move: where it stands in the text (start, end) and its printed sign."""
    text = place.lesson.text
    spans = [(start, end) for _, start, end in place.lesson.pgn.glyphs(place.index)]
    return tuple(
        (start, end, text[start:end] if number is None else SIGNS.get(number, text[start:end]))
        for number, (start, end) in zip(place.glyph_numbers, spans, strict=True)
    )


def with_sign(move: str, sign: str) -> str:
    """The move with its sign: glued for marks of the move, apart for verdicts."""
    return move + sign if set(sign) <= set("!?") else f"{move} {sign}"
