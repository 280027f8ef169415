"""Publishing goes on while the author writes: how far it is, breaking it off, and what is not written then. Reports beside it."""

from __future__ import annotations

import base64
import threading
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from lineproof.desk import publishing
from lineproof.desk.lessons import Lessons
from lineproof.facade import Lesson
from lineproof.proof import Effort
from lineproof.publish import chosen
from lineproof.report.html import html
from lineproof.report.studied_html import study_html

from .conftest import Desk
from .served import Listening, served, window
from .test_games import given, told
from .test_going_on import ended, publish, published
from .test_weighing import MATE, weigh
from .test_weighing import told as weighed
from .test_work import study
from .waiting import until


@pytest.fixture
def held(monkeypatch: pytest.MonkeyPatch) -> threading.Event:
    """Publishing waits in the middle of its work until this is set, and asks whether it is still wanted."""
    going = threading.Event()
    real = publishing.publish

    def slow(*some: Any, progress: Callable[[int, int], None] | None, **more: Any) -> Any:
        assert progress is not None
        while not going.wait(0.01):
            progress(1, 4)
        return real(*some, progress=progress, **more)

    monkeypatch.setattr(publishing, "publish", slow)
    return going


def test_the_author_writes_on_meanwhile_and_one_thing_is_published_at_a_time(
    desk: Desk, tmp_path: Path, held: threading.Event
) -> None:
    desk.findings()
    out = tmp_path / "out"
    assert publish(desk, out, "pgn", anyway=True).json()["state"] == "running"
    until(lambda: desk.get("/api/lessons/1/publish")["done"] == 1)
    desk.edit(op="add_comment", place=desk.place("e4")["id"], text="Written meanwhile.")
    desk.findings()
    second = publish(desk, tmp_path / "second", "pgn", anyway=True)
    assert (second.status_code, "already" in second.text) == (422, True)
    held.set()
    found = until(lambda: ended(desk))
    assert (found["state"], found["what"], found["of"]) == ("done", "product", 1)
    texts = [file.read_text(encoding="utf-8") for file in (out / "pgn").glob("*.pgn")]
    assert texts and not any("Written meanwhile." in text for text in texts)
    assert not (tmp_path / "second").exists()


def test_what_is_broken_off_leaves_nothing_behind(
    desk: Desk, tmp_path: Path, held: threading.Event
) -> None:
    desk.findings()
    publish(desk, tmp_path / "out", "pgn", anyway=True)
    gone = desk.client.delete("/api/lessons/1/publish").json()
    assert (gone["state"], gone["published"]) == ("none", None)
    assert not (tmp_path / "out").exists()
    assert desk.get("/api/lessons/1/editions") == {"editions": []}
    held.set()
    assert published(desk, publish(desk, tmp_path / "out", "pgn", anyway=True))["edition"]


def test_what_breaks_off_while_the_last_product_is_made_leaves_nothing_either(
    desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    making, going = threading.Event(), threading.Event()
    (pgn,) = chosen(["pgn"])

    def slow(*given: Any) -> Any:
        making.set()
        assert going.wait(60)
        return pgn.make(*given)

    monkeypatch.setattr(publishing, "chosen", lambda _: (replace(pgn, make=slow),))
    desk.findings()
    publish(desk, tmp_path / "out", "pgn", anyway=True)
    assert making.wait(60)
    threading.Timer(0.3, going.set).start()
    gone = desk.client.delete("/api/lessons/1/publish").json()
    assert (gone["state"], gone["published"]) == ("none", None)
    assert not (tmp_path / "out").exists()
    # Broken off when it is done, it is done.
    monkeypatch.setattr(publishing, "chosen", chosen)
    published(desk, publish(desk, tmp_path / "out", "pgn", anyway=True))
    assert desk.client.delete("/api/lessons/1/publish").json()["state"] == "done"


def test_closing_the_desk_breaks_it_off(desk: Desk, tmp_path: Path, held: threading.Event) -> None:
    desk.findings()
    publish(desk, tmp_path / "out", "pgn", anyway=True)
    desk.lessons.close()
    assert not held.is_set() and not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("error", "says"),
    [(OSError(28, "No space left on device"), "no space left"), (ZeroDivisionError(), "fault")],
)
def test_what_goes_wrong_is_said(
    desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, error: Exception, says: str
) -> None:
    def broken(*_: Any, **__: Any) -> Any:
        raise error

    desk.findings()
    monkeypatch.setattr(publishing, "publish", broken)
    publish(desk, tmp_path / "out", "pgn", anyway=True)
    found = until(lambda: ended(desk))
    assert found["state"] == "failed" and says in found["problem"]


def test_the_windows_are_told_how_far_a_video_is_by_its_frames(path: Path, tmp_path: Path) -> None:
    (path / "lines.pgn").write_text("1. e4 {Hello.} *", encoding="utf-8")
    lessons = Lessons(Effort.SKETCH)
    lessons.open(path)
    with served(lessons) as address, window(address) as client:
        listening = Listening(address)
        listening.findings(0)
        body = {"path": str(tmp_path / "out"), "only": ["video"]}
        assert client.post("/api/lessons/1/publish", json=body).json()["what"] == "product"
        first = listening.until("publishing", state="running", what="frame")
        assert first["of"] > 0
        done = listening.until("publishing", state="done")
        assert first["done"] < first["of"]
        assert [file["name"] for file in done["published"]["files"] if "mp4" in file["name"]]


def page_of(answer: Any) -> tuple[str, str]:
    assert answer.status_code == 200, answer.text
    found = answer.json()
    return found["name"], base64.b64decode(found["base64"]).decode()


def test_reports_are_those_of_the_command_line(desk: Desk, tmp_path: Path) -> None:
    for of in ("study", "games"):
        assert desk.client.get("/api/lessons/1/report", params={"of": of}).status_code == 422
    assert desk.client.get("/api/weighing/report").status_code == 422
    desk.findings()
    name, page = page_of(desk.client.get("/api/lessons/1/report"))
    lesson = Lesson.open(desk.path)
    assert (name, page) == ("vienna-proof.html", html(lesson.prove("sketch")))
    study(desk)
    name, page = page_of(desk.client.get("/api/lessons/1/report", params={"of": "study"}))
    assert (name, page) == ("vienna-study.html", study_html(lesson.study("sketch")))
    given(desk)
    told(desk)
    name, page = page_of(desk.client.get("/api/lessons/1/report", params={"of": "games"}))
    assert name == "vienna-games.html" and "Ben Jetty" in page
    desk.client.delete("/api/lessons/1/games")
    assert desk.client.get("/api/lessons/1/report", params={"of": "games"}).status_code == 422
    weigh(desk, moves=[MATE])
    weighed(desk)
    name, page = page_of(desk.client.get("/api/weighing/report"))
    assert name == "openings.html" and MATE in page
    # What has changed since is not reported as if it had been studied.
    desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["c5"])
    answer = desk.client.get("/api/lessons/1/report", params={"of": "study"})
    assert (answer.status_code, "nothing to report" in answer.text) == (422, True)
    assert not list(tmp_path.rglob("*.html"))
