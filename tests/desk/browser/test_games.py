"""Students' games followed in the browser: given as a file, answered, and forgotten."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.desk.test_games import GAMES

from .test_writing import NewPage, Start, on_disk, opened

LESSON = "1. e4 e5 2. Nc3 Nf6 3. f4 d5 4. fxe5 *\n"


def test_games_are_followed_answered_and_forgotten(
    start: Start, new_page: NewPage, tmp_path: Path, accessible: Callable[[Page], list[str]]
) -> None:
    desk = start(LESSON, side="white")
    file = tmp_path / "club.pgn"
    file.write_text(GAMES, encoding="utf-8")
    page = opened(new_page, desk)
    part = page.locator("desk-games")
    part.get_by_label("PGN file").set_input_files(file)
    part.get_by_role("button", name="follow them").click()
    expect(part).to_contain_text("All 4 games came to the lesson.")
    first = part.locator(".thing").first
    expect(first).to_contain_text("2 games: after 3. f4 the opponent played 3... Bc5")
    part.get_by_text("Game by game").click()
    expect(part).to_contain_text("Ann Quay against <b>Dot</b> Pier")
    assert accessible(page) == []
    first.get_by_role("button", name="see 3. f4").click()
    first.get_by_role("button", name="step on").click()
    expect(page.locator("lesson-board .square[data-square=c5]").last).to_have_attribute(
        "aria-label", "c5, black bishop"
    )
    first.get_by_role("button", name="take it into the lesson").click()
    on_disk(desk, "(3... Bc5")
    part.get_by_role("button", name="forget these games").click()
    expect(part).not_to_contain_text("came to the lesson")


def test_a_name_that_nobody_has_is_refused(start: Start, new_page: NewPage, tmp_path: Path) -> None:
    file = tmp_path / "club.pgn"
    file.write_text(GAMES, encoding="utf-8")
    page = opened(new_page, start(LESSON, side="white"))
    part = page.locator("desk-games")
    part.get_by_label("PGN file").set_input_files(file)
    part.get_by_label("The student").fill("Zed")
    part.get_by_role("button", name="follow them").click()
    expect(page.get_by_role("alert")).to_contain_text("nobody in these games")
