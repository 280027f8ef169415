"""The repertoire of the side taught: its one move at each position, and every reply of the opponent that the lesson has.

>>> from lineproof.lesson import Lesson
>>> lesson = Lesson.from_text("1. e4 (1. d4 d5) e5 (1... c5 2. Nf3) 2. Nc3 *")
>>> ((_, steps),) = repertoire(lesson, "white")
>>> [step.san for step in steps], [reply.san for reply in steps[0].then]
(['e4'], ['e5', 'c5'])
"""

from __future__ import annotations

from typing import Final

from lineproof.lesson import Game, Lesson, Place
from lineproof.lesson.graph import NULL_MOVE

from .movetext import Step

BAD: Final = frozenset({2, 4, 6})
"""Glyphs with which the author says that a move is bad: ?, ??, ?!. Such a move is nobody's repertoire."""


def repertoire(lesson: Lesson, side: str) -> list[tuple[Game, list[Step]]]:
    """A tree for each position at which games of the lesson start, with the first of these games.

    At a position of the taught side stands the move that is shown first: on the least deep line that has the position,
    then in the order of the text. What the author marks as bad is passed over. A position is gone on from once, on the
    main line before the others; another road to it ends there.
    """
    found: list[tuple[Game, list[Step]]] = []
    maker = _Maker(lesson, side)
    for game in lesson.games:
        steps = maker.steps(game.root)
        if steps:
            found.append((game, steps))
    return found


def advice(lesson: Lesson, side: str) -> dict[int, Place]:
    """By the key of each position that the repertoire comes to the move that it has for the taught side."""
    maker = _Maker(lesson, side)
    found: dict[int, Place] = {}
    left = [game.root for game in reversed(lesson.games)]
    while left:
        place = left.pop()
        if place.key in maker.seen:
            continue
        maker.seen.add(place.key)
        moves = maker.moves(place)
        if place.board.turn == side and moves:
            found[place.key] = moves[0]
        left += reversed(moves)
    return found


class _Maker:
    def __init__(self, lesson: Lesson, side: str) -> None:
        self.lesson = lesson
        self.side = side
        self.seen: set[int] = set()
        self.dead = _behind_a_pass(lesson)

    def steps(self, root: Place) -> list[Step]:
        first: list[Step] = []
        left = [(root, first)]
        while left:
            place, steps = left.pop()
            if place.key in self.seen:
                continue
            self.seen.add(place.key)
            below = []
            for move in self.moves(place):
                steps.append(Step(move.san or "", numbers(move)))
                below.append((move, steps[-1].then))
            left += reversed(below)
        return first

    def moves(self, place: Place) -> list[Place]:
        """What is played at a position: the one move of the taught side, or every reply."""
        same = (p for p in self.lesson.positions[place.key] if p.index not in self.dead)
        found: dict[str, Place] = {}
        for at in sorted(same, key=lambda p: (p.depth, p.index)):
            for move in at.children:
                if move.uci is not None and move.uci != NULL_MOVE:
                    found.setdefault(move.uci, move)
        if place.board.turn != self.side:
            return list(found.values())
        return [move for move in found.values() if not BAD & set(numbers(move))][:1]


def numbers(place: Place) -> tuple[int, ...]:
    """The numbers of a place's glyphs, each once, in text order."""
    return tuple(dict.fromkeys(n for n in place.glyph_numbers if n is not None))


def _behind_a_pass(lesson: Lesson) -> set[int]:
    dead: set[int] = set()
    for place in lesson.places:
        parent = place.parent
        if place.uci == NULL_MOVE or (parent is not None and parent.index in dead):
            dead.add(place.index)
    return dead
