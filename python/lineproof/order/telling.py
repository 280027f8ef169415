"""A good telling, found without trying many: each line to its end, then the nearest branching that is still open.

The main line goes first, a mistake's punishment before anything else after it, and otherwise the author's order rules, turned only
where a sentence must wait for another line.
"""

from __future__ import annotations

from collections import deque
from functools import cached_property

from .acts import Act
from .flow import Bound
from .siblings import siblings
from .steps import Steps
from .waiting import Waits


class Teller:
    """Tells a lesson once."""

    def __init__(
        self,
        steps: Steps,
        waits: Waits,
        punished: dict[int, int],
        plan: Bound,
        at_once: frozenset[int] = frozenset(),
    ) -> None:
        """at_once: mistakes whose punishment comes first even where it refers to what follows."""
        self.steps = steps
        self.waits = waits
        self.punished = punished
        self.at_once = at_once
        self.on = dict(plan.on)
        self._roads: dict[int, tuple[int, ...]] = {}
        self._waits_for: dict[tuple[int, int], bool] = {}
        self._played: set[tuple[int, str]] = set()
        self.told: set[int] = set()
        self.untold = set(steps.wanted)
        self.acts: list[Act] = []
        self.shown: set[int] = set()
        self.board = -1
        self.at = steps.beginnings[0]
        """The step that was told last: its road is the one that the audience has in mind."""
        self.coming: dict[int, int] = {}
        """By position, how often it will yet be come to: by untold steps, and by known moves as the plan has it."""
        self.into: dict[int, list[int]] = {}
        for number in steps.wanted:
            end = steps.all[number].end
            self.coming[end] = self.coming.get(end, 0) + 1
            self.into.setdefault(end, []).append(number)
        for (_, end), count in plan.on.items():
            self.coming[end] = self.coming.get(end, 0) + count
        self.left = {at: len(out) for at, out in steps.outs.items()}
        """By position, the untold steps from it."""
        self.open: dict[int, None] = {}
        """Positions that were shown and have untold steps."""

    @cached_property
    def rank(self) -> dict[int, int]:
        """The order of the steps where each branch is told to its end before the next."""
        order = siblings(self.steps, self.waits, self.punished, self.at_once)
        found: dict[int, int] = {}
        for beginning in self.steps.beginnings:
            waiting = [beginning]
            while waiting:
                at = waiting.pop()
                found[at] = len(found)
                waiting.extend(reversed(order[at]))
        return found

    def tell(self) -> list[Act]:
        for beginning in self.steps.beginnings:
            self._begin(beginning)
            self._lines()
        while self.untold:  # only where steps wait in a circle
            self._play(min(self.untold & self._startable(), key=self.rank.__getitem__))
            self._lines()
        return self.acts

    def _lines(self) -> None:
        """Tells all that can be told now."""
        while True:
            step = self._next() or self._after_again() or self._elsewhere()
            if step is None:
                return
            self._play(step)

    def _ready(self, position: int) -> list[int]:
        return [
            n
            for n in self.steps.outs.get(position, ())
            if n in self.untold and self.waits.get(n, frozenset()) <= self.told
        ]

    def _spare(self, position: int, step: int) -> bool:
        """Whether more steps go out than will come in, so that a walk may begin here with a step. What waits for the step cannot come before."""
        coming = self.coming.get(position, 0)
        if coming:
            into = self.into.get(position, ())
            coming -= sum(n in self.untold and self._after(n, step) for n in into)
        return self.left.get(position, 0) > coming

    def _after(self, later: int, earlier: int) -> bool:
        """Whether a step must wait for another, by its road or by what it refers to."""
        if (later, earlier) not in self._waits_for:
            seen: set[int] = set()
            waiting = [later]
            while waiting:
                at = waiting.pop()
                if at not in seen:
                    seen.add(at)
                    waiting.extend(self.waits.get(at, ()))
                    parent = self.steps.all[at].parent
                    if parent is not None:
                        waiting.append(parent)
            self._waits_for[later, earlier] = earlier in seen
        return self._waits_for[later, earlier]

    def _next(self) -> int | None:
        """The step to go on with where we are: of this road, or of another that has this position, if that saves a way back."""
        ready = self._ready(self.board)
        own = [n for n in ready if self.steps.all[n].parent == self.at]
        if own:
            return min(own, key=lambda n: (not self._opens(n), self.rank[n]))
        # A road that comes here later goes on by known moves, where the plan has that from here.
        later = any(count and start == self.board for (start, _), count in self.on.items())
        other = [n for n in ready if later or self._spare(self.board, n)]
        return min(other, key=self.rank.__getitem__, default=None)

    def _opens(self, step: int) -> bool:
        """Whether another road to this board waits for a step: told now, that road can take up what is left here."""
        into = self.into.get(self.board, ())
        return any(n in self.untold and self._after(n, step) for n in into)

    def _after_again(self) -> int | None:
        """The step to go on with after known moves, where the plan has it so."""
        for (start, end), count in self.on.items():
            if start != self.board or not count or self.left.get(end, 0) < self.coming[end]:
                continue
            ready, way = self._ready(end), self._way(end)
            if not ready or way is None:
                continue
            self.on[start, end] -= 1
            self.coming[end] -= 1
            for uci, position in way:
                self.acts.append(Act("again", position, None, uci))
            self.board = end
            return min(ready, key=self.rank.__getitem__)
        return None

    def _way(self, end: int) -> list[tuple[str, int]] | None:
        """The shortest way of shown moves from the board to a position."""
        came: dict[int, tuple[int, str]] = {self.board: (-1, "")}
        waiting = deque([self.board])
        while waiting and end not in came:
            at = waiting.popleft()
            for uci, after in self.steps.moves.get(at, {}).items():
                if after not in came and (at, uci) in self._played:
                    came[after] = (at, uci)
                    waiting.append(after)
        if end not in came:
            return None
        way: list[tuple[str, int]] = []
        while end != self.board:
            at, uci = came[end]
            way.append((uci, end))
            end = at
        return way[::-1]

    def _elsewhere(self) -> int | None:
        """The step to go back for: of the nearest open branching, counted along the road that is in mind."""
        first = [min(r, key=self.rank.__getitem__) for at in self.open if (r := self._ready(at))]
        starts = [n for n in first if self._spare(self.steps.all[n].start, n)] or first
        if not starts:
            return None
        road = {n: depth for depth, n in enumerate(self._road(self.at))}

        def far(step: int) -> tuple[int, int]:
            shared = max((road[n] for n in self._road(step) if n in road), default=-1)
            return -shared, self.rank[step]

        return min(starts, key=far)

    def _road(self, number: int) -> tuple[int, ...]:
        if number not in self._roads:
            self._roads[number] = tuple(self.steps.road(number))
        return self._roads[number]

    def _startable(self) -> set[int]:
        return {n for at in self.open for n in self.steps.outs.get(at, ()) if n in self.untold}

    def _begin(self, number: int) -> None:
        position = self.steps.all[number].start
        known = position in self.shown and position != self.board
        self.acts.append(Act("back" if known else "begin", position, number))
        self.told.add(number)
        self.at = number
        self._see(position)

    def _play(self, number: int) -> None:
        step = self.steps.all[number]
        if step.start != self.board:
            self.acts.append(Act("back", step.start))
        self.acts.append(Act("step", step.end, number, step.uci))
        self._played.add(step.move)
        self.told.add(number)
        self.untold.discard(number)
        self.coming[step.end] -= 1
        self.left[step.start] -= 1
        if not self.left[step.start]:
            self.open.pop(step.start, None)
        self.at = number
        self._see(step.end)

    def _see(self, position: int) -> None:
        self.board = position
        self.shown.add(position)
        if self.left.get(position):
            self.open[position] = None
