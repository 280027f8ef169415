"""Two windows of one lesson stay in step, by the events that each gets."""

from __future__ import annotations

import socket
import threading
import time
from pathlib import Path
from typing import Any

import pytest

from lineproof.claims import Claim
from lineproof.desk import prover
from lineproof.desk.lessons import Lessons
from lineproof.desk.ways import Way
from lineproof.engine import Stop
from lineproof.facade import Lesson
from lineproof.proof import Effort, EvidenceStore
from lineproof.proof.asker import Interrupted

from .lessons import VIENNA
from .served import Listening, served, window
from .waiting import until


def test_an_edit_in_one_window_is_told_to_both_with_its_findings(path: Path) -> None:
    lessons = Lessons(Effort.SKETCH)
    lessons.open(path)
    with served(lessons) as address, window(address) as one, window(address) as other:
        first, second = Listening(address), Listening(address)
        assert first.until("lesson", version=0)["window"] == ""
        assert second.until("saved", version=0)["problem"] is None
        second.findings(0)
        edit = {"op": "change_words", "comment": 1, "text": "This is mate."}
        body = {"version": 0, "window": "left", "edit": edit}
        assert one.post("/api/lessons/1/edits", json=body).status_code == 200
        for listening in (first, second):
            assert listening.until("lesson", version=1)["window"] == "left"
            found = listening.findings(1)["findings"]
            assert ("This is mate", "fails") in {(f["words"], f["outcome"]) for f in found}
        assert one.post("/api/lessons/1/edits", json=body).status_code == 409
        assert other.get("/api/lessons/1").json()["version"] == 1
    assert first.ended
    assert second.ended
    assert "This is mate." in (path / "lines.pgn").read_text()


def test_windows_are_told_only_what_has_changed_of_the_findings(path: Path) -> None:
    lessons = Lessons(Effort.SKETCH)
    opened = lessons.open(path).opened
    with served(lessons) as address, window(address) as client:
        listening = Listening(address)

        def edit(version: int, **edit: object) -> None:
            body = {"version": version, "edit": edit}
            assert client.post("/api/lessons/1/edits", json=body).status_code == 200

        def same(version: int) -> None:
            """What the window was told is what there is."""
            listening.news.clear()
            told = listening.findings(version)
            assert told == client.get("/api/lessons/1/findings").json()

        same(0)
        assert sum(len(news["passages"]) for news in listening.news) >= 4
        edit(0, op="change_words", comment=1, text="This is mate.")
        same(1)
        changed = [[passage["findings"][0]["words"] for passage in n["passages"]] for n in listening.news]  # fmt: skip
        assert {words for some in changed for words in some} == {"This is mate"}
        # A comment before all others moves their numbers; no passage but the new one is told of.
        start = opened.names.all[1]
        edit(1, op="add_comment", place=start, text="All is well.")
        same(2)
        told = [one for news in listening.news for one in news["passages"]]
        assert {s["start"] for one in told for s in one["sentences"]} == {0}
        assert "This is mate" not in {f["words"] for one in told for f in one["findings"]}
        edit(2, op="undo")
        same(3)
        assert [one for news in listening.news for one in news["passages"]] == []
        # Another window begins with all.
        listening = Listening(address)
        same(3)


def test_a_lesson_is_checked_anew_at_another_effort(path: Path) -> None:
    lessons = Lessons(Effort.SKETCH)
    on_desk = lessons.open(path)
    with served(lessons) as address, window(address) as client:
        listening = Listening(address)
        first = listening.findings(0)
        assert first["way"]["effort"] == "sketch"
        asked = client.post("/api/lessons/1/way", json={"effort": "normal"})
        assert asked.status_code == 200
        again = listening.findings(0)
        while again["way"]["effort"] != "normal":
            again = listening.findings(0)
        assert [f["id"] for f in again["findings"]] == [f["id"] for f in first["findings"]]
        proof = Lesson.open(path).prove("normal")
        glyphs = {id(claim) for claim in proof.reading.glyphs}
        proved = {f.claim.words: f.because for f in proof.findings if id(f.claim) not in glyphs}
        assert proved
        found = {f["words"]: f["why"] for f in again["findings"] if f["comment"] is not None}
        assert found == proved
        assert on_desk.prover.way == Way(Effort.NORMAL)
        assert client.post("/api/lessons/1/way", json={"effort": "most"}).status_code == 422


def test_a_search_of_the_former_effort_ends_and_its_answer_is_not_taken(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = prover.settle
    begun = threading.Event()

    def slow(
        claim: Claim, effort: Effort, store: EvidenceStore, stop: Stop | None, *rest: Any
    ) -> Any:
        if effort is Effort.THOROUGH and stop is not None:
            begun.set()
            while not stop.is_set():
                time.sleep(0.01)
            raise Interrupted
        return real(claim, effort, store, stop, *rest)

    monkeypatch.setattr(prover, "settle", slow)
    lessons = Lessons(Effort.THOROUGH)
    on_desk = lessons.open(path)
    try:
        assert begun.wait(60)
        assert not on_desk.prover.snapshot().complete
        on_desk.prover.choose(Effort.SKETCH, Effort.SKETCH)
        until(lambda: on_desk.prover.snapshot().complete)
        outcomes = {f.outcome for f in on_desk.prover.snapshot().whole().findings}
        assert outcomes and "waiting" not in outcomes
    finally:
        lessons.close()


def test_a_window_that_comes_later_is_told_how_it_stands(path: Path) -> None:
    lessons = Lessons(Effort.SKETCH)
    lessons.open(path)
    with served(lessons) as address, window(address) as client:
        edit = {"op": "change_words", "comment": 1, "text": "White has the move."}
        client.post("/api/lessons/1/edits", json={"version": 0, "edit": edit})
        listening = Listening(address)
        listening.until("lesson", version=1)
        listening.until("saved", version=1)
    assert (path / "lines.pgn").read_text() != VIENNA


def test_the_desk_listens_at_the_address_of_the_machine_itself_only(path: Path) -> None:
    lessons = Lessons(Effort.SKETCH)
    lessons.open(path)
    with served(lessons) as address:
        port = int(address.split(":")[2].split("/")[0])
        socket.create_connection(("127.0.0.1", port), 5).close()
        with pytest.raises(ConnectionRefusedError):  # it would answer if it listened everywhere
            socket.create_connection(("127.0.0.2", port), 5).close()
