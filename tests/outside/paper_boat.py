"""An invented engine for the tests: it speaks UCI, looks one move ahead, and counts material.

    python paper_boat.py BEHAVIOUR FOLDER

BEHAVIOUR is "plays", or one of the ways to fail below. FOLDER: where it writes what it was told, and its marks.
"""

from __future__ import annotations

import os
import signal
import sys
import time
from pathlib import Path
from typing import NoReturn

import chess

WORTH = {chess.PAWN: 100, chess.KNIGHT: 300, chess.BISHOP: 300, chess.ROOK: 500, chess.QUEEN: 900}


def tell(line: str) -> None:
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


def balance(board: chess.Board) -> int:
    """Centipawns of material for the side to move."""
    return sum(
        worth * (len(board.pieces(piece, board.turn)) - len(board.pieces(piece, not board.turn)))
        for piece, worth in WORTH.items()
    )


def worth_of(board: chess.Board, move: chess.Move) -> int:
    """After the move and the reply that costs most, for the mover."""
    board.push(move)
    if board.is_checkmate():
        found = 100_000
    else:
        found = -balance(board)
        for reply in board.legal_moves:
            board.push(reply)
            found = min(found, balance(board))
            board.pop()
    board.pop()
    return found


def chosen(board: chess.Board, only: list[str]) -> tuple[chess.Move, int]:
    moves = sorted(board.legal_moves, key=chess.Move.uci)
    if only:
        moves = [move for move in moves if move.uci() in only]
    best = max(moves, key=lambda move: worth_of(board, move))
    return best, worth_of(board, best)


def forever() -> NoReturn:
    """As one that hears nothing any more, not even that its input is closed."""
    signal.signal(signal.SIGTERM, signal.SIG_IGN)
    while True:
        time.sleep(60)


def board_of(words: list[str]) -> chess.Board:
    at = words.index("moves") if "moves" in words else len(words)
    board = chess.Board() if words[1] == "startpos" else chess.Board(" ".join(words[2:at]))
    for move in words[at + 1 :]:
        board.push_uci(move)
    return board


def answer(behaviour: str, folder: Path, board: chess.Board, words: list[str]) -> None:
    nodes = words[words.index("nodes") + 1]
    only = words[words.index("searchmoves") + 1 :] if "searchmoves" in words else []
    asked = folder / "asked"
    asked.write_text(f"{len(asked.read_text()) * 'x' if asked.exists() else ''}x")
    count = len(asked.read_text())
    if behaviour == "dies" or (behaviour == "dies once" and count == 1):
        sys.stderr.write("out of paper\n")
        sys.stderr.flush()
        os._exit(3)
    if behaviour == "dies after four" and count > 4:
        os.kill(os.getpid(), signal.SIGKILL)
    if behaviour == "hangs" or (behaviour == "hangs once" and count == 1):
        forever()
    if behaviour == "floods":
        while True:
            tell("info string " + "paper " * 2000)
    if behaviour == "babbles":
        sys.stdout.buffer.write(b"\xff\xfe\x00 bestmove? info score pv\nbestmove paper\n")
        sys.stdout.flush()
        return
    if behaviour == "forgets the question":
        only = []
    move, worth = chosen(board, only)
    said = f"score cp {worth}"
    line = move.uci()
    if worth >= 100_000 or behaviour == "announces a mate":
        said = "score mate 1"
    if behaviour == "gives an illegal line":
        line += " " + move.uci()
    if behaviour == "plays slowly":
        time.sleep(0.3)
    if behaviour == "tells another move":
        line = next(m.uci() for m in board.legal_moves if m != move)
    if behaviour != "gives no score":
        tell(f"info depth 1 {said} nodes {nodes} time 1 pv {line}")
    if behaviour == "gives no move":
        tell("bestmove 0000")
    elif behaviour == "gives an illegal move":
        tell("bestmove a1a1")
    else:
        tell(f"bestmove {move.uci()}")


def main() -> None:
    behaviour, folder = sys.argv[1], Path(sys.argv[2])
    told = (folder / "told").open("a", encoding="utf-8", buffering=1)
    (folder / f"pid-{os.getpid()}").touch()
    if behaviour == "ends at its start":
        sys.stderr.write("no sea to sail on\n")
        sys.exit(1)
    board = chess.Board()
    for line in sys.stdin:
        told.write(line)
        words = line.split()
        if words[:1] == ["uci"]:
            if behaviour == "is no engine":
                tell("hello, sailor")
                continue
            if behaviour != "has no options":
                tell("id name Paper Boat 2")
                tell("id author the Harbour Street club")
                tell("option name Threads type spin default 2 min 1 max 8")
                tell("option name Hash type spin default 16 min 1 max 32")
                tell("option name Clear Hash type button")
                tell("option name MultiPV type spin default 1 min 1 max 5")
            tell("uciok")
        elif words[:1] == ["isready"]:
            if behaviour == "dies before it is ready" and (folder / "ready").exists():
                os._exit(4)
            (folder / "ready").touch()
            tell("readyok")
        elif words[:1] == ["position"]:
            board = board_of(words)
        elif words[:1] == ["go"]:
            answer(behaviour, folder, board, words)
        elif words[:1] == ["quit"]:
            return


if __name__ == "__main__":
    main()
