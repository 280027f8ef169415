"""Diagrams in the text, in the browser: put there and taken away by keyboard and by click."""

from __future__ import annotations

import tomllib
from collections.abc import Callable

from playwright.sync_api import Page, expect

from .conftest import Desk
from .test_writing import SHORT, NewPage, Start, move, opened, saved


def kept(desk: Desk) -> list[str]:
    """The lines after which lesson.toml has a diagram."""
    settings = tomllib.loads((desk.lines.parent / "lesson.toml").read_text(encoding="utf-8"))
    return [entry["line"] for entry in settings.get("decisions", {}).get("diagrams", [])]


def test_a_diagram_is_put_after_a_move_and_its_words_and_taken_away(
    start: Start, new_page: NewPage, accessible: Callable[[Page], list[str]]
) -> None:
    desk = start(SHORT, side="black")
    page = opened(new_page, desk)
    move(page, "1. e4").click()
    page.get_by_role("button", name="put a diagram here").click()
    diagram = page.get_by_role("img", name="Diagram. After 1. e4. Black to move. White: king e1")
    expect(diagram).to_be_visible()
    # It stands after the words of its move and before the next one, and is seen from the side taught.
    words, board, after = (
        page.locator(part).first.bounding_box()
        for part in ("desk-words", "figure.diagram", "desk-manuscript [aria-label='1... e5']")
    )
    assert words and board and after
    assert words["y"] + words["height"] <= board["y"]
    assert board["y"] + board["height"] <= after["y"]
    page.set_viewport_size({"width": 500, "height": 900})
    words, board = (page.locator(part).first.bounding_box() for part in ("desk-words", "figure.diagram"))  # fmt: skip
    assert words and board
    assert words["y"] + words["height"] <= board["y"]
    assert accessible(page) == []
    page.set_viewport_size({"width": 1440, "height": 900})
    assert page.locator("figure.diagram lesson-board").evaluate("board => board.flipped") is True
    assert page.locator("figure.diagram .square").count() == 0
    assert kept(desk) == ["1. e4"]
    assert accessible(page) == []
    page.get_by_role("button", name="take this diagram away").click()
    expect(page.locator("figure.diagram")).to_have_count(0)
    expect(move(page, "1. e4")).to_be_focused()
    assert kept(desk) == []


def test_a_diagram_is_put_and_taken_away_by_keyboard(start: Start, new_page: NewPage) -> None:
    desk = start(SHORT, side="white")
    page = opened(new_page, desk)
    page.locator(".move.here").focus()
    page.keyboard.press("Shift+Enter")
    expect(page.get_by_role("img", name="Diagram. The start")).to_be_visible()
    page.keyboard.press("End")
    page.keyboard.press("ArrowUp")
    expect(move(page, "3. f4").last).to_be_focused()
    page.keyboard.press("Shift+Enter")
    expect(page.locator("figure.diagram")).to_have_count(2)
    expect(move(page, "3. f4").last).to_be_focused()
    assert kept(desk) == ["", "1. e4 e5 2. Nc3 Nf6 3. f4"]
    page.keyboard.press("Shift+Enter")
    expect(page.locator("figure.diagram")).to_have_count(1)
    expect(move(page, "3. f4").last).to_be_focused()
    # Words before it move it on; it stays with its move.
    page.keyboard.press("Home")
    page.keyboard.press("Enter")
    page.keyboard.type("Good evening.")
    page.keyboard.press("Enter")
    saved(page)
    expect(page.locator("desk-passage", has_text="Good evening.").locator("figure")).to_have_count(
        1
    )


def test_a_bare_file_is_offered_none(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start(SHORT))
    move(page, "1. e4").click()
    expect(page.get_by_role("button", name="cut 1. e4")).to_be_visible()
    expect(page.get_by_role("button", name="put a diagram here")).to_have_count(0)
    page.keyboard.press("Shift+Enter")
    expect(page.locator("figure.diagram")).to_have_count(0)


def test_what_the_words_beside_it_claim_and_holds_is_drawn(start: Start, new_page: NewPage) -> None:
    pinned = "1. e4 e5 2. Nc3 Nc6 3. Bb5 d6 {The knight on c6 is pinned to the king.} *"
    page = opened(new_page, start(pinned, side="white"))
    move(page, "3... d6").click()
    page.get_by_role("button", name="put a diagram here").click()
    diagram = page.get_by_role("img", name="Drawn: The knight on c6 is pinned to the king")
    expect(diagram).to_be_visible()
    drawn = page.locator("figure.diagram .pin")
    expect(drawn).to_have_count(1)
    page.get_by_role("button", name="undo").click()
    move(page, "3. Bb5").click()
    page.get_by_role("button", name="put a diagram here").click()
    expect(page.locator("figure.diagram")).to_have_count(1)
    expect(drawn).to_have_count(0)
