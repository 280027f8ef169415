"""The script: what is said, in the order of the text, with the moves that lead to it, cut into lines."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lineproof.claims import Reading
from lineproof.lesson import Game, Lesson, Place


@dataclass(frozen=True)
class Passage:
    """Moves played without a word, then what is said after the last of them.

    moves: none where a comment follows a comment or opens a game. readings: none at the end of a silent line.
    """

    moves: tuple[Place, ...]
    readings: tuple[Reading, ...]


@dataclass(frozen=True)
class Stretch:
    """A part of one line without a branch inside it.

    begins: its first place. after: the place that it goes on from, None at the start of a game.
    """

    game: Game
    begins: Place
    after: Place | None
    passages: tuple[Passage, ...]

    @property
    def is_variation(self) -> bool:
        """Whether it parts here from the line shown first."""
        return self.after is not None and self.after.next != self.begins

    @property
    def heading(self) -> str:
        """ "Instead of 3... d5", "Back to the line after 3... d5", "The line"."""
        if self.after is None:
            return "The line" if self.begins.ply == 0 else self.begins.label
        if self.is_variation and self.after.next is not None:
            return f"Instead of {self.after.next.label}"
        return f"Back to the line after {self.after.label}"


def script(lesson: Lesson, readings: tuple[Reading, ...]) -> tuple[Stretch, ...]:
    """The whole lesson in the order of its text."""
    return tuple(_stretches(lesson, _by_anchor(lesson, readings)))


Said = dict[int, list[tuple[bool, tuple[Reading, ...]]]]
"""By the index of the place it is written at: comments as (said before the move, sentences)."""


def _by_anchor(lesson: Lesson, readings: tuple[Reading, ...]) -> Said:
    said: Said = {}
    left = list(readings)
    at = 0
    for comment in sorted(lesson.comments, key=lambda c: c.start):
        first = at
        while at < len(left) and left[at].sentence.start < comment.end:
            at += 1
        before = comment.opening and comment.anchor.uci is not None
        said.setdefault(comment.anchor.index, []).append((before, tuple(left[first:at])))
    return said


def _stretches(lesson: Lesson, said: Said) -> Iterator[Stretch]:
    begins: Place | None = None
    previous: Place | None = None
    passages: list[Passage] = []
    moves: list[Place] = []

    def ended() -> Iterator[Stretch]:
        if moves:
            passages.append(Passage(tuple(moves), ()))
        if begins is not None and passages:
            yield Stretch(begins.game, begins, begins.parent, tuple(passages))
        passages.clear()
        moves.clear()

    for place in lesson.places:
        parent = place.parent
        branches = parent is not None and (parent != previous or parent.next != place)
        if begins is None or parent is None or branches:
            yield from ended()
            begins = place
        comments = said.get(place.index, [])
        for before, readings in comments:
            if before and readings:
                passages.append(Passage((), readings))
        if place.uci is not None:
            moves.append(place)
        for before, readings in comments:
            if not before and readings:
                passages.append(Passage(tuple(moves), readings))
                moves.clear()
        previous = place
    yield from ended()
