"""benchmarks/study.py, with a lesson of few positions: what it measures is what it says."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from benchmarks.study import POSITIONS, edited, lesson, whole

from lineproof.lesson.graph import Graph

ROOT = Path(__file__).resolve().parents[2]


def test_the_lesson_has_as_many_positions_and_the_edit_changes_one_line() -> None:
    lines = whole(POSITIONS)
    before, after = Graph(lesson(lines)), Graph(lesson(edited(lines)))
    assert len(before.order) == POSITIONS == 300
    # the end of one line is gone, and two positions have come in its place
    assert len(set(before.order) - set(after.order)) == 1
    assert len(set(after.order) - set(before.order)) == 2


def test_it_prints_times_and_the_ratio_of_the_first_two() -> None:
    ran = subprocess.run(
        [sys.executable, "benchmarks/study.py", "--positions", "5"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=240,
        check=True,
    )
    head, cold, edit, same, ratio = ran.stdout.splitlines()
    assert head.startswith("5 positions in 1 lines, sketch effort, engine version ")
    for line, name in ((cold, "with nothing kept"), (edit, "after an edit of one line"), (same, "once more as it is")):  # fmt: skip
        assert re.fullmatch(rf"{name}: [\d.]+ s by the clock, [\d.]+ s of the processor", line)
    assert re.fullmatch(
        r"nothing kept against after an edit: [\d.]+ by the clock, [\d.]+ of the processor", ratio
    )
