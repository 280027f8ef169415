"""References: which piece the author means by "his queen" or "the e5-pawn"."""

from __future__ import annotations

import re
from dataclasses import dataclass

from lineproof.engine import Board

from .board import LETTERS, pieces

_SQUARE = re.compile(r"[a-h][1-8]")


@dataclass(frozen=True)
class Reference:
    """What the words say of a piece. Each part is None when they do not say it.

    whose: "white", "black", "ours", "theirs" or None. letter: the piece as a FEN letter in lower case.
    """

    text: str
    whose: str | None
    letter: str | None
    square: str | None
    file: str | None
    plural: bool

    @classmethod
    def read(cls, text: str) -> Reference:
        """Reads a reference in normalised words, such as "black 's knight on f6"."""
        words = text.split()
        whose = None
        if words[0] in {"white", "black"}:
            whose = words[0]
        elif words[0] in {"our", "my"}:
            whose = "ours"
        elif words[0] in {"his", "her", "their"}:
            whose = "theirs"
        letter, plural, square, file = None, False, None, None
        for position, word in enumerate(words):
            single = word.removesuffix("s")
            if single in LETTERS and words[position + 1 : position + 2] != ["'s"]:
                letter, plural = LETTERS[single], word != single
            elif _SQUARE.fullmatch(word):
                square = word
            elif re.fullmatch("[a-h]", word) and position + 1 < len(words):
                file = word
        return cls(text, whose, letter, square, file, plural)

    def squares(self, board: Board, side: str | None) -> list[str]:
        """Squares of the pieces that fit. side: whose piece it must be, None for either."""
        if self.square is not None:
            at = board.piece_at(self.square)
            fits = at is not None and (self.letter is None or at.lower() == self.letter)
            sides = side is None or (at is not None and at.isupper() == (side == "white"))
            return [self.square] if fits and sides else []
        if self.letter is None:
            return []
        sides_asked = ("white", "black") if side is None else (side,)
        found = [at for s in sides_asked for at in pieces(board, s, self.letter)]
        return [at for at in found if self.file is None or at[0] == self.file]
