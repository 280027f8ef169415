"""How many positions of an EPD file the search solves.

    python benchmarks/solve.py FILE.epd --seconds 1

A position counts as solved when the first move of the answer is one of the `bm` moves and none
of the `am` moves.
"""

from __future__ import annotations

import argparse
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

from lineproof.engine import Board, search


@dataclass(frozen=True)
class Problem:
    """One EPD line (PGN standard, 16.2)."""

    name: str
    fen: str
    best: tuple[str, ...]
    avoid: tuple[str, ...]


def read(line: str) -> Problem:
    fields = line.split(maxsplit=4)
    fen = " ".join(fields[:4]) + " 0 1"
    operations: dict[str, str] = {}
    for operation in fields[4].split(";"):
        name, _, operand = operation.strip().partition(" ")
        if name:
            operations[name] = operand.strip()
    board = Board(fen)

    def moves(name: str) -> tuple[str, ...]:
        return tuple(board.parse_san(san) for san in operations.get(name, "").split())

    return Problem(operations.get("id", fen).strip('"'), fen, moves("bm"), moves("am"))


def solved(problem: Problem, seconds: float | None, nodes: int | None) -> bool:
    played = search(problem.fen, seconds=seconds, nodes=nodes).lines[0].moves[0]
    return (not problem.best or played in problem.best) and played not in problem.avoid


def main() -> int:
    parser = argparse.ArgumentParser(description="Solve an EPD file.")
    parser.add_argument("file", type=Path)
    limit = parser.add_mutually_exclusive_group(required=True)
    limit.add_argument("--seconds", type=float)
    limit.add_argument("--nodes", type=int)
    parser.add_argument("--at-once", type=int, default=1, help="searches side by side")
    options = parser.parse_args()
    text = options.file.read_text(encoding="utf-8")
    problems = [read(line) for line in text.splitlines() if line.strip()]
    begun = time.perf_counter()
    with ThreadPoolExecutor(options.at_once) as pool:
        results = list(pool.map(lambda p: solved(p, options.seconds, options.nodes), problems))
    missed = [problem.name for problem, good in zip(problems, results, strict=True) if not good]
    seconds = time.perf_counter() - begun
    print(f"solved {len(problems) - len(missed)} of {len(problems)} in {seconds:.0f} s")
    print("missed:", ", ".join(missed) or "none")
    return 0


if __name__ == "__main__":
    sys.exit(main())
