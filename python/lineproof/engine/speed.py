"""The speed of the search on fixed positions, and its signature."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from lineproof._engine import Stop
from lineproof.engine.searching import search

POSITIONS: Final = (
    ("r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1", 15),
    ("r4rk1/1pp1qppp/p1np1n2/2b1p1B1/2B1P1b1/P1NP1N2/1PP1QPPP/R4RK1 w - - 0 10", 14),
    ("rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1", 16),
    ("rnbqkb1r/pppp1ppp/5n2/8/4Pp2/2N5/PPPP2PP/R1BQKBNR w KQkq - 0 4", 14),
    ("rnbqkb1r/pppp1ppp/8/4P1n1/2P5/8/PP2PPPP/RNBQKBNR w KQkq - 1 4", 16),
    ("r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/PP1N1PPP/R2QK2R w KQ - 0 8", 14),
    ("8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1", 19),
    ("8/5pk1/3p2p1/2pP3p/1pP2P1P/1P3KP1/8/8 w - - 0 1", 31),
)
"""Openings, middlegames and endgames, each with the iterations that it is searched for; the first two and the
seventh after "Perft Results", Chess Programming Wiki (from memory)."""

HASH_MB: Final = 16
"""MiB of the table: fixed, for the signature depends on it."""


@dataclass(frozen=True, slots=True)
class Run:
    """One position searched. depth: iterations. nodes: the same on every machine. seconds: wall time."""

    fen: str
    depth: int
    nodes: int
    seconds: float


def runs(stop: Stop | None = None) -> Iterator[Run]:
    """Searches each position with one thread and an empty table. Ends early when the stop is set."""
    for fen, depth in POSITIONS:
        began = time.perf_counter()
        answer = search(fen, depth=depth, hash_mb=HASH_MB, stop=stop)
        if answer.stopped:
            return
        yield Run(fen, depth, answer.nodes, time.perf_counter() - began)
