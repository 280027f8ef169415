"""What is written is not lost: a killed server, another program, another window that writes the same words."""

from __future__ import annotations

import signal
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, Route, expect

from .conftest import Desk
from .test_writing import SHORT, NewPage, Start, on_disk, opened, saved, words


def type_at_end(page: Page, label: str, text: str) -> None:
    words(page, label).first.click()
    page.keyboard.press("End")
    page.keyboard.type(text)


def test_after_a_kill_in_the_middle_of_typing_the_work_is_found_again(
    run: Callable[..., Desk], new_page: NewPage, tmp_path: Path
) -> None:
    lines = tmp_path / "lesson.pgn"
    lines.write_text(SHORT, encoding="utf-8")
    desk = run(lines)
    page = opened(new_page, desk)
    type_at_end(page, "1. e4", " Kept.")
    saved(page)
    page.keyboard.type(" And this is on its w")
    desk.process.send_signal(signal.SIGKILL)
    desk.process.wait(10)
    page.keyboard.type("ay.")
    expect(page.get_by_text("does not answer")).to_be_visible()
    # The window still has it all.
    expect(words(page, "1. e4")).to_have_text("We take the centre. Kept. And this is on its way.")
    again = opened(new_page, run(desk.lines))
    expect(words(again, "1. e4")).to_contain_text("We take the centre. Kept.")
    again.locator(".move.here").focus()
    while again.get_by_role("button", name="undo").is_enabled():
        again.keyboard.press("Control+z")
        saved(again)
    expect(words(again, "1. e4")).to_have_text("We take the centre.")


def test_what_another_program_writes_elsewhere_in_the_file_comes_in(
    start: Start, new_page: NewPage
) -> None:
    desk = start(SHORT)
    page = opened(new_page, desk)
    type_at_end(page, "1. e4", " Mine.")
    saved(page)
    changed = desk.text.replace("The gambit again.", "The gambit, once more.")
    assert changed != desk.text
    desk.lines.write_text(changed, encoding="utf-8")
    expect(page.locator("desk-words", has_text="once more")).to_have_count(1)
    type_at_end(page, "1. e4", " And mine again.")
    on_disk(desk, "We take the centre. Mine. And mine again.")
    on_disk(desk, "The gambit, once more.")


@pytest.mark.parametrize(
    ("answer", "stays"),
    [("take mine", "We take the centre. Two."), ("leave what stands there", "We take the centre. One.")],
)  # fmt: skip
def test_where_two_windows_write_the_same_words_the_second_is_asked(
    start: Start, new_page: NewPage, answer: str, stays: str
) -> None:
    desk = start(SHORT)
    one, two = opened(new_page, desk), opened(new_page, desk)
    on_its_way: list[Route] = []
    two.route("**/edits", lambda route: on_its_way.append(route))
    with two.expect_request("**/edits"):
        type_at_end(two, "1. e4", " Two.")
    type_at_end(one, "1. e4", " One.")
    saved(one)
    for route in on_its_way[:]:
        route.continue_()
    two.route("**/edits", lambda route: route.continue_())
    asked = two.get_by_role("alert")
    expect(asked).to_contain_text("You wrote: “We take the centre. Two.”")
    expect(asked).to_contain_text("There stands now: “We take the centre. One.”")
    two.get_by_role("button", name=answer).click()
    expect(words(two, "1. e4")).to_have_text(stays)
    expect(words(one, "1. e4")).to_have_text(stays)
    on_disk(desk, f"{{{stays}}}")


def test_words_that_cannot_stand_in_a_comment_are_not_said_to_be_saved(
    start: Start, new_page: NewPage
) -> None:
    desk = start(SHORT)
    before = desk.text
    page = opened(new_page, desk)
    type_at_end(page, "1. e4", " {in braces}")
    expect(page.get_by_role("alert")).to_be_visible()
    expect(page.get_by_text("Not all is saved")).to_be_visible()
    expect(words(page, "1. e4")).to_have_text("We take the centre. {in braces}")
    assert desk.text == before
    for _ in range(len(" {in braces}")):
        page.keyboard.press("Backspace")
    page.keyboard.type(" In none.")
    on_disk(desk, "We take the centre. In none.")
    saved(page)
