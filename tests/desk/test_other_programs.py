"""What other programs do to the file of an open lesson is noticed, merged where it can be, and asked about where it cannot."""

from __future__ import annotations

import pytest

from lineproof.desk.lessons import Lessons
from lineproof.desk.merge import merged
from lineproof.lesson import Lesson
from lineproof.proof import Effort

from .conftest import Desk
from .lessons import VIENNA
from .waiting import until

BASE = "1. e4 {one} e5 {two} 2. Nc3 {three} Nf6 *"


def merge(ours: str, theirs: str, base: str = BASE) -> str | None:
    return merged(*(Lesson.from_text(text) for text in (base, ours, theirs)))


@pytest.mark.parametrize(
    ("ours", "theirs", "both"),
    [
        ("1. e4 {ONE} e5 {two} 2. Nc3 {three} Nf6 *", "1. e4 {one} e5 {two} 2. Nc3 {THREE} Nf6 *",
         "1. e4 {ONE} e5 {two} 2. Nc3 {THREE} Nf6 *"),
        ("1. e4 {one} e5 {TWO} 2. Nc3 {three} Nf6 *", "1. e4 {one} e5 {two} 2. Nc3 {three} Nf6 3. f4 *",
         "1. e4 {one} e5 {TWO} 2. Nc3 {three} Nf6 3. f4 *"),
        ("1. e4 {one} e5 {two} (1... c5) 2. Nc3 {three} Nf6 *", "1. e4 {one} e5 {two} 2. Nc3 {three} *",
         "1. e4 {one} e5 {two} (1... c5) 2. Nc3 {three} *"),
    ],
)  # fmt: skip
def test_changes_at_different_places_are_put_together(ours: str, theirs: str, both: str) -> None:
    assert merge(ours, theirs) == both
    assert merge(theirs, ours) == both


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [
        ("1. e4 {ONE} e5 {two} 2. Nc3 {three} Nf6 *", "1. e4 {One} e5 {two} 2. Nc3 {three} Nf6 *"),
        ("1. e4 {one} e5 {two} 2. Nc3 {three} Nf6 3. f4 *", "1. e4 {one} e5 {two} 2. Nc3 {three} Nf6 3. g3 *"),
        ("1. e4 {one} e5 {two} *", "1. e4 {one} e5 {two} 2. Nc3 {THREE} Nf6 *"),
        ("1. e4 {one} e5 {two} 2. Nc3 {three} *", "1. e4 {one} e5 {two} 2. Nc3 {three} Nf6 3. f4 *"),
    ],
)  # fmt: skip
def test_changes_at_the_same_place_are_not(ours: str, theirs: str) -> None:
    assert merge(ours, theirs) is None
    assert merge(theirs, ours) is None


def write(desk: Desk, text: str) -> None:
    """As another program does."""
    (desk.path / "lines.pgn").write_bytes(text.encode())


def test_a_change_is_taken_over_and_can_be_taken_back(desk: Desk) -> None:
    changed = VIENNA.replace("White develops", "White brings out")
    write(desk, changed)
    until(lambda: desk.look()["version"] > 0)
    assert desk.text == changed
    desk.edit(op="undo")
    assert desk.text == VIENNA
    until(lambda: desk.on_disk == VIENNA)


def test_a_change_elsewhere_is_merged_with_what_is_not_saved_yet(desk: Desk) -> None:
    desk.on_desk.keeper.stop()
    desk.edit(op="change_words", comment=1, text="The knight comes out.")
    write(desk, VIENNA.replace("Tonight we play", "Tonight we learn"))
    desk.on_desk.opened.look()
    desk.on_desk.opened.save()
    assert "The knight comes out." in desk.on_disk
    assert "Tonight we learn" in desk.on_disk
    assert desk.look()["conflict"] is None
    desk.edit(op="undo")
    assert desk.text == VIENNA.replace("Tonight we play", "Tonight we learn")
    desk.edit(op="undo")
    assert desk.text == VIENNA.replace("White develops a knight.", "The knight comes out.")


def conflict(desk: Desk) -> tuple[str, str]:
    """Both texts."""
    desk.on_desk.keeper.stop()
    desk.edit(op="change_words", comment=1, text="The knight comes out.")
    ours, theirs = desk.text, VIENNA.replace("White develops", "White brings out")
    write(desk, theirs)
    desk.on_desk.opened.look()
    desk.on_desk.opened.save()
    assert desk.on_disk == theirs
    told = desk.look()["conflict"]
    assert "The knight comes out" in told["ours"]
    assert "White brings out" in told["theirs"]
    return ours, theirs


def settle(desk: Desk, keep: str) -> None:
    body = {"version": desk.lesson["version"], "keep": keep}
    answer = desk.client.post("/api/lessons/1/conflict", json=body)
    assert answer.status_code == 200
    desk.on_desk.opened.save()
    assert desk.look()["conflict"] is None


def test_where_both_changed_the_same_words_the_author_may_keep_his(desk: Desk) -> None:
    ours, theirs = conflict(desk)
    settle(desk, "ours")
    assert desk.text == desk.on_disk == ours
    kept = (desk.path / ".lineproof" / "history").glob("lines-*.pgn")
    assert theirs in [file.read_text(encoding="utf-8") for file in kept]


def test_or_take_the_others_and_have_his_own_again(desk: Desk) -> None:
    ours, theirs = conflict(desk)
    settle(desk, "theirs")
    assert desk.text == desk.on_disk == theirs
    desk.edit(op="undo")
    assert desk.text == ours


def test_nothing_is_decided_where_nothing_is_asked(desk: Desk) -> None:
    body = {"version": 0, "keep": "ours"}
    assert desk.client.post("/api/lessons/1/conflict", json=body).status_code == 422


def test_a_file_that_cannot_be_read_is_left_alone_and_told_of(desk: Desk) -> None:
    write(desk, VIENNA.replace("2. Nc3", "2. Nc6"))
    until(lambda: desk.on_desk.opened.problem)
    assert "cannot be read" in str(desk.on_desk.opened.problem)
    desk.edit(op="change_words", comment=1, text="The knight comes out.")
    desk.on_desk.opened.save()
    assert "2. Nc6" in desk.on_disk
    write(desk, VIENNA.replace("Tonight we play", "Tonight we learn"))
    until(lambda: "The knight comes out." in desk.on_disk)
    assert "Tonight we learn" in desk.on_disk
    until(lambda: desk.on_desk.opened.problem is None)


def test_other_settings_are_taken_over(desk: Desk) -> None:
    file = desk.path / "lesson.toml"
    file.write_text(file.read_text().replace("1400", "1800"))
    until(lambda: desk.look()["audience"] == 1800)


def test_what_was_changed_while_the_desk_was_closed_is_a_step_too(desk: Desk) -> None:
    desk.edit(op="change_words", comment=1, text="The knight comes out.")
    ours = desk.text
    desk.lessons.close()
    theirs = ours.replace("Tonight we play", "Tonight we learn")
    write(desk, theirs)
    other = Desk(Lessons(Effort.SKETCH), desk.path)
    try:
        assert other.text == theirs
        assert "Another program" in other.lesson["notice"]
        other.edit(op="undo")
        assert other.text == ours
        other.edit(op="undo")
        assert other.text == VIENNA
    finally:
        other.lessons.close()


def test_a_file_that_is_deleted_is_told_of_and_saved_again_once_it_is_back(desk: Desk) -> None:
    file = desk.path / "lines.pgn"
    file.unlink()
    until(lambda: desk.on_desk.opened.problem)
    assert "no such file" in str(desk.on_desk.opened.problem)
    desk.edit(op="change_words", comment=1, text="The knight comes out.")
    desk.on_desk.opened.save()
    assert not file.exists()
    write(desk, VIENNA)
    until(lambda: "The knight comes out." in desk.on_disk)
    until(lambda: desk.on_desk.opened.problem is None)
