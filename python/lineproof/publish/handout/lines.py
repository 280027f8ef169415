"""The lines of a lesson as they are printed: long ones as sections, short sidelines within the section that they part from.

>>> from lineproof.lesson import Lesson
>>> lesson = Lesson.from_text("1. e4 e5 (1... c5 {The Sicilian.}) 2. Nc3 *")
>>> [(line.label, line.first.label, line.inline) for line in printed_lines(lesson)]
[('1', 'start', False), ('1a', '1... c5', True)]
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import count
from typing import Final

from lineproof.lesson import Lesson, Place

MOVES: Final = 6
"""Half-moves that a sideline within a section has at most, its own sidelines counted."""
WORDS: Final = 50
"""Words about them at most."""


@dataclass(frozen=True, eq=False)
class Line:
    """From where it parts to its end. label: "2" for a section, "2a" for a sideline in it.

    first: its first place; the start of a game for a game's main line. places: its own, in order.
    sidelines: the lines that part from it, by the index of the place whose move they replace.
    """

    label: str
    first: Place
    places: tuple[Place, ...]
    inline: bool
    parent: Line | None
    sidelines: dict[int, list[Line]] = field(default_factory=dict)

    @property
    def last(self) -> Place:
        return self.places[-1]

    @property
    def section(self) -> Line:
        """The section that it is printed in."""
        line = self
        while line.inline and line.parent is not None:
            line = line.parent
        return line


def printed_lines(lesson: Lesson) -> tuple[Line, ...]:
    """Every line once, in the order of the print: a section, its sidelines, then the sections that part from it."""
    return tuple(_Numbering(lesson).lines())


class _Numbering:
    def __init__(self, lesson: Lesson) -> None:
        self.lesson = lesson
        self.plies, self.words = _sizes(lesson)

    def lines(self) -> Iterator[Line]:
        number = 0
        for game in self.lesson.games:
            left: list[tuple[Place, Line | None]] = [(game.root, None)]
            while left:
                first, parent = left.pop()
                number += 1
                line = _line(str(number), first, parent, inline=False)
                sections: list[Place] = []
                yield line
                yield from self._inner(line, count(1), sections)
                left += [(other, line) for other in reversed(sections)]

    def _inner(self, line: Line, letters: Iterator[int], sections: list[Place]) -> Iterator[Line]:
        """Sidelines within a section, each before those that part from it; few, so that recursion ends soon."""
        for place in line.places:
            for other in place.children[1:]:
                long = self.plies[other.index] > MOVES or self.words[other.index] > WORDS
                if long and not line.inline:
                    sections.append(other)
                    continue
                label = f"{line.section.label}{_letters(next(letters))}"
                sideline = _line(label, other, line, inline=True)
                yield sideline
                yield from self._inner(sideline, letters, sections)


def by_place(lines: Iterable[Line]) -> dict[int, Line]:
    """The line of each place, by its index."""
    return {place.index: line for line in lines for place in line.places}


def _line(label: str, first: Place, parent: Line | None, *, inline: bool) -> Line:
    places = [first]
    while (following := places[-1].next) is not None:
        places.append(following)
    line = Line(label, first, tuple(places), inline, parent)
    if parent is not None and first.parent is not None and first.parent.next is not None:
        parent.sidelines.setdefault(first.parent.next.index, []).append(line)
    return line


def _letters(number: int) -> str:
    """ "a" to "z", then "aa"."""
    text = ""
    while number:
        number, digit = divmod(number - 1, 26)
        text = chr(ord("a") + digit) + text
    return text


def _sizes(lesson: Lesson) -> tuple[list[int], list[int]]:
    """By the index of a place the half-moves from it on, all variations counted, and the words about them."""
    size = len(lesson.places)
    plies, words = [1] * size, [0] * size
    for comment in lesson.comments:
        words[comment.anchor.index] += len(comment.text.split())
    for index in range(size - 1, -1, -1):
        above = lesson.pgn.parent(index)
        if above is not None:
            plies[above] += plies[index]
            words[above] += words[index]
    return plies, words
