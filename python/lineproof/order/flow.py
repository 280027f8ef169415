"""How few walks show every move: the lower bound on ways back, and where walking known moves again saves one.

A walk ends where more moves come in than go out, and another must begin where more go out than come in. Each pair of such
positions that known moves join saves a way back at the price of the plies between them. The most pairs, then the fewest plies,
are a flow of least cost (successive shortest paths; Ahuja, Magnanti and Orlin, Network Flows, 1993, chapter 9, from memory).
No order has fewer ways back, whatever its sentences refer to.
"""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass

from .steps import Steps


@dataclass(frozen=True)
class Bound:
    """ways_back, plies_again: what no order can go below. on: by (position where a walk ends, position where to go on) how often."""

    ways_back: int
    plies_again: int
    on: dict[tuple[int, int], int]


def bound(steps: Steps) -> Bound:
    balance: dict[int, int] = {}
    for number in steps.beginnings:
        at = steps.all[number].start
        balance[at] = balance.get(at, 0) - 1
    for number in steps.wanted:
        step = steps.all[number]
        balance[step.start] = balance.get(step.start, 0) + 1
        balance[step.end] = balance.get(step.end, 0) - 1
    need = {at: count for at, count in balance.items() if count > 0}
    spare = {at: -count for at, count in balance.items() if count < 0 and steps.moves.get(at)}
    on = _matched(steps, spare, need)
    saved = sum(on.values())
    far = {at: distances(steps, at) for at, _ in on}
    again = sum(count * far[at][to] for (at, to), count in on.items())
    twice = len(steps.wanted) - len({steps.all[number].move for number in steps.wanted})
    return Bound(sum(need.values()) - saved, again + twice, on)


def distances(steps: Steps, start: int) -> dict[int, int]:
    """Plies of the lesson's moves from a position to each that they lead to."""
    found = {start: 0}
    waiting = deque([start])
    while waiting:
        at = waiting.popleft()
        for after in steps.moves.get(at, {}).values():
            if after not in found:
                found[after] = found[at] + 1
                waiting.append(after)
    return found


def _matched(
    steps: Steps, spare: dict[int, int], need: dict[int, int]
) -> dict[tuple[int, int], int]:
    """The most pairs of least length, as (from, to) with its count."""
    far = {
        at: {to: plies for to, plies in distances(steps, at).items() if to in need} for at in spare
    }
    far = {at: to for at, to in far.items() if to}
    left, open_ = dict(spare), dict(need)
    on: dict[tuple[int, int], int] = {}
    while True:
        path = _shortest(far, left, open_, on)
        if path is None:
            return on
        for number in range(0, len(path) - 1, 2):
            pair = (path[number], path[number + 1])
            on[pair] = on.get(pair, 0) + 1
            if number + 2 < len(path):
                back = (path[number + 2], path[number + 1])
                on[back] -= 1
                if not on[back]:
                    del on[back]
        left[path[0]] -= 1
        open_[path[-1]] -= 1


def _shortest(
    far: dict[int, dict[int, int]],
    left: dict[int, int],
    open_: dict[int, int],
    on: dict[tuple[int, int], int],
) -> list[int] | None:
    """The cheapest way to one pair more: spare, need, spare, need, ... (Bellman and Ford, with a queue)."""
    cost: dict[int, int] = {at: 0 for at in far if left[at]}
    before: dict[int, int] = {}  # of a spare position the need that it is taken from
    reached: dict[int, tuple[int, int]] = {}  # of a need (cost, the spare position)
    taken: dict[int, list[int]] = {}
    for at, to in on:
        taken.setdefault(to, []).append(at)
    waiting = deque(cost)
    while waiting:
        at = waiting.popleft()
        for to, plies in far[at].items():
            now = cost[at] + plies
            if to in reached and reached[to][0] <= now:
                continue
            reached[to] = (now, at)
            for other in taken.get(to, ()):
                if other != at and now - far[other][to] < cost.get(other, 1 << 60):
                    cost[other] = now - far[other][to]
                    before[other] = to
                    waiting.append(other)
    ends = [(price, to) for to, (price, _) in reached.items() if open_[to] > 0]
    if not ends:
        return None
    _, to = min(ends)
    path = [to]
    while True:
        at = reached[path[0]][1]
        path.insert(0, at)
        if at not in before:
            return path
        path.insert(0, before[at])
