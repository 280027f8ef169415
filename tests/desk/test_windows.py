"""Two windows of one lesson stay in step, by the events that each gets."""

from __future__ import annotations

import socket
from pathlib import Path

import pytest

from lineproof.desk.lessons import Lessons
from lineproof.proof import Effort

from .lessons import VIENNA
from .served import Listening, served, window


def test_an_edit_in_one_window_is_told_to_both_with_its_findings(path: Path) -> None:
    lessons = Lessons(Effort.SKETCH)
    lessons.open(path)
    with served(lessons) as address, window(address) as one, window(address) as other:
        first, second = Listening(address), Listening(address)
        assert first.until("lesson", version=0)["window"] == ""
        assert second.until("saved", version=0)["problem"] is None
        second.until("findings", complete=True)
        edit = {"op": "change_words", "comment": 1, "text": "This is mate."}
        body = {"version": 0, "window": "left", "edit": edit}
        assert one.post("/api/lessons/1/edits", json=body).status_code == 200
        for listening in (first, second):
            assert listening.until("lesson", version=1)["window"] == "left"
            found = listening.until("findings", version=1, complete=True)["findings"]
            assert ("This is mate", "fails") in {(f["words"], f["outcome"]) for f in found}
        assert one.post("/api/lessons/1/edits", json=body).status_code == 409
        assert other.get("/api/lessons/1").json()["version"] == 1
    assert first.ended
    assert second.ended
    assert "This is mate." in (path / "lines.pgn").read_text()


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
