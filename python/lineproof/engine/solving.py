"""Solving a problem: whether the search plays what is to be found.

>>> from lineproof.engine.epd import read
>>> (problem,) = read("6k1/5ppp/8/8/8/8/8/R3K3 w - - bm Ra8#;")
>>> solve(problem, nodes=1_000).solved
True
"""

from __future__ import annotations

import time
from dataclasses import dataclass

from lineproof._engine import Board, Stop
from lineproof.engine.epd import Problem
from lineproof.engine.searching import search


@dataclass(frozen=True, slots=True)
class Attempt:
    """A problem with the move that was played, in SAN. seconds: wall time."""

    problem: Problem
    played: str
    solved: bool
    nodes: int
    seconds: float

    @property
    def expected(self) -> str:
        """What was to be found: "Qg6 or Qh4", "not Nd2", or both."""
        board = Board(self.problem.fen)
        parts = [
            " or ".join(board.san(uci) for uci in self.problem.best),
            " or ".join(board.san(uci) for uci in self.problem.avoid),
        ]
        return ", ".join(said for said in (parts[0], f"not {parts[1]}" if parts[1] else "") if said)


def solve(
    problem: Problem,
    *,
    seconds: float | None = None,
    nodes: int | None = None,
    threads: int = 1,
    stop: Stop | None = None,
) -> Attempt:
    """Searches a problem once, to whichever limit comes first.

    With nodes alone and one thread the answer is the same every time.
    :raises LimitError: when there is no limit, or one is out of range
    """
    began = time.perf_counter()
    answer = search(problem.fen, seconds=seconds, nodes=nodes, threads=threads, stop=stop)
    spent = time.perf_counter() - began
    if not answer.lines:  # drawn by rule: there is nothing to search
        return Attempt(problem, answer.finished, False, answer.nodes, spent)
    line = answer.lines[0]
    return Attempt(problem, line.san[0], problem.solved_by(line.moves[0]), answer.nodes, spent)
