"""In which order the continuations of a step are told."""

from __future__ import annotations

from .steps import Steps
from .waiting import Waits


def siblings(
    steps: Steps, waits: Waits, punished: dict[int, int], at_once: frozenset[int]
) -> dict[int, list[int]]:
    """The continuations of each step in the order in which they are told."""
    before: dict[int, set[int]] = {}
    for later, earlier in waits.items():
        road = steps.road(later)
        for one in earlier:
            other = steps.road(one)
            shared = sum(a == b for a, b in zip(road, other, strict=False))
            if shared < len(road) and shared < len(other):
                before.setdefault(road[shared], set()).add(other[shared])
    found = {}
    for step in steps.all:
        left = list(step.children)
        punishes = punished.get(step.number)
        if punishes in left:
            left.remove(punishes)
            left.insert(0, punishes)
        order: list[int] = []
        if step.number in at_once and punishes in left:
            order.append(left.pop(0))
        while left:
            free = [n for n in left if not before.get(n, set()) & set(left)]
            order.append((free or left)[0])
            left.remove(order[-1])
        found[step.number] = order
    return found
