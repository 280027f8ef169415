"""Everything that `prove` does is one clear call in Python."""

from __future__ import annotations

import pickle
import subprocess
import sys
from pathlib import Path

import pytest

import lineproof


def test_open_and_prove(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LINEPROOF_DATA", str(home / "data"))
    told: list[tuple[int, int]] = []
    proof = lineproof.Lesson.open(home / "vienna.pgn", side="white").prove(
        effort="sketch", progress=lambda done, total: told.append((done, total))
    )
    assert [str(f.outcome) for f in proof.findings] == ["holds", "fails"]
    assert told[-1] == (2, 2)
    assert list((home / "data").rglob("evidence.sqlite"))


def test_an_unknown_effort_is_refused() -> None:
    with pytest.raises(ValueError, match="huge"):
        lineproof.Lesson.from_text("1. e4 *").prove("huge")


def test_what_a_lesson_gives_can_be_proved_too() -> None:
    lesson = lineproof.Lesson.from_text("1. e4 {Material is level.} *", side="white")
    for other in (
        lesson.with_text("1. d4 {Material is level.} *"),
        lesson.with_settings(lesson.settings),
        pickle.loads(pickle.dumps(lesson)),
    ):
        assert isinstance(other, lineproof.Lesson)
        assert other.prove("sketch").count(lineproof.Outcome.HOLDS) == 1
        assert other.settings.side == "white"
        assert other.places[1].lesson is other


def test_errors_have_one_base(home: Path) -> None:
    with pytest.raises(lineproof.LessonError):
        lineproof.Lesson.open(home / "nowhere.pgn")
    with pytest.raises(AttributeError, match="nothing"):
        _ = lineproof.nothing  # type: ignore[attr-defined]


def test_importing_the_package_imports_nothing_else() -> None:
    code = "import sys, lineproof; print([m for m in sys.modules if m.startswith('lineproof')])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "['lineproof']"
    assert set(lineproof.__all__) <= set(dir(lineproof))
