"""Names of places for the page: 16 hex digits made of the road there.

A name stays the same from version to version while the moves to the place do. Of siblings with the same move, the later ones
have names of their own.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from functools import cached_property

from lineproof.lesson import Lesson, Place
from lineproof.lesson.errors import EditError


class Names:
    """The names of all places of one lesson."""

    def __init__(self, lesson: Lesson) -> None:
        self._lesson = lesson

    @cached_property
    def all(self) -> tuple[str, ...]:
        """By the place's index."""
        pgn = self._lesson.pgn
        names: list[str] = []
        known: set[str] = set()
        for index in range(pgn.places):
            parent = pgn.parent(index)
            if parent is None:
                road = f"game {pgn.game(index)} from {pgn.board(index).fen}"
            else:
                road = f"{names[parent]} {pgn.uci(index)}"
            name = next(each for each in _spelled(road) if each not in known)
            known.add(name)
            names.append(name)
        return tuple(names)

    @cached_property
    def _indices(self) -> dict[str, int]:
        return {name: index for index, name in enumerate(self.all)}

    def of(self, place: Place) -> str:
        return self.all[place.index]

    def place(self, name: str) -> Place:
        """:raises EditError: when no place of the lesson has that name."""
        index = self._indices.get(name)
        if index is None:
            raise EditError(
                "the lesson has no such place", path=self._lesson.name, hint="look at it again"
            )
        return Place(self._lesson, index)

    def find(self, name: str) -> Place | None:
        index = self._indices.get(name)
        return None if index is None else Place(self._lesson, index)


def _spelled(road: str) -> Iterator[str]:
    number = 1
    while True:
        yield hashlib.blake2b(f"{road} {number}".encode(), digest_size=8).hexdigest()
        number += 1
