"""Students' games against an open lesson. Players and games are invented."""

from __future__ import annotations

import re
from base64 import b64encode
from pathlib import Path
from typing import Any

import pytest

from lineproof.desk import followings
from lineproof.facade import Lesson
from lineproof.report.followed import followed

from .conftest import Desk
from .waiting import until

START = "1. e4 e5 2. Nc3 Nf6 3. f4"


def game(moves: str, white: str, black: str, result: str) -> str:
    return f'[White "{white}"]\n[Black "{black}"]\n[Result "{result}"]\n\n{moves} {result}\n\n'


GAMES = (
    game(f"{START} Bc5 4. fxe5", "Ann Quay", "Ben Jetty", "0-1")
    + game(f"{START} Bc5 4. Nf3 d6", "Cas Mole", "Ben Jetty", "1-0")
    + game(f"{START} d5 4. d3 d4", "Ann Quay", "<b>Dot</b> Pier", "1/2-1/2")
    + game("1. d4 d5", "Ann Quay", "Cas Mole", "1-0")
)


def given(desk: Desk, text: str = GAMES, player: str = "") -> Any:
    file = {"name": "club.pgn", "base64": b64encode(text.encode()).decode()}
    return desk.client.post("/api/lessons/1/games", json={"file": file, "player": player})


def told(desk: Desk) -> Any:
    def done() -> Any:
        found = desk.get("/api/lessons/1/games")
        return found if found["state"] == "done" else None

    return until(done)


def test_games_are_followed_as_on_the_command_line(desk: Desk, tmp_path: Path) -> None:
    assert desk.get("/api/lessons/1/games")["state"] == "none"
    assert given(desk).status_code == 200
    found = told(desk)
    assert found["said"][0] == "3 games came to the lesson, 1 game did not."
    file = tmp_path / "club.pgn"
    file.write_text(GAMES)
    lines = re.sub(r" \(line \d+\)", "", followed(Lesson.open(desk.path).follow(file), name="it"))
    for one in (*found["common"], *found["games"]):
        assert one["words"].removesuffix(".") in lines
    gambit = desk.place("e4", "e5", "Nc3", "Nf6", "f4")
    first = found["common"][0]
    assert first["words"].startswith("2 games: after 3. f4 the opponent played 3... Bc5")
    assert first["place"] == gambit["id"]
    assert first["add"]["moves"][0] == "f8c5"
    assert [move["uci"] for move in first["evidence"]["moves"]] == first["add"]["moves"]
    assert desk.edit(op="add_line", **first["add"])["said"] == "branched"
    dot = next(one for one in found["games"] if "Dot" in one["words"])
    assert dot["words"].startswith("Ann Quay against <b>Dot</b> Pier: after 3... d5 Ann Quay played 4. d3")  # fmt: skip
    assert (dot["add"], [m["san"] for m in dot["evidence"]["moves"]]) == (None, ["d3", "d4"])


def test_the_games_of_one_student_are_followed_and_forgotten(desk: Desk) -> None:
    assert given(desk, player="cas").status_code == 200
    assert [one["words"][:8] for one in told(desk)["games"]] == ["Cas Mole"]
    gone = desk.client.delete("/api/lessons/1/games")
    assert gone.json() == desk.get("/api/lessons/1/games")
    assert (gone.json()["state"], gone.json()["games"]) == ("none", [])
    desk.lessons.close()
    kept = [file for file in desk.path.rglob("*") if file.is_file()]
    assert not [file for file in kept if b"Cas Mole" in file.read_bytes()]


@pytest.mark.parametrize(
    ("text", "player", "says"),
    [
        ("", "", "the file is empty"),
        ("nothing", "", "holds no game"),
        (GAMES, "Zed", "nobody in these games"),
        (GAMES, "n", "may be several players"),
    ],
)
def test_what_cannot_be_followed_is_refused_with_its_reason(
    desk: Desk, text: str, player: str, says: str
) -> None:
    answer = given(desk, text, player)
    assert answer.status_code == 422
    assert says in answer.json()["error"]["message"]
    assert desk.get("/api/lessons/1/games")["state"] == "none"


def test_a_lesson_that_teaches_neither_side_follows_none(desk: Desk) -> None:
    path = desk.path.parent / "other.pgn"
    path.write_text("1. e4 *")
    desk.lessons.open(path)
    file = {"name": "club.pgn", "base64": b64encode(GAMES.encode()).decode()}
    answer = desk.client.post("/api/lessons/2/games", json={"file": file})
    assert answer.status_code == 422
    assert "which side" in answer.json()["error"]["message"]


def test_forgetting_and_closing_break_off_what_goes_on(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    from lineproof.proof.asker import Interrupted

    def endless(*some: Any, progress: Any, stop: Any, **more: Any) -> Any:
        progress(1, 2)
        while not stop.is_set():
            pass
        raise Interrupted

    monkeypatch.setattr(followings, "follow", endless)
    given(desk)
    until(lambda: desk.get("/api/lessons/1/games")["done"] == 1)
    assert desk.client.delete("/api/lessons/1/games").json()["state"] == "none"
    given(desk)
    desk.lessons.close()


def test_a_fault_is_said(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*some: Any, **more: Any) -> Any:
        raise ZeroDivisionError

    monkeypatch.setattr(followings, "follow", broken)
    given(desk)
    until(lambda: desk.get("/api/lessons/1/games")["state"] == "failed")
    assert "fault" in desk.get("/api/lessons/1/games")["problem"]
