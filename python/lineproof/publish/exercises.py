"""Exercises: the pause points of the taught side as questions, each with its answer and what is wrong with others."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from lineproof.claims.claim import Spot
from lineproof.claims.showing import numbered
from lineproof.lesson import Lesson
from lineproof.replies.pauses import Pause

from .product import Found

PLIES: Final = 6
"""Plies at most that show why an answer is wrong."""


@dataclass(frozen=True)
class Exercise:
    """A position with a move to find. answer: the line with its point, a sentence. also: other safe moves, a sentence or "". wrong: by move in UCI, why a likely answer is wrong."""

    pause: Pause
    answer: str
    also: str
    wrong: dict[str, str]


def exercises(lesson: Lesson, found: Found) -> tuple[Exercise, ...]:
    """Those of the taught side, in the order of the lesson."""
    side = lesson.settings.side
    own = [pause for pause in found.studied.pauses if pause.place.board.turn == side]
    return tuple(_exercise(lesson, pause) for pause in sorted(own, key=lambda p: p.place.index))


def _exercise(lesson: Lesson, pause: Pause) -> Exercise:
    spot = Spot.of(pause.place)
    return Exercise(
        pause,
        f"{numbered(spot, pause.line)}: {pause.point}.",
        also_safe(lesson, pause),
        {
            reply.uci: f"{reply.san} costs {cost.points} of 100 points: {numbered(spot, cost.line[:PLIES])}."
            for reply, cost in pause.wrong
        },
    )


def also_safe(lesson: Lesson, pause: Pause) -> str:
    """ "Qe2, as played here, is safe too."; "" where only one move is."""
    played = {place.san for same in lesson.positions[pause.place.key] for place in same.children}
    others = [
        f"{san}, as played here," if san in played else san
        for san in pause.safe
        if san != pause.best
    ]
    are = "is" if len(others) == 1 else "are"
    return f"{' and '.join(others)} {are} safe too." if others else ""
