"""A telling: what is done on the board, one act after another; and its measure.

The measure, in the order in which it counts: ways back, plies walked again, and for each mistake the plies between it and the
move that punishes it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple

from .steps import Steps

Kind = Literal["begin", "back", "step", "again"]


@dataclass(frozen=True)
class Act:
    """begin: a first position is set up. back: an earlier one. step: a wanted step is played. again: a move that was shown before.

    position: on the board afterwards. number: of the step that is told; None for the way back and a move again.
    uci: of a move.
    """

    kind: Kind
    position: int
    number: int | None = None
    uci: str | None = None


class Measure(NamedTuple):
    """Compared from left to right: fewer is better."""

    ways_back: int
    plies_again: int
    distance: int

    def worse_by(self, other: Measure) -> float:
        """By what part this one is worse than another, in the first of the three in which they differ; negative where it is better.

        >>> Measure(13, 0, 4).worse_by(Measure(10, 0, 0))
        0.3
        """
        for mine, theirs in zip(self, other, strict=True):
            if mine != theirs:
                return (mine - theirs) / theirs if theirs else float("inf" if mine > 0 else 0)
        return 0.0


def measure(acts: Sequence[Act], punished: dict[int, int]) -> Measure:
    """punished: by a mistake's step the step that punishes it."""
    back = again = distance = 0
    shown: set[tuple[int, str]] = set()
    told: set[int] = set()
    open_: set[int] = set()
    board = -1
    for act in acts:
        if act.kind == "back":
            back += 1
        elif act.kind in ("step", "again"):
            move = (board, act.uci or "")
            again += move in shown
            shown.add(move)
            open_ = {mistake for mistake in open_ if punished[mistake] != act.number}
            distance += len(open_)
            if act.number in punished and act.number not in told:
                open_.add(act.number)
        if act.number is not None:
            told.add(act.number)
        board = act.position
    return Measure(back, again, distance)


def as_written(steps: Steps) -> list[Act]:
    """The telling in the order of the file: each move as it is written, each time it is written."""
    acts: list[Act] = []
    board: int | None = None
    shown: set[int] = set()
    told: set[int] = set()
    for place in steps.lesson.places:
        step = steps.all[steps.of_place[place.index]]
        if step.number in steps.cut:
            continue
        begins = step.uci is None and step.number not in told
        if board != step.start or begins:
            kind: Kind = "back" if step.start in shown and board != step.start else "begin"
            acts.append(Act(kind, step.start, step.number if begins else None))
        if step.uci is not None:
            new = step.number in steps.wanted_set and step.number not in told
            number = step.number if new else None
            acts.append(Act("step" if new else "again", step.end, number, step.uci))
        told.add(step.number)
        board = step.end
        shown |= {step.start, step.end}
    return acts
