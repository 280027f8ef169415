"""How long a study of a lesson of 300 positions takes: `python benchmarks/study.py [--effort sketch]`.

The lesson: the King's knight openings for White along public main lines, from memory, one game a line. It is studied with nothing kept, then after an
edit of one line (its last move is another, and one more follows), then once more as it is. Prints times by the clock and of the processor, and the
ratio of the first two. Threads: two for each core, as `lineproof unanswered` has them.
"""

from __future__ import annotations

import argparse
import tempfile
import time
from pathlib import Path

from lineproof.engine import ENGINE_VERSION, Board
from lineproof.lesson import Lesson
from lineproof.lesson.graph import Graph
from lineproof.proof import Effort, EvidenceStore
from lineproof.replies import study

POSITIONS = 300

SPANISH = "e4 e5 Nf3 Nc6 Bb5"
CLOSED = f"{SPANISH} a6 Ba4 Nf6 O-O Be7 Re1 b5 Bb3"
LINES = (
    f"{CLOSED} d6 c3 O-O h3 Na5 Bc2 c5 d4 Qc7 Nbd2 cxd4 cxd4 Nc6 Nb3 a5 Be3 a4 Nbd2 Bd7 Rc1 Qb7",
    f"{CLOSED} d6 c3 O-O h3 Nb8 d4 Nbd7 Nbd2 Bb7 Bc2 Re8 Nf1 Bf8 Ng3 g6 a4 c5 d5 c4",
    f"{CLOSED} d6 c3 O-O h3 Bb7 d4 Re8 Nbd2 Bf8 a4 h6 Bc2 exd4 cxd4 Nb4 Bb1 c5 d5 Nd7 Ra3 f5",
    f"{CLOSED} d6 c3 O-O h3 Re8 d4 Bb7 Nbd2 Bf8",
    f"{CLOSED} d6 c3 O-O h3 Nd7 d4 Bf6 a4 Bb7",
    f"{CLOSED} d6 c3 O-O h3 h6 d4 Re8 Nbd2 Bf8 Nf1 Bd7 Ng3 Na5 Bc2",
    f"{CLOSED} d6 c3 Na5 Bc2 c5 d4 Qc7 h3 O-O",
    f"{CLOSED} O-O c3 d5 exd5 Nxd5 Nxe5 Nxe5 Rxe5 c6 d4 Bd6 Re1 Qh4 g3 Qh3 Be3 Bg4 Qd3 Rae8 Nd2 Re6",
    f"{CLOSED} O-O c3 d6 h3 Na5",
    f"{SPANISH} a6 Ba4 Nf6 O-O Nxe4 d4 b5 Bb3 d5 dxe5 Be6 c3 Be7 Nbd2 O-O Bc2 f5 Nb3",
    f"{SPANISH} a6 Ba4 Nf6 O-O Nxe4 d4 b5 Bb3 d5 dxe5 Be6 c3 Bc5 Nbd2 O-O Bc2 Nxf2 Rxf2 f6 exf6",
    f"{SPANISH} a6 Ba4 Nf6 O-O Nxe4 d4 b5 Bb3 d5 dxe5 Be6 c3 Nc5 Bc2 Bg4 Re1",
    f"{SPANISH} a6 Ba4 Nf6 O-O b5 Bb3 Bc5 c3 d6 d4 Bb6 h3 Bb7 Be3 O-O Nbd2",
    f"{SPANISH} a6 Ba4 Nf6 O-O b5 Bb3 Bb7 Re1 Bc5 c3 d6 d4 Bb6 Be3",
    f"{SPANISH} a6 Ba4 Nf6 O-O d6 c3 Bd7 d4 Be7 Re1 O-O Nbd2",
    f"{SPANISH} a6 Ba4 d6 c3 Bd7 d4 g6 O-O Bg7 Re1 Nge7 Be3 O-O Nbd2 Qe8",
    f"{SPANISH} a6 Ba4 d6 c3 f5 exf5 Bxf5 d4 e4 Ng5",
    f"{SPANISH} a6 Ba4 b5 Bb3 Na5 O-O d6 d4 Nxb3 axb3 f6 Nc3",
    f"{SPANISH} Nf6 O-O Nxe4 d4 Nd6 Bxc6 dxc6 dxe5 Nf5 Qxd8+ Kxd8 Nc3 Bd7 b3 h6 Bb2 Kc8 h3",
    f"{SPANISH} Nf6 O-O Nxe4 d4 Be7 Qe2 Nd6 Bxc6 bxc6 dxe5 Nb7 Nc3 O-O Re1",
    f"{SPANISH} Nf6 O-O Bc5 c3 O-O d4 Bb6 Bg5 h6 Bh4 d6",
    f"{SPANISH} Nf6 O-O d6 d4 Bd7 Nc3 Be7 Re1 exd4 Nxd4 O-O",
    f"{SPANISH} d6 d4 Bd7 Nc3 Nf6 O-O Be7 Re1 exd4",
    f"{SPANISH} d6 d4 exd4 Nxd4 Bd7 Bxc6 bxc6 Nc3",
    f"{SPANISH} Nge7 O-O g6 c3 Bg7 d4 exd4 cxd4 d5 exd5 Nxd5 Re1+ Be6 Bg5 Qd6 Nbd2",
    f"{SPANISH} Nd4 Nxd4 exd4 O-O c6 Bc4 Nf6 Re1 d6 c3",
    f"{SPANISH} f5 Nc3 fxe4 Nxe4 d5 Nxe5 dxe4 Nxc6 Qg5 Qe2 Nf6 f4 Qxf4",
    f"{SPANISH} f5 Nc3 fxe4 Nxe4 Nf6 Qe2 d5 Nxf6+ gxf6 d4 Bg7",
    f"{SPANISH} Bc5 c3 Nf6 d4 Bb6 O-O O-O Bg5",
    f"{SPANISH} g6 c3 Bg7 d4 exd4 cxd4 Nge7 d5",
    f"{SPANISH} Qf6 Nc3 Nge7 d3 Nd4 Nxd4 exd4",
    "e4 e5 Nf3 Nf6 Nxe5 d6 Nf3 Nxe4 d4 d5 Bd3 Nc6 O-O Be7 c4 Nb4 Be2 O-O Nc3 Bf5 a3 Nxc3 bxc3 Nc6",
    "e4 e5 Nf3 Nf6 Nxe5 d6 Nf3 Nxe4 d4 d5 Bd3 Bd6 O-O O-O c4 c6 cxd5 cxd5 Nc3 Nxc3 bxc3 Bg4",
    "e4 e5 Nf3 Nf6 Nxe5 d6 Nf3 Nxe4 d4 d5 Bd3 Be7 O-O Nc6 Re1 Bg4 c3 f5",
    "e4 e5 Nf3 Nf6 Nxe5 Nxe4 Qe2 Qe7 Qxe4 d6 d4 dxe5 dxe5 Nc6 Bb5 Bd7 Nc3",
    "e4 e5 Nf3 d6 d4 exd4 Nxd4 Nf6 Nc3 Be7 Bf4 O-O Qd2 Nc6 O-O-O",
    "e4 e5 Nf3 d6 d4 Nf6 Nc3 Nbd7 Bc4 Be7 O-O O-O Re1 c6 a4 b6 b3",
    "e4 e5 Nf3 d6 d4 Bg4 dxe5 Bxf3 Qxf3 dxe5 Bc4 Nf6 Qb3 Qe7 Nc3 c6 Bg5",
    "e4 e5 Nf3 f5 Nxe5 Qf6 Nc4 fxe4 Nc3 Qf7 Ne3 c6 d3 exd3 Bxd3",
    "e4 e5 Nf3 d5 exd5 e4 Qe2 Nf6 d3 Be7 dxe4",
    "e4 e5 Nf3 f6 Nxe5 fxe5 Qh5+ Ke7 Qxe5+ Kf7 Bc4+ d5 Bxd5+ Kg6 h4",
    "e4 e5 Nf3 Qe7 Nc3 c6 d4 d6 Bg5 f6 Be3",
)
"""Main lines of any handbook, from memory."""
OTHER_END = ("Rfc8", "Bd3")
"""In place of the first line's last move."""


def lesson(lines: tuple[str, ...]) -> Lesson:
    """One game a line; the words of the first say where the lesson begins."""
    games = []
    for line in lines:
        words = []
        for ply, san in enumerate(line.split()):
            words.append(f"{ply // 2 + 1}. {san}" if ply % 2 == 0 else san)
            if ply == 2:
                words.append("{Here our lesson begins.}")
        games.append(f'[Event "{POSITIONS} positions"]\n[Result "*"]\n\n{" ".join(words)} *\n')
    return Lesson.from_text("\n".join(games), side="white")


def whole(positions: int) -> tuple[str, ...]:
    """As many lines, the last one cut, as have so many positions.

    :raises ValueError: when they have fewer.
    """
    kept: list[str] = []
    for line in LINES:
        sans: list[str] = []
        for san in line.split():
            sans.append(san)
            if len(Graph(lesson((*kept, " ".join(sans)))).order) == positions:
                return (*kept, " ".join(sans))
        kept.append(line)
    raise ValueError(f"the lines have fewer than {positions} positions")


def edited(lines: tuple[str, ...]) -> tuple[str, ...]:
    """The first line ends with another move, and one more: a sensible one where it is whole, else any."""
    first, *rest = lines
    *moves, gone = first.split()
    if first == LINES[0]:
        return (" ".join((*moves, *OTHER_END)), *rest)
    board = Board()
    for san in moves:
        board = board.play(board.parse_san(san))
    for _ in OTHER_END:
        uci = next(uci for uci in board.legal_moves() if board.san(uci) != gone)
        moves.append(board.san(uci))
        board = board.play(uci)
    return (" ".join(moves), *rest)


def timed(of: Lesson, effort: Effort, store: EvidenceStore) -> tuple[float, float]:
    """By the clock and of the processor, in seconds."""
    clock, processor = time.monotonic(), time.process_time()
    study(of, effort, store=store)
    return time.monotonic() - clock, time.process_time() - processor


def main() -> None:
    parser = argparse.ArgumentParser(description="Time of a study.")
    parser.add_argument("--effort", choices=("sketch", "normal", "thorough"), default="sketch")
    parser.add_argument("--positions", type=int, default=POSITIONS)
    options = parser.parse_args()

    effort = Effort(options.effort)
    lines = whole(options.positions)
    before, after = lesson(lines), lesson(edited(lines))
    print(
        f"{len(Graph(before).order)} positions in {len(lines)} lines, {effort} effort, engine version {ENGINE_VERSION}"
    )
    spent = []
    with tempfile.TemporaryDirectory() as folder:
        store = EvidenceStore(Path(folder) / "evidence.sqlite")
        for name, of in (
            ("with nothing kept", before),
            ("after an edit of one line", after),
            ("once more as it is", after),
        ):
            clock, processor = timed(of, effort, store)
            spent.append((clock, processor))
            print(
                f"{name}: {clock:.1f} s by the clock, {processor:.1f} s of the processor",
                flush=True,
            )
        store.close()
    cold, edit, _ = spent
    print(
        f"nothing kept against after an edit: {cold[0] / edit[0]:.1f} by the clock, {cold[1] / edit[1]:.1f} of the processor"
    )


if __name__ == "__main__":
    main()
