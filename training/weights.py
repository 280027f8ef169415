"""Reads and writes the table of weights that the engine is built with, `weights.rs`."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from layout import EVAL, Layout, LayoutError
from numpy.typing import NDArray

WEIGHTS = EVAL / "weights.rs"
_PAIR = re.compile(r"pair\((-?\d+), (-?\d+)\)")
_UNITS = re.compile(r"UNIT_COUNT\] = \[(.*?)\];", re.DOTALL)


@dataclass(frozen=True)
class Weights:
    """`pairs`: weights in centipawns, shape (count, 2), middlegame and endgame. `units`: shape (unit_count,)."""

    pairs: NDArray[np.float64]
    units: NDArray[np.float64]

    def rounded(self) -> Weights:
        """The nearest integers."""
        return Weights(np.rint(self.pairs), np.rint(self.units))


def read(layout: Layout, path: Path = WEIGHTS) -> Weights:
    """Reads the weights that are there.

    :raises LayoutError: when their number is not the layout's.
    """
    text = path.read_text(encoding="utf-8")
    pairs = np.array([[int(mg), int(eg)] for mg, eg in _PAIR.findall(text)], dtype=np.float64)
    block = _UNITS.search(text)
    bare = re.sub(r"//.*", "", block[1]) if block else ""
    units = np.array([int(word) for word in re.findall(r"-?\d+", bare)], dtype=np.float64)
    if pairs.shape != (layout.count, 2) or units.shape != (layout.unit_count,):
        raise LayoutError(
            f"{path} does not fit terms.rs: {pairs.shape} weights, {units.shape} units"
        )
    return Weights(pairs, units)


def write(layout: Layout, weights: Weights, header: list[str], path: Path = WEIGHTS) -> None:
    """Writes integers; `header` is put before them, line by line, as the module's documentation."""
    lines = [f"//! {line}".rstrip() for line in header]
    lines += [
        "",
        "use super::pair::{Pair, pair};",
        "use super::terms::{COUNT, UNIT_COUNT};",
        "",
        "/// All weights, in centipawns, laid out as `terms.rs` says.",
        "#[rustfmt::skip]",
        "pub static WEIGHTS: [Pair; COUNT] = [",
    ]
    for term in layout.terms:
        lines.append(f"    // {term.name}")
        run = weights.pairs[term.first : term.first + term.length]
        words = [f"pair({round(mg)}, {round(eg)})," for mg, eg in run]
        # a table of squares has a rank a line, a1 first
        lines += ["    " + " ".join(words[at : at + 8]) for at in range(0, len(words), 8)]
    lines += [
        "];",
        "",
        "/// Units of king danger, laid out the same way.",
        "#[rustfmt::skip]",
        "pub static DANGER: [i32; UNIT_COUNT] = [",
    ]
    for unit in layout.units:
        run = weights.units[unit.first : unit.first + unit.length]
        lines.append("    " + " ".join(f"{round(value)}," for value in run) + f" // {unit.name}")
    lines.append("];")
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
