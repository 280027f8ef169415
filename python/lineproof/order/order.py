"""The running order of a lesson: the best telling that was found, beside the file's own order and what no order can go below."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from lineproof.lesson import Lesson

from . import exact
from .acts import Act, Measure, as_written, measure
from .flow import Bound, bound
from .mistakes import punished
from .proving import proven
from .references import Reference, references
from .steps import Steps
from .telling import Teller
from .waiting import Waits, too_early, waits

TRIES = 30
"""Mistakes for which an earlier punishment is tried, one after the other."""


class OrderError(ValueError):
    """A lesson cannot be put in order. The text says why and what to do."""


@dataclass(frozen=True)
class Telling:
    """acts: in their order. measure, file, least: of this order, of the file's, and what no order can go below.

    proven: whether no order is better. references: what was found. early: what is told before what it refers to, since the
    lesson refers in a circle, or since the file tells it so and keeping it would need more ways back than the file has; file_early: what the file's own order tells so.
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
    file_early: tuple[Reference, ...]


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
    in_file = too_early(steps, _numbers(written), refs)
    acts, found, sure = _best(steps, waits(steps, refs)[0], punishes, plan, least)
    if found.distance:
        # A mistake may wait for what the words of its punishment refer to, so that the two stay together.
        early = [*refs, *_with_punishment(steps, refs, punishes)]
        other = _best(steps, waits(steps, early)[0], punishes, plan, least)
        if other[1] < found:
            acts, found, sure = other[0], other[1], other[1] == least
    if found > file:
        # What the file tells too early may cost ways back; what the file keeps never does.
        kept = [ref for ref in refs if ref not in in_file]
        acts, found, sure = _best(steps, waits(steps, kept)[0], punishes, plan, least)
        if found > file:
            acts, found, sure = written, file, False
    return Telling(
        steps,
        tuple(acts),
        found,
        file,
        least,
        sure,
        punishes,
        tuple(refs),
        tuple(too_early(steps, _numbers(acts), refs)),
        tuple(in_file),
    )


def _with_punishment(
    steps: Steps, refs: Sequence[Reference], punishes: dict[int, int]
) -> list[Reference]:
    """What punishments refer to, as if the mistakes did."""
    mistake_of = {reply: mistake for mistake, reply in punishes.items()}
    return [
        replace(ref, step=mistake_of[ref.step], to=outside)
        for ref in refs
        if ref.step in mistake_of
        and (outside := tuple(set(ref.to) - set(steps.below(mistake_of[ref.step]))))
    ]


def _numbers(acts: Iterable[Act]) -> list[int]:
    return [act.number for act in acts if act.number is not None]


def _best(
    steps: Steps, waiting: Waits, punishes: dict[int, int], plan: Bound, least: Measure
) -> tuple[list[Act], Measure, bool]:
    """A telling, its measure, and whether none is better."""
    teller = Teller(steps, waiting, punishes, plan)
    acts = teller.tell()
    found = measure(acts, punishes)
    acts, found = _punished_sooner(steps, waiting, punishes, plan, acts, found)
    if found == least:
        return acts, found, True
    tried = exact.better(steps, waiting, punishes, found, teller.rank)
    if tried.acts is not None:
        return tried.acts, measure(tried.acts, punishes), True
    return acts, found, tried.proven or proven(steps, waiting, found)


def _punished_sooner(
    steps: Steps,
    waiting: Waits,
    punishes: dict[int, int],
    plan: Bound,
    acts: list[Act],
    found: Measure,
) -> tuple[list[Act], Measure]:
    """A better telling in which some punishments come at once, though sentences in them wait; the ones put off longest are tried first."""
    at = {number: place for place, number in enumerate(_numbers(acts))}
    late = {mistake: at[reply] - at[mistake] for mistake, reply in punishes.items()}
    chosen: frozenset[int] = frozenset()
    for mistake in sorted(late, key=lambda one: (-late[one], one))[:TRIES]:
        if late[mistake] > 1:
            more = chosen | {mistake}
            tried = Teller(steps, waiting, punishes, plan, more).tell()
            if (measured := measure(tried, punishes)) < found:
                chosen, acts, found = more, tried, measured
    return acts, found


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
