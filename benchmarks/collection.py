"""Speed, memory and size of collections, with the ratio to python-chess in the same run.

    python benchmarks/collection.py [--games 60000] [--sizes 100000,1000000,5000000]

Invents games of 80 plies, reads them into a collection and asks it: random-legal games, games of shared prefixes, and
the latter with clock comments. Games a second of a core are games by processor time, of all threads together. With
--sizes it measures, on shared prefixes, what a collection of each size costs.
"""

from __future__ import annotations

import argparse
import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import chess.pgn

from lineproof._engine import invent_games
from lineproof.collection import Collection
from lineproof.collection.adding import cores

BASELINE = 300
"""Games that python-chess reads."""
PLIES = 40
LOOKS = 30

IMPORT = """
import json, resource, sys, time
from pathlib import Path
from lineproof.collection import Collection
name, folder, threads, *files = sys.argv[1:]
collection = Collection.open(name, folder)
wall, busy = time.perf_counter(), time.process_time()
report = collection.add(files, threads=int(threads))
wall, busy = time.perf_counter() - wall, time.process_time() - busy
most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
print(json.dumps({"games": sum(f.added for f in report.files), "bytes": sum(f.bytes for f in report.files),
    "wall": wall, "busy": busy, "most": most}))
"""


def read(folder: Path, name: str, files: list[Path], threads: int) -> dict[str, float]:
    """Reads files into a new collection, in a process of its own, whose memory is measured."""
    done = subprocess.run(
        [sys.executable, "-c", IMPORT, name, folder, str(threads), *files],
        env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
        stdout=subprocess.PIPE,
        check=True,
    )
    found: dict[str, float] = json.loads(done.stdout)
    return found


def baseline(file: Path) -> tuple[float, float]:
    """Games and bytes a second of python-chess, which counts the same positions in a dictionary."""
    counts: dict[tuple[str, str], int] = {}
    busy = time.process_time()
    with file.open(encoding="utf-8") as stream:
        for _ in range(BASELINE):
            game = chess.pgn.read_game(stream)
            if game is None:
                break
            board = game.board()
            for ply, move in enumerate(game.mainline_moves()):
                if ply < PLIES:
                    key = (board.epd(), move.uci())
                    counts[key] = counts.get(key, 0) + 1
                board.push(move)
        size = stream.tell()
    busy = time.process_time() - busy
    return BASELINE / busy, size / busy


def looks(collection: Collection) -> str:
    """Milliseconds of a warm look-up, and of those on the processor, by how many games have the position."""
    start = collection.look("")
    line: list[str] = []
    wanted = {"all": (start.games, ""), "1,000": (10**9, ""), "1": (10**9, "")}
    figures = start
    while figures.moves and len(line) < PLIES - 1:
        nearest = min(figures.moves, key=lambda move: abs(move.games - 1000))
        if nearest.games < 400:
            nearest = figures.moves[-1]
        line.append(nearest.san)
        figures = collection.look(" ".join(line))
        if abs(figures.games - 1000) < abs(wanted["1,000"][0] - 1000):
            wanted["1,000"] = (figures.games, " ".join(line))
        if figures.games == 1:
            wanted["1"] = (1, " ".join(line))
            break
    parts = []
    for games, position in wanted.values():
        times, busy = [], []
        for _ in range(LOOKS):
            begun, processor = time.perf_counter(), time.process_time()
            collection.look(position)
            times.append(1000 * (time.perf_counter() - begun))
            busy.append(1000 * (time.process_time() - processor))
        parts.append(
            f"{statistics.median(times):.1f} ms ({statistics.median(busy):.1f}) of {games:,} games"
        )
    return ", ".join(parts)


def speed(folder: Path, games: int) -> None:
    for kind, shared, clocks in (
        ("random-legal", False, False),
        ("shared prefixes", True, False),
        ("with clocks", True, True),
    ):
        file = folder / "games.pgn"
        invent_games(file, games, seed=1, plies=80, shared=shared, clocks=clocks)
        games_s, bytes_s = baseline(file)
        alone = read(folder, f"{kind} on one thread", [file], 1)
        both = read(folder, kind, [file], cores())
        core = alone["games"] / alone["busy"]
        whole = both["bytes"] / both["wall"]
        collection = Collection.open(kind, folder)
        print(
            f"{kind}: {core:,.0f} games/s a core ({alone['bytes'] / alone['busy'] / 1e6:.0f} MB/s), python-chess {games_s:,.0f}:"
            f" {core / games_s:.0f} times python-chess"
        )
        print(
            f"  {whole / 1e6:.0f} MB/s on {cores()} cores ({both['games'] / both['wall']:,.0f} games/s),"
            f" {whole / bytes_s:.0f} times python-chess on one"
        )
        print(f"  {max(alone['most'], both['most']):.0f} MB of memory at most")
        print(f"  {collection.bytes / collection.games:.0f} bytes a game on disk")
        print(f"  look-up: {looks(collection)}")
        file.unlink()


def sizes(folder: Path, wanted: list[int]) -> None:
    """Adds games until the collection has each size."""
    collection = Collection.open("growing", folder)
    have = 0
    for size in wanted:
        files = []
        while have < size:
            step = min(250_000, size - have)
            files.append(folder / f"{have}.pgn")
            invent_games(files[-1], step, seed=1, first=have, plies=80, shared=True)
            have += step
        spent = read(folder, "growing", files, cores())
        for file in files:
            file.unlink()
        print(
            f"{size:,} games: the last {spent['games']:,.0f} at {spent['games'] / spent['busy']:,.0f} a second a core,"
            f" {spent['games'] / spent['wall']:,.0f} a second on {cores()} cores, {spent['most']:.0f} MB of memory,"
            f" {collection.bytes / size:.0f} bytes a game; look-up {looks(collection)}",
            flush=True,
        )


def main() -> int:
    parser = argparse.ArgumentParser(description="Speed, memory and size of collections.")
    parser.add_argument("--games", type=int, default=60_000, help="games of each kind")
    parser.add_argument("--sizes", help="sizes of a growing collection, such as 100000,1000000")
    parser.add_argument("--folder", type=Path, help="where there is room (a temporary folder)")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory(dir=options.folder) as name:
        if options.sizes:
            sizes(Path(name), [int(size) for size in options.sizes.split(",")])
        else:
            speed(Path(name), options.games)
    return 0


if __name__ == "__main__":
    sys.exit(main())
