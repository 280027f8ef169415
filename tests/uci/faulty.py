"""A UCI program that plays the first legal move, and fails as it is told: `faulty.py FAULT AFTER`.

After so many moves it ends (`crash`), gives a move that is not legal (`illegal`), thinks too long (`slow`), or answers
nothing any more (`mute`). `none` never fails.
"""

from __future__ import annotations

import sys
import time

import chess


def main(fault: str, after: int) -> None:
    board = chess.Board()
    asked = 0
    for line in sys.stdin:
        match line.split():
            case ["uci"]:
                print("id name Faulty\noption name Colour type string default <empty>\nuciok")
            case ["isready"]:
                print("readyok")
            case ["setoption", *_]:
                print("info string set", line.split("value ")[-1].strip())
            case ["position", "startpos", "moves", *moves]:
                board = chess.Board()
                for move in moves:
                    board.push_uci(move)
            case ["go", *_]:
                asked += 1
                if asked > after and fault == "crash":
                    sys.exit(3)
                if asked > after and fault == "mute":
                    continue
                if asked > after and fault == "slow":
                    time.sleep(0.5)
                illegal = asked > after and fault == "illegal"
                move = "e1e8" if illegal else min(move.uci() for move in board.legal_moves)
                print(f"info depth 1 score cp 0 pv {move}\nbestmove {move}")
            case ["quit"]:
                return
        sys.stdout.flush()


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
