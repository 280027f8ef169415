"""Questions, and the list of things to do."""

from __future__ import annotations

from typing import Any

import pytest

from lineproof.desk import publishing, studies
from lineproof.lesson import Lesson
from lineproof.order import RunningOrder, running_order
from lineproof.report.studied import answered

from .conftest import Desk
from .waiting import until

DEVELOPED = ("e4", "e5", "Nc3", "Nf6")


def ask(desk: Desk, question: str, *sans: str, place: bool = True) -> Any:
    at = desk.place(*sans)["id"] if place else None
    body = {"place": at, "question": question}
    answer = desk.client.post("/api/lessons/1/questions", json=body)
    assert answer.status_code == 200, answer.text
    return answer.json()


def test_a_question_at_a_place_is_answered_and_can_be_taken_into_the_lesson(desk: Desk) -> None:
    found = ask(desk, "Bc5 4. fxe5", *DEVELOPED, "f4")
    assert any("does not have this position" in said for said in found["said"])
    assert found["places"] == []
    add = found["add"]
    assert add["place"] == desk.place(*DEVELOPED, "f4")["id"]
    assert add["moves"][:2] == ["f8c5", "f4e5"]
    done = desk.edit(op="add_line", **add)
    assert done["said"] == "branched"
    assert desk.place(*DEVELOPED, "f4", "Bc5", "fxe5")["fen"] == found["fen"]


def test_it_is_answered_as_on_the_command_line(desk: Desk) -> None:
    from lineproof.facade import Lesson

    moves = "1. e4 e5 2. Nc3 Nf6 3. f4 Bc5"
    found = ask(desk, moves, place=False)
    lesson = Lesson.open(desk.path)
    told = answered(lesson.ask(moves, "sketch"), name=lesson.settings.title)
    assert "`--collection NAME`" in told  # an option of the command line, which the page has not
    shown = [line.replace(" `--collection NAME` counts games.", "") for line in told.splitlines()]
    assert found["said"] == shown != told.splitlines()
    assert ask(desk, "3... Bc5", *DEVELOPED, "f4") == found


def test_a_position_that_the_lesson_has_is_shown_there(desk: Desk) -> None:
    found = ask(desk, "Nc3 e5 e4")
    assert found["places"] == [desk.place("e4", "e5", "Nc3")["id"]]
    fen = desk.place("e4", "e5", "Nc3")["fen"]
    assert ask(desk, fen, place=False)["places"] == found["places"]


@pytest.mark.parametrize("question", ["Qh9", "3. Ke3", "8/8/8/8/8/8/8/8 w - - 0 1", "what?", "--"])
def test_what_is_no_question_is_refused(desk: Desk, question: str) -> None:
    body = {"place": desk.place(*DEVELOPED)["id"], "question": question}
    answer = desk.client.post("/api/lessons/1/questions", json=body)
    assert answer.status_code == 422
    assert answer.json()["error"]["kind"] == "NotAPositionError"


def test_a_question_in_a_game_from_a_position_is_answered(desk: Desk) -> None:
    path = desk.path.parent / "ending.pgn"
    path.write_text('[FEN "8/8/8/8/4k3/8/4P3/4K3 w - - 0 1"]\n[SetUp "1"]\n\n1. Kd2 *')
    desk.lessons.open(path)
    lesson = desk.get("/api/lessons/2")
    place = lesson["places"][1]["id"]
    body = {"place": place, "question": "1... Kd4 2. e3"}
    answer = desk.client.post("/api/lessons/2/questions", json=body)
    assert answer.status_code == 200
    assert answer.json()["fen"].startswith("8/8/8/8/3k4/4P3/3K4/8 b")
    add = answer.json()["add"]
    assert (add["place"], add["moves"][:2]) == (place, ["e4d4", "e2e3"])
    edit = {"version": 0, "edit": {"op": "add_line", **add}}
    assert desk.client.post("/api/lessons/2/edits", json=edit).status_code == 200
    body = {"place": place, "question": "1... Ke2"}
    assert desk.client.post("/api/lessons/2/questions", json=body).status_code == 422


def study(desk: Desk) -> list[dict[str, Any]]:
    """The things to do that a study finds."""
    assert desk.client.post("/api/lessons/1/study").status_code == 200

    def done() -> Any:
        found = desk.get("/api/lessons/1/study")
        assert found["problem"] is None
        return found if found["state"] == "done" else None

    return until(done)["things"]


def again(desk: Desk) -> list[dict[str, Any]]:
    return desk.get("/api/lessons/1/study")["things"]


def test_things_to_do_are_found_taken_up_put_off_and_dismissed(desk: Desk) -> None:
    assert desk.get("/api/lessons/1/study")["state"] == "none"
    for branch in ("Nf6", "Bc5"):  # a short lesson is studied sooner
        desk.edit(op="cut", place=desk.place("e4", "e5", "Nc3", branch, "f4")["id"])
    things = study(desk)
    found = {thing["sort"] for thing in things}
    assert "met" in found or "dangerous" in found
    assert desk.get("/api/lessons/1/study")["basis"].endswith("no games were counted.")
    for thing in things:
        if thing["add"]:
            assert [m["uci"] for m in thing["evidence"]["moves"]] == thing["add"]["moves"]
            place = next(p for p in desk.lesson["places"] if p["id"] == thing["place"])
            assert thing["evidence"]["fen"] == place["fen"]
        assert thing["words"]
        assert not [row for row in thing["rows"] if "<" in row["text"]]
    first, second, *_ = (thing for thing in things if thing["add"])

    desk.edit(op="add_line", **first["add"])
    assert first not in again(desk)
    assert second in again(desk)
    desk.edit(op="undo")
    assert first in again(desk)

    at = {"sort": second["sort"], "place": second["place"], "about": second["about"]}
    desk.edit(op="decide", **at, decided="later")
    assert {**second, "decided": "later"} in again(desk)
    desk.edit(op="decide", **at, decided="dismissed")
    assert {**second, "decided": "dismissed"} in again(desk)
    assert "dismissed" in (desk.path / "lesson.toml").read_text()
    assert "later" not in (desk.path / "lesson.toml").read_text()
    desk.edit(op="add_line", place=desk.place()["id"], moves=["c4"])
    assert {**second, "decided": "dismissed"} in again(desk)
    desk.edit(op="decide", **at, decided=None)
    assert second in again(desk)
    assert "put_off" not in (desk.path / "lesson.toml").read_text()


def test_pause_points_are_found_where_the_study_has_them(desk: Desk) -> None:
    path = desk.path.parent / "pause"
    (path).mkdir()
    fen = "rn1qkbnr/ppp2p1p/3p2p1/4N3/2B1P3/2N5/PPPP1PPP/R1BbK2R w KQkq - 0 6"  # Légal's mate
    (path / "lines.pgn").write_text(f'[SetUp "1"]\n[FEN "{fen}"]\n\n6. Bxf7+ *')
    (path / "lesson.toml").write_text('format = 1\nside = "white"\n')
    on_desk = desk.lessons.open(path)
    assert desk.client.post("/api/lessons/2/study").status_code == 200
    found = until(lambda: s if (s := desk.get("/api/lessons/2/study"))["state"] == "done" else None)
    studied = on_desk.studies.of(on_desk.opened.lesson)
    assert studied is not None
    names = on_desk.opened.names
    told = [(pause["place"], pause["best"], pause["grade"]) for pause in found["pauses"]]
    assert told == [(names.of(one.place), one.best, one.grade) for one in studied.pauses]
    assert "Bxf7+" in {pause["best"] for pause in found["pauses"]}


def test_a_lesson_that_teaches_neither_side_is_not_studied(desk: Desk) -> None:
    path = desk.path.parent / "other.pgn"
    path.write_text("1. e4 *")
    desk.lessons.open(path)
    answer = desk.client.post("/api/lessons/2/study")
    assert answer.status_code == 422
    assert "which side" in answer.json()["error"]["message"]


def test_a_study_is_broken_off_when_the_desk_is_closed(desk: Desk, monkeypatch) -> None:
    def endless(*given: Any, progress: Any, **more: Any) -> Any:
        while True:
            progress(1, 2)

    monkeypatch.setattr(studies, "study", endless)
    assert desk.client.post("/api/lessons/1/study").json()["state"] == "running"
    desk.lessons.close()


def test_a_study_that_breaks_says_so(desk: Desk, monkeypatch) -> None:
    def broken(*given: Any, **more: Any) -> Any:
        raise ZeroDivisionError

    monkeypatch.setattr(studies, "study", broken)
    desk.client.post("/api/lessons/1/study")
    until(lambda: desk.get("/api/lessons/1/study")["state"] == "failed")
    assert "fault" in desk.get("/api/lessons/1/study")["problem"]


def test_what_is_decided_of_a_bare_file_is_refused(desk: Desk) -> None:
    path = desk.path.parent / "other.pgn"
    path.write_text("1. e4 *")
    opened = desk.lessons.open(path).opened
    edit = {"op": "decide", "sort": "met", "place": opened.names.all[0], "about": "e7e5", "decided": "later"}  # fmt: skip
    answer = desk.client.post("/api/lessons/2/edits", json={"version": 0, "edit": edit})
    assert answer.status_code == 422
    assert answer.json()["error"]["kind"] == "SettingsError"


def test_the_running_order_asks_at_the_pause_points_of_the_study(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    study(desk)
    asked: list[Any] = []

    def told(lesson: Lesson, **given: Any) -> RunningOrder:
        asked.append(given["study"])
        return running_order(lesson, **given)

    monkeypatch.setattr(publishing, "running_order", told)
    for pauses in ("true", "false"):
        desk.get("/api/lessons/1/order", pauses=pauses)
    studied = desk.on_desk.studies.of(desk.on_desk.opened.lesson)
    assert studied is not None
    assert asked == [studied, None]
