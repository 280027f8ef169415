"""A lesson of 20 MB opens and is saved untouched; its figures are printed (`pytest -s`)."""

from __future__ import annotations

import subprocess
import sys
import textwrap
from pathlib import Path

GAME = """[Event "invented"]
[White "a"]

1. e4 {good} e5 $1 2. Nf3 (2. f4 exf4 {accepted, says the caf\u00e9}) 2... Nc6 3. Bb5 a6
4. Ba4 Nf6 5. O-O Be7 6. Re1 b5 7. Bb3 d6 8. c3 O-O 9. h3 *

"""
SIZE = 20_000_000


def test_twenty_megabytes_open_and_stay_byte_for_byte(tmp_path: Path) -> None:
    count = SIZE // len(GAME.encode()) + 1
    file = tmp_path / "big.pgn"
    data = (GAME * count).encode()
    file.write_bytes(data)
    code = """
        import resource, sys, time
        from lineproof.lesson import Lesson
        base = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        start = time.perf_counter()
        lesson = Lesson.open(sys.argv[1])
        opened = time.perf_counter() - start
        assert lesson.source.encode() == lesson.disk
        keys = time.perf_counter()
        positions = len(lesson.positions)
        keys = time.perf_counter() - keys
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        print(len(lesson.places), len(lesson.games), positions, len(lesson.comments))
        print(f"opened in {opened:.2f} s, positions in {keys:.2f} s, {(peak - base) / 1024:.0f} MB")
        print(opened, (peak - base) / 1024)
    """
    done = subprocess.run(
        [sys.executable, "-c", textwrap.dedent(code), str(file)],
        capture_output=True,
        text=True,
        check=True,
    )
    counts, figures, numbers = done.stdout.splitlines()
    print(f"\n{len(data) / 1e6:.1f} MB: {figures}")
    # A game has its start, 17 moves and 2 of the variation; all games share their positions.
    assert counts == f"{20 * count} {count} 20 {2 * count}"
    seconds, megabytes = map(float, numbers.split())
    assert seconds < 60
    assert megabytes < 2000
    assert file.read_bytes() == data
