"""Random small lessons: trees of few moves, so that lines often transpose and sometimes repeat, with words and glyphs."""

from __future__ import annotations

from dataclasses import dataclass, field

from hypothesis import strategies as st

from lineproof.engine import Board
from lineproof.lesson import Lesson

MOVES = {
    "white": ("g1f3", "b1c3", "e2e3", "f3g1", "d2d4"),
    "black": ("g8f6", "b8c6", "e7e6", "f6g8", "d7d5"),
}
SAYINGS = (
    "A quiet move.", "Look at e4. The knight on f3 stands well.", "As we saw, this is fine.", "By contrast, this is slow.",
    "After 1...e6 the same move was good.", "Unlike 1...Nf6 2.d4 this is passive.", "Learn this one first.", "Pause here and find the move.",
    "This transposes to 1.Nf3 Nf6 2.Nc3.", "We shall see 1...d5 later.", "In the main line White waits.", "That is all for tonight. Good night.",
)  # fmt: skip


@dataclass
class Node:
    board: Board
    move: str = ""
    opening: str = ""
    words: str = ""
    glyph: str = ""
    children: list[Node] = field(default_factory=list)


@st.composite
def lessons(draw: st.DrawFn, most: int = 14) -> Lesson:
    """A lesson with a move and a sentence or more."""
    root = Node(Board(), words=draw(st.sampled_from(("", "Good evening."))))
    nodes = [root]
    for _ in range(draw(st.integers(1, most))):
        above = nodes[draw(st.integers(max(0, len(nodes) - 6), len(nodes) - 1))]
        taken = {child.move for child in above.children}
        legal = [
            uci
            for uci in MOVES[above.board.turn]
            if uci in above.board.legal_moves() and uci not in taken
        ]
        if not legal:
            continue
        uci = draw(st.sampled_from(legal))
        words = draw(st.one_of(st.just(""), st.sampled_from(SAYINGS)))
        glyph = draw(st.sampled_from(("", "", "$1", "$2", "$4")))
        opening = draw(st.sampled_from(("", "", "Something else now.")))
        node = Node(above.board.play(uci), uci, opening, words, glyph)
        above.children.append(node)
        nodes.append(node)
    if not any(node.words for node in nodes[1:]):
        nodes[-1].words = "A quiet move."
    return Lesson.from_text(written(root), side="white")


def written(root: Node) -> str:
    """The lesson as PGN."""
    return f"{_comment(root.words)}{_line(root)} *\n"


def _line(node: Node) -> str:
    parts = []
    while node.children:
        first, *others = node.children
        parts.append(_move(node, first))
        parts += [
            f"({_comment(other.opening)}{_move(node, other)} {_line(other)})" for other in others
        ]
        node = first
    return " ".join(parts)


def _move(above: Node, node: Node) -> str:
    board = above.board
    number = f"{board.move_number}{'.' if board.turn == 'white' else '...'}"
    return f"{number} {board.san(node.move)} {node.glyph} {_comment(node.words)}"


def _comment(words: str) -> str:
    return f"{{{words}}} " if words else ""
