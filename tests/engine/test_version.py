"""The engine's version is part of the key of kept results, so it must move when results move."""

from __future__ import annotations

import hashlib

from lineproof.engine import ENGINE_VERSION, search

POSITIONS = (
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
    "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
    "rnbqkb1r/pppp1ppp/5n2/4p3/4PP2/2N5/PPPP2PP/R1BQKBNR b KQkq - 0 3",
    "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
)

# What this version answers. It proves no answer right: it only shows that answers have changed.
# When it does, raise ENGINE_VERSION and write both down here.
KNOWN = ("4", "f891cb23badf2277")


def test_a_change_of_results_is_a_change_of_version() -> None:
    answers = [search(fen, nodes=30_000, lines=2) for fen in POSITIONS]
    mark = hashlib.sha256(repr(answers).encode()).hexdigest()[:16]
    assert (ENGINE_VERSION, mark) == KNOWN
