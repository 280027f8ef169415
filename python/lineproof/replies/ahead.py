"""What a shallow search thinks that each move costs: what a player of some rating sees when he looks ahead."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable
from typing import Any

from lineproof.claims.bands import seen_from
from lineproof.claims.claim import Spot
from lineproof.engine import ENGINE_VERSION, Stop, search
from lineproof.proof import EvidenceStore
from lineproof.proof.asker import Interrupted

from .natural import depth


def costs(
    spot: Spot, rating: int, store: EvidenceStore, stop: Stop | None = None
) -> dict[str, float]:
    """Points that each legal move costs against the best, as a player of that rating sees it; by UCI.

    :raises Interrupted: when `stop` was set.
    """
    plies = depth(rating)
    low, part = math.floor(plies), plies % 1
    one = ahead(spot, low, store, stop)
    if not part:
        return one
    other = ahead(spot, low + 1, store, stop)
    return {uci: (1 - part) * one[uci] + part * other[uci] for uci in one}


DEEPEST = 8
"""Plies up to which a search grows."""


def growing(
    spot: Spot, store: EvidenceStore, stop: Stop | None = None
) -> tuple[tuple[str, int], ...]:
    """What searches of 1 to 8 plies like best: of each the move (UCI), and its points (White's). Empty where the game is over.

    :raises Interrupted: when `stop` was set.
    """
    fen, moves = spot.short

    def compute() -> Any | None:
        found = []
        for plies in range(1, DEEPEST + 1):
            answer = search(fen, moves, depth=plies, hash_mb=1, stop=stop)
            if answer.stopped or (stop is not None and stop.is_set()):
                return None
            found += [[line.moves[0], line.points] for line in answer.lines[:1]]
        return found

    key = json.dumps((ENGINE_VERSION, "growing", fen, moves, DEEPEST))
    value, _ = store.answer(key, compute, lambda kept: isinstance(kept, list))
    if value is None:
        raise Interrupted
    return tuple((str(uci), int(points)) for uci, points in value)


def since(fits: Iterable[bool]) -> int | None:
    """The first ply from which on each depth fits, of depths from 1 on; None when the last does not."""
    first: int | None = None
    for plies, right in enumerate(fits, 1):
        first = (first or plies) if right else None
    return first


def ahead(
    spot: Spot, plies: int, store: EvidenceStore, stop: Stop | None = None
) -> dict[str, float]:
    """Points that each legal move costs against the best in a search of so many plies; by UCI.

    :raises Interrupted: when `stop` was set.
    """
    fen, moves = spot.short
    side = spot.board.turn
    legal = spot.board.legal_moves()
    if not legal:
        return {}

    def compute() -> Any | None:
        answer = search(fen, moves, depth=plies, lines=len(legal), hash_mb=1, stop=stop)
        if answer.stopped or (stop is not None and stop.is_set()):
            return None
        return {line.moves[0]: seen_from(side, line.points) for line in answer.lines}

    key = json.dumps((ENGINE_VERSION, "ahead", fen, moves, plies))
    value, _ = store.answer(key, compute, lambda kept: isinstance(kept, dict))
    if value is None:
        raise Interrupted
    best = max(value.values(), default=0)
    return {uci: float(best - value.get(uci, 0)) for uci in legal}
