"""Lessons for the tests of the desk."""

from __future__ import annotations

from pathlib import Path

VIENNA = """[Event "The Vienna Gambit for White"]
[Site "Harbour Street club"]
[Date "2026.??.??"]
[Round "-"]
[White "Lesson"]
[Black "Lesson"]
[Result "*"]

{Tonight we play the Vienna.} 1. e4 e5 2. Nc3 {White develops a knight.} Nf6
(2... Bc5 3. f4 {Black cannot castle now.}) 3. f4 d5! 4. fxe5 Nxe4 *
"""

SETTINGS = """format = 1
title = "The Vienna Gambit for White"
side = "white"
audience = 1400
"""


def folder(at: Path, lines: str = VIENNA) -> Path:
    """A lesson folder in another."""
    made = at / "vienna"
    made.mkdir()
    (made / "lines.pgn").write_bytes(lines.encode())
    (made / "lesson.toml").write_text(SETTINGS, encoding="utf-8")
    return made
