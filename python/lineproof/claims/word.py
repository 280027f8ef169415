"""A word of a sentence, with its exact span."""

from __future__ import annotations

import re
from typing import NamedTuple


class Word(NamedTuple):
    """One word, move or punctuation mark.

    norm: lower case, numbers as digits, contractions parted; a move keeps its case and loses its blanks.
    start, end: offsets in the text that the sentence was cut from. spoken: a move said in words, "knight to f6".
    """

    norm: str
    start: int
    end: int
    move: re.Match[str] | None = None
    spoken: bool = False

    @property
    def san(self) -> str | None:
        """The move without number and marks, or None."""
        return None if self.move is None else self.move["san"]


__all__ = ["Word"]
