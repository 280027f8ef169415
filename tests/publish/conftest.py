"""One small lesson, proved and studied once for all tests at sketch effort."""

from __future__ import annotations

import pytest

from lineproof.facade import Lesson
from lineproof.publish import Found

from .lessons import TRAP


@pytest.fixture(scope="session")
def trap() -> Lesson:
    return Lesson.from_text(TRAP, name="trap.pgn", side="white", audience=1400)


@pytest.fixture(scope="session")
def found(trap: Lesson) -> Found:
    return Found(trap.prove("sketch"), trap.study())
