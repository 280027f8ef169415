"""How a lesson is checked is chosen on the page: what each search may spend, and which games are counted."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from lineproof.collection import Collection
from lineproof.desk.lessons import Lessons
from lineproof.proof import Effort
from lineproof.replies import Replies
from tests.proof.test_games import games

from .conftest import Desk
from .test_games import game, given
from .waiting import until

LINES = "1. e4 {e5 is usually played. c5 is often played in master games. Black cannot castle now.} e5 2. Nc3 *\n"


@pytest.fixture
def club(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> str:
    """The user's collection: at 1400, 180 of 200 reply 1... e5; at 2400, all 300 reply 1... c5."""
    monkeypatch.setenv("LINEPROOF_DATA", str(tmp_path / "data"))
    file = tmp_path / "club.pgn"
    file.write_text(games("e5", 180, 1400) + games("c5", 20, 1400) + games("c5", 300, 2400))
    Collection.open("club").add([file])
    return "club"


@pytest.fixture
def desk(path: Path, club: str) -> Iterator[Desk]:
    assert club
    (path / "lines.pgn").write_text(LINES, encoding="utf-8")
    lessons = Lessons(Effort.SKETCH)
    try:
        yield Desk(lessons, path)
    finally:
        lessons.close()


def choose(desk: Desk, **way: Any) -> Any:
    return desk.client.post("/api/lessons/1/way", json={"effort": "sketch", **way})


def outcomes(desk: Desk, collection: str) -> dict[str, str]:
    """By their words, once all is checked with these games."""

    def there() -> Any:
        found = desk.findings()
        return found if found["way"]["collection"] == collection else None

    return {f["words"]: f["outcome"] for f in until(there)["findings"]}


USUAL, MASTERS, CASTLES = (
    "e5 is usually played",
    "c5 is often played in master games",
    "Black cannot castle now",
)


def test_the_games_that_are_counted_are_chosen_and_counted_again_for_another_audience(
    desk: Desk,
) -> None:
    uncounted = {USUAL: "unsettled", MASTERS: "unsettled", CASTLES: "holds"}
    assert outcomes(desk, "") == uncounted
    assert choose(desk, collection="club").status_code == 200
    assert outcomes(desk, "club") == {USUAL: "holds", MASTERS: "holds", CASTLES: "holds"}
    desk.edit(op="settings", audience=2400)
    until(lambda: outcomes(desk, "club")[USUAL] == "fails")
    desk.edit(op="undo")
    until(lambda: outcomes(desk, "club")[USUAL] == "holds")
    assert choose(desk, collection="").status_code == 200
    assert outcomes(desk, "") == uncounted


def test_games_that_are_added_meanwhile_count_once_they_are_chosen_again(
    desk: Desk, tmp_path: Path
) -> None:
    assert choose(desk, collection="club").status_code == 200
    assert outcomes(desk, "club")[USUAL] == "holds"
    more = tmp_path / "more.pgn"
    more.write_text(games("c5", 600, 1400, first=1000))
    Collection.open("club").add([more])
    assert choose(desk, collection="club").status_code == 200
    until(lambda: outcomes(desk, "club")[USUAL] == "fails")


@pytest.mark.parametrize("name", ["nothing", "../etc", "a/b"])
def test_a_collection_that_is_not_there_is_refused_and_nothing_changes(
    desk: Desk, name: str
) -> None:
    answer = choose(desk, collection=name)
    assert answer.status_code == 422
    assert desk.findings()["way"]["collection"] == ""


def test_a_collection_that_has_gone_since_the_start_keeps_no_lesson_closed(
    path: Path, club: str
) -> None:
    (path / "lines.pgn").write_text(LINES, encoding="utf-8")
    lessons = Lessons(Effort.SKETCH, collection=f"{club} of old")
    try:
        found = Desk(lessons, path)
        assert "no collection club of old" in found.lesson["notice"]
        assert outcomes(found, "")[USUAL] == "unsettled"
    finally:
        lessons.close()


def test_games_that_are_gone_leave_their_claims_unsettled_with_the_reason(desk: Desk) -> None:
    assert choose(desk, collection="club").status_code == 200
    assert outcomes(desk, "club")[USUAL] == "holds"
    for file in Collection.open("club").folder.rglob("*"):
        if file.is_file():
            file.unlink()
    place = desk.place("e4", "e5")["id"]
    desk.edit(op="add_comment", place=place, text="Nc3 is usually played.")
    (found,) = (f for f in desk.findings()["findings"] if f["words"] == "Nc3 is usually played")
    assert found["outcome"] == "unsettled"
    assert "games cannot be counted" in found["why"] and "fault" not in found["why"]


def test_they_are_counted_for_what_is_looked_for_and_for_questions(desk: Desk) -> None:
    def basis() -> str:
        desk.client.post("/api/lessons/1/study")
        until(lambda: desk.get("/api/lessons/1/study")["state"] == "done")
        return str(desk.get("/api/lessons/1/study")["basis"])

    def ask() -> str:
        body = {"place": None, "question": "1. e4 c5"}
        return str(desk.client.post("/api/lessons/1/questions", json=body).json()["said"])

    before, without = ask(), basis()
    assert choose(desk, collection="club").status_code == 200
    after, with_them = ask(), basis()
    assert "no games were counted" in without
    assert "no games were counted" not in with_them
    assert "counted:" not in before and "counted: 20 of 200 games" in after


def test_the_order_is_cut_by_what_is_seldom_met_in_them(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    from lineproof.desk import publishing

    asked: list[Any] = []

    def replies(audience: int, store: Any, *, collection: Any) -> Replies:
        asked.append(collection and collection.name)
        return Replies(audience, store, collection=collection)

    monkeypatch.setattr(publishing, "Replies", replies)
    desk.get("/api/lessons/1/order", minutes="5")
    assert choose(desk, collection="club").status_code == 200
    desk.get("/api/lessons/1/order", minutes="5")
    assert asked == [None, "club"]


def test_what_each_search_may_spend_is_chosen_apart_and_checks_nothing_anew(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    from lineproof.desk import followings, questions, studies

    assert choose(desk, looking="normal").status_code == 200
    assert until(lambda: desk.findings()["way"]["looking"] == "normal")
    assert desk.findings()["way"]["effort"] == "sketch"
    spent: list[Effort] = []
    for module, name, at in (
        (studies, "study", 1),
        (questions, "answer", 2),
        (followings, "follow", 2),
    ):
        real = getattr(module, name)

        def told(*given: Any, real: Any = real, at: int = at, **more: Any) -> Any:
            spent.append(given[at])
            return real(*given[:at], Effort.SKETCH, *given[at + 1 :], **more)

        monkeypatch.setattr(module, name, told)
    desk.client.post("/api/lessons/1/study")
    until(lambda: desk.get("/api/lessons/1/study")["state"] == "done")
    desk.client.post("/api/lessons/1/questions", json={"place": None, "question": "1. d4"})
    given(desk, game("1. e4 e5 2. d4 d6", "Ann Quay", "Ben Jetty", "1-0"))
    until(lambda: desk.get("/api/lessons/1/games")["state"] == "done")
    assert spent == [Effort.NORMAL] * 3


def test_a_desk_begins_with_the_collection_that_it_is_given(path: Path, club: str) -> None:
    (path / "lines.pgn").write_text(LINES, encoding="utf-8")
    lessons = Lessons(Effort.SKETCH, collection=club)
    try:
        assert outcomes(Desk(lessons, path), "club")[USUAL] == "holds"
    finally:
        lessons.close()
