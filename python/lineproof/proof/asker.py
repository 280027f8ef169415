"""The asker: answers the questions of checks from our engine or an outside one, through the evidence store."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import astuple
from typing import TYPE_CHECKING, Any

from lineproof.claims import GameOver, Played, Spot
from lineproof.engine import ENGINE_VERSION, Answer, Line, Stop, mate, search

from .store import EvidenceStore

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine

    from .games import Games

SHALLOW = 2_000
"""Nodes of the search that tells what strikes the eye first."""


ASIDE = 40_000
"""Nodes of a search for what is shown beside an answer: those of a sketch."""


class Interrupted(Exception):  # noqa: N818 - a stop is no error
    """The run was stopped while a question was being answered."""


class Asker:
    """Implements `lineproof.claims.Ask` at one step of effort.

    outside: answers the searches in place of ours; whether there is a mate in n stays with our solver, which
    tries every move. games: answers how often a move is played.
    """

    def __init__(
        self,
        store: EvidenceStore,
        nodes: int,
        stop: Stop | None = None,
        outside: OutsideEngine | None = None,
        games: Games | None = None,
    ) -> None:
        self._store = store
        self._nodes = nodes
        self._stop = stop
        self._outside = outside
        self._games = games
        self.spent = 0
        """Nodes searched for these questions, whether now or in an earlier run."""
        self.counted = False
        """Whether games were asked."""
        self.uncounted = False
        """Whether games were to be asked, and there are none."""

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

    def aside(self, spot: Spot, uci: str) -> Line:
        line = self._search("best", spot, ASIDE, [uci])
        if line is None:
            raise GameOver("the game is drawn here")
        return line

    def mate(self, spot: Spot, moves: int) -> tuple[bool | None, tuple[str, ...]]:
        fen = spot.short[0] if not spot.short[1] else spot.board.fen

        def compute() -> Any | None:
            found, line, nodes = mate(fen, moves, nodes=self._nodes * 4, stop=self._stop)
            return (
                None
                if found is None and self._stopped()
                else {"found": found, "line": line, "nodes": nodes}
            )

        question = ("mate", fen.split(" ")[:4], moves, self._nodes * 4)
        value = self._ask(ENGINE_VERSION, question, compute)
        return value["found"], tuple(value["line"])

    def played(self, spot: Spot, uci: str, ratings: tuple[int, int] | None = None) -> Played | None:
        if self._stopped():
            raise Interrupted
        if self._games is None:
            self.uncounted = True
            return None
        self.counted = True
        return self._games.played(spot, uci, ratings)

    def _search(
        self, question: str, spot: Spot, nodes: int, root_moves: Sequence[str] | None
    ) -> Line | None:
        fen, moves = spot.short

        def compute() -> Any | None:
            answer = self._answer(fen, moves, nodes, root_moves)
            if answer.stopped or self._stopped():
                return None
            line = astuple(answer.lines[0]) if answer.lines else None
            return {"line": line, "nodes": answer.nodes}

        who = ENGINE_VERSION if self._outside is None else self._outside.program.identity
        value = self._ask(who, (question, fen, moves, nodes, root_moves), compute)
        if value["line"] is None:
            return None
        uci, san, points, centipawns, mates = value["line"]
        return Line(tuple(uci), tuple(san), points, centipawns, mates)

    def _answer(
        self, fen: str, moves: Sequence[str], nodes: int, root_moves: Sequence[str] | None
    ) -> Answer:
        if self._outside is None:
            return search(fen, moves, nodes=nodes, root_moves=root_moves, stop=self._stop)
        return self._outside.search(fen, moves, nodes=nodes, root_moves=root_moves, stop=self._stop)

    def _ask(self, who: str, question: tuple[Any, ...], compute: Any) -> Any:
        if self._stopped():
            raise Interrupted
        key = json.dumps((who, *question))
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
