"""How a lesson is checked: how much each search may spend, who answers it, and which games are counted."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

from lineproof.collection import Collection
from lineproof.proof import Effort
from lineproof.proof.games import Games

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine
    from lineproof.lesson import Lesson


@dataclass(frozen=True)
class Way:
    """How checks are made: at what effort, by which engine in place of ours, and by counting which games."""

    effort: Effort
    outside: OutsideEngine | None = None
    games: Games | None = None

    @property
    def collection(self) -> str:
        """The name of the games that are counted; "" for none."""
        return "" if self.games is None else self.games.name

    def same(self, other: Way) -> bool:
        """Whether both give the same findings; games that have changed since do not."""
        mine, theirs = (way.games and way.games.identity for way in (self, other))
        return (self.effort, self.outside, mine) == (other.effort, other.outside, theirs)


@dataclass(frozen=True)
class Looking:
    """How is looked for what a lesson leaves open, and how questions and students' games are answered. collection: a name; "" for none."""

    effort: Effort = Effort.SKETCH
    outside: OutsideEngine | None = None
    collection: str = ""


class Counted:
    """The collections that were opened for one lesson: for as long as a check may still ask them."""

    def __init__(self) -> None:
        self._opened: list[Collection] = []

    def games(self, name: str, lesson: Lesson) -> Games | None:
        """The games of a collection that the lesson's audience plays; None without a name.

        :raises lineproof.collection.CollectionError: when there is no such collection, or it is damaged.
        """
        if not name:
            return None
        collection = Collection.open(name)
        found = Games.of(collection, lesson)
        self._opened.append(collection)
        return found

    def close(self) -> None:
        """Lets go of their files."""
        for each in self._opened:
            each.close()
        self._opened.clear()


@contextmanager
def collection_of(name: str) -> Iterator[Collection | None]:
    """A collection, opened while it is asked; None without a name.

    :raises lineproof.collection.CollectionError: when there is no such collection.
    """
    if not name:
        yield None
        return
    with Collection.open(name) as collection:
        collection.games  # noqa: B018 - raises where there is none
        yield collection
