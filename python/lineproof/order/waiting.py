"""Which steps wait for which: what a sentence refers to is told before it, and the main line in its own order."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from .references import Reference
from .steps import Steps

Waits = dict[int, frozenset[int]]
"""By step the steps that must be told before it."""


def waits(steps: Steps, refs: Sequence[Reference]) -> tuple[Waits, list[Reference]]:
    """What each step waits for, and the references that cannot be kept, since the lesson refers in a circle.

    References that the file itself keeps go first: they never make a circle.
    """
    found: dict[int, set[int]] = {}
    main = [n for n in steps.main_line() if n in steps.wanted_set]
    for before, after in pairwise(main):
        found.setdefault(after, set()).add(before)
    shown = _shown_by(steps)
    above = {
        step.number: shown[step.parent]
        for step in steps.all
        if step.parent is not None and shown.get(step.parent) is not None
    }
    lost: list[Reference] = []
    for ref in sorted(
        refs, key=lambda one: (max(one.to, default=0) > one.step, one.sentence.start)
    ):
        step = shown.get(ref.step)
        to = {shown[n] for n in ref.to if shown.get(n) is not None} - {step}
        if step is None or not to:
            continue
        if any(_reaches(n, step, found, above) for n in to if n is not None):
            lost.append(ref)
        else:
            found.setdefault(step, set()).update(n for n in to if n is not None)
    return {step: frozenset(to) for step, to in found.items()}, lost


def _shown_by(steps: Steps) -> dict[int, int | None]:
    """By step the wanted step that shows its move: itself, or the first on another road. None for one that is cut, and for a beginning."""
    first: dict[tuple[int, str], int] = {}
    for number in steps.wanted:
        first.setdefault(steps.all[number].move, number)
    return {
        step.number: step.number
        if step.number in steps.wanted_set
        else first.get(step.move)
        if step.uci is not None
        else None
        for step in steps.all
    }


def _reaches(
    first: int, last: int, found: dict[int, set[int]], above: dict[int, int | None]
) -> bool:
    """Whether a step waits, by however many others, for another."""
    seen: set[int] = set()
    waiting: list[int] = [first]
    while waiting:
        at = waiting.pop()
        if at == last:
            return True
        if at in seen:
            continue
        seen.add(at)
        waiting.extend(found.get(at, ()))
        parent = above.get(at)
        if parent is not None:
            waiting.append(parent)
    return False


def too_early(steps: Steps, told: Iterable[int], refs: Iterable[Reference]) -> list[Reference]:
    """References that are told before what they refer to."""
    shown = _shown_by(steps)
    at = {number: place for place, number in enumerate(told)}
    return [
        ref
        for ref in refs
        if (step := shown.get(ref.step)) in at
        and any(
            at[one] > at[step]
            for n in ref.to
            if (one := shown.get(n)) is not None and one in at and step is not None
        )
    ]
