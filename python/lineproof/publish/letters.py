"""Letters of the pieces in other languages, in moves and in nothing else.

>>> in_letters("After 5. Nf3 Kf8 Bob has e8=Q.", "de")
'After 5. Sf3 Kf8 Bob has e8=D.'

Source: the first letter of the piece's name in the language (FIDE Laws of Chess, C.2, from memory); the knight of English
and Spanish, whose letter the king has, common practice.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

Language = Literal["en", "de", "fr", "es", "nl"]
Signs = Literal["letters", "figurine"]

LETTERS: Final[Mapping[str, str]] = MappingProxyType(
    {"en": "KQRBN", "de": "KDTLS", "fr": "RDTFC", "es": "RDTAC", "nl": "KDTLP"}
)
"""King, queen, rook, bishop, knight: English, German, French, Spanish, Dutch."""
FIGURINES: Final = "♔♕♖♗♘"
"""The same as signs of Unicode, for every language."""

_MOVE = re.compile(
    r"(?<![^\W_])(?:(?P<piece>[KQRBN])(?P<to>[a-h]?[1-8]?x?[a-h][1-8])"
    r"|(?P<pawn>(?:[a-h]x)?[a-h][18]=?)(?P<new>[QRBN]))(?![^\W_])"
)


def in_letters(text: str, language: Language | Literal["figurine"]) -> str:
    """The text with the moves in it spelled with a language's letters, or figurines; a letter that is no part of a move stays."""
    if language == "en":
        return text
    signs = FIGURINES if language == "figurine" else LETTERS[language]
    letters = dict(zip(LETTERS["en"], signs, strict=True))

    def spelled(move: re.Match[str]) -> str:
        if move["piece"]:
            return letters[move["piece"]] + move["to"]
        return move["pawn"] + letters[move["new"]]

    return _MOVE.sub(spelled, text)
