"""Which diagrams stand in the text: one a position, and no two nearer to each other than print can bear."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from lineproof.engine import Board
from lineproof.lesson import Lesson
from lineproof.publish.moments import BRANCH, PAUSE, VERDICT, Moment
from lineproof.publish.product import Found

from .lines import Line, by_place

ASKED: Final = 12
"""Pause points in the text at most: those of the taught side that are met most often. The others are exercises."""
RANKS: Final = (PAUSE, VERDICT, BRANCH)
"""Where two are too near to each other, the kind that comes first here stays; what the author has chosen always does."""


FIRST: Final = Board().key
"""Of the position in which games begin."""


def by_author(moment: Moment) -> bool:
    """Whether the author himself wants the diagram, and nobody may leave it out."""
    return bool(set(moment.kinds) - set(RANKS))


def in_text(lesson: Lesson, found: Found, moments: Sequence[Moment]) -> dict[int, Moment]:
    """By the index of its place the moment to show; where the reader is asked, that one, for marks would give the answer away."""
    side = lesson.settings.side
    own = [p.place.index for p in found.studied.pauses if p.place.board.turn == side]
    asked = set(own[:ASKED])
    chosen: dict[int, Moment] = {}
    for moment in moments:
        index = moment.place.index
        if moment.place.key == FIRST and not by_author(moment):
            continue  # every reader knows it
        if moment.pause is None or index in asked:
            before = chosen.get(index)
            if before is None or (before.pause is None and not by_author(before)):
                chosen[index] = moment
    return chosen


def spread(
    lesson: Lesson, lines: Iterable[Line], chosen: Mapping[int, Moment], apart: int
) -> dict[int, Moment]:
    """Those that stay: the author's, then by rank, each if there is room; short sidelines have the author's only.

    apart: moves and words that lie between two of a section at least.
    """
    at = _measure(lesson, lines)
    line = by_place(lines)
    ranked = sorted(chosen.values(), key=lambda m: (_rank(m), m.place.index))
    kept: dict[int, Moment] = {}
    taken: dict[Line, list[int]] = {}
    for moment in ranked:
        index = moment.place.index
        here = taken.setdefault(line[index].section, [])
        near = any(abs(at[index] - other) < apart for other in here)
        if by_author(moment) or not (near or line[index].inline):
            kept[index] = moment
            here.append(at[index])
    return kept


def _rank(moment: Moment) -> int:
    if by_author(moment):
        return -1
    return min(RANKS.index(kind) for kind in moment.kinds)


def _measure(lesson: Lesson, lines: Iterable[Line]) -> dict[int, int]:
    """By the index of a place how many moves and words of its section stand before the end of what is said there."""
    words: dict[int, int] = {}
    for comment in lesson.comments:
        index = comment.anchor.index
        words[index] = words.get(index, 0) + len(comment.text.split())
    at: dict[int, int] = {}
    for line in lines:
        if not line.inline:
            _walk(line, words, at)
    return at


def _walk(line: Line, words: Mapping[int, int], at: dict[int, int], begun: int = 0) -> int:
    for place in line.places:
        begun += 1 + words.get(place.index, 0)
        at[place.index] = begun
        for other in line.sidelines.get(place.index, ()):
            if other.inline:
                begun = _walk(other, words, at, begun)
    return begun
