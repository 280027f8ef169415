"""The phrases of kinds that a sentence holds, by its words; only kinds with a word of it are asked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import accumulate
from typing import Any

from .around import PUNCTUATION, TRAIL
from .claim import Claim
from .here import Here
from .kind import Kind
from .phrase import MOVE
from .registry import all_kinds
from .sentence import Sentence
from .word import Word


def spelt(words: Sequence[Word]) -> str:
    """The words, each with one blank before it."""
    return "".join(f" {w.norm}" for w in words)


def worded(here: Here, sentence: Sentence, first: int, last: int) -> Here:
    """The same place with words first..last as the clause."""
    while last > first and sentence.words[last].norm in PUNCTUATION:
        last -= 1
    start, end = sentence.slice(first, last)
    text = sentence.text[start - sentence.start : end - sentence.start]
    return replace(here, words=text, start=start, end=end)


@dataclass
class Part:
    """Words first..last-1 of a sentence: read as claims, or not (claims is None)."""

    first: int
    last: int
    claims: list[Claim] | None


class SaidPhrases:
    """The phrases in a sentence, and the parts of it that have been told apart. idle: there is no phrase to fit and no move to play."""

    def __init__(self, here: Here, sentence: Sentence) -> None:
        self.here = here
        self.sentence = sentence
        self.parts: list[Part] = []
        self.reasons: list[str] = []
        self.condition = ""
        self.phrases: dict[tuple[int, int], tuple[Kind, dict[str, Any]] | None] = {}
        said = {w.norm for w in sentence.words}
        self.kinds = [kind for kind in _phrased() if not kind.vocabulary.isdisjoint(said)]
        self.idle = not self.kinds and not any(
            w.move is not None or MOVE.fullmatch(w.norm) for w in sentence.words
        )
        self.line = spelt(sentence.words)
        self.offsets = [0, *accumulate(1 + len(w.norm) for w in sentence.words)]
        self.dangling = False
        self.adrift = False

    def norms(self, first: int, last: int) -> str:
        """Words first..last-1, each with one blank before it."""
        return self.line[self.offsets[first] : self.offsets[last]]

    def _phrase(self, first: int, last: int) -> tuple[Kind, dict[str, Any]] | None:
        """The first phrase of any kind that accounts for words first..last-1, remembered."""
        if not self.kinds:
            return None
        if (first, last) not in self.phrases:
            self.phrases[first, last] = self._look(first, last)
        return self.phrases[first, last]

    def _look(self, first: int, last: int) -> tuple[Kind, dict[str, Any]] | None:
        said = {w.norm for w in self.sentence.words[first:last]}
        kinds = [kind for kind in self.kinds if not kind.vocabulary.isdisjoint(said)]
        if not kinds:
            return None
        line = short = self.norms(first, last)
        while (trail := TRAIL.search(short)) is not None:
            short = short[: trail.start()]
        texts = (line, short) if short and short != line else (line,)
        for kind in kinds:
            for phrase in kind.compiled:
                for text in texts:
                    slots = phrase.match(text)
                    if slots is not None:
                        return kind, slots
        return None


@cache
def _phrased() -> tuple[Kind, ...]:
    """The kinds that read phrases."""
    return tuple(kind for kind in all_kinds() if kind.read is not None and kind.phrases)


__all__ = ["Part", "SaidPhrases", "spelt", "worded"]
