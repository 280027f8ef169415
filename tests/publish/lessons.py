"""Lessons of the tests, and what was found of them."""

from __future__ import annotations

import random
from typing import Any

import chess
import chess.pgn

from lineproof.claims import LessonReading
from lineproof.lesson import Lesson
from lineproof.proof import Effort, Proof
from lineproof.publish import Found
from lineproof.replies import Study

TRAP = """[Event "The trap \\"at sea\\" <b>now</b>"]
[Site "Harbour Street club"]
[Date "2026.??.??"]
[Result "*"]
[Annotator "Harbour Street club (invented)"]
[X-Club "a \\\\\\\\ b"]

{Good evening. *Stars*, _lines_, `ticks`, [a link](http://example.org), <script>alert(1)</script> &amp; <b>bold</b>.
# No heading | no | table ~~gone~~ $x$ ![picture](http://example.org/p.png) <http://example.org> www.example.org}
1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 {The bishop pins the knight to the queen.} 4. Nc3 g6
{1. This is no list. - Nor this.} 5. Nxe5 {%s} 5... Bxd1 (5... dxe5 6. Qxg4 $18 {After Qxg4 it is good.}) 6. Bxf7+ Ke7 7. Nd5# {This is mate.} *
""" % ("Donaudampfschiff" * 40)
"""Légal's mate (Hooper and Whyld, The Oxford Companion to Chess, from memory), with words that try to be markup."""

TRANSPOSING = """[Event "Two roads"]
[White "Lesson"]
[Result "1-0"]

1. e4 e5 (1... c5 2. Nc3 $2 (2. c3 d5) (2. d4 cxd4) 2... Nc6) 2. Nc3 (2. Nf3 Nf6 3. Nc3 Nc6) 2... Nf6
3. Nf3 $1 Nc6 (3... d6) 4. d4 $14 ± exd4 1-0

[Event "From a position"]
[SetUp "1"]
[FEN "4k3/8/8/8/8/8/4P3/4K3 b - - 3 10"]
[Result "*"]

10... Kd7 (10... Ke7 11. e4) 11. Kd2 -- 12. Kd3 *
"""


def nothing_found(lesson: Lesson) -> Found:
    """For a product that looks at the lesson only."""
    proof = Proof(lesson, Effort.SKETCH, "", LessonReading((), ()), (), (), 0.0, True)
    return Found(proof)


def unstudied(lesson: Lesson) -> Study:
    """A study that has found nothing, for what does not hang on it."""
    side = lesson.settings.side or "white"
    rating = lesson.settings.audience
    empty: tuple[Any, ...] = ()
    lists = [empty] * 9
    return Study(lesson, side, rating, Effort.SKETCH, False, empty, *lists)


def random_lesson(seed: int) -> str:
    """A game with nested variations, by python-chess."""
    chance = random.Random(seed)
    game = chess.pgn.Game()
    game.headers["Event"] = f"Random {seed}"
    nodes: list[chess.pgn.GameNode] = [game]
    for _ in range(80):
        node = nodes[-1] if chance.random() < 0.7 else chance.choice(nodes)
        moves = list(node.board().legal_moves)
        if moves:
            move = chance.choice(moves)
            known = [child for child in node.variations if child.move == move]
            nodes.append(known[0] if known else node.add_variation(move))
    return str(game) + "\n"


def long_lesson(plies: int) -> str:
    """Knights that go out and home."""
    board, moves = chess.Board(), ["Nf3", "Nf6", "Ng1", "Ng8"]
    words = []
    for ply in range(plies):
        words.append(f"{ply // 2 + 1}." if ply % 2 == 0 else "")
        words.append(moves[ply % 4])
        board.push_san(moves[ply % 4])
    return " ".join(word for word in words if word) + " *\n"
