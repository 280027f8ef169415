"""The words of a running order, each with the time at which it is said."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass

from lineproof.order import Cue, RunningOrder
from lineproof.order.spoken import words_in
from lineproof.order.timing import spoken
from lineproof.report.plain import plain

from .layout import COLUMNS

_SET_UP = re.compile(r"\ASet up this position\. ")
_JOINER = "\u200d"


@dataclass(frozen=True)
class Timed:
    """A word, or a part of one that is longer than a line. begins, ends: in seconds. opens: whether a cue begins with it.
    glued: it goes on the word before it without a blank."""

    text: str
    begins: float
    ends: float
    opens: bool = False
    glued: bool = False


def timed(order: RunningOrder) -> list[Timed]:
    """Every word that is said, in its order: the time of a cue is shared out by what each word takes to say."""
    return [word for cue in order.cues for word in _words(cue, order.words_a_minute)]


def said(cue: Cue) -> str:
    """What a cue says, as one line of text; "" where nothing is said, or a sentence before it has said it."""
    if cue.kind == "mark" or (cue.kind == "pause" and cue.asked):
        return ""
    text = plain(cue.words)
    if cue.kind == "play":
        return f"{text[:1].upper()}{text[1:]}."
    return _SET_UP.sub("", text) if cue.kind == "set up" else text


def _words(cue: Cue, words_a_minute: int) -> Iterator[Timed]:
    words = said(cue).split()
    weights = [words_in(word) for word in words]
    seconds = spoken(cue.words, words_a_minute)
    each = seconds / sum(weights) if sum(weights) else 0.0
    at = cue.begins
    for number, (word, weight) in enumerate(zip(words, weights, strict=True)):
        parts = list(_parts(word))
        for part_number, part in enumerate(parts):
            until = at + each * weight / len(parts)
            first = number == part_number == 0
            yield Timed(part, at, until, opens=first, glued=part_number > 0)
            at = until


def _parts(word: str) -> Iterator[str]:
    """A word in parts that fit on a line each; no part begins with what belongs to the letter before it."""
    while len(word) > COLUMNS:
        cut = COLUMNS
        while cut > 1 and _belongs(word, cut):
            cut -= 1
        cut = COLUMNS if cut == 1 else cut
        yield word[:cut]
        word = word[cut:]
    yield word


def _belongs(word: str, at: int) -> bool:
    mark = unicodedata.category(word[at]).startswith("M")
    return mark or _JOINER in word[at - 1 : at + 1]
