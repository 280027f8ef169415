"""How good the running order is, and how fast: `python benchmarks/order.py`.

Random lessons of 2,000 positions and of 30, with words, mistakes and sentences that refer to others. Baselines: the file's own order, and
the least ways back that any order can have. Times are of the processor, of one core.
"""

from __future__ import annotations

import random
import time
from dataclasses import dataclass, field

from lineproof.engine import Board
from lineproof.lesson import Lesson
from lineproof.order import running_order

LARGE, SMALL = 2_000, 30
"""Positions."""
SEEDS = 3
"""Large lessons; of small ones twenty times as many."""
NEAR = 40
"""Most moves follow one of so many last positions, so that lines get long."""
WORDS = (
    (0.40, "The knight on f3 is attacked once."),
    (0.43, "After 1. e4 e5 the same move was good."),
    (0.45, "By contrast, this is slow."),
)
"""Sentences, by the chance of it or one before it."""
HOME = frozenset({f"{file}{rank}" for file in "cdefg" for rank in "27"} | {"b1", "g1", "b8", "g8"})
"""Squares from which moves are made, so that lines transpose."""


@dataclass
class Node:
    board: Board
    move: str = ""
    children: list[Node] = field(default_factory=list)


def lesson(positions: int, seed: int) -> Lesson:
    chance = random.Random(seed)
    root = Node(Board())
    nodes, keys = [root], {root.board.key}
    while len(keys) < positions:
        above = chance.choice(nodes[-NEAR:] if chance.random() < 0.85 else nodes)
        legal = above.board.legal_moves()
        moves = [uci for uci in legal if uci[:2] in HOME] or legal
        taken = {child.move for child in above.children}
        if not moves or (uci := chance.choice(moves)) in taken:
            continue
        node = Node(above.board.play(uci), uci)
        above.children.append(node)
        nodes.append(node)
        keys.add(node.board.key)
    return Lesson.from_text(f"{_line(root, chance)} *\n", side="white")


def _line(node: Node, chance: random.Random) -> str:
    parts = []
    while node.children:
        first, *others = node.children
        parts.append(_move(node.board, first, chance))
        parts += [
            f"({_move(node.board, other, chance)} {_line(other, chance)})" for other in others
        ]
        node = first
    return " ".join(parts)


def _move(board: Board, node: Node, chance: random.Random) -> str:
    at = chance.random()
    words = next((f"{{{text}}}" for below, text in WORDS if at < below), "")
    glyph = chance.choice(("", "", "", "$2", "$1"))
    dots = "." if board.turn == "white" else "..."
    return f"{board.move_number}{dots} {board.san(node.move)} {glyph} {words}"


def main() -> None:
    for seed in range(1, SEEDS + 1):
        made = lesson(LARGE, seed)
        began = time.process_time()
        telling = running_order(made).telling
        spent = time.process_time() - began
        mine, file = telling.measure, telling.file
        print(
            f"{LARGE:,} positions: {spent:.1f} s; ways back {mine.ways_back}, {mine.ways_back / file.ways_back:.2f} of the file's"
            f" {file.ways_back}, {mine.ways_back / telling.least.ways_back:.3f} of the least; from mistake to punishment {mine.distance},"
            f" {mine.distance / file.distance:.2f} of the file's {file.distance}"
        )
    small = [running_order(lesson(SMALL, seed)).telling for seed in range(20 * SEEDS)]
    mine, file = (
        sum(one.ways_back for one in of)
        for of in zip(*((t.measure, t.file) for t in small), strict=True)
    )
    print(
        f"{len(small)} lessons of {SMALL} positions: {sum(t.proven for t in small)} proven to be the best; ways back {mine}, {mine / file:.2f}"
        f" of the file's {file}"
    )


if __name__ == "__main__":
    main()
