"""The shape of a handout whose columns are best filled: it is set again and again until no column leaves much free.

A diagram stays with its move, so that where both find no room at the foot of a column, it ends early. Without that diagram the text goes on, and
another position of the same lines may find its place; smaller diagrams end the columns elsewhere.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from lineproof.lesson import Lesson
from lineproof.publish.product import Choices, Found

from .document import document
from .shape import Shape, shapes
from .typeset import Column, foot

TRIES: Final = 12
"""With diagrams of one size."""
DIAGRAMS: Final = 1000
"""In all tries together: a long handout is set less often, so that it does not take long."""
LONG: Final = 40
"""Diagrams in the text beyond which several give way at once, `APART` columns from each other."""
APART: Final = 4


def fitted(lesson: Lesson, found: Found, choices: Choices) -> dict[str, Any]:
    """The document in the best of its shapes. :raises PublishError: as `typeset`."""
    search = _Search(lesson, found, choices)
    begun = [(shape, search.set(shape)) for shape in shapes(choices)]
    if search.long:  # there is no time for all of them
        begun.sort(key=lambda each: _bad(each[1], each[0].free))
    for shape, columns in begun:
        search.mend(shape, columns)
        if search.least <= 0 or search.budget <= 0:
            break
    return search.best


class _Search:
    """best: the document so far; least: how bad it is, 0 where no column leaves too much free. budget: diagrams that may still be set."""

    def __init__(self, lesson: Lesson, found: Found, choices: Choices) -> None:
        self.lesson, self.found, self.choices = lesson, found, choices
        self.best: dict[str, Any] = {}
        self.least = float("inf")
        self.budget = DIAGRAMS
        self.long = False

    def set(self, shape: Shape) -> list[Column]:
        tried = document(self.lesson, self.found, self.choices, shape)
        columns = foot(tried, self.lesson.name)
        bad = _bad(columns, shape.free)
        if bad < self.least:
            self.best, self.least = tried, bad
        shown = _diagrams(tried)
        self.long = self.long or shown > LONG
        self.budget -= 1 + shown
        return columns

    def mend(self, shape: Shape, columns: Sequence[Column]) -> None:
        """Leaves out one diagram after the other, from the front, or several where there are many."""
        for _ in range(TRIES):
            causes: list[int] = []
            free_from = 0
            for number, column in enumerate(columns):
                if column.free > shape.free and column.next is not None and number >= free_from:
                    causes.append(column.next)
                    free_from = number + APART
            if not causes or self.budget <= 0:
                break
            gone = causes if self.long else causes[:1]
            shape = replace(shape, without=shape.without | set(gone))
            columns = self.set(shape)


def _bad(columns: Sequence[Column], free: float) -> float:
    """One large gap is worse than several small ones."""
    return sum(max(0.0, column.free - free) ** 2 for column in columns)


def _diagrams(tried: Mapping[str, Any]) -> int:
    shown = (block["kind"] == "diagram" for s in tried["sections"] for block in s["blocks"])
    return sum(map(bool, shown))
