"""Fits the weights of the evaluation to games: `python training/fit.py GAMES... --out FILE.rs`.

README.md beside this file says what is fitted to what, and how long it takes.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

import guesses
import layout
import numpy as np
import samples
import weights
from layout import Layout, LayoutError
from model import (
    Array,
    Problem,
    count_of_material,
    engine_value,
    expected,
    log_loss,
    slope_of_scores,
    value,
)
from numpy.typing import NDArray
from samples import SampleError, Samples
from scipy.optimize import minimize  # type: ignore[import-untyped]
from weights import Weights

FIXED = ("BARE_KING", "DRIVE_TO_EDGE", "DRIVE_KINGS_NEAR", "DRIVE_TO_CORNER")


@dataclass(frozen=True)
class Losses:
    """Mean log-loss in nats a position."""

    name: str
    fit: float
    validation: float
    validation_results: float

    def __str__(self) -> str:
        return (
            f"{self.name:<26} fit {self.fit:.5f}  validation {self.validation:.5f}"
            f"  against results alone {self.validation_results:.5f}"
        )


def arguments(words: list[str] | None = None) -> argparse.Namespace:
    """The command line."""
    parser = argparse.ArgumentParser(description="Fit the weights of the evaluation to games.")
    parser.add_argument("games", nargs="*", type=Path, help="files of games, also .xz or .gz")
    parser.add_argument("--out", type=Path, required=True, help="the Rust file to write")
    parser.add_argument("--seed", type=int, default=1, help="chooses positions and games")
    parser.add_argument("--most", type=int, default=12, help="positions a game")
    parser.add_argument(
        "--blend", type=float, default=0.5, help="share of the result in the target, 0 to 1"
    )
    parser.add_argument(
        "--spread", type=float, default=60.0, help="how far a weight may go, in centipawns"
    )
    parser.add_argument("--steps", type=int, default=300, help="most iterations")
    parser.add_argument(
        "--guesses", action="store_true", help="start from guesses.py, not from weights.rs"
    )
    parser.add_argument(
        "--samples", type=Path, help="a folder to keep the positions in, or that has them"
    )
    return parser.parse_args(words)


def fit(problem: Problem, steps: int) -> tuple[Weights, int]:
    """The weights with the least loss, and the number of iterations (L-BFGS; Byrd, Lu, Nocedal and Zhu 1995)."""
    root = np.sqrt(problem.curvature())
    count = 0

    def scaled(row: Array) -> tuple[float, Array]:
        loss, gradient = problem.loss(row / root)
        return loss, gradient / root

    def progress(row: Array) -> None:
        nonlocal count
        count += 1
        if count % 20 == 0:
            print(f"  {count} iterations, {problem.loss(row / root)[0]:.6f}", flush=True)

    found = minimize(
        scaled,
        problem.pack(problem.start) * root,
        jac=True,
        method="L-BFGS-B",
        callback=progress,
        options={"maxiter": steps, "maxcor": 20, "ftol": 1e-10, "gtol": 1e-8},
    )
    return problem.unpack(found.x / root), int(found.nit)


def fixed(of: Layout) -> NDArray[np.bool_]:
    """Which weights stay: no position with a bare king is taken, so that nothing is learnt of driving it."""
    stay = np.zeros((of.count, 2), dtype=np.bool_)
    for term in of.terms:
        stay[term.first : term.first + term.length] = term.name in FIXED
    return np.concatenate([stay.ravel(), np.zeros(of.unit_count, dtype=np.bool_)])


def split(games: Samples, seed: int) -> NDArray[np.bool_]:
    """Which positions validate: those of a tenth of the games."""
    count = int(games.games.max()) + 1
    held_back = np.random.default_rng(seed).permutation(count) < count // 10
    chosen: NDArray[np.bool_] = held_back[games.games]
    return chosen


def load(options: argparse.Namespace, of: Layout) -> Samples:
    """The positions, taken from the games unless a folder has them."""
    kept = options.samples
    if kept is not None and (kept / "rows.bin").exists():
        return samples.read(kept, of)
    if not options.games:
        raise SampleError("no games")
    if kept is not None:
        kept.mkdir(parents=True, exist_ok=True)
        samples.take(options.games, kept, options.seed, options.most)
        return samples.read(kept, of)
    with tempfile.TemporaryDirectory() as folder:
        samples.take(options.games, Path(folder), options.seed, options.most)
        return samples.read(Path(folder), of)


def run(options: argparse.Namespace) -> None:
    """Takes the positions, fits, reports, writes.

    :raises SampleError: when the trace of the engine and the model here differ on a position.
    """
    begun = time.monotonic()
    of = layout.read()
    built = weights.read(of)
    every = load(options, of)
    differing = int(np.sum(engine_value(every, built) != every.values))
    if differing:
        raise SampleError(
            f"{differing} of {len(every)} positions have another value in the engine:"
            " the positions were taken with other weights, or the model is wrong"
        )
    start = guesses.start(of) if options.guesses else built
    held_back = split(every, options.seed)
    parts = (every.where(~held_back), every.where(held_back))
    slope = slope_of_scores(parts[0])
    targets = [
        options.blend * part.points + (1.0 - options.blend) * expected(part.scores, slope)
        for part in parts
    ]
    games = len(np.unique(parts[0].games))
    print(
        f"{len(np.unique(every.games))} games, {len(every)} positions, {parts[0].terms.nnz} counts;"
        f" {len(parts[1])} positions validate; {time.monotonic() - begun:.0f} s",
        flush=True,
    )

    def judge(name: str, forecasts: list[Array]) -> Losses:
        return Losses(
            name,
            log_loss(forecasts[0], targets[0]),
            log_loss(forecasts[1], targets[1]),
            log_loss(forecasts[1], parts[1].points),
        )

    def judge_weights(name: str, of_it: Weights) -> Losses:
        return judge(name, [expected(value(part, of_it)) for part in parts])

    constant = float(np.mean(targets[0]))
    report = [
        judge("the target itself", targets),
        judge("a constant", [np.full(len(part), constant) for part in parts]),
        judge_weights("material 1, 3, 3, 5, 9", count_of_material(of)),
        judge(f"search score x {slope:.5f}", [expected(part.scores, slope) for part in parts]),
        judge_weights("before", start),
    ]
    print(*report, sep="\n", flush=True)

    problem = Problem(parts[0], targets[0], start, options.spread, games, fixed(of))
    found, iterations = fit(problem, options.steps)
    whole = found.rounded()
    forecasts = [expected(engine_value(part, whole).astype(np.float64)) for part in parts]
    after = [judge_weights("after", found), judge("after, in whole numbers", forecasts)]
    print(*after, sep="\n")
    print(f"{iterations} iterations, {time.monotonic() - begun:.0f} s")

    command = "python training/fit.py GAMES... --out crates/engine/src/eval/weights.rs"
    extra = "".join(
        f" --{name} {getattr(options, name):g}"
        for name in ("seed", "most", "blend", "spread", "steps")
    ) + (" --guesses" if options.guesses else "")
    header = [
        "Weights of the evaluation. Written by a program: do not edit.",
        "",
        f"Fitted to {len(every)} positions of {len(np.unique(every.games))} games of the engine against itself;"
        f" {len(parts[1])} of them,",
        "all of a tenth of the games, were held back. Log-loss in nats a position:",
        "",
        "```text",
        *[str(line) for line in (*report, *after)],
        "```",
        "",
        f"{iterations} iterations. `{command}`",
        f"`{extra.strip()}`",
    ]
    weights.write(of, whole, header, options.out)


def main() -> int:
    """Runs the command line; the exit status."""
    try:
        run(arguments())
    except (SampleError, LayoutError, OSError) as error:
        print(f"fit: {error}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
