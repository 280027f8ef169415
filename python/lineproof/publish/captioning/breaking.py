"""Where one caption ends and the next begins: the cheapest way to cut all words, by a table of costs.

A caption stands from its first word until it is read, at most until the next one. Rather than break the rules of `reading`, a
caption ends in the middle of a sentence; rather than that, at a comma; best of all where a sentence ends.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from lineproof.order import RunningOrder

from .layout import fit, lines
from .reading import LONGEST, SHORTEST, SPEED
from .timed import Timed, timed

_STOP = re.compile(r"[.?!…][)\]\"'”’»]*\Z")
_COMMA = re.compile(r"[,;:–—][)\]\"'”’»]*\Z")
_LEANS = re.compile(
    r"(?:a|an|the|of|to|with|on|in|at|by|for|from|and|or|but|that|which|is|are|was|it|he|she|we|you|i|our|his|its|not|no|white|black)",
    re.I,
)
"""Words that lean on the next one."""

# Costs; one caption more costs 1.
ONE: Final = 1.0
AT_COMMA, ANYWHERE, LEANING, ALONE = 1.0, 3.0, 4.5, 2.0
"""Behind a comma; elsewhere; behind a word that leans on the next; for a word that stands alone."""
TWO_CUES, SILENCE = 1.5, 4.0
"""Two cues in one caption; a second of silence inside one."""
TOO_SHORT, TOO_FAST, TOO_LONG = 100.0, 20.0, 20.0
"""A second that is missing for the eye, for reading; that a caption is spoken on after it has gone."""
NEVER: Final = 1000.0


@dataclass(frozen=True)
class Caption:
    """begins, ends: in milliseconds. lines: one or two."""

    begins: int
    ends: int
    lines: tuple[str, ...]

    @property
    def seconds(self) -> float:
        return (self.ends - self.begins) / 1000

    @property
    def speed(self) -> float:
        """Characters a second, blanks and line breaks counted."""
        return len("\n".join(self.lines)) / self.seconds


def captions(order: RunningOrder) -> tuple[Caption, ...]:
    """All that is said, in captions that do not overlap."""
    words = timed(order)
    return tuple(_captions(words, order.seconds))


def _captions(words: Sequence[Timed], end: float) -> Iterator[Caption]:
    cuts = _cuts(words, end)
    for at, to in pairwise(cuts):
        shown = _lines(words, at, to)
        assert shown is not None
        begins = round(1000 * words[at].begins)
        until = round(1000 * _next(words, to, end))
        spoken = words[to - 1].ends - words[at].begins
        wanted = max(spoken, SHORTEST, len("\n".join(shown)) / SPEED)
        ends = min(until, begins + round(1000 * min(wanted, LONGEST)))
        yield Caption(begins, max(ends, begins + 1), shown)


def _cuts(words: Sequence[Timed], end: float) -> list[int]:
    """The numbers of the words that captions begin with, and the number of words."""
    cheapest = [0.0] + [float("inf")] * len(words)
    before = [0] * (len(words) + 1)
    for at in range(len(words)):
        for to, cost in _costs(words, at, end):
            if cheapest[at] + cost < cheapest[to]:
                cheapest[to], before[to] = cheapest[at] + cost, at
    cuts = [len(words)]
    while cuts[-1]:
        cuts.append(before[cuts[-1]])
    return cuts[::-1]


def _costs(words: Sequence[Timed], at: int, end: float) -> Iterator[tuple[int, float]]:
    """Each caption that may begin with a word: where it would end, and what it costs."""
    begins = words[at].begins
    inside = 0.0
    length = 0
    for to in range(at + 1, len(words) + 1):
        last = words[to - 1]
        length += len(last.text) + (not last.glued and to - 1 > at)
        if to - 1 > at:
            silence = last.begins - words[to - 2].ends
            inside += TWO_CUES * last.opens + SILENCE * max(silence, 0.0)
        some = words[at:to]
        if not fit([word.text for word in some], [word.glued for word in some]):
            return
        room = min(_next(words, to, end) - begins, LONGEST)
        cost = ONE + inside + _ending(words, at, to)
        cost += TOO_SHORT * max(SHORTEST - room, 0.0) + NEVER * (room < 0.001)
        cost += TOO_FAST * max(length / SPEED - room, 0.0)
        cost += TOO_LONG * max(last.ends - begins - LONGEST, 0.0)
        yield to, cost


def _ending(words: Sequence[Timed], at: int, to: int) -> float:
    """What it costs to end a caption here."""
    if to == len(words) or words[to].opens:
        return 0.0
    alone = ALONE * (to - at == 1)
    text = words[to - 1].text
    if _STOP.search(text):
        return alone
    if _COMMA.search(text):
        return alone + AT_COMMA
    return alone + (LEANING if _LEANS.fullmatch(text) else ANYWHERE)


def _next(words: Sequence[Timed], to: int, end: float) -> float:
    """When the next caption begins; after the last one, the end of the order."""
    return words[to].begins if to < len(words) else end


def _lines(words: Sequence[Timed], at: int, to: int) -> tuple[str, ...] | None:
    some = words[at:to]
    return lines([word.text for word in some], [word.glued for word in some])
