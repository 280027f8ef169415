"""The running order: a telling, its cues and their times, and what was left out to fit.

>>> from lineproof.lesson import Lesson
>>> order = running_order(Lesson.from_text("1. e4 e5 (1... c5 {The Sicilian.}) 2. Nc3 {The Vienna.} *"))
>>> [cue.words for cue in order.cues if cue.kind == "go back to"]
['Back to the position with the white pawn on e4 and the black pawn still on e7, where Black has another move.']
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from lineproof.lesson import Lesson
from lineproof.lesson.graph import Graph
from lineproof.replies.start import starts

from . import fitting
from .acts import Measure
from .cues import Cue, cues
from .fitting import Chance, Cut
from .order import OrderError, Telling, steps_of, telling
from .pausing import Point
from .references import Reference
from .spacing import spaced
from .steps import Steps

if TYPE_CHECKING:
    from lineproof.replies import Replies, Study

MINUTES = (1, 1000)
"""Fewest and most minutes that a lesson may be cut to."""


@dataclass(frozen=True)
class RunningOrder:
    """Of one lesson. minutes: what it was to fit into, None for the whole lesson; fits: whether it does.

    whole: seconds of the whole lesson. studied: whether pause points and slips were looked for by search.
    """

    lesson: Lesson
    telling: Telling
    cues: tuple[Cue, ...]
    words_a_minute: int
    whole: float
    minutes: float | None
    fits: bool
    cuts: tuple[Cut, ...]
    studied: bool

    @property
    def measure(self) -> Measure:
        return self.telling.measure

    @property
    def seconds(self) -> float:
        return fitting.seconds(self.cues)


def running_order(
    lesson: Lesson,
    *,
    minutes: float | None = None,
    replies: Replies | None = None,
    study: Study | None = None,
) -> RunningOrder:
    """The running order of a lesson. minutes: cuts it to that length, by what `replies` says is seldom met.
    study: its pause points are asked, its slips count as mistakes.

    :raises OrderError: when the lesson has no moves or no comments, the minutes are out of range, or must be fitted and no side
        is taught.
    """
    low, high = MINUTES
    if minutes is not None and not low <= minutes <= high:
        raise OrderError(f"the minutes are {minutes:g}; give a number from {low} to {high}")
    steps = steps_of(lesson)
    slips, points = _studied(study)
    speed = lesson.settings.words_a_minute

    def tell(cut: frozenset[int]) -> tuple[Telling, tuple[Cue, ...]]:
        told = telling(steps.without(cut) if cut else steps, slips, kept(cut))
        return told, cues(told, speed, points)

    first = telling(steps, slips)

    def kept(cut: frozenset[int]) -> list[Reference]:
        return [ref for ref in first.references if ref.step not in cut]

    points = spaced(points, cues(first, speed, points))
    spoken = cues(first, speed, points)
    whole = fitting.seconds(spoken)
    if minutes is None or whole <= 60 * minutes:
        return RunningOrder(
            lesson, first, spoken, speed, whole, minutes, True, (), study is not None
        )
    chance = _chance(lesson, steps, replies)
    found = fitting.fitted(first, spoken, 60 * minutes, chance, tell, _footnotes(steps, study))
    return RunningOrder(
        lesson,
        found.telling,
        found.cues,
        speed,
        whole,
        minutes,
        found.fits,
        found.cuts,
        study is not None,
    )


def _studied(study: Study | None) -> tuple[Sequence[tuple[int, str, str]], Sequence[Point]]:
    """Slips as (key, move, refutation), and pause points of the taught side."""
    if study is None:
        return (), ()
    slips = [
        (slip.place.key, slip.reply.uci, slip.cost.line[1])
        for slip in study.slips
        if slip.within_reach and len(slip.cost.line) > 1
    ]
    points = [
        Point(one.place.key, one.place.board.parse_san(one.best), one.grade)
        for one in study.pauses
        if one.place.board.turn == study.side
    ]
    return slips, points


def _footnotes(steps: Steps, study: Study | None) -> list[int]:
    """Steps of slips whose refutation the audience would not see."""
    if study is None:
        return []
    deep = {(slip.place.key, slip.reply.uci) for slip in study.slips if not slip.within_reach}
    return [
        step.number
        for step in steps.all
        if step.uci is not None and (steps.at[step.start].key, step.uci) in deep
    ]


def _chance(lesson: Lesson, steps: Steps, replies: Replies | None) -> Chance:
    side = lesson.settings.side
    if side is None:
        raise OrderError(
            f"{lesson.name}: the lesson does not say which side is taught, so nobody knows what is seldom met; say it with --side"
        )
    if replies is None:
        raise OrderError("to cut a lesson, running_order needs to know how likely replies are")
    from lineproof.claims.claim import Spot

    def share(position: int, uci: str) -> float:
        return replies.at(Spot.of(steps.at[position])).reply(uci).share / 100

    return fitting.chances(steps, share, side, frozenset(starts(Graph(lesson))))
