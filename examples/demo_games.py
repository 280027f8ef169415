"""Invented games through the demo openings: `python examples/demo_games.py --games 2000 --out games.pgn`.

Both players choose by the model of natural moves (docs/replies.md) at ratings from 900 to 2100. Names are invented, and each game says that it is.
The same seed gives the same games on any number of cores. They are for trying `collect`, `unanswered`, `follow` and `weigh`; the model is never
judged by games that it made.
"""

from __future__ import annotations

import argparse
import os
import random
import sys
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from functools import cache
from pathlib import Path

from lineproof._engine import chances
from lineproof.claims import Spot
from lineproof.engine import Board, search
from lineproof.proof import EvidenceStore
from lineproof.replies import Replies
from lineproof.replies.observed import MADE

OPENINGS = {
    "vienna": "e4 e5 Nc3 Nf6 f4",
    "budapest": "d4 Nf6 c4 e5",
}
LOWEST, HIGHEST, STEP = 900, 2100, 100
PLIES = 60
"""Plies after which a game is ended by what a search thinks of it."""
NODES = 2_000
FIRST = [
    "Ada",
    "Bram",
    "Cleo",
    "Dirk",
    "Elsa",
    "Finn",
    "Greta",
    "Hugo",
    "Ines",
    "Jens",
    "Kaja",
    "Leo",
    "Mona",
    "Nils",
    "Ottilie",
    "Piet",
    "Runa",
    "Sven",
    "Thea",
    "Ulf",
    "Vera",
    "Wim",
    "Yara",
    "Zeno",
]
LAST = [
    "Anchor",
    "Bay",
    "Buoy",
    "Capstan",
    "Coaster",
    "Creek",
    "Dock",
    "Ferry",
    "Gull",
    "Harbour",
    "Jetty",
    "Keel",
    "Lighter",
    "Mole",
    "Mooring",
    "Pier",
    "Quay",
    "Rudder",
    "Sail",
    "Skipper",
    "Sluice",
    "Tide",
    "Wharf",
    "Yawl",
]


@cache
def replies(rating: int) -> Replies:
    return Replies(rating, EvidenceStore(None))


def invented(opening: str, seed: int, number: int) -> str:
    """One game as PGN."""
    rng = random.Random(f"{opening} {seed} {number}")
    ratings = [rng.randrange(LOWEST, HIGHEST + 1, STEP) for _ in range(2)]
    names = rng.sample([f"{first} {last}" for first in FIRST for last in LAST], 2)
    start = Board()
    spot = Spot(start.fen, (), start)
    for san in OPENINGS[opening].split():
        spot = spot.play(spot.board.parse_san(san))
    while len(spot.moves) < PLIES and spot.board.legal_moves():
        likely = replies(ratings[spot.board.turn == "black"]).at(spot).replies
        (chosen,) = rng.choices(likely, [reply.share for reply in likely])
        spot = spot.play(chosen.uci)
    result = _result(spot, rng)
    year = rng.randrange(2021, 2026)
    tags = {
        "Event": MADE, "Site": "Harbour Street club (invented)", "Date": f"{year}.??.??", "Round": str(number + 1), "White": names[0], "Black": names[1],
        "Result": result, "WhiteElo": str(ratings[0]), "BlackElo": str(ratings[1]), "Annotator": "made by a program; nobody played it",
    }  # fmt: skip
    words = [
        f"{ply // 2 + 1}. {san}" if ply % 2 == 0 else san
        for ply, san in enumerate(start.san_line(list(spot.moves)))
    ]
    head = "\n".join(f'[{name} "{value}"]' for name, value in tags.items())
    return f"{head}\n\n{' '.join([*words, result])}\n\n"


def _result(spot: Spot, rng: random.Random) -> str:
    """By the rules, or drawn by lot with the chances that a search gives."""
    board = spot.board
    if board.is_checkmate:
        return "0-1" if board.turn == "white" else "1-0"
    lines = [] if board.is_stalemate else search(board.fen, (), nodes=NODES, hash_mb=1).lines
    if not lines:
        return "1/2-1/2"
    if lines[0].mate is not None:
        return "1-0" if lines[0].mate > 0 else "0-1"
    (result,) = rng.choices(("1-0", "1/2-1/2", "0-1"), chances(lines[0].centipawns or 0))
    return result


def _block(given: tuple[str, int, range]) -> str:
    opening, seed, numbers = given
    return "".join(invented(opening, seed, number) for number in numbers)


def games(count: int, seed: int, workers: int) -> Iterator[str]:
    """Blocks of games, in order."""
    each = [count // len(OPENINGS) + (n < count % len(OPENINGS)) for n in range(len(OPENINGS))]
    blocks = [
        (opening, seed, range(first, min(first + 25, total)))
        for opening, total in zip(OPENINGS, each, strict=True)
        for first in range(0, total, 25)
    ]
    with ProcessPoolExecutor(workers) as pool:
        yield from pool.map(_block, blocks)


def main() -> int:
    parser = argparse.ArgumentParser(description="Writes invented games through the demo openings.")
    parser.add_argument("--games", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--out", type=Path, required=True)
    parser.add_argument("--workers", type=int, default=os.cpu_count() or 1)
    given = parser.parse_args()
    done = 0
    with given.out.open("w", encoding="utf-8") as file:
        for block in games(given.games, given.seed, given.workers):
            file.write(block)
            done += block.count("[Event ")
            print(f"\r{done:,} of {given.games:,} games", end="", file=sys.stderr, flush=True)
    print(file=sys.stderr)
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
