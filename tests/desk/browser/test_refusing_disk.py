"""A disk that refuses, as the author meets it: what he wrote is not lost, and he is told. The server runs in this process, so that its disk can be filled."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from lineproof.desk.lessons import Lessons
from lineproof.proof import Effort
from tests.desk.lessons import folder
from tests.desk.refusing import fill_disk, forbid
from tests.desk.served import served

from .conftest import Desk
from .test_writing import NewPage, move, on_disk, saved, words


@pytest.fixture
def lesson(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("LINEPROOF_DATA", str(tmp_path / "data"))
    return folder(tmp_path)


@pytest.fixture
def open_here(lesson: Path, new_page: NewPage) -> Iterator[Callable[[], Page]]:
    """Opens the lesson on a desk of this process."""
    lessons = Lessons(Effort.SKETCH)
    serving = []

    def opened() -> Page:
        lessons.open(lesson)
        serving.append(served(lessons))
        page = new_page()
        page.goto(serving[0].__enter__())
        expect(page.locator(".move.here")).to_be_visible()
        return page

    yield opened
    for each in serving:
        each.__exit__(None, None, None)


def test_on_a_full_disk_nothing_is_lost_and_it_is_said(
    lesson: Path, open_here: Callable[[], Page], monkeypatch: pytest.MonkeyPatch
) -> None:
    page = open_here()
    saved(page)
    before = (lesson / "lines.pgn").read_bytes()
    with monkeypatch.context() as patch:
        fill_disk(patch)
        words(page, "2. Nc3").click()
        page.keyboard.press("End")
        page.keyboard.type(" And more.")
        expect(page.get_by_role("alert")).to_contain_text("no space left on device")
        expect(page.get_by_text("Not all is saved")).to_be_visible()
        assert (lesson / "lines.pgn").read_bytes() == before
        expect(words(page, "2. Nc3")).to_have_text("White develops a knight. And more.")
        # One can go on writing meanwhile.
        page.keyboard.type(" Still more.")
        expect(words(page, "2. Nc3")).to_contain_text("And more. Still more.")
    saved(page)
    expect(page.get_by_role("alert")).to_have_count(0)
    desk = Desk("", None, lesson / "lines.pgn")  # type: ignore[arg-type]
    on_disk(desk, "{White develops a knight. And more. Still more.}")
    while page.get_by_role("button", name="undo").is_enabled():
        page.get_by_role("button", name="undo").click()
        saved(page)
    expect(words(page, "2. Nc3")).to_have_text("White develops a knight.")
    assert (lesson / "lines.pgn").read_bytes() == before


def test_a_lesson_that_can_only_be_read_is_shown_and_says_so(
    lesson: Path,
    open_here: Callable[[], Page],
    monkeypatch: pytest.MonkeyPatch,
    accessible: Callable[[Page], list[str]],
) -> None:
    with monkeypatch.context() as patch:
        forbid(patch, lesson)
        page = open_here()
    told = page.locator(".unwritable")
    expect(told).to_contain_text("read-only file system")
    expect(told).to_contain_text("it can only be looked at")
    expect(words(page, "2. Nc3")).not_to_be_editable()
    move(page, "3. f4").first.click()
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "3. f4")
    expect(page.locator("lesson-board .grid.may")).to_have_count(0)
    page.locator("#move").fill("a6")
    page.locator("#move").press("Enter")
    expect(page.get_by_role("alert").filter(has_text="make its folder writable").last).to_be_visible()  # fmt: skip
    expect(page.get_by_role("button", name="undo")).to_be_disabled()
    assert accessible(page) == []
