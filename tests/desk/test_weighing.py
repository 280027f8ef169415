"""Candidate openings weighed on the desk."""

from __future__ import annotations

from typing import Any

import pytest

from lineproof.cli import main
from lineproof.desk import weighings

from .conftest import Desk
from .waiting import until

MATE = "1. f3 e5 2. g4 Qh4#"
ROOK = "k7/8/1K6/8/8/8/8/7R w - - 0 1"


def weigh(desk: Desk, **asked: Any) -> Any:
    return desk.client.post("/api/weighing", json={"audience": 1500, **asked})


def told(desk: Desk) -> Any:
    def done() -> Any:
        found = desk.get("/api/weighing")
        return found if found["state"] in {"done", "failed"} else None

    return until(done)


def test_openings_are_weighed_as_on_the_command_line(
    desk: Desk, capsys: pytest.CaptureFixture[str]
) -> None:
    assert desk.get("/api/weighing")["state"] == "none"
    assert weigh(desk, moves=[MATE, "", f" {ROOK} "]).status_code == 200
    found = told(desk)
    assert [one["name"] for one in found["candidates"]] == [f"{MATE}, for Black", f"{ROOK}, for White"]  # fmt: skip
    assert main(["weigh", MATE, ROOK, "--audience", "1500"]) == 0
    printed = capsys.readouterr().out
    assert "`--collection NAME`" in printed  # an option of the command line, which the page has not
    printed = printed.replace(" `--collection NAME` counts games.", "")
    for one in found["candidates"]:
        assert "\n  ".join([one["name"], *one["said"]]) in printed
    assert "\n".join(found["said"]) in printed


def test_a_lesson_on_the_desk_is_a_candidate(desk: Desk) -> None:
    path = desk.path.parent / "mate"
    path.mkdir()
    (path / "lines.pgn").write_text("1. f3 e5 2. g4 {Thank you.} Qh4# *")
    (path / "lesson.toml").write_text('format = 1\ntitle = "The quickest"\nside = "black"\n')
    desk.lessons.open(path)
    weigh(desk, lessons=["2"])
    (one,) = told(desk)["candidates"]
    assert one["name"].startswith("The quickest")
    assert "1 position to learn, 1 of them in the lesson" in one["said"]


@pytest.mark.parametrize(
    ("asked", "status", "says"),
    [
        ({"moves": ["1. e4 e9"]}, 422, "e9"),
        ({"moves": [" "]}, 422, "nothing is to be weighed"),
        ({"moves": [MATE], "collection": "none"}, 422, "no collection"),
        ({"lessons": ["9"]}, 404, "not open"),
    ],
)
def test_what_cannot_be_weighed_is_refused(
    desk: Desk, asked: dict[str, Any], status: int, says: str
) -> None:
    answer = weigh(desk, **asked)
    assert answer.status_code == status
    assert says in answer.json()["error"]["message"]


def test_a_lesson_that_teaches_neither_side_is_no_candidate(desk: Desk) -> None:
    path = desk.path.parent / "other.pgn"
    path.write_text("1. e4 *")
    desk.lessons.open(path)
    answer = weigh(desk, lessons=["2"])
    assert (answer.status_code, "which side" in answer.text) == (422, True)


def test_a_new_weighing_and_closing_break_off_what_goes_on(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    from lineproof.proof.asker import Interrupted

    def endless(some: Any, replies: Any, *rest: Any) -> Any:
        while not replies.stop.is_set():
            pass
        raise Interrupted

    with monkeypatch.context() as patch:
        patch.setattr(weighings, "weigh_openings", endless)
        assert weigh(desk, moves=[MATE]).json()["state"] == "running"
    weigh(desk, moves=[MATE])
    assert told(desk)["done"] == 1
    monkeypatch.setattr(weighings, "weigh_openings", endless)
    weigh(desk, moves=[MATE])
    desk.lessons.close()


def test_a_fault_is_said(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*some: Any) -> Any:
        raise ZeroDivisionError

    monkeypatch.setattr(weighings, "weigh_openings", broken)
    weigh(desk, moves=[MATE])
    assert "fault" in told(desk)["problem"]
