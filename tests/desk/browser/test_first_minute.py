"""The first minute without a lesson: open, import, begin from a position, the demo; then finding one's way in it."""

from __future__ import annotations

import io
import tomllib
from collections.abc import Callable
from pathlib import Path

import chess.pgn
from playwright.sync_api import Page, Route, expect

from .test_writing import NewPage, Start, on_disk, opened

ENDING = "8/8/8/4k3/8/4K3/4P3/8 w - - 0 1"


def begun(run: Start, new_page: NewPage) -> tuple[Page, Path]:
    desk = run(None)
    page = new_page()
    page.goto(desk.address)
    expect(page.get_by_role("heading", level=1)).to_have_text("What will you teach?")
    return page, desk.lines.parent


def test_it_says_what_can_be_done_and_axe_finds_nothing(
    run: Start, new_page: NewPage, accessible: Callable[[Page], list[str]]
) -> None:
    page, _ = begun(run, new_page)
    expect(page.get_by_role("heading", level=2)).to_have_text(
        ["Begin a lesson", "Open a lesson", "Look at the demo", "Weigh openings"]
    )
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        assert accessible(page) == []


def test_a_lesson_is_begun_from_nothing(run: Start, new_page: NewPage) -> None:
    page, home = begun(run, new_page)
    begin = page.locator("section", has_text="Begin a lesson")
    begin.get_by_label("Teaches").select_option("black")
    begin.get_by_label("Players of about").fill("1300")
    begin.get_by_role("button", name="begin").click()
    expect(page.locator(".empty")).to_contain_text("Nothing is written yet")
    told = tomllib.loads((home / "my-lesson" / "lesson.toml").read_text(encoding="utf-8"))
    assert (told["side"], told["audience"]) == ("black", 1300)
    # Who teaches Black sees the board from Black's side.
    expect(page.locator("lesson-board .square").first).to_have_attribute("data-square", "h1")
    # The first moves can be typed at once.
    page.keyboard.type("e4 e5 Nc3")
    page.keyboard.press("Enter")
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "2. Nc3")


def test_a_lesson_is_begun_from_several_files(
    run: Start, new_page: NewPage, tmp_path: Path
) -> None:
    page, home = begun(run, new_page)
    texts = ["1. e4 e5 2. Nc3 {Vienna.} *\n", "1. d4 Nf6 2. c4 e5 {Budapest.} *\n"]
    files = []
    for index, text in enumerate(texts):
        files.append(tmp_path / f"part-{index}.pgn")
        files[-1].write_text(f'[Event "Part {index}"]\n\n{text}', encoding="utf-8")
    page.get_by_label("From PGN files").set_input_files(files)
    page.get_by_role("button", name="begin").click()
    expect(page.locator("h2.game")).to_have_text(["Part 0", "Part 1"])
    with io.StringIO((home / "my-lesson" / "lines.pgn").read_text(encoding="utf-8")) as text:
        games = [chess.pgn.read_game(text), chess.pgn.read_game(text)]
    assert [[n.san() for n in game.mainline()] for game in games if game] == [
        ["e4", "e5", "Nc3"],
        ["d4", "Nf6", "c4", "e5"],
    ]


def test_a_lesson_is_begun_from_a_position(run: Start, new_page: NewPage) -> None:
    page, _ = begun(run, new_page)
    page.get_by_label("Or from a position").fill(ENDING)
    page.get_by_role("button", name="begin").click()
    expect(page.locator('lesson-board .square[data-square="e2"]')).to_have_attribute(
        "aria-label", "e2, white pawn"
    )
    field = page.locator("#move")
    field.fill("Kd3")
    field.press("Enter")
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "1. Kd3")


def test_what_is_no_position_is_refused_with_its_reason(run: Start, new_page: NewPage) -> None:
    page, home = begun(run, new_page)
    page.get_by_label("Or from a position").fill("8/8/8/8/8/8/8/8 w - - 0 1")
    page.get_by_role("button", name="begin").click()
    expect(page.get_by_role("alert")).to_be_visible()
    expect(page.get_by_role("heading", level=1)).to_have_text("What will you teach?")
    assert not (home / "my-lesson").exists()


def test_a_lesson_is_found_in_its_folder_and_opened(run: Start, new_page: NewPage) -> None:
    desk = run(None)
    lesson = desk.lines.parent / "tuesday" / "vienna"
    lesson.mkdir(parents=True)
    (lesson / "lines.pgn").write_text("1. e4 e5 2. Nc3 {Here it is.} *", encoding="utf-8")
    (lesson / "lesson.toml").write_text('format = 1\ntitle = "Tuesday"\n', encoding="utf-8")
    page = new_page()
    page.goto(desk.address)
    page.get_by_role("button", name="tuesday").click()
    page.get_by_role("button", name="vienna").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Tuesday")
    expect(page.locator("desk-words")).to_have_text("Here it is.")


def test_the_demo_is_a_copy_to_write_in(run: Start, new_page: NewPage) -> None:
    page, home = begun(run, new_page)
    page.get_by_role("button", name="open the demo").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("The Vienna Gambit for White")
    assert (home / "vienna-demo" / "lines.pgn").exists()


def test_games_of_a_file_are_added_and_taken_back(
    start: Start, new_page: NewPage, tmp_path: Path
) -> None:
    desk = start('[Event "One"]\n\n1. e4 *\n', side="white")
    before = desk.text
    more = tmp_path / "more.pgn"
    more.write_text('[Event "Two"]\n\n1. d4 d5 {Solid.} *\n', encoding="utf-8")
    page = opened(new_page, desk)
    page.get_by_text("About this lesson").click()
    page.get_by_label("Add the games of PGN files").set_input_files(more)
    page.get_by_role("button", name="add them").click()
    expect(page.locator("h2.game")).to_have_text(["One", "Two"])
    on_disk(desk, "1. d4 d5 {Solid.}")
    page.get_by_role("button", name="undo").click()
    expect(page.locator("h2.game")).to_have_count(0)
    on_disk(desk, " ".join(before.split()))


def test_words_moves_and_positions_are_found(start: Start, new_page: NewPage) -> None:
    page = opened(
        new_page, start("1. e4 {The king pawn.} e5 2. Nf3 (2. f4 {A Gambit of old.} exf4) Nc6 *")
    )
    find, here = page.get_by_label("Find", exact=True), page.locator(".move.here")
    for wanted, label in [
        ("gambit of OLD", "2. f4"),
        ("Nc6", "2... Nc6"),
        ("rnbqkbnr/pppp1ppp/8/4p3/4P3/8/PPPP1PPP/RNBQKBNR w", "1... e5"),
    ]:
        find.fill(wanted)
        find.press("Enter")
        expect(here).to_have_attribute("aria-label", label)
    find.fill("zebra")
    find.press("Enter")
    expect(page.get_by_text("Nothing in the lesson has that.")).to_be_visible()


def test_two_claims_that_cannot_both_be_true_lead_to_each_other(
    start: Start, new_page: NewPage
) -> None:
    moves = "1. e4 e5 2. Nc3 Nf6 3. f4 d5 4. fxe5 Nxe4"
    page = opened(new_page, start(f"{moves} {{White is winning. Black is winning.}} 5. Nf3 *"))
    page.locator("desk-words").click()
    page.keyboard.press("Home")
    note = page.locator(".note")
    expect(note.locator(".quoted")).to_contain_text("White is winning")
    note.get_by_role("button", name="see “Black is winning”").click()
    expect(note.locator(".quoted")).to_contain_text("Black is winning")


def test_a_reason_stays_while_the_page_still_asks_for_other_things(
    run: Start, new_page: NewPage
) -> None:
    held: list[Route] = []
    desk, page = run(None), new_page()
    page.route("**/api/weighing", lambda route: held.append(route))
    page.goto(desk.address)
    page.get_by_label("Or from a position").fill("8/8/8/8/8/8/8/8 w - - 0 1")
    page.get_by_role("button", name="begin").click()
    expect(page.get_by_role("alert")).to_be_visible()
    with page.expect_response("**/api/weighing"):
        held.pop().continue_()
    page.wait_for_timeout(200)
    expect(page.get_by_role("alert")).to_be_visible()
