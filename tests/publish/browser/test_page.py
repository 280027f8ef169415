"""The published page in a real browser, from a file and without a network."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from lineproof.facade import Lesson
from lineproof.publish import Choices, Found
from lineproof.publish.products.page import make

AXE = Path(__file__).parents[3] / "web" / "node_modules" / "axe-core" / "axe.min.js"
SIZES = {"desktop": (1280, 900), "phone": (390, 780)}


@pytest.fixture(scope="module")
def file(trap: Lesson, found: Found, tmp_path_factory: pytest.TempPathFactory) -> Path:
    ((name, data),) = make(trap, found, Choices()).items()
    path = tmp_path_factory.mktemp("page") / name
    path.write_bytes(data)
    return path


@pytest.fixture(params=[(size, look) for size in SIZES for look in ("light", "dark")], ids=" ".join)
def page(browser: Browser, file: Path, request: pytest.FixtureRequest) -> Iterator[Page]:
    """Any request, error or word of the policy fails the test."""
    size, look = request.param
    width, height = SIZES[size]
    context = browser.new_context(
        viewport={"width": width, "height": height}, color_scheme=look, offline=True
    )
    shown = context.new_page()
    wrong: list[str] = []
    shown.on("console", lambda message: wrong.append(message.text))
    shown.on("pageerror", lambda error: wrong.append(str(error)))
    shown.on("request", lambda request: wrong.append(request.url) if shown.url == file.as_uri() else None)  # fmt: skip
    shown.goto(file.as_uri())
    expect(shown.locator("html.alive")).to_have_count(1)
    yield shown
    context.close()
    assert not wrong


def board(page: Page, name: str) -> object:
    return page.locator("lesson-board").evaluate("(board, name) => board[name]", name)


def test_the_board_follows_the_move_that_is_chosen(page: Page, trap: Lesson) -> None:
    page.get_by_role("button", name="5. Nxe5", exact=True).click()
    place = next(place for place in trap.places if place.label == "5. Nxe5")
    assert board(page, "fen") == place.board.fen
    expect(page.locator("#caption")).to_have_text("After 5. Nxe5. Black to move.")
    expect(page.locator("button.move[aria-current]")).to_have_text("5. Nxe5")


def test_every_line_is_walked_by_keyboard(page: Page, trap: Lesson) -> None:
    page.get_by_role("button", name="5. Nxe5", exact=True).focus()
    page.keyboard.press("Enter")
    reached = ["5. Nxe5"]
    for key in ("ArrowRight", "ArrowDown", "ArrowRight", "ArrowLeft", "ArrowLeft"):
        page.keyboard.press(key)
        reached.append(page.locator("button.move[aria-current]").inner_text())
    assert reached == ["5. Nxe5", "5... Bxd1", "5... dxe5", "6. Qxg4", "5... dxe5", "5. Nxe5"]
    assert page.evaluate("document.activeElement.textContent") == "5. Nxe5"


def test_an_exercise_is_answered_on_the_board(page: Page, trap: Lesson, found: Found) -> None:
    pause = next(p for p in found.studied.pauses if p.place.label == "5... Bxd1")
    page.get_by_role("button", name="After 5... Bxd1").click()
    right = pause.place.board.parse_san(pause.best)
    wrong = pause.wrong[0][0]
    play(page, wrong.uci)
    expect(page.locator("#told")).to_contain_text(
        f"{wrong.san} costs {pause.wrong[0][1].points} of 100 points"
    )
    play(page, right)
    expect(page.locator("#told")).to_contain_text(f"{pause.best} is the move.")
    expect(page.locator("#caption")).to_contain_text(f"After {pause.best}. ")
    expect(page.locator("#show")).to_be_hidden()


def play(page: Page, uci: str) -> None:
    """Plays a move on the board by keyboard."""
    for square in (uci[:2], uci[2:4]):
        page.locator(f'lesson-board [data-square="{square}"][role="gridcell"]').focus()
        page.keyboard.press("Enter")


def test_an_answer_is_shown_on_request(page: Page, found: Found) -> None:
    pause = next(p for p in found.studied.pauses if p.place.label == "5... Bxd1")
    page.get_by_role("button", name="After 5... Bxd1").click()
    page.get_by_role("button", name="Show the answer").click()
    expect(page.locator("#told")).to_contain_text(pause.point)


def test_nothing_is_wider_than_the_screen(page: Page) -> None:
    wide, room = page.evaluate("[document.documentElement.scrollWidth, window.innerWidth]")
    assert wide <= room


def test_axe_finds_nothing(page: Page) -> None:
    # by the driver, which the page's policy does not bind
    found = page.evaluate(f"{AXE.read_text(encoding='utf-8')}; axe.run().then((r) => r.violations.map((v) => v.id))")  # fmt: skip
    assert found == []


def test_the_words_are_there_without_script(browser: Browser, file: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(file.as_uri())
    expect(page.get_by_text("The bishop pins the knight to the queen.")).to_be_visible()
    expect(page.locator("aside")).to_be_hidden()
    page.get_by_text("Answer", exact=True).first.click()
    expect(page.locator("details p").first).to_be_visible()
    context.close()
