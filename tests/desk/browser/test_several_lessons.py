"""Several lessons on one desk: gone between without a restart, each with its own steps."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

from .test_writing import NewPage, Start, on_disk, words


def lesson(at: Path, title: str) -> Path:
    at.mkdir(parents=True)
    (at / "lines.pgn").write_text("1. e4 {Words.} *\n", encoding="utf-8")
    (at / "lesson.toml").write_text(f'format = 1\ntitle = "{title}"\n', encoding="utf-8")
    return at


def test_one_goes_from_lesson_to_lesson_and_undoes_in_each(
    run: Start, new_page: NewPage, tmp_path: Path, accessible: Callable[[Page], list[str]]
) -> None:
    desk = run(lesson(tmp_path / "one", "Tuesday"))
    lesson(tmp_path / "home" / "two", "Thursday")
    page = new_page()
    page.goto(desk.address)
    title = page.get_by_role("heading", level=1)
    expect(title).to_have_text("Tuesday")
    words(page, "1. e4").click()
    page.keyboard.press("End")
    page.keyboard.type(" Said on Tuesday.")

    # The other one is brought on the desk at once, while the words are still on their way.
    page.get_by_text("Other lessons").click()
    expect(page.get_by_text("No other lesson is on the desk.")).to_be_visible()
    page.get_by_role("button", name="begin or open another").click()
    expect(title).to_have_text("What will you teach?")
    on_disk(desk, "Said on Tuesday.")
    assert accessible(page) == []
    page.get_by_role("button", name="two").click()
    expect(title).to_have_text("Thursday")
    expect(page).to_have_title(re.compile("Thursday"))
    expect(page.get_by_role("button", name="undo")).to_be_disabled()
    words(page, "1. e4").click()
    page.keyboard.press("End")
    page.keyboard.type(" Said on Thursday.")
    expect(page.get_by_text("All is saved")).to_be_visible()

    page.get_by_text("Other lessons").click()
    assert accessible(page) == []
    page.get_by_role("button", name="Tuesday").click()
    expect(title).to_have_text("Tuesday")
    expect(words(page, "1. e4")).to_have_text("Words. Said on Tuesday.")
    page.get_by_role("button", name="undo").click()
    expect(words(page, "1. e4")).to_have_text("Words.")
    page.go_back()
    expect(title).to_have_text("Thursday")
    page.get_by_role("button", name="undo").click()
    expect(words(page, "1. e4")).to_have_text("Words.")
    # The same address shows the same lesson again.
    page.reload()
    expect(title).to_have_text("Thursday")
    page.get_by_text("Other lessons").click()
    page.get_by_role("button", name="Tuesday").click()
    expect(title).to_have_text("Tuesday")
    page.get_by_role("button", name="do again").click()
    expect(words(page, "1. e4")).to_have_text("Words. Said on Tuesday.")


def test_the_page_on_which_a_lesson_is_begun_leads_back(
    run: Start, new_page: NewPage, tmp_path: Path
) -> None:
    desk = run(lesson(tmp_path / "one", "<b>Tuesday</b>"))
    page = new_page()
    page.goto(f"{desk.address}&begin")
    expect(page.get_by_role("heading", name="Go back to a lesson")).to_be_visible()
    page.get_by_role("button", name="<b>Tuesday</b>").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("<b>Tuesday</b>")


def test_a_lesson_is_taken_off_the_desk(run: Start, new_page: NewPage, tmp_path: Path) -> None:
    desk = run(lesson(tmp_path / "one", "Tuesday"))
    other, page = new_page(), new_page()
    for window in (other, page):
        window.goto(desk.address)
        expect(window.get_by_role("heading", level=1)).to_have_text("Tuesday")
    words(page, "1. e4").click()
    page.keyboard.press("End")
    page.keyboard.type(" Said at the end.")
    page.get_by_text("Other lessons").click()
    page.get_by_role("button", name="take this one off the desk").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("What will you teach?")
    expect(page.get_by_role("heading", name="Go back to a lesson")).to_have_count(0)
    on_disk(desk, "Said at the end.")
    # The other window says so, and nothing of waiting for a program that does not answer.
    expect(other.get_by_role("alert")).to_contain_text("this lesson is not open")
    expect(other.get_by_text("does not answer")).to_have_count(0)


def test_a_lesson_folder_is_made_of_a_bare_file(
    run: Start, new_page: NewPage, tmp_path: Path
) -> None:
    file = tmp_path / "bare.pgn"
    file.write_text("1. e4 {Words.} *\n", encoding="utf-8")
    page = new_page()
    page.goto(run(file).address)
    words(page, "1. e4").click()
    page.keyboard.press("End")
    page.keyboard.type(" More of them.")
    page.get_by_text("About this lesson", exact=True).click()
    page.get_by_label("Folder", exact=True).fill(str(tmp_path / "made"))
    page.get_by_label("Teaches").select_option("black")
    page.get_by_role("button", name="make a lesson of it").click()
    expect(page.get_by_text("for Black, players of about")).to_be_visible()
    expect(words(page, "1. e4")).to_have_text("Words. More of them.")
    assert "Words. More of them." in (tmp_path / "made" / "lines.pgn").read_text(encoding="utf-8")
    assert 'side = "black"' in (tmp_path / "made" / "lesson.toml").read_text(encoding="utf-8")


def test_openings_and_lessons_are_weighed_side_by_side(
    run: Start, new_page: NewPage, tmp_path: Path, accessible: Callable[[Page], list[str]]
) -> None:
    at = lesson(tmp_path / "one", "The quickest")
    (at / "lines.pgn").write_text("1. f3 e5 2. g4 {Thank you.} Qh4# *\n", encoding="utf-8")
    with (at / "lesson.toml").open("a", encoding="utf-8") as settings:
        settings.write('side = "black"\n')
    page = new_page()
    page.goto(f"{run(at).address}&begin")
    part = page.locator("desk-weigh")
    part.get_by_label("Their moves").fill("1. f3 e5 2. g4 Qh4#\n\n")
    part.get_by_label("The quickest").check()
    part.get_by_role("button", name="weigh them").click()
    expect(part.locator("article")).to_have_count(2)
    expect(part.locator("article").last).to_contain_text("1 position to learn, 1 of them in the lesson")  # fmt: skip
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        assert accessible(page) == []
    with page.expect_download() as download:
        part.get_by_role("button", name="save this as a report").click()
    assert download.value.suggested_filename == "openings.html"
    part.get_by_label("Their moves").fill("1. e4 e9")
    part.get_by_role("button", name="weigh them").click()
    expect(page.get_by_role("alert")).to_contain_text("e9")
