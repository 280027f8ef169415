"""Fits the win/draw/loss model to the engine's own games, and measures how well it foretells fresh ones.

    python training/expected_score.py fit GAMES... --out crates/engine/src/points/table.rs
    python training/expected_score.py calibrate GAMES...

GAMES are files of one game a line, as `crates/engine/examples/generate.rs` writes them (.xz and .gz
too). The model is an ordered logit: with White's advantage x in centipawns,

    win = 1 / (1 + exp((a - x) / b)),   loss = 1 / (1 + exp((a + x) / b)),   draw = the rest,

fitted by maximum likelihood (McCullagh, Regression Models for Ordinal Data, 1980). The expected
score is win + draw / 2.
"""

from __future__ import annotations

import argparse
import gzip
import hashlib
import lzma
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import minimize

Numbers = NDArray[np.float64]

PER_GAME = 8
"""Positions taken from a game, at most: those of one game have one result."""
AFTER_OPENING = 2
"""Plies left out after the random ones: the game has not settled yet."""
MATE = 30_000
BINS = 10


@dataclass(frozen=True)
class Sample:
    """Positions of games: White's centipawns by search, and his result (1, 0.5 or 0)."""

    centipawns: Numbers
    result: Numbers
    games: int


def lines(path: Path) -> Iterator[str]:
    opened = {".xz": lzma.open, ".gz": gzip.open}.get(path.suffix, open)
    with opened(path, "rt", encoding="ascii") as file:
        yield from file


def sample(paths: list[Path]) -> Sample:
    """Positions spread evenly over each game, chosen by the game's own text: the same every time."""
    scores: list[int] = []
    results: list[float] = []
    games = 0
    for path in paths:
        for line in lines(path):
            result, random_plies, *plies = line.split()
            first = int(random_plies) + AFTER_OPENING
            known = [int(ply.rpartition("/")[2]) for ply in plies[first:]]
            if not known:
                continue
            games += 1
            step = max(1, len(known) // PER_GAME)
            start = hashlib.sha256(line.encode()).digest()[0] % step
            taken = [score for score in known[start::step] if abs(score) < MATE][:PER_GAME]
            scores += taken
            results += [{"1-0": 1.0, "0-1": 0.0}.get(result, 0.5)] * len(taken)
    return Sample(np.array(scores, dtype=float), np.array(results), games)


def chances(centipawns: Numbers, a: float, b: float) -> tuple[Numbers, Numbers, Numbers]:
    """Win, draw and loss of White."""
    win = 1 / (1 + np.exp((a - centipawns) / b))
    loss = 1 / (1 + np.exp((a + centipawns) / b))
    return win, 1 - win - loss, loss


def expected(centipawns: Numbers, a: float, b: float) -> Numbers:
    win, _, loss = chances(centipawns, a, b)
    return (1 + win - loss) / 2


def log_loss(data: Sample, a: float, b: float) -> float:
    win, draw, loss = chances(data.centipawns, a, b)
    likelihood = np.where(data.result == 1, win, np.where(data.result == 0, loss, draw))
    return float(-np.log(np.maximum(likelihood, 1e-12)).mean())


def fit(data: Sample) -> tuple[float, float]:
    def cost(logs: Numbers) -> float:
        a, b = np.exp(logs)
        return log_loss(data, float(a), float(b))

    found = minimize(cost, np.log([100.0, 100.0]), method="Nelder-Mead")
    if not found.success:
        raise SystemExit(f"the fit did not end: {found.message}")
    a, b = np.exp(found.x)
    return round(float(a), 1), round(float(b), 1)


def edges(value: Numbers, centipawns: NDArray[np.int64], most: int) -> list[int]:
    """For each whole number from 1 to `most`, the least centipawns whose value rounds to it."""
    rounded = np.floor(value * 100 + 0.5).astype(int)
    return [int(centipawns[np.argmax(rounded >= number)]) for number in range(1, most + 1)]


def table(data: Sample, a: float, b: float, command: str) -> str:
    reach = np.arange(-4000, 4001)
    as_floats = reach.astype(float)
    points = edges(expected(as_floats, a, b), reach, 100)
    wins = edges(chances(as_floats, a, b)[0], reach, 100)

    def rows(values: list[int]) -> str:
        return "".join(
            "    " + " ".join(f"{value}," for value in values[start : start + 10]) + "\n"
            for start in range(0, len(values), 10)
        )

    return f"""//! Written by `{command}`; do not edit.
//!
//! Fitted to {len(data.result)} positions of {data.games} games; log-loss {log_loss(data, a, b):.4f}.

/// Centipawns at which a win is as likely as not; the tables below are made of it.
#[cfg(test)]
pub const A: f64 = {a:.1f};
/// Centipawns that change the odds by a factor of e.
#[cfg(test)]
pub const B: f64 = {b:.1f};

/// `POINTS[p - 1]` is the least number of centipawns that is worth `p` points.
#[rustfmt::skip]
pub const POINTS: [i16; 100] = [
{rows(points)}];

/// `WINS[p - 1]` is the least number of centipawns at which a win has `p` chances in a hundred.
#[rustfmt::skip]
pub const WINS: [i16; 100] = [
{rows(wins)}];
"""


def calibration(data: Sample, a: float, b: float) -> str:
    """A table of ten bins of the expected score, and the Brier score beside those of two baselines."""
    foretold = expected(data.centipawns, a, b)
    rows = ["| expected score | positions | foretold | scored |", "|---|---|---|---|"]
    for number in range(BINS):
        low, high = number / BINS, (number + 1) / BINS
        inside = (foretold >= low) & ((foretold < high) | (number == BINS - 1))
        count = int(inside.sum())
        if count:
            mean, scored = foretold[inside].mean() * 100, data.result[inside].mean() * 100
            rows.append(
                f"| {low * 100:.0f} to {high * 100:.0f} | {count} | {mean:.1f} | {scored:.1f} |"
            )
        else:
            rows.append(f"| {low * 100:.0f} to {high * 100:.0f} | 0 | | |")
    brier = ((foretold - data.result) ** 2).mean()
    constant = ((data.result.mean() - data.result) ** 2).mean()
    rows += [
        "",
        f"{len(data.result)} positions of {data.games} games. Brier score {brier:.4f}"
        f" (a constant {constant:.4f});"
        f" log-loss of win, draw and loss {log_loss(data, a, b):.4f}.",
    ]
    return "\n".join(rows)


def constants(path: Path) -> tuple[float, float]:
    """A and B of a written table."""
    found = {}
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.startswith("pub const ") and ": f64 = " in line:
            name, _, value = line.removeprefix("pub const ").partition(": f64 = ")
            found[name] = float(value.rstrip(";"))
    return found["A"], found["B"]


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("task", choices=("fit", "calibrate"))
    parser.add_argument("games", nargs="+", type=Path, metavar="GAMES")
    parser.add_argument("--out", type=Path, default=Path("crates/engine/src/points/table.rs"))
    given = parser.parse_args()
    data = sample(given.games)
    if given.task == "fit":
        a, b = fit(data)
        names = " ".join(path.name for path in given.games)
        command = f"python training/expected_score.py fit {names}"
        given.out.write_text(table(data, a, b, command), encoding="utf-8")
        print(f"a {a}, b {b}, log-loss {log_loss(data, a, b):.4f}; written to {given.out}")
    else:
        print(calibration(data, *constants(given.out)))
    return 0


if __name__ == "__main__":
    sys.exit(main())
