from __future__ import annotations

from pathlib import Path

import pytest

LESSON = """[Event "The Vienna Gambit for White"]
[Result "*"]

1. e4 e5 2. Nc3 Nf6 3. f4 {Material is level. The knight on f6 is pinned to the king.} d5 *
"""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """A folder with a lesson of two claims, of which one fails, and one whose claims hold."""
    (tmp_path / "vienna.pgn").write_text(LESSON, encoding="utf-8")
    sound = LESSON.replace(" The knight on f6 is pinned to the king.", "")
    (tmp_path / "sound.pgn").write_text(sound, encoding="utf-8")
    return tmp_path
