"""Words on at most two lines.

>>> lines("The knight on f6 is pinned to the king.".split(), [False] * 9)
('The knight on f6 is pinned to the king.',)
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

COLUMNS: Final = 42
"""Characters of a line, and lines of a caption (common practice; two lines: BBC Subtitle Guidelines, from memory)."""
LINES: Final = 2


def text_of(words: Sequence[str], glued: Sequence[bool]) -> str:
    """glued: by word, whether it goes on the one before it."""
    return "".join(
        word if number == 0 or on else f" {word}"
        for number, (word, on) in enumerate(zip(words, glued, strict=True))
    )


def fit(words: Sequence[str], glued: Sequence[bool]) -> bool:
    """Whether `lines` finds a place for them all: the first line takes what it holds, the last one the rest."""
    left, room = LINES, 0
    for word, on in zip(words, glued, strict=True):
        room -= len(word) + (not on)
        if room < 0:
            left, room = left - 1, COLUMNS - len(word)
    return left >= 0


def lines(words: Sequence[str], glued: Sequence[bool]) -> tuple[str, ...] | None:
    """The words as one line, or two of nearly the same length, rather behind a point or a comma; None where they do not fit."""
    whole = text_of(words, glued)
    if len(whole) <= COLUMNS:
        return (whole,)
    if len(whole) > LINES * COLUMNS + 1:
        return None
    best: tuple[int, tuple[str, ...]] | None = None
    for at in range(1, len(words)):
        two = text_of(words[:at], glued[:at]), text_of(words[at:], glued[at:])
        if max(map(len, two)) > COLUMNS:
            continue
        uneven = abs(len(two[0]) - len(two[1])) - 12 * (two[0][-1] in ".?!,;:")
        if best is None or uneven < best[0]:
            best = uneven, two
    return None if best is None else best[1]
