"""What there is to tell: the moves of a lesson, each with the sentences that belong to it, and the positions they join.

Lines that transpose meet in one position. Behind a null move no position meets another: nobody gets there by playing.

>>> from lineproof.lesson import Lesson
>>> steps = Steps(Lesson.from_text("1. e4 e5 2. Nc3 (2. Nf3 {Natural. Good.}) 2... Nf6 *"))
>>> [(steps.label(number), len(steps.all[number].after)) for number in steps.wanted]
[('1. e4', 0), ('1... e5', 0), ('2. Nc3', 0), ('2. Nf3', 2), ('2... Nf6', 0)]
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from lineproof.claims.sentence import Sentence, sentences
from lineproof.engine import Board
from lineproof.lesson import Lesson, Place

from .spoken import NULL_MOVE

Move = tuple[int, str]
"""A position and a move from it, in UCI."""

_COMMAND = re.compile(r"\[%[^\]]*\]")


@dataclass
class Step:
    """A move on one road, or a beginning. Numbered in the order of the text; a road that is written twice is one.

    parent: the step before; None for a beginning. start, end: positions; a beginning has both alike.
    before: sentences that open a variation, said before its move. after: said of the position after it.
    """

    number: int
    place: Place
    parent: int | None
    start: int
    end: int
    uci: str | None
    children: list[int] = field(default_factory=list)
    before: list[Sentence] = field(default_factory=list)
    after: list[Sentence] = field(default_factory=list)
    nags: set[int] = field(default_factory=set)
    unreal: bool = False
    """Behind a null move."""

    @property
    def move(self) -> Move:
        return self.start, self.uci or ""

    @property
    def said(self) -> list[Sentence]:
        return self.before + self.after


class Steps:
    """Of one lesson. all: every step, by its number. beginnings: those without a move."""

    def __init__(self, lesson: Lesson) -> None:
        self.lesson = lesson
        self.all: list[Step] = []
        self.beginnings: list[int] = []
        self.of_place: list[int] = []
        """The step of each place, by the place's index."""
        self.at: list[Place] = []
        """A place with each position, by the position's number."""
        self.cut: frozenset[int] = frozenset()
        self._known: dict[int, int] = {}
        for place in lesson.places:
            self._add(place)
        self._speak()
        self._want()

    def without(self, cut: frozenset[int]) -> Steps:
        """The same, some steps left out; what follows them must be among them."""
        made = Steps.__new__(Steps)
        made.__dict__.update(self.__dict__)
        made.cut = cut
        made._want()
        return made

    def board(self, position: int) -> Board:
        return self.at[position].board

    def label(self, number: int) -> str:
        return self.all[number].place.label

    def road(self, number: int) -> list[int]:
        """The steps from the beginning to this one, both included."""
        found = [number]
        while (parent := self.all[found[-1]].parent) is not None:
            found.append(parent)
        return found[::-1]

    def below(self, number: int) -> list[int]:
        """A step and all that follow it on its road, in the order of the text."""
        found, waiting = [], [number]
        while waiting:
            at = waiting.pop()
            found.append(at)
            waiting.extend(self.all[at].children)
        return sorted(found)

    def main_line(self) -> list[int]:
        """From the first beginning, always the first continuation."""
        found = [self.beginnings[0]]
        while children := self.all[found[-1]].children:
            found.append(children[0])
        return found

    def _add(self, place: Place) -> None:
        parent = place.parent
        before = None if parent is None else self.all[self.of_place[parent.index]]
        if before is None:
            written = next((n for n in self.beginnings if self.all[n].place.key == place.key), None)
        else:
            written = next((n for n in before.children if self.all[n].uci == place.uci), None)
        if written is None:
            unreal = place.uci == NULL_MOVE or (before is not None and before.unreal)
            end = self._position(place, unreal)
            start = end if before is None else before.end
            written = len(self.all)
            above = None if before is None else before.number
            self.all.append(Step(written, place, above, start, end, place.uci, unreal=unreal))
            (self.beginnings if before is None else before.children).append(written)
        self.of_place.append(written)
        self.all[written].nags.update(place.nags)

    def _position(self, place: Place, unreal: bool) -> int:
        if not unreal and place.key in self._known:
            return self._known[place.key]
        self.at.append(place)
        if not unreal:
            self._known[place.key] = len(self.at) - 1
        return len(self.at) - 1

    def _speak(self) -> None:
        for comment in sorted(self.lesson.comments, key=lambda one: one.start):
            step = self.all[self.of_place[comment.anchor.index]]
            text = _COMMAND.sub(lambda found: " " * len(found[0]), comment.text)
            opens = comment.opening and comment.anchor.uci is not None
            (step.before if opens else step.after).extend(sentences(text, comment.start))

    def _want(self) -> None:
        """Each step with words is wanted, and of each move the step that is written first."""
        kept = [step for step in self.all if step.uci is not None and step.number not in self.cut]
        seen: set[Move] = set()
        self.wanted: list[int] = []
        """Steps that must be told, in the order of the text."""
        self.moves: dict[int, dict[str, int]] = {}
        """From a position the lesson's moves, and the position after each."""
        for step in kept:
            self.moves.setdefault(step.start, {})[step.uci or ""] = step.end
            if step.said or step.move not in seen:
                self.wanted.append(step.number)
            seen.add(step.move)
        self.wanted_set = frozenset(self.wanted)
        self.outs: dict[int, list[int]] = {}
        """From a position the wanted steps."""
        for number in self.wanted:
            self.outs.setdefault(self.all[number].start, []).append(number)
