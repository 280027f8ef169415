"""Speed of the rules and of the search on one core.

    python benchmarks/engine.py [--depth 5] [--nodes 1000000]

Prints perft nodes a second beside python-chess in the same run, and search nodes a second on a
fixed set of positions. The total of the search's centipawns is a mark by which two builds that
should search alike can be told apart. Then how soon a stop is obeyed, and what a second thread adds.
"""

from __future__ import annotations

import argparse
import statistics
import sys
import threading
import time

import chess

from lineproof.engine import ENGINE_VERSION, Stop, perft, search

# Opening, middlegame, endgame; the second, third and sixth: "Perft Results", Chess Programming Wiki.
POSITIONS = (
    chess.STARTING_FEN,
    "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
    "r4rk1/1pp1qppp/p1np1n2/2b1p1B1/2B1P1b1/P1NP1N2/1PP1QPPP/R4RK1 w - - 0 10",
    "rnbqkb1r/pppp1ppp/5n2/8/4Pp2/2N5/PPPP2PP/R1BQKBNR w KQkq - 0 4",
    "rnbqkb1r/pppp1ppp/8/4P1n1/2P5/8/PP2PPPP/RNBQKBNR w KQkq - 1 4",
    "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
    "8/5pk1/3p2p1/2pP3p/1pP2P1P/1P3KP1/8/8 w - - 0 1",
)


def count(board: chess.Board, depth: int) -> int:
    """Perft by python-chess, the last ply in bulk as ours."""
    if depth == 1:
        return board.legal_moves.count()
    total = 0
    for move in board.legal_moves:
        board.push(move)
        total += count(board, depth - 1)
        board.pop()
    return total


def stop_delays(times: int) -> list[float]:
    """Milliseconds from a stop to the answer, on a search that has run for a moment."""
    delays = []
    for number in range(times):
        stop, ended = Stop(), 0.0

        def run(fen: str, stop: Stop) -> None:
            nonlocal ended
            search(fen, stop=stop)
            ended = time.perf_counter()

        thread = threading.Thread(target=run, args=(POSITIONS[number % len(POSITIONS)], stop))
        thread.start()
        time.sleep(0.05 + 0.01 * number)
        begun = time.perf_counter()
        stop.set()
        thread.join()
        delays.append(1000 * (ended - begun))
    return delays


def speed(threads: int, seconds: float) -> float:
    """Nodes a second of one question with so many threads."""
    answer = search(POSITIONS[1], seconds=seconds, threads=threads, hash_mb=64)
    return answer.nodes / seconds


def main() -> int:
    parser = argparse.ArgumentParser(description="Speed of the rules and of the search.")
    parser.add_argument("--depth", type=int, default=5, help="perft depth of ours")
    parser.add_argument("--baseline-depth", type=int, default=3, help="perft depth of python-chess")
    parser.add_argument("--nodes", type=int, default=1_000_000, help="nodes a search")
    options = parser.parse_args()

    begun = time.perf_counter()
    ours = sum(perft(fen, options.depth) for fen in POSITIONS[:3])
    rate = ours / (time.perf_counter() - begun)
    begun = time.perf_counter()
    theirs = sum(count(chess.Board(fen), options.baseline_depth) for fen in POSITIONS[:3])
    baseline = theirs / (time.perf_counter() - begun)
    print(f"perft: {rate / 1e6:.0f} million nodes/s, python-chess {baseline / 1e6:.2f} million")
    print(f"perft ratio: {rate / baseline:.0f} times python-chess")

    nodes, seconds, mark = 0, 0.0, 0
    for fen in POSITIONS:
        begun = time.perf_counter()
        answer = search(fen, nodes=options.nodes)
        seconds += time.perf_counter() - begun
        nodes += answer.nodes
        mark += answer.lines[0].centipawns
        print(f"  depth {answer.depth:2}  {answer.lines[0].centipawns:6} cp  {fen}")
    print(f"search: {nodes / seconds / 1e6:.2f} million nodes/s")
    print(f"version {ENGINE_VERSION}, mark {mark}")

    delays = stop_delays(20)
    print(
        f"stop: obeyed in {statistics.median(delays):.1f} ms (median), {max(delays):.1f} ms at most"
    )
    print(f"two threads: {speed(2, 2) / speed(1, 2):.2f} times the nodes a second of one")
    return 0


if __name__ == "__main__":
    sys.exit(main())
