"""`lineproof engine solve`: how many positions of an EPD file the search solves."""

from __future__ import annotations

import argparse
import math
from pathlib import Path
from typing import TYPE_CHECKING, Any

from .failures import CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from lineproof.engine.epd import Problem
    from lineproof.engine.solving import Attempt

    from .shared import Commands

FORMAT = 1
"""Of the JSON."""
SECONDS = 1.0
"""A position has so long when no limit is given."""
LONGEST = 86_400
"""Seconds: a day."""


def add(commands: Commands) -> None:
    command = add_command(
        commands, "solve", "count the positions of an EPD file that it solves", run
    )
    command.add_argument(
        "file",
        metavar="FILE.epd",
        type=Path,
        help="positions with best moves (bm) or bad ones (am)",
    )
    command.add_argument("--seconds", type=float, help=f"time for a position ({SECONDS:g})")
    command.add_argument(
        "--nodes", type=int, help="nodes for a position instead: the same answers every time"
    )
    command.add_argument("--threads", type=int, default=1, help="threads of a search (1)")


def run(given: argparse.Namespace) -> int:
    seconds, nodes = _limits(given)
    problems = _read(given.file)
    attempts: list[Attempt] = []
    try:
        _solve_all(problems, seconds, nodes, given, attempts)
    except KeyboardInterrupt:
        if not given.json:
            write(f"{_sum(attempts)} tried, of {len(problems):,} in all\n")
        raise
    if given.json:
        write_json(
            {
                "format": FORMAT,
                "file": str(given.file),
                "limit": {"seconds": seconds, "nodes": nodes, "threads": given.threads},
                "positions": len(problems),
                "solved": sum(attempt.solved for attempt in attempts),
                "attempts": [_plain(attempt) for attempt in attempts],
            }
        )
    else:
        write(f"{_sum(attempts)}\n")
    return 0


def _limits(given: argparse.Namespace) -> tuple[float | None, int | None]:
    """(seconds, nodes), one of them None."""
    if given.seconds is not None and given.nodes is not None:
        raise CommandError("--seconds and --nodes contradict each other; give one of them")
    if given.threads < 1:
        raise CommandError(f"--threads is {given.threads}; give 1 or more")
    if given.nodes is not None:
        if not 1 <= given.nodes < 2**63:
            raise CommandError(f"--nodes is {given.nodes}; give 1 or more")
        return None, given.nodes
    seconds = SECONDS if given.seconds is None else given.seconds
    if math.isnan(seconds) or not 0 < seconds <= LONGEST:
        raise CommandError(f"--seconds is {seconds:g}; give a time above 0, up to {LONGEST:,}")
    return seconds, None


def _read(file: Path) -> tuple[Problem, ...]:
    from lineproof.engine.epd import EpdError, read

    try:
        data = file.read_bytes()
    except FileNotFoundError as error:
        raise CommandError(f"{file}: there is no such file; check the name") from error
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise CommandError(f"{file}: it cannot be read ({reason}); choose an EPD file") from error
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("latin-1")
    try:
        problems = read(text)
    except EpdError as error:
        raise CommandError(f"{file}:{error.line}:{error.column}: {error}") from error
    if not problems:
        raise CommandError(f"{file}: there is no position in it; give a file with one a line")
    return problems


def _solve_all(
    problems: tuple[Problem, ...],
    seconds: float | None,
    nodes: int | None,
    given: argparse.Namespace,
    attempts: list[Attempt],
) -> None:
    """One after the other, so that each has the machine to itself; misses are told as they come, except
    beside a progress line, where they follow at its end."""
    from .progress import progress

    told = 0

    def tell_misses() -> None:
        nonlocal told
        if not given.json:
            write("".join(f"{_missed(a, given.file)}\n" for a in attempts[told:] if not a.solved))
        told = len(attempts)

    try:
        with progress(str(given.file), "Solving", "position") as tell:
            for number, problem in enumerate(problems):
                if tell is not None:
                    tell(number, len(problems))
                attempts.append(_solve(problem, seconds, nodes, given.threads))
                if tell is None:
                    tell_misses()
    finally:
        tell_misses()


def _solve(problem: Problem, seconds: float | None, nodes: int | None, threads: int) -> Attempt:
    from lineproof.engine import LimitError, Stop
    from lineproof.engine.solving import solve

    from .waiting import wait_for

    stop = Stop()
    try:
        return wait_for(
            lambda: solve(problem, seconds=seconds, nodes=nodes, threads=threads, stop=stop)
        )
    except LimitError as error:
        raise CommandError(f"{error}; choose another limit") from error
    except KeyboardInterrupt:
        stop.set()
        raise


def _missed(attempt: Attempt, file: Path) -> str:
    from lineproof.report.plain import plain

    problem = attempt.problem
    return plain(
        f"{file}:{problem.line}: {problem.name}: played {attempt.played}, expected {attempt.expected}"
    )


def _sum(attempts: list[Attempt]) -> str:
    return f"solved {sum(attempt.solved for attempt in attempts)} of {len(attempts)}"


def _plain(attempt: Attempt) -> dict[str, Any]:
    problem = attempt.problem
    return {
        "name": problem.name,
        "line": problem.line,
        "fen": problem.fen,
        "best": list(problem.best),
        "avoid": list(problem.avoid),
        "played": attempt.played,
        "solved": attempt.solved,
        "nodes": attempt.nodes,
        "seconds": round(attempt.seconds, 3),
    }
