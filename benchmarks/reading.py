"""How many sentences are read in a second: `python benchmarks/reading.py`.

The sentences of the corpora in tests/corpus, each in its own game, read for claims; nothing is checked. Baseline: python-chess reading the same games,
words and all, without understanding any. The two take turns, a whole corpus each, as a lesson is read: game by game they would push each other out of the processor's
caches. Times are of the processor, of one core; words and frames are compiled once before.
"""

from __future__ import annotations

import io
import json
import time
from pathlib import Path

import chess.pgn

from lineproof.claims import read_lesson
from lineproof.lesson import Lesson

CORPORA = ("open", "second", "third", "fourth", "fifth")
FOLDER = Path(__file__).resolve().parent.parent / "tests" / "corpus"
ROUNDS = 4


def by_turns(items: list[dict[str, str]]) -> float:
    """Sentences a second when another program's work lies in the caches each time."""
    count = ours = 0.0
    for item in items:
        lesson = Lesson.from_text(item["pgn"], side=item["taught"])
        began = time.process_time()
        count += len(read_lesson(lesson).sentences)
        ours += time.process_time() - began
        chess.pgn.read_game(io.StringIO(item["pgn"]))
    return count / ours


def main() -> None:
    items = [
        json.loads(line)
        for name in CORPORA
        for line in (FOLDER / f"{name}.jsonl").read_text(encoding="utf-8").splitlines()
    ]
    began = time.process_time()
    sentences = sum(
        len(read_lesson(Lesson.from_text(item["pgn"], side=item["taught"])).sentences)
        for item in items
    )
    spent = time.process_time() - began
    print(
        f"{sentences / spent:,.0f} sentences/s the first time, with all that is compiled on the way"
    )
    print(
        f"{by_turns(items):,.0f} sentences/s when python-chess reads a game between any two of ours"
    )
    count = ours = theirs = 0.0
    for _ in range(ROUNDS):
        lessons = [Lesson.from_text(item["pgn"], side=item["taught"]) for item in items]
        began = time.process_time()
        count += sum(len(read_lesson(lesson).sentences) for lesson in lessons)
        ours += time.process_time() - began
        began = time.process_time()
        for item in items:
            chess.pgn.read_game(io.StringIO(item["pgn"]))
        theirs += time.process_time() - began
    print(
        f"{count / ours:,.0f} sentences/s; {ours / theirs:.2f} times the time that python-chess needs for the moves and words alone"
    )


if __name__ == "__main__":
    main()
