"""The asker: answers the questions of checks from the engine, through the evidence store."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import astuple
from typing import Any

from lineproof.claims import GameOver, Spot
from lineproof.engine import ENGINE_VERSION, Line, Stop, mate, search

from .store import EvidenceStore

SHALLOW = 2_000
"""Nodes of the search that tells what strikes the eye first."""


class Interrupted(Exception):  # noqa: N818 - a stop is no error
    """The run was stopped while a question was being answered."""


class Asker:
    """Implements `lineproof.claims.Ask` at one step of effort."""

    def __init__(self, store: EvidenceStore, nodes: int, stop: Stop | None = None) -> None:
        self._store = store
        self._nodes = nodes
        self._stop = stop
        self.spent = 0
        """Nodes searched for these questions, whether now or in an earlier run."""

    @property
    def nodes(self) -> int:
        return self._nodes

    def best(self, spot: Spot, *, without: Sequence[str] = ()) -> Line | None:
        left = [m for m in spot.board.legal_moves() if m not in without] if without else None
        if left == []:
            return None
        return self._search("best", spot, self._nodes, left)

    def move(self, spot: Spot, uci: str) -> Line:
        line = self._search("best", spot, self._nodes, [uci])
        if line is None:
            raise GameOver("the game is drawn here")
        return line

    def shallow(self, spot: Spot) -> Line | None:
        return self._search("best", spot, SHALLOW, None)

    def mate(self, spot: Spot, moves: int) -> tuple[bool | None, tuple[str, ...]]:
        fen = spot.short[0] if not spot.short[1] else spot.board.fen

        def compute() -> Any | None:
            found, line, nodes = mate(fen, moves, nodes=self._nodes * 4, stop=self._stop)
            return (
                None
                if found is None and self._stopped()
                else {"found": found, "line": line, "nodes": nodes}
            )

        value = self._ask(("mate", fen.split(" ")[:4], moves, self._nodes * 4), compute)
        return value["found"], tuple(value["line"])

    def _search(
        self, question: str, spot: Spot, nodes: int, root_moves: Sequence[str] | None
    ) -> Line | None:
        fen, moves = spot.short

        def compute() -> Any | None:
            answer = search(fen, moves, nodes=nodes, root_moves=root_moves, stop=self._stop)
            if answer.stopped or self._stopped():
                return None
            line = astuple(answer.lines[0]) if answer.lines else None
            return {"line": line, "nodes": answer.nodes}

        value = self._ask((question, fen, moves, nodes, root_moves), compute)
        if value["line"] is None:
            return None
        uci, san, points, centipawns, mates = value["line"]
        return Line(tuple(uci), tuple(san), points, centipawns, mates)

    def _ask(self, question: tuple[Any, ...], compute: Any) -> Any:
        if self._stopped():
            raise Interrupted
        key = json.dumps((ENGINE_VERSION, *question))
        value, _ = self._store.answer(key, compute, _is_answer)
        if value is None:
            raise Interrupted
        self.spent += value["nodes"]
        return value

    def _stopped(self) -> bool:
        return self._stop is not None and self._stop.is_set()


def _is_answer(value: Any) -> bool:
    """Whether a kept value is an answer of ours: a store may be damaged."""
    return isinstance(value, dict) and "nodes" in value and ("found" in value or "line" in value)
