"""How fast a handout is made: `python benchmarks/publish.py`.

A random lesson with words and a sideline at each move, nothing proved or studied: only the making is measured. Baseline: the same document set once by
Typst, in its first shape. The rest is the search for the shape that fills the columns. Times are of the wall, of one process.
"""

from __future__ import annotations

import random
import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from lineproof.claims import read_lesson
from lineproof.engine import Board
from lineproof.lesson import Lesson
from lineproof.proof import Effort, Proof
from lineproof.publish import Choices, Files, Found, chosen
from lineproof.publish.handout.document import document
from lineproof.publish.handout.typeset import typeset
from lineproof.replies import Study

AIM = 3.0
"""Seconds that a handout of the demo may take."""
PLIES = (25, 90, 300)
"""Half-moves of the lessons; each has a diagram. The demo has about as many as the first."""
WORDS = "Somebody brought a cake along. " * 8
RUNS = 3


@dataclass(frozen=True)
class Timed:
    seconds: float
    value: Any


def lesson(plies: int) -> Lesson:
    chance, board, parts = random.Random(7), Board(), []
    for _ in range(plies):
        moves = board.legal_moves()
        if len(moves) < 2:
            break
        move, other = chance.sample(moves, 2)
        number = f"{board.move_number}{'.' if board.turn == 'white' else '...'}"
        parts.append(f"{number} {board.san(move)} {{{WORDS}}} ({number} {board.san(other)})")
        board = board.play(move)
    return Lesson.from_text(" ".join(parts) + " *\n", side="white")


def found(of: Lesson) -> Found:
    nothing: Any = ()
    proof = Proof(of, Effort.SKETCH, "", read_lesson(of), nothing, nothing, 0.0, True)
    study = Study(of, "white", 1500, Effort.SKETCH, False, nothing, *[nothing] * 9)
    return Found(proof, study)


def best(what: Callable[[], Any]) -> Timed:
    """The shortest of some runs."""
    times = []
    value = None
    for _ in range(RUNS):
        began = time.perf_counter()
        value = what()
        times.append(time.perf_counter() - began)
    return Timed(min(times), value)


def main() -> None:
    (handout,) = chosen(["handout"])
    print(f"{'diagrams':>8} {'seconds':>8} {'set once':>9} {'ratio':>6} {'of the aim':>11}")
    for plies in PLIES:
        one = lesson(plies)
        given, page = found(one), Choices()
        once = best(lambda: typeset(document(one, given, page), one.name))  # noqa: B023
        whole: Timed = best(lambda: handout.make(one, given, page))  # noqa: B023
        files: Files = whole.value
        assert all(data.startswith(b"%PDF") for data in files.values())
        print(
            f"{plies:>8} {whole.seconds:8.2f} {once.seconds:9.2f} {whole.seconds / once.seconds:6.1f}"
            f" {whole.seconds / AIM:11.2f}"
        )


if __name__ == "__main__":
    main()
