"""Merging: what another program changed in the file, and what was changed here meanwhile, put together where they are apart.

The texts are compared token by token. What comes out counts only when it holds just what both sides added and nothing that one of them
took out; else the author is asked.
"""

from __future__ import annotations

from collections import Counter
from difflib import SequenceMatcher
from itertools import pairwise

from lineproof.lesson import Lesson
from lineproof.lesson.errors import LessonError

from .naming import Names

Range = tuple[int, int, list[str]]
"""Units from..to of the base give way to others."""
Held = Counter[tuple[str, ...]]


def merged(base: Lesson, ours: Lesson, theirs: Lesson) -> str | None:
    """The text with the changes of both; None where they touch the same place."""
    if ours.text == base.text or ours.text == theirs.text:
        return theirs.text
    if theirs.text == base.text:
        return ours.text
    units = _units(base)
    changes = [*_ranges(units, _units(ours)), *_ranges(units, _units(theirs))]
    changes.sort(key=lambda change: (change[0], change[1]))
    for one, other in pairwise(changes):
        if _touch(one, other):
            return None
    for start, end, new in reversed(changes):
        units[start:end] = new
    text = "".join(units)
    try:
        together = _held(base.with_text(text))
    except LessonError:
        return None
    old = _held(base)
    wanted = Counter(old)
    for side in (_held(ours), _held(theirs)):
        wanted.update(side)
        wanted.subtract(old)
    return text if +wanted == together and min(wanted.values(), default=0) >= 0 else None


def _units(lesson: Lesson) -> list[str]:
    """The tokens with the blanks after them."""
    pgn, text = lesson.pgn, lesson.text
    units: list[str] = []
    for index in range(pgn.tokens):
        _, start, end = pgn.token(index)
        token = text[start:end]
        if units and not token.strip():
            units[-1] += token
        else:
            units.append(token)
    return units


def _ranges(base: list[str], changed: list[str]) -> list[Range]:
    codes = SequenceMatcher(None, base, changed, autojunk=False).get_opcodes()
    return [(a, b, changed[c:d]) for tag, a, b, c, d in codes if tag != "equal"]


def _touch(one: Range, other: Range) -> bool:
    """Whether two ranges overlap, or meet where one of them only puts something in."""
    if other[0] < one[1]:
        return True
    return other[0] == one[1] and (one[0] == one[1] or other[0] == other[1])


def _held(lesson: Lesson) -> Held:
    """What the lesson has at which place: the moves, their glyphs and words, the tags."""
    names = Names(lesson)
    held: Held = Counter()
    for place in lesson.places:
        name = names.of(place)
        held["place", name] += 1
        for start, end in ((s, e) for _, s, e in lesson.pgn.glyphs(place.index)):
            held["glyph", name, lesson.text[start:end]] += 1
    for comment in lesson.comments:
        held["words", names.of(comment.anchor), comment.text] += 1
    for game in lesson.games:
        for tag, value in game.tags:
            held["tag", names.of(game.root), tag, value] += 1
        held["result", names.of(game.root), game.result or ""] += 1
    return held
