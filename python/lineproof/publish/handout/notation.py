"""Moves as they are printed: without the blank behind the number, in the letters of a language or in figurines.

>>> Notation("letters", "de").moves("5. Nf3 Kf8 6. Ng5"), Notation().moves("5... Kf8")
(['5.Sf3', 'Kf8', '6.Sg5'], ['5...Kf8'])
>>> Notation("figurine", "de").words("After 3... Nf6 Bob plays on.")
'After 3...\xa0♘f6 Bob plays on.'
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from lineproof.publish.letters import Language, Signs, in_letters

_NUMBERED: Final = re.compile(r"(\b\d+\.(?:\.\.)?) (?=\S)")
_CASTLING: Final = re.compile(r"O-O(?:-O)?")


@dataclass(frozen=True)
class Notation:
    """signs: letters of the language, or figurines, which are the same in every language."""

    signs: Signs = "letters"
    language: Language = "en"

    def words(self, text: str) -> str:
        """The author's words, with the moves in them so; no line breaks between a move and its number, nor in castling."""
        spelled = in_letters(text, "figurine" if self.signs == "figurine" else self.language)
        return _CASTLING.sub(_whole, _NUMBERED.sub("\\1\u00a0", spelled))

    def moves(self, text: str) -> list[str]:
        """Moves of our own spelling, "5. Nf3 Nf6", one by one."""
        spelled = in_letters(text, "figurine" if self.signs == "figurine" else self.language)
        return _NUMBERED.sub(r"\1", spelled).split()


def _whole(castling: re.Match[str]) -> str:
    return castling[0].replace("-", "\u2060-\u2060")
