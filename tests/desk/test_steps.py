"""Steps: taking back and doing again, over restarts."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lineproof.desk.lessons import Lessons
from lineproof.desk.steps import Step, Steps, StepsError, StepsFile, digest
from lineproof.lesson import LessonError
from lineproof.proof import Effort

from .conftest import Desk
from .lessons import VIENNA

STEPS = Path(".lineproof") / "history" / "steps.jsonl"


@given(st.text(), st.text())
def test_a_step_leads_from_one_text_to_the_other_and_back(one: str, other: str) -> None:
    step = Step.between(one, other)
    assert step.apply(one) == other
    assert step.back.apply(other) == one


def test_a_step_holds_only_what_differs() -> None:
    assert Step.between("1. e4 {one} e5", "1. e4 {two} e5") == Step(7, "one", "two")
    assert Step.between("aa", "aaa") == Step(2, "", "a")


def again(desk: Desk) -> Desk:
    """The desk of another run, once this one is closed."""
    desk.lessons.close()
    return Desk(Lessons(Effort.SKETCH), desk.path)


def words(desk: Desk, text: str) -> None:
    desk.edit(op="change_words", comment=1, text=text)


def test_fifty_edits_are_taken_back_one_by_one_and_done_again(desk: Desk) -> None:
    texts = [desk.text]
    for number in range(50):
        words(desk, f"Version {number}.")
        texts.append(desk.text)
    for number in reversed(range(50)):
        done = desk.edit(op="undo")
        assert desk.text == texts[number]
        assert done["at"] == desk.place("e4", "e5", "Nc3")["id"]
        assert (desk.lesson["undo"], desk.lesson["redo"]) == (number, 50 - number)
    assert desk.ask(op="undo").status_code == 422
    for number in range(50):
        desk.edit(op="redo")
        assert desk.text == texts[number + 1]
    assert desk.ask(op="redo").status_code == 422


def test_a_new_edit_ends_what_can_be_done_again(desk: Desk) -> None:
    words(desk, "One.")
    desk.edit(op="undo")
    words(desk, "Two.")
    assert desk.lesson["redo"] == 0
    desk.edit(op="undo")
    assert desk.text == VIENNA


def test_edits_are_taken_back_in_another_run(desk: Desk) -> None:
    words(desk, "One.")
    words(desk, "Two.")
    words(desk, "Three.")
    desk.edit(op="undo")
    text = desk.text
    other = again(desk)
    try:
        assert other.text == text == other.on_disk
        assert (other.lesson["undo"], other.lesson["redo"], other.lesson["notice"]) == (2, 1, None)
        other.edit(op="redo")
        assert "Three." in other.text
        for _ in range(3):
            other.edit(op="undo")
        assert other.text == VIENNA
    finally:
        other.lessons.close()


def test_opening_and_closing_a_lesson_writes_no_history(desk: Desk) -> None:
    desk.lessons.close()
    assert not (desk.path / STEPS).exists()
    assert desk.on_disk == VIENNA


def test_the_text_before_the_first_save_of_a_run_goes_to_the_history(desk: Desk) -> None:
    words(desk, "One.")
    desk.lessons.close()
    (kept,) = (desk.path / ".lineproof" / "history").glob("lines-*.pgn")
    assert kept.read_text(encoding="utf-8") == VIENNA


def test_a_line_that_a_killed_run_left_unfinished_is_passed_over(desk: Desk) -> None:
    words(desk, "One.")
    desk.lessons.close()
    with (desk.path / STEPS).open("ab") as file:
        file.write(b'{"do": "edit", "start": 3')
    other = again(desk)
    try:
        words(other, "Two.")
        assert other.lesson["undo"] == 2
    finally:
        other.lessons.close()
    for line in (desk.path / STEPS).read_bytes().splitlines():
        json.loads(line)


@pytest.mark.parametrize(
    "damage",
    [
        b"nothing\n",
        b'{"format": 3}\n',
        b"[]\n",
        b'{"format": 1}\n{"text": 3}\n{"do": "undo"}\n',
        b'{"format": 1}\n{"do": "edit"}\n',
    ],
)
def test_damaged_steps_are_put_aside_and_the_lesson_opens(desk: Desk, damage: bytes) -> None:
    words(desk, "One.")
    desk.lessons.close()
    (desk.path / STEPS).write_bytes(damage)
    other = again(desk)
    try:
        assert "One." in other.text
        assert other.lesson["undo"] == 0
        assert "steps-damaged-1.jsonl" in other.lesson["notice"]
        words(other, "Two.")
        other.edit(op="undo")
        assert "One." in other.text
    finally:
        other.lessons.close()
    kept = desk.path / ".lineproof" / "history" / "steps-damaged-1.jsonl"
    assert kept.read_bytes() == damage


def test_steps_that_do_not_lead_to_their_text_are_damaged(tmp_path: Path) -> None:
    file = StepsFile(tmp_path)
    file.begin("one")
    file.add("edit", Step(0, "one", "two"), digest("three"), "")
    with pytest.raises(StepsError, match="do not lead"):
        file.read()


def test_the_text_of_the_file_is_known_after_each_save(tmp_path: Path) -> None:
    file = StepsFile(tmp_path)
    file.begin("one")
    for before, after in (("one", "two"), ("two", "three"), ("three", "four")):
        file.add("edit", Step.between(before, after), digest(after), "")
    file.saved(digest("two"))
    steps = file.read()
    assert isinstance(steps, Steps)
    assert (steps.text, steps.base) == ("four", "two")
    assert [steps.known(text) for text in ("one", "two", "three", "four")] == [
        False,
        True,
        True,
        True,
    ]


def test_a_lesson_is_on_one_desk_only(desk: Desk) -> None:
    assert desk.lessons.open(desk.path) is desk.on_desk
    assert desk.lessons.open(desk.path / ".." / "vienna") is desk.on_desk


def test_a_lesson_that_is_none_is_not_opened(desk: Desk) -> None:
    with pytest.raises(LessonError):
        desk.lessons.open(desk.path / "nothing")
    assert len(desk.get("/api/lessons")["lessons"]) == 1
