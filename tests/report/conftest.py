"""Small lessons, proved once for all tests at sketch effort."""

from __future__ import annotations

import pytest

from lineproof.facade import Lesson, Proof, Study

from .lessons import HOSTILE, LESSON, STUDIED


@pytest.fixture(scope="session")
def proof() -> Proof:
    return Lesson.from_text(LESSON, name="vienna/lines.pgn", side="white", audience=1400).prove(
        "sketch"
    )


@pytest.fixture(scope="session")
def hostile() -> Proof:
    return Lesson.from_text(HOSTILE, name='<b>"x"</b>.pgn', side="black").prove("sketch")


@pytest.fixture(scope="session")
def study() -> Study:
    return Lesson.from_text(STUDIED, name="legal/lines.pgn", side="white", audience=1400).study(
        "sketch"
    )
