"""The running order of a lesson: the best telling that was found, beside the file's own order and what no order can go below."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lineproof.lesson import Lesson

from . import exact
from .acts import Act, Measure, as_written, measure
from .flow import Bound, bound
from .mistakes import punished
from .references import Reference, references
from .steps import Steps
from .telling import Teller
from .waiting import Waits, too_early, waits


class OrderError(ValueError):
    """A lesson cannot be put in order. The text says why and what to do."""


@dataclass(frozen=True)
class Telling:
    """acts: in their order. measure, file, least: of this order, of the file's, and what no order can go below.

    proven: whether no order is better. references: what was found. early: sentences that are told before what they refer to,
    since the lesson refers in a circle; file_early: how many the file's own order tells so.
    """

    steps: Steps
    acts: tuple[Act, ...]
    measure: Measure
    file: Measure
    least: Measure
    proven: bool
    punished: dict[int, int]
    references: tuple[Reference, ...]
    early: tuple[Reference, ...]
    file_early: int


def telling(
    steps: Steps, slips: Iterable[tuple[int, str, str]] = (), refs: list[Reference] | None = None
) -> Telling:
    """The running order of the steps. slips: as in `mistakes.punished`."""
    refs = references(steps) if refs is None else refs
    punishes = punished(steps, slips)
    plan = bound(steps)
    least = Measure(plan.ways_back, plan.plies_again, 0)
    written = as_written(steps)
    file = measure(written, punishes)
    waiting, lost = waits(steps, refs)
    acts, found, proven = _best(steps, waiting, punishes, plan, least)
    if found > file:
        # What the file tells too early may cost ways back; what the file keeps never does.
        told = [act.number for act in written if act.number is not None]
        broken = set(too_early(told, waiting))
        kept = [ref for ref in refs if ref.step not in broken]
        waiting, _ = waits(steps, kept)
        acts, found, proven = _best(steps, waiting, punishes, plan, least)
        if found > file:
            acts, found, proven = written, file, False
    every, _ = waits(steps, refs)
    order = [act.number for act in acts if act.number is not None]
    late = set(too_early(order, every))
    told = [act.number for act in written if act.number is not None]
    return Telling(
        steps,
        tuple(acts),
        found,
        file,
        least,
        proven,
        punishes,
        tuple(refs),
        tuple(dict.fromkeys([*lost, *(ref for ref in refs if ref.step in late)])),
        len(too_early(told, every)),
    )


def _best(
    steps: Steps, waiting: Waits, punishes: dict[int, int], plan: Bound, least: Measure
) -> tuple[list[Act], Measure, bool]:

    acts = Teller(steps, waiting, punishes, plan).tell()
    found = measure(acts, punishes)
    if found == least:
        return acts, found, True
    tried = exact.better(steps, waiting, punishes, found)
    if tried.acts is not None:
        return tried.acts, measure(tried.acts, punishes), True
    return acts, found, tried.proven


def steps_of(lesson: Lesson) -> Steps:
    """:raises OrderError: when there is nothing to tell."""
    steps = Steps(lesson)
    if not steps.wanted:
        raise OrderError(
            f"{lesson.name}: the lesson has no moves, so there is nothing to put in order; add its lines"
        )
    if not any(step.said for step in steps.all):
        raise OrderError(
            f"{lesson.name}: the lesson has no comments, so there is nothing to say; write what you will say as comments after the moves"
        )
    return steps
