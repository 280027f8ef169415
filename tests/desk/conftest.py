"""The desk as its page meets it: behind its guard."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient

from lineproof.desk.app import guarded
from lineproof.desk.lessons import Lessons, OnDesk
from lineproof.proof import Effort

from .lessons import folder
from .waiting import until

PORT = 8765
TOKEN = "a token of the tests"
ADDRESS = f"http://127.0.0.1:{PORT}"
HEADERS = {"Authorization": f"Bearer {TOKEN}", "Origin": ADDRESS}


class Desk:
    """A desk with one lesson, and a window that shows it."""

    def __init__(self, lessons: Lessons, path: Path) -> None:
        self.lessons = lessons
        self.path = path
        self.on_desk: OnDesk = lessons.open(path)
        self.client = TestClient(guarded(lessons, TOKEN, PORT), ADDRESS, headers=HEADERS)
        self.lesson: dict[str, Any] = self.get("/api/lessons/1")

    def get(self, address: str, /, **query: str) -> Any:
        answer = self.client.get(address, params=query)
        assert answer.status_code == 200, answer.text
        return answer.json()

    def ask(self, version: int | None = None, **edit: Any) -> Any:
        """Asks for an edit; the response as it comes."""
        version = self.lesson["version"] if version is None else version
        return self.client.post("/api/lessons/1/edits", json={"version": version, "edit": edit})

    def edit(self, **edit: Any) -> Any:
        """Makes an edit, which must succeed."""
        answer = self.ask(**edit)
        assert answer.status_code == 200, answer.text
        done = answer.json()
        self.lesson = done["lesson"]
        return done

    def look(self) -> dict[str, Any]:
        self.lesson = self.get("/api/lessons/1")
        return self.lesson

    def place(self, *sans: str) -> dict[str, Any]:
        """The place after these moves."""
        at = self.lesson["places"][0]
        for san in sans:
            at = next(
                p for p in self.lesson["places"] if p["parent"] == at["id"] and p["san"] == san
            )
        return at

    def findings(self) -> dict[str, Any]:
        """All that is found of the version that the window shows."""
        version = self.lesson["version"]

        def complete() -> Any:
            found = self.get("/api/lessons/1/findings")
            return found if found["complete"] and found["version"] == version else None

        return until(complete)

    def finding(self, words: str) -> dict[str, Any]:
        """The one of these words."""
        (found,) = (f for f in self.findings()["findings"] if f["words"] == words)
        return found

    @property
    def text(self) -> str:
        return self.on_desk.opened.lesson.text

    @property
    def on_disk(self) -> str:
        return (self.path / "lines.pgn").read_bytes().decode()


@pytest.fixture
def path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("LINEPROOF_DATA", str(tmp_path / "data"))
    return folder(tmp_path)


@pytest.fixture
def desk(path: Path) -> Iterator[Desk]:
    lessons = Lessons(Effort.SKETCH)
    try:
        yield Desk(lessons, path)
    finally:
        lessons.close()
