"""What to leave out so that a lesson fits into so many minutes: what is lost least goes first.

Footnotes go first, then the lines that the audience is least likely to meet. The main line stays, and so does the punishment of a
mistake that is shown, and a line that a sentence which stays refers to.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from .cues import Cue
from .order import Telling
from .steps import Steps

Chance = Callable[[int], float]
"""Of a step (its number) the share (0 to 1) of the audience's games that come to it."""
Retell = Callable[[frozenset[int]], tuple[Telling, tuple[Cue, ...]]]
"""The lesson told without some steps."""

_ROUNDS = 20


@dataclass(frozen=True)
class Cut:
    """A line that is left out, from its first step to its end. seconds: what that saves. chance: of meeting it, 0 to 1."""

    step: int
    steps: tuple[int, ...]
    seconds: float
    chance: float
    footnote: bool


@dataclass(frozen=True)
class Fitted:
    """telling, cues: of what is left. cuts: the first is missed least. fits: whether it is short enough; else it is the shortest there is."""

    telling: Telling
    cues: tuple[Cue, ...]
    cuts: tuple[Cut, ...]
    fits: bool


def fitted(
    telling: Telling,
    cues: tuple[Cue, ...],
    limit: float,
    chance: Chance,
    retell: Retell,
    footnotes: Iterable[int] = (),
) -> Fitted:
    """limit: seconds. footnotes: steps whose lines are only footnotes."""
    units = _units(telling, cues, chance, frozenset(footnotes))
    chosen: list[Cut] = []
    now, spoken = telling, cues
    for _ in range(_ROUNDS):
        over = seconds(spoken) - limit
        if over <= 0:
            break
        more = _choose(units, chosen, over, telling)
        if not more:
            return Fitted(now, spoken, tuple(chosen), False)
        chosen += more
        now, spoken = retell(_gone(chosen))
    fits = seconds(spoken) <= limit
    # What was cut before something larger may not be needed any more: the dearest comes back first.
    spare = limit - seconds(spoken)
    for cut in sorted(chosen, key=lambda one: -one.chance) if fits else ():
        if cut.seconds > spare:
            continue
        without = [one for one in chosen if one is not cut]
        if set(cut.steps) & _gone(without) or not _free(telling, without):
            continue
        again, said = retell(_gone(without))
        if seconds(said) <= limit:
            chosen, now, spoken = without, again, said
            spare = limit - seconds(said)
    return Fitted(now, spoken, tuple(_outermost(chosen)), fits)


def seconds(cues: Sequence[Cue]) -> float:
    """The length of a running order."""
    return cues[-1].begins + cues[-1].seconds if cues else 0.0


def _units(
    telling: Telling, cues: Sequence[Cue], chance: Chance, footnotes: frozenset[int]
) -> list[Cut]:
    """Every line that may be cut by itself or together with others, the one that is missed least first."""
    steps = telling.steps
    main = set(steps.main_line())
    spent: dict[int, float] = {}
    for cue in cues:
        if cue.step is not None:
            spent[cue.step] = spent.get(cue.step, 0.0) + cue.seconds
    found = []
    for step in steps.all:
        if step.parent is None or step.number in main or step.number in steps.cut:
            continue
        if steps.all[step.parent].children[0] == step.number:
            continue
        below = steps.below(step.number)
        saved = sum(spent.get(n, 0.0) for n in below)
        footnote = step.number in footnotes or step.unreal
        found.append(Cut(step.number, tuple(below), saved, chance(step.number), footnote))
    found.sort(key=lambda cut: (not cut.footnote, cut.chance, -cut.step))
    return found


def _choose(units: Sequence[Cut], chosen: list[Cut], over: float, telling: Telling) -> list[Cut]:
    """More lines, until they save what is over."""
    more: list[Cut] = []
    while over > 0:
        gone = _gone([*chosen, *more])
        free = next(
            (
                cut
                for cut in units
                if not set(cut.steps) <= gone and _free(telling, [*chosen, *more, cut])
            ),
            None,
        )
        if free is None:
            break
        inside = sum(one.seconds for one in _outermost([*chosen, *more]) if one.step in free.steps)
        over -= free.seconds - inside
        more.append(free)
    return more


def _free(telling: Telling, cuts: Sequence[Cut]) -> bool:
    """Whether, these lines gone, no mistake has lost its punishment, and no sentence what it refers to."""
    gone = _gone(cuts)
    for mistake, reply in telling.punished.items():
        if reply in gone and mistake not in gone:
            return False
    return not any(
        ref.step not in gone and ref.why == "names a line" and set(ref.to) & gone
        for ref in telling.references
    )


def _gone(cuts: Sequence[Cut]) -> frozenset[int]:
    return frozenset(step for cut in cuts for step in cut.steps)


def _outermost(cuts: Sequence[Cut]) -> list[Cut]:
    """Those that lie in no other."""
    return [
        cut
        for cut in cuts
        if not any(other is not cut and cut.step in other.steps for other in cuts)
    ]


def chances(
    steps: Steps, share: Callable[[int, str], float], side: str, start: frozenset[int]
) -> Chance:
    """Of a step, along its road: the opponent's moves by their shares, the taught side's first choices for certain, its others by
    their shares too. share: of a move at a position. start: keys of positions from which on games are counted."""
    known: dict[int, float] = {}

    def chance(number: int) -> float:
        road = steps.road(number)
        for at in road:
            if at in known:
                continue
            step = steps.all[at]
            if step.parent is None or steps.at[step.end].key in start:
                known[at] = 1.0
                continue
            above = steps.all[step.parent]
            own = steps.board(step.start).turn == side
            if step.unreal:
                part = 0.0
            elif own and above.children[0] == at:
                part = 1.0
            else:
                part = share(step.start, step.uci or "")
            known[at] = known[step.parent] * part
        return known[number]

    return chance
