"""Proving that no order is better, on a lesson made smaller: branches that meet no other line and that no sentence refers to or from.

Where every road is a tree, at most one walk comes to a position with something new behind it; any other begins there. One such
branch takes that walk up, so each further one adds just as many ways back as it has ends, whatever the order of the rest. What is left
is small enough to try. The proof is of ways back and moves shown again; with no distance left, nothing is better.
"""

from __future__ import annotations

from dataclasses import dataclass

from . import exact
from .acts import Measure
from .steps import Steps
from .waiting import Waits


@dataclass(frozen=True)
class Smaller:
    """steps: of the smaller lesson. ends: how many ends of lines were taken out, each worth a way back in any order."""

    steps: Steps
    ends: int


def proven(steps: Steps, waits: Waits, found: Measure) -> bool:
    """Whether no order of the lesson has a smaller measure than one that was found."""
    if found.distance:
        return False
    main = _main_before(steps)
    waiting = {n: to - {main.get(n, -1)} for n, to in waits.items() if to - {main.get(n, -1)}}
    bound = frozenset(waiting) | {one for to in waiting.values() for one in to}
    small = smaller(steps, bound)
    than = Measure(found.ways_back - small.ends, found.plies_again, 0)
    tried = exact.better(small.steps, waiting, {}, than)
    return tried.proven and tried.acts is None


def _main_before(steps: Steps) -> dict[int, int]:
    """By step of the main line the one before it, for which it waits in any case where all roads are a tree."""
    main = steps.main_line()
    return dict(zip(main[1:], main, strict=False))


def smaller(steps: Steps, bound: frozenset[int]) -> Smaller:
    """bound: steps that wait or are waited for."""
    alone = _alone(steps)
    free: dict[int, bool] = {}
    ends: dict[int, int] = {}
    for step in reversed(steps.all):  # what follows a step has a higher number
        below = [n for n in step.children if n not in steps.cut]
        free[step.number] = (
            step.number in steps.wanted_set
            and step.number not in bound
            and step.end in alone
            and all(free[n] for n in below)
        )
        ends[step.number] = sum(ends[n] for n in below) or 1
    cut: set[int] = set()
    taken = 0
    for step in steps.all:
        if step.end not in alone or step.number in cut or free[step.number]:
            continue
        branches = [n for n in step.children if n not in steps.cut and free[n]]
        for first, branch in enumerate(branches):
            below = steps.below(branch)
            cut.update(below if first else below[1:])
            taken += ends[branch] - (not first)
    return Smaller(steps.without(steps.cut | frozenset(cut)), taken)


def _alone(steps: Steps) -> set[int]:
    """Positions that only one road leads to."""
    into: dict[int, int] = {}
    for number in (*steps.beginnings, *steps.wanted):
        end = steps.all[number].end
        into[end] = into.get(end, 0) + 1
    met = {at for at, count in into.items() if count > 1}
    waiting = list(met)
    while waiting:
        for after in steps.moves.get(waiting.pop(), {}).values():
            if after not in met:
                met.add(after)
                waiting.append(after)
    return set(into) - met
