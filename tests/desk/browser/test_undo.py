"""Taking back in the browser what is no text, in one order with the lines."""

from __future__ import annotations

import tomllib
from typing import Any

from playwright.sync_api import expect

from .conftest import Desk
from .test_writing import SHORT, NewPage, Start, move, opened, words


def kept(desk: Desk) -> dict[str, Any]:
    return tomllib.loads((desk.lines.parent / "lesson.toml").read_text(encoding="utf-8"))


def test_title_side_source_diagram_and_moves_are_taken_back_by_keyboard(
    start: Start, new_page: NewPage
) -> None:
    desk = start(SHORT, side="white")
    before = kept(desk)
    page = opened(new_page, desk)
    heading = page.get_by_role("heading", level=1)
    move(page, "1... e5").click()
    page.get_by_text("About this lesson").click()
    page.get_by_label("Title").fill("The gambit")
    page.get_by_label("Teaches").select_option("black")
    page.get_by_role("button", name="set it so").click()
    expect(heading).to_have_text("The gambit")
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "1... e5")
    move(page, "1. e4").click()
    page.locator("#source").fill("page 12")
    page.locator("#source").press("Enter")
    expect(page.locator("footer > [role=status]")).to_contain_text("page 12")
    move(page, "1. e4").click()
    page.keyboard.press("Shift+Enter")
    expect(page.locator("figure.diagram")).to_have_count(1)
    expect(page.locator("figure.diagram lesson-board")).to_have_attribute("flipped", "")
    page.locator("#move").fill("c5")
    page.keyboard.press("Enter")
    expect(move(page, "1... c5")).to_be_visible()

    move(page, "1. e4").click()
    page.keyboard.press("Control+z")
    expect(move(page, "1... c5")).to_have_count(0)
    page.keyboard.press("Control+z")
    expect(page.locator("figure.diagram")).to_have_count(0)
    page.keyboard.press("Control+z")
    expect(page.locator("#source")).to_have_value("")
    page.keyboard.press("Control+z")
    expect(heading).to_have_text("A lesson")
    expect(page.get_by_role("button", name="undo")).to_be_disabled()
    assert kept(desk) == {"words_a_minute": 150, **before}  # written out with the rest
    for _ in range(4):
        page.keyboard.press("Control+Shift+z")
    expect(move(page, "1... c5")).to_be_visible()
    expect(heading).to_have_text("The gambit")
    expect(page.locator("figure.diagram")).to_have_count(1)
    assert kept(desk)["decisions"]["sources"][0]["words"] == "page 12"


def test_an_opinion_is_taken_back(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start("1. e4 e5 2. f4 exf4 {Black is a pawn up.} *", side="white"))
    words(page, "2... exf4").click()
    page.get_by_role("button", name="this is my opinion").click()
    mine = page.locator("desk-sentences")
    expect(mine).to_contain_text("is your opinion")
    page.get_by_role("button", name="undo").click()
    expect(mine).not_to_contain_text("is your opinion")
    expect(page.locator("desk-manuscript .sign.holds")).to_be_visible()
