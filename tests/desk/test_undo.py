"""Taking back what is no text: title, side, audience, opinions, sources, what is put off, diagrams; in one order with the lines."""

from __future__ import annotations

import json
import threading
from collections.abc import Callable
from datetime import date
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from lineproof.desk.changes import Change
from lineproof.desk.lessons import Lessons
from lineproof.desk.steps import FORMAT, HEADS
from lineproof.lesson import Lesson, Settings
from lineproof.proof import Effort

from .conftest import Desk
from .waiting import until

STEPS = Path(".lineproof") / "history" / "steps.jsonl"
GAMBIT = ("e4", "e5", "Nc3", "Nf6", "f4")


def settings(desk: Desk) -> tuple[Any, ...]:
    """As they are on the disk."""
    found = Lesson.open(desk.path).settings
    return (found.title, found.side, found.audience, found.decisions)


def opinion(desk: Desk) -> None:
    comment = desk.place("e4", "e5", "Nc3", "Bc5", "f4")["after"][0]
    desk.edit(op="opinion", comment=comment["index"], start=0, end=len(comment["text"]), opinion=True)  # fmt: skip


EDITS: dict[str, Callable[[Desk], Any]] = {
    "title": lambda desk: desk.edit(op="settings", title="The gambit"),
    "side": lambda desk: desk.edit(op="settings", side="black"),
    "audience": lambda desk: desk.edit(op="settings", audience=1800),
    "words": lambda desk: desk.edit(op="change_words", comment=1, text="Between."),
    "opinion": opinion,
    "source": lambda desk: desk.edit(
        op="source", place=desk.place(*GAMBIT)["id"], source={"sort": "book", "words": "page 12"}
    ),
    "other source": lambda desk: desk.edit(
        op="source", place=desk.place(*GAMBIT)["id"], source={"sort": "book", "words": "page 13"}
    ),
    "later": lambda desk: desk.edit(
        op="decide", sort="met", place=desk.place(*GAMBIT)["id"], about="e5f4", decided="later"
    ),
    "dismissed": lambda desk: desk.edit(
        op="decide", sort="met", place=desk.place(*GAMBIT)["id"], about="e5f4", decided="dismissed"
    ),
    "move": lambda desk: desk.edit(op="add_line", place=desk.place("e4")["id"], moves=["c5"]),
    "diagram": lambda desk: desk.edit(op="diagram", place=desk.place(*GAMBIT)["id"], wanted=True),
    "no diagram": lambda desk: desk.edit(
        op="diagram", place=desk.place(*GAMBIT)["id"], wanted=False
    ),
    "no opinion": lambda desk: desk.edit(op="take_back", name=desk.lesson["opinions"][0]["name"]),
}


@pytest.mark.parametrize("restart", [False, True])
def test_everything_is_taken_back_and_done_again_in_the_one_order_of_edits(
    desk: Desk, restart: bool
) -> None:
    stand = [(desk.text, settings(desk))]
    for make in EDITS.values():
        make(desk)
        stand.append((desk.text, settings(desk)))
    assert desk.lesson["undo"] == len(EDITS)
    assert all(one != other for one, other in pairwise(stand))
    try:
        if restart:
            desk.lessons.close()
            desk = Desk(Lessons(Effort.SKETCH), desk.path)
            assert (desk.lesson["undo"], desk.lesson["notice"]) == (len(EDITS), None)
        for number in reversed(range(len(EDITS))):
            desk.edit(op="undo")
            assert (desk.text, settings(desk)) == stand[number]
            assert (desk.lesson["undo"], desk.lesson["redo"]) == (number, len(EDITS) - number)
        if restart:
            desk.lessons.close()
            desk = Desk(Lessons(Effort.SKETCH), desk.path)
            assert (desk.lesson["undo"], desk.lesson["redo"]) == (0, len(EDITS))
        for number in range(len(EDITS)):
            desk.edit(op="redo")
            assert (desk.text, settings(desk)) == stand[number + 1]
    finally:
        desk.lessons.close()


def test_what_is_taken_back_is_shown_where_it_was(desk: Desk) -> None:
    EDITS["diagram"](desk)
    assert desk.edit(op="undo")["at"] == desk.place(*GAMBIT)["id"]
    assert desk.edit(op="redo")["at"] == desk.place(*GAMBIT)["id"]
    EDITS["title"](desk)
    assert desk.edit(op="undo")["at"] == desk.place()["id"]


def test_an_opinion_that_is_taken_back_is_checked_again(desk: Desk) -> None:
    def status() -> str:
        (found,) = (s["status"] for s in desk.findings()["sentences"] if s["comment"] == 2)
        return found

    assert status() == "read"
    opinion(desk)
    until(lambda: status() == "your opinion")
    desk.edit(op="undo")
    until(lambda: status() == "read")


def test_what_another_program_sets_meanwhile_stays(desk: Desk) -> None:
    EDITS["title"](desk)
    EDITS["source"](desk)
    file = desk.path / "lesson.toml"
    text = file.read_text().replace("audience = 1400", "audience = 1700  # by hand")
    text += '\n[[decisions.sources]]\nposition = "00000000000000aa"\nmove = "e2e4"\nsort = "game"\nwords = "Tuesday"\n'
    file.write_text(text)
    until(lambda: desk.look()["audience"] == 1700)
    desk.edit(op="undo")
    desk.edit(op="undo")
    title, _, audience, decisions = settings(desk)
    assert (title, audience) == ("The Vienna Gambit for White", 1700)
    assert [entry["words"] for entry in decisions["sources"]] == ["Tuesday"]
    assert "# by hand" in file.read_text()
    desk.edit(op="redo")
    desk.edit(op="redo")
    assert {entry["words"] for entry in settings(desk)[3]["sources"]} == {"Tuesday", "page 12"}


def test_what_another_program_took_back_already_is_a_step_all_the_same(desk: Desk) -> None:
    EDITS["title"](desk)
    file = desk.path / "lesson.toml"
    file.write_text(file.read_text().replace("The gambit", "The Vienna Gambit for White"))
    until(lambda: desk.look()["title"] == "The Vienna Gambit for White")
    desk.edit(op="undo")
    assert (desk.lesson["undo"], desk.lesson["redo"]) == (0, 1)


def test_where_lesson_toml_cannot_be_written_nothing_is_taken_back(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    from lineproof.lesson import save

    EDITS["title"](desk)

    def full(*given: Any, **more: Any) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(save, "_write", full)
    answer = desk.ask(op="undo")
    assert answer.status_code == 422
    assert "no space left" in answer.json()["error"]["message"]
    monkeypatch.undo()
    assert (desk.look()["undo"], desk.lesson["title"]) == (1, "The gambit")


def test_steps_of_the_older_format_are_read_and_go_on(desk: Desk) -> None:
    EDITS["words"](desk)
    desk.lessons.close()
    steps = desk.path / STEPS
    steps.write_bytes(steps.read_bytes().replace(HEADS[2], HEADS[1]))
    again = Desk(Lessons(Effort.SKETCH), desk.path)
    try:
        EDITS["title"](again)
        again.edit(op="undo")
        again.edit(op="undo")
        assert (again.lesson["undo"], again.lesson["redo"]) == (0, 2)
    finally:
        again.lessons.close()
    assert json.loads(steps.read_bytes().split(b"\n")[0]) == {"format": FORMAT}


@pytest.mark.parametrize(
    "damage",
    [[], {}, {"fields": [], "tables": {}}, {"fields": {"format": [1, 2]}, "tables": {}},
     {"fields": {"title": ["one"]}, "tables": {}}, {"fields": {}, "tables": {"sources": [[[0, "="]], []]}}],
)  # fmt: skip
def test_a_damaged_step_of_the_settings_puts_the_steps_aside(desk: Desk, damage: Any) -> None:
    EDITS["title"](desk)
    desk.lessons.close()
    steps = desk.path / STEPS
    lines = [json.loads(line) for line in steps.read_bytes().splitlines()]
    for line in lines:
        if "settings" in line:
            line["settings"] = damage
    steps.write_text("".join(json.dumps(line) + "\n" for line in lines))
    again = Desk(Lessons(Effort.SKETCH), desk.path)
    try:
        assert (again.lesson["undo"], again.lesson["title"]) == (0, "The gambit")
        assert "steps-damaged-1.jsonl" in again.lesson["notice"]
    finally:
        again.lessons.close()


def test_a_change_is_read_as_it_was_written_dates_too() -> None:
    before = Settings("One", None, 1400, decisions={"put_off": [{"seen": date(2026, 1, 2), "n": 1.5}, "x"]})  # fmt: skip
    after = Settings("Two", "white", 1500, decisions={"put_off": ["x", {"b": [1, True]}]})
    change = Change.between(before, after)
    again = Change.read(json.loads(json.dumps(change.spelled())))
    assert again == change
    assert again.apply(before) == after
    assert again.back.apply(after) == before
    assert change.position is None


def test_what_is_written_here_is_never_taken_for_another_programs(desk: Desk) -> None:
    opened = desk.on_desk.opened
    desk.on_desk.keeper.stop()
    ended = threading.Event()

    def look() -> None:
        while not ended.is_set():
            opened.look()

    looking = threading.Thread(target=look)
    looking.start()
    try:
        for number in range(40):
            desk.edit(op="settings", title=f"Title {number}")
            assert desk.lesson["version"] == number + 1
    finally:
        ended.set()
        looking.join()


def test_what_another_program_has_just_set_is_not_overwritten(desk: Desk) -> None:
    desk.on_desk.keeper.stop()  # nothing of it has been noticed yet
    file = desk.path / "lesson.toml"
    file.write_text(file.read_text().replace("audience = 1400", "audience = 1700"))
    EDITS["title"](desk)
    assert settings(desk)[:3] == ("The gambit", "white", 1700)
    assert desk.lesson["audience"] == 1700
