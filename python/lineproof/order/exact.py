"""The best telling of a small lesson, by best-first search over what was told and what is on the board (Hart, Nilsson and Raphael 1968).

Every telling is a path: a state is the set of told steps and the position on the board, and each act adds to the measure.
What is yet to come costs at least one way back for each line whose end leads nowhere, but for the one that is being told.
"""

from __future__ import annotations

import heapq
from dataclasses import dataclass

from .acts import Act, Measure
from .steps import Steps
from .waiting import Waits

STEPS = 60
"""Steps of a lesson that is searched."""
STATES = 20_000
"""How many states are looked at; a lesson that needs more keeps the good telling."""


@dataclass(frozen=True)
class Exact:
    """acts: a telling that is better than the one that was known; None when there is none. proven: whether all were tried."""

    acts: list[Act] | None
    proven: bool


_State = tuple[int, int]
_Cost = tuple[int, int, int, int]
"""The measure, and last how often a step is told before others that rank before it."""


def better(
    steps: Steps,
    waits: Waits,
    punished: dict[int, int],
    than: Measure,
    rank: dict[int, int] | None = None,
) -> Exact:
    """Looks for a telling that is better than a known one; not where the lesson has more than `STEPS` steps.

    rank: of equally good tellings the one nearest to this order of the steps, where that is not too long to find.
    """
    if len(steps.wanted) > STEPS:
        return Exact(None, False)
    ranked = _Search(steps, waits, punished, than, rank or {}).run()
    if ranked.proven or not rank:
        return ranked
    return _Search(steps, waits, punished, than, {}).run()


class _Search:
    def __init__(
        self,
        steps: Steps,
        waits: Waits,
        punished: dict[int, int],
        than: Measure,
        rank: dict[int, int],
    ) -> None:
        self.steps = steps
        self.than = tuple(than)
        self.numbers = [*steps.beginnings, *steps.wanted]
        self.bit = {number: 1 << place for place, number in enumerate(self.numbers)}
        self.all = (1 << len(self.numbers)) - 1
        self.waits = {number: self._mask(waits.get(number, ())) for number in self.numbers}
        self.punished = {
            self.bit[mistake]: self.bit[reply]
            for mistake, reply in punished.items()
            if mistake in self.bit and reply in self.bit
        }
        self.lower = {
            number: self._mask(frozenset(n for n in rank if rank[n] < rank[number]))
            for number in rank
        }
        ends = {n for n in steps.wanted if not steps.moves.get(steps.all[n].end)}
        self.ends = self._mask(ends)

    def _mask(self, numbers: object) -> int:
        assert isinstance(numbers, frozenset | set | tuple)
        return sum(self.bit[number] for number in numbers if number in self.bit)

    def run(self) -> Exact:
        first: _State = (0, -1)
        cost: dict[_State, _Cost] = {first: (0, 0, 0, 0)}
        came: dict[_State, tuple[_State, Act]] = {}
        count = 0
        waiting: list[tuple[_Cost, int, int, _State]] = [((0, 0, 0, 0), 0, count, first)]
        done: set[_State] = set()
        while waiting:
            _, _, _, state = heapq.heappop(waiting)
            if state in done:
                continue
            if state[0] == self.all:
                return Exact(_acts(came, state), True)
            if len(done) >= STATES:
                return Exact(None, False)
            done.add(state)
            for act, after, spent in self._acts(state):
                so_far = cost[state]
                now = (
                    so_far[0] + spent[0],
                    so_far[1] + spent[1],
                    so_far[2] + spent[2],
                    so_far[3] + spent[3],
                )
                hoped = (now[0] + self._least(after), *now[1:])
                if hoped >= self.than or (after in cost and now >= cost[after]):
                    continue
                cost[after] = now
                came[after] = (state, act)
                count += 1
                told = after[0].bit_count()
                heapq.heappush(waiting, (hoped, -told, count, after))
        return Exact(None, True)

    def _least(self, state: _State) -> int:
        """Ways back that are still to come, at least."""
        told, board = state
        ends = (self.ends & ~told).bit_count()
        if told == self.all or board < 0:
            return 0
        return max(0, ends - bool(self.steps.moves.get(board))) + self._unbegun(told)

    def _unbegun(self, told: int) -> int:
        """A beginning that is still to come may begin a walk without a way back."""
        left = sum(1 for n in self.steps.beginnings if not told & self.bit[n])
        return -left

    def _acts(self, state: _State) -> list[tuple[Act, _State, _Cost]]:
        told, board = state
        steps = self.steps
        found: list[tuple[Act, _State, _Cost]] = []
        shown = {steps.all[n].end for n in self.numbers if told & self.bit[n]}
        moves = {steps.all[n].move for n in steps.wanted if told & self.bit[n]}
        for number in steps.beginnings:
            if not told & self.bit[number]:
                at = steps.all[number].start
                back = at in shown and at != board
                act = Act("back" if back else "begin", at, number)
                found.append(
                    (
                        act,
                        (told | self.bit[number], at),
                        (int(back), 0, 0, self._sooner(told, number)),
                    )
                )
                break  # one after the other
        for at in sorted(shown):
            ready = any(self._ready(n, told) for n in steps.outs.get(at, ()))
            if at != board and ready:
                found.append((Act("back", at), (told, at), (1, 0, 0, 0)))
        for number in steps.outs.get(board, ()):
            if self._ready(number, told):
                step = steps.all[number]
                spent = (
                    0,
                    int(step.move in moves),
                    self._pending(told, self.bit[number]),
                    self._sooner(told, number),
                )
                after = (told | self.bit[number], step.end)
                found.append((Act("step", step.end, number, step.uci), after, spent))
        for uci, end in steps.moves.get(board, {}).items():
            if (board, uci) in moves:
                spent = (0, 1, self._pending(told, 0), 0)
                found.append((Act("again", end, None, uci), (told, end), spent))
        return found

    def _sooner(self, told: int, number: int) -> int:
        """How many untold steps rank before one."""
        return (self.lower.get(number, 0) & ~told).bit_count()

    def _ready(self, number: int, told: int) -> bool:
        return not told & self.bit[number] and not self.waits[number] & ~told

    def _pending(self, told: int, bit: int) -> int:
        """Mistakes that were shown and not yet punished."""
        return sum(
            1
            for mistake, reply in self.punished.items()
            if told & mistake and not told & reply and reply != bit
        )


def _acts(came: dict[_State, tuple[_State, Act]], state: _State) -> list[Act]:
    acts = []
    while state in came:
        state, act = came[state]
        acts.append(act)
    return acts[::-1]
