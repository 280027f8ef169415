"""References: which piece the author means by "his queen", "the e5-pawn" or "Black's king's bishop"."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from lineproof.engine import Board

from .board import LETTERS, pieces
from .structure import colour

_SQUARE = re.compile(r"[a-h][1-8]")
_HOMES = {("n", "king"): "g", ("n", "queen"): "b", ("r", "king"): "h", ("r", "queen"): "a"}
"""The files on which the pieces of a wing begin."""
_PAWNS = {"king": "e", "queen": "d"}
_OTHER = {"king": "queen", "queen": "king"}


@dataclass(frozen=True)
class Reference:
    """What the words say of a piece. Each part is None when they do not say it.

    whose: "white", "black", "ours", "theirs" or None. letter: the piece as a FEN letter in lower case.
    flank: "king" or "queen", for the king's bishop and the queen's. tint: "light" or "dark", for a bishop's squares.
    """

    text: str
    whose: str | None
    letter: str | None
    square: str | None
    file: str | None
    plural: bool
    flank: str | None = None
    tint: str | None = None

    @classmethod
    @lru_cache(4096)  # the same few words all through a lesson
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
        letter, plural, square, file, flank = None, False, None, None, None
        for position, word in enumerate(words):
            single = word.removesuffix("s")
            owns = words[position + 1 : position + 2] == ["'s"]
            if owns and word in _OTHER:
                flank = word
            elif single in LETTERS and not owns:
                letter, plural = LETTERS[single], word != single
            elif _SQUARE.fullmatch(word):
                square = word
            elif re.fullmatch("[a-h]", word) and position + 1 < len(words):
                file = word
        tint = next((w for w in ("light", "dark") if letter == "b" and w in words), None)
        return cls(text, whose, letter, square, file, plural, flank, tint)

    def squares(self, board: Board, side: str | None) -> list[str]:
        """Squares of the pieces that fit. side: whose piece it must be, None for either."""
        if self.square is not None:
            at = board.piece_at(self.square)
            fits = at is not None and (self.letter is None or at.lower() == self.letter)
            sides = side is None or (at is not None and at.isupper() == (side == "white"))
            return [self.square] if fits and sides else []
        if self.letter is None:
            return []
        found: list[str] = []
        for one in ("white", "black") if side is None else (side,):
            found += self._of_flank(one, pieces(board, one, self.letter))
        found = [at for at in found if self.tint is None or colour(at) == self.tint]
        return [at for at in found if self.file is None or at[0] == self.file]

    def _of_flank(self, side: str, found: list[str]) -> list[str]:
        """Of a side's pieces those of the wing that is named; where a knight or rook came from is known of the other on its first square."""
        if self.flank is None:
            return found
        if self.letter == "b":
            light = (side == "white") == (self.flank == "king")
            return [at for at in found if (colour(at) == "light") == light]
        if self.letter == "p":
            return [at for at in found if at[0] == _PAWNS[self.flank]]
        if self.letter not in {"n", "r"}:
            return found
        rank = "1" if side == "white" else "8"
        home = _HOMES[self.letter, self.flank] + rank
        away = _HOMES[self.letter, _OTHER[self.flank]] + rank
        return [home] if home in found else [at for at in found if at != away]
