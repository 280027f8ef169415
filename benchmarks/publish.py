"""How fast a handout and a page are made: `python benchmarks/publish.py`.

The demo, and random lessons with words and a sideline at each move; nothing proved or studied, so that only the making is measured, without exercises. Baseline: the same document set once by
Typst, in its first shape. The rest is the search for the shape that fills the columns. The page is set beside the same time of Typst. Times are of the wall, of one process.
"""

from __future__ import annotations

import multiprocessing
import random
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

from lineproof.claims import read_lesson
from lineproof.engine import Board
from lineproof.lesson import Lesson
from lineproof.proof import Effort, Proof
from lineproof.publish import Choices, Found, chosen
from lineproof.publish.handout.document import document
from lineproof.publish.handout.typeset import typeset
from lineproof.replies import Study

AIM, PAGE = 3.0, 1.0
"""Seconds that a handout and a page of the demo may take."""
DEMO = Path(__file__).parent.parent / "examples" / "vienna"
PLIES = (25, 90, 300)
"""Half-moves of the random lessons, by which they are named; each has a diagram."""
WORDS = "Somebody brought a cake along. " * 8
RUNS = 3


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


def timed(name: str, whole: bool) -> float:
    """Seconds of one making, the first of its process: Typst remembers what it has set."""
    one = Lesson.open(DEMO) if name == DEMO.name else lesson(int(name))
    given, page = found(one), Choices()
    began = time.perf_counter()
    if whole:
        (handout,) = chosen(["handout"])
        (pdf,) = handout.make(one, given, page).values()
    else:
        pdf = typeset(document(one, given, page), one.name)
    seconds = time.perf_counter() - began
    assert pdf.startswith(b"%PDF")
    return seconds


def page_timed(name: str) -> tuple[float, int]:
    """Seconds of one page, and its bytes."""
    one = Lesson.open(DEMO) if name == DEMO.name else lesson(int(name))
    given = found(one)
    began = time.perf_counter()
    (page,) = chosen(["page"])
    (data,) = page.make(one, given, Choices()).values()
    return time.perf_counter() - began, len(data)


def best(pool: ProcessPoolExecutor, name: str, whole: bool) -> float:
    """The shortest of some runs."""
    return min(pool.submit(timed, name, whole).result() for _ in range(RUNS))


def main() -> None:
    spawn = multiprocessing.get_context("spawn")
    print(f"{'lesson':<8} {'seconds':>8} {'set once':>9} {'ratio':>6} {'of the aim':>11}")
    with ProcessPoolExecutor(1, mp_context=spawn, max_tasks_per_child=1) as pool:
        for name in (DEMO.name, *map(str, PLIES)):
            whole, once = best(pool, name, True), best(pool, name, False)
            ratio, share = whole / once, whole / AIM
            print(f"{name:<8} {whole:8.2f} {once:9.2f} {ratio:6.1f} {share:11.2f}")
            seconds, size = min(pool.submit(page_timed, name).result() for _ in range(RUNS))
            print(
                f"  page   {seconds:8.3f} {once:9.2f} {seconds / once:6.2f} {seconds / PAGE:11.2f}   {size:,} bytes"
            )


if __name__ == "__main__":
    main()
