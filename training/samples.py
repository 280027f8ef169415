"""Positions to fit to: taken from games by the engine's `features` example, read into sparse matrices."""

from __future__ import annotations

import gzip
import lzma
import shutil
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import IO

import numpy as np
from layout import Layout
from numpy.typing import NDArray
from scipy import sparse  # type: ignore[import-untyped]

ROOT = Path(__file__).resolve().parent.parent
FULL_PHASE = 24
WHOLE = 100
_ROW = np.dtype(
    [
        ("game", "<u4"),
        ("points", "u1"),
        ("score", "<i2"),
        ("value", "<i2"),
        ("phase", "u1"),
        ("scale", "u1"),
        ("white_to_move", "u1"),
        ("terms", "<u2"),
    ]
)


class SampleError(ValueError):
    """Games or files of samples that cannot be used."""


@dataclass(frozen=True)
class Samples:
    """Positions, one a row; all values are White's.

    `games`: number of the game. `points`: its result, 0, 0.5 or 1. `scores`: centipawns by search. `values`: the
    engine's own evaluation with the weights that it was built with. `phase` and `scale`: parts of one.
    `terms`: sparse, (positions, weights), White's count less Black's. `units`: for White's king and Black's, sparse,
    (positions, units).
    """

    games: NDArray[np.int64]
    points: NDArray[np.float64]
    scores: NDArray[np.float64]
    values: NDArray[np.int64]
    phase: NDArray[np.float64]
    scale: NDArray[np.float64]
    terms: sparse.csr_array
    units: tuple[sparse.csr_array, sparse.csr_array]

    def __len__(self) -> int:
        return len(self.games)

    def where(self, chosen: NDArray[np.bool_]) -> Samples:
        """The rows that are chosen."""
        return Samples(
            self.games[chosen],
            self.points[chosen],
            self.scores[chosen],
            self.values[chosen],
            self.phase[chosen],
            self.scale[chosen],
            self.terms[chosen],
            (self.units[0][chosen], self.units[1][chosen]),
        )


def take(games: Sequence[Path], folder: Path, seed: int, most: int) -> None:
    """Writes the files of samples into a folder. Builds the engine's example first.

    :raises SampleError: when the example fails; what it said stands on the standard error output.
    """
    built = ["cargo", "build", "--release", "--quiet", "-p", "lineproof-engine", "-j", "2"]
    subprocess.run([*built, "--example", "features"], cwd=ROOT, check=True)
    run = [
        "cargo",
        "run",
        "--release",
        "--quiet",
        "-p",
        "lineproof-engine",
        "--example",
        "features",
    ]
    options = ["--out", str(folder.resolve()), "--seed", str(seed), "--most", str(most)]
    process = subprocess.Popen([*run, "--", *options], cwd=ROOT, stdin=subprocess.PIPE)
    if process.stdin is None:
        raise SampleError("the example takes no input")
    try:
        for path in games:
            with _opened(path) as source:
                shutil.copyfileobj(source, process.stdin, 1 << 20)
        process.stdin.close()
    except BrokenPipeError:
        pass  # it has stopped early, and its exit status says so
    if process.wait() != 0:
        raise SampleError("the games could not be read")


def _opened(path: Path) -> IO[bytes] | gzip.GzipFile | lzma.LZMAFile:
    if path.suffix == ".xz":
        return lzma.open(path)
    if path.suffix == ".gz":
        return gzip.open(path)
    return path.open("rb")


def read(folder: Path, layout: Layout) -> Samples:
    """Reads the files of samples.

    :raises SampleError: when there are none, or they are of another layout.
    """
    rows = np.fromfile(folder / "rows.bin", dtype=_ROW)
    indices = np.fromfile(folder / "terms.bin", dtype="<u2").astype(np.int32)
    counts = np.fromfile(folder / "counts.bin", dtype="<i2").astype(np.float32)
    if len(rows) == 0:
        raise SampleError(f"{folder}: no positions")
    starts = np.concatenate([[0], np.cumsum(rows["terms"], dtype=np.int64)])
    if starts[-1] != len(indices) or len(indices) != len(counts) or indices.max() >= layout.count:
        raise SampleError(f"{folder}: the files do not fit one another or terms.rs")
    units = np.fromfile(folder / "units.bin", dtype="<i2").astype(np.float32)
    units = units.reshape(len(rows), 2, layout.unit_count)
    starts = starts.astype(np.int32) if starts[-1] < 2**31 else starts
    return Samples(
        games=rows["game"].astype(np.int64),
        points=rows["points"] / 2.0,
        scores=rows["score"].astype(np.float64),
        values=rows["value"].astype(np.int64),
        phase=rows["phase"] / FULL_PHASE,
        scale=rows["scale"] / WHOLE,
        terms=sparse.csr_array((counts, indices, starts), shape=(len(rows), layout.count)),
        units=(sparse.csr_array(units[:, 0]), sparse.csr_array(units[:, 1])),
    )
