"""`lineproof engine speed`: nodes a second on fixed positions, and the signature of the search."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from lineproof.engine.speed import Run

    from .shared import Commands

FORMAT = 1
"""Of the JSON."""


def add(commands: Commands) -> None:
    add_command(
        commands, "speed", "measure nodes a second, and sign the search by its node count", run
    )


def run(given: argparse.Namespace) -> int:
    runs = _measure()
    nodes = sum(run.nodes for run in runs)
    seconds = sum(run.seconds for run in runs)
    rate = round(nodes / seconds)
    if given.json:
        write_json(
            {
                "format": FORMAT,
                "positions": [
                    {
                        "fen": run.fen,
                        "depth": run.depth,
                        "nodes": run.nodes,
                        "seconds": round(run.seconds, 3),
                    }
                    for run in runs
                ],
                "nodes": nodes,
                "seconds": round(seconds, 3),
                "nodes_a_second": rate,
                "signature": nodes,
            }
        )
        return 0
    rows = [f"{run.nodes:>11,}  {run.seconds:>7.2f}  {run.depth:>5}  {run.fen}\n" for run in runs]
    write(f"{'nodes':>11}  {'seconds':>7}  {'depth':>5}  position\n{''.join(rows)}")
    write(f"{nodes:,} nodes in {seconds:.2f} s on one core: {rate:,} nodes a second\n")
    write(f"signature {nodes}\n")
    return 0


def _measure() -> list[Run]:
    from lineproof.engine import Stop
    from lineproof.engine.speed import POSITIONS, runs

    from .progress import progress
    from .waiting import wait_for

    stop = Stop()
    found: list[Run] = []
    with progress("the positions", "Searching", "position") as tell:
        searched = runs(stop)
        try:
            for number in range(len(POSITIONS)):
                if tell is not None:
                    tell(number, len(POSITIONS))
                found.append(wait_for(lambda: next(searched)))
        except KeyboardInterrupt:
            stop.set()
            raise
    return found
