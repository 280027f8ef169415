"""Diagrams that the author puts into the text on the desk."""

from __future__ import annotations

from dataclasses import replace

from lineproof.desk.deciding import bearing
from lineproof.diagram import JustPlayed, alternative
from lineproof.lesson import Lesson, Settings
from lineproof.lesson.diagrams import diagrams

from .conftest import Desk

GAMBIT = ("e4", "e5", "Nc3", "Nf6", "f4")


def test_a_diagram_is_put_after_a_move_and_taken_away(desk: Desk) -> None:
    at = desk.place(*GAMBIT)
    assert at["diagram"] is None
    done = desk.edit(op="diagram", place=at["id"], wanted=True)
    assert done["at"] == at["id"]
    assert [p["id"] for p in done["lesson"]["places"] if p["diagram"]] == [at["id"]]
    assert desk.place(*GAMBIT)["diagram"] == alternative(at["fen"], [JustPlayed("f2", "f4")])
    assert [place.label for place in diagrams(Lesson.open(desk.path))] == ["3. f4"]
    desk.edit(op="diagram", place=at["id"], wanted=False)
    assert desk.place(*GAMBIT)["diagram"] is None
    assert "diagrams" not in (desk.path / "lesson.toml").read_text()


def test_the_start_can_have_one_too(desk: Desk) -> None:
    desk.edit(op="diagram", place=desk.place()["id"], wanted=True)
    assert desk.place()["diagram"] == alternative(desk.place()["fen"])


def test_one_that_stands_there_already_changes_nothing(desk: Desk) -> None:
    at = desk.place(*GAMBIT)["id"]
    version = desk.edit(op="diagram", place=at, wanted=True)["lesson"]["version"]
    assert desk.edit(op="diagram", place=at, wanted=True)["lesson"]["version"] == version


def test_a_bare_file_has_no_place_for_one(desk: Desk) -> None:
    path = desk.path.parent / "other.pgn"
    path.write_text("1. e4 *")
    names = desk.lessons.open(path).opened.names
    edit = {"op": "diagram", "place": names.all[1], "wanted": True}
    answer = desk.client.post("/api/lessons/2/edits", json={"version": 0, "edit": edit})
    assert answer.status_code == 422
    assert answer.json()["error"]["kind"] == "SettingsError"


def test_what_was_studied_stays_so_where_a_diagram_is_put() -> None:
    settings = Settings("One", "white", 1400, decisions={"opinions": [{"words": "Mine."}]})
    for same in (
        replace(settings, title="Two"),
        replace(settings, decisions={**settings.decisions, "diagrams": [{}], "sources": [{}]}),
    ):
        assert bearing(same) == bearing(settings)
    for other in (
        replace(settings, side="black"),
        replace(settings, audience=1500),
        replace(settings, decisions={}),
    ):
        assert bearing(other) != bearing(settings)
