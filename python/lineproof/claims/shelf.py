"""The shelf: the frames of all kinds, found by a word that a clause must have and by what it must be.

A clause is asked each thing once: frames that demand the same share the answer.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache
from operator import attrgetter
from typing import NamedTuple

from .clause import Clause
from .demand import Demand
from .frame import Frame
from .kind import Kind
from .registry import all_kinds
from .seen import Seen


class _Standing(NamedTuple):
    """A frame on the shelf. number: its place among all. demands: their numbers."""

    number: int
    kind: Kind
    frame: Frame
    demands: tuple[int, ...]


class _Branch:
    """Frames that share their first demands. frames: those that demand no more. further: by the next demand."""

    __slots__ = ("frames", "further", "steps")

    def __init__(self) -> None:
        self.frames: list[_Standing] = []
        self.further: dict[int, _Branch] = {}
        self.steps: list[tuple[int, _Branch]] = []

    def put(self, standing: _Standing) -> None:
        branch = self
        for number in standing.demands:
            if number not in branch.further:
                branch.further[number] = _Branch()
                branch.steps.append((number, branch.further[number]))
            branch = branch.further[number]
        branch.frames.append(standing)


class Shelf:
    """The frames of some kinds."""

    def __init__(self, kinds: Iterable[Kind]) -> None:
        self._demands: list[Demand] = []
        self._by_word: dict[str, list[_Standing]] = {}
        self._by_verb: dict[tuple[str, str], _Branch] = {}
        self._verbs: set[str] = {""}
        numbers: dict[Demand, int] = {}
        frames = [(kind, frame) for kind in kinds for frame in kind.framed]
        for number, (kind, frame) in enumerate(frames):
            for demand in frame.demands:
                if numbers.setdefault(demand, len(numbers)) == len(self._demands):
                    self._demands.append(demand)
            demands = tuple(numbers[d] for d in frame.demands)
            standing = _Standing(number, kind, frame, demands)
            self._verbs |= frame.verbs
            for word in frame.triggers:
                self._by_word.setdefault(word, []).append(standing)
        self._asked = [demand.met for demand in self._demands]

    def fitting(self, clause: Clause) -> list[tuple[Kind, Frame]]:
        """The frames of which a clause meets every demand; those that only want a thing named come last."""
        verb = clause.lemma if clause.lemma in self._verbs else "?"
        met: list[bool | None] = [None] * len(self._demands)
        seen = Seen(clause)
        found: dict[int, _Standing] = {}
        for word in dict.fromkeys(_words(clause)):
            if word in self._by_word:
                for standing in self._met(self._tree(word, verb), seen, met):
                    found.setdefault(standing.number, standing)
        standings = sorted(found.values(), key=lambda s: s.frame.anywhere)
        return [(s.kind, s.frame) for s in standings]

    def _met(self, tree: _Branch, seen: Seen, met: list[bool | None]) -> list[_Standing]:
        """The frames of a tree of which the clause meets every demand. met: what it has answered."""
        asked = self._asked
        found: list[_Standing] = []
        branches = [tree]
        while branches:
            branch = branches.pop()
            if branch.frames:
                found += branch.frames
            for number, further in branch.steps:
                answer = met[number]
                if answer is None:
                    answer = met[number] = asked[number](seen)
                if answer:
                    branches.append(further)
        found.sort(key=attrgetter("number"))
        return found

    def _tree(self, word: str, verb: str) -> _Branch:
        """The frames of a word that fit a clause with a verb; "" for none, "?" for one that no frame knows."""
        tree = self._by_verb.get((word, verb))
        if tree is None:
            tree = self._by_verb[word, verb] = _Branch()
            for standing in self._by_word[word]:
                if standing.frame.takes(verb):
                    tree.put(standing)
        return tree


def _words(clause: Clause) -> Iterator[str]:
    yield "*"  # frames of slots alone
    yield clause.lemma
    for noun in (
        ([clause.subject] if clause.subject else [])
        + clause.objects
        + [p.noun for p in clause.places if p.noun]
    ):
        for part in noun.members:
            yield part.head
            for adjective in part.adjectives:
                yield f"{adjective} {part.head}"
    for state in clause.states:
        yield state.lemma
    yield from clause.adverbs


@cache
def shelf() -> Shelf:
    """The frames of every kind."""
    return Shelf(all_kinds())


__all__ = ["Shelf", "shelf"]
