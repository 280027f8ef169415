"""Mistakes that a lesson shows, and the move that punishes each."""

from __future__ import annotations

from collections.abc import Iterable

from .steps import Steps

BAD = frozenset({2, 4, 6})
"""?, ?? and ?! (PGN standard, 10)."""
GOOD = frozenset({1, 3})
"""! and !!"""

Known = Iterable[tuple[int, str, str]]
"""Slips that were found by search: key of the position, the move, and the move that refutes it, in UCI."""


def punished(steps: Steps, slips: Known = ()) -> dict[int, int]:
    """By a mistake's step the step that punishes it: the refutation of a slip, or after a move marked ?, ?? or ?! the
    continuation marked ! or !!, and without one the continuation shown first."""
    refuted = {(key, uci): reply for key, uci, reply in slips}
    found: dict[int, int] = {}
    for step in steps.all:
        if step.uci is None or step.number not in steps.wanted_set:
            continue
        after = [n for n in step.children if n in steps.wanted_set]
        reply = refuted.get((steps.at[step.start].key, step.uci))
        known = [n for n in after if steps.all[n].uci == reply]
        if step.nags & BAD:
            known += [n for n in after if steps.all[n].nags & GOOD] + after
        if known:
            found[step.number] = known[0]
    return found
