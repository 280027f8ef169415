"""Writing a lesson in the browser: by keyboard alone, with its findings, and nothing lost."""

from __future__ import annotations

import io
import re
import time
from collections.abc import Callable
from pathlib import Path

import chess.pgn
from playwright.sync_api import Locator, Page, expect

from .conftest import Desk

EMPTY = '[Event "A new lesson"]\n\n*\n'
SHORT = (
    '[Event "The Vienna Game"]\n\n1. e4 {We take the centre.} e5 2. Nc3 Nf6 '
    "(2... Nc6 3. f4 {The gambit.} exf4) 3. f4 {The gambit again.} d5 *\n"
)
TRANSPOSES = '[Event "Two ways"]\n\n1. e4 e5 (1... Nf6 2. Nc3) 2. Nc3 Nf6 3. f4 *\n'

Start = Callable[..., Desk]
NewPage = Callable[..., Page]


def opened(new_page: NewPage, desk: Desk) -> Page:
    page = new_page()
    page.goto(desk.address)
    expect(page.locator(".move.here")).to_be_visible()
    return page


def words(page: Page, label: str) -> Locator:
    return page.get_by_role("textbox", name=f"Words after {label}", exact=True)


def move(page: Page, label: str) -> Locator:
    return page.locator("desk-manuscript").get_by_role("button", name=label, exact=True)


def saved(page: Page) -> None:
    expect(page.get_by_text("All is saved")).to_be_visible()


def on_disk(desk: Desk, wanted: str) -> None:
    """Waits until the file has a text."""
    for _ in range(100):
        if wanted in " ".join(desk.text.split()):
            return
        time.sleep(0.1)
    raise AssertionError(f"{wanted!r} is not in the file:\n{desk.text}")


def test_a_line_is_written_by_keyboard_alone(start: Start, new_page: NewPage) -> None:
    desk = start(EMPTY)
    page = opened(new_page, desk)
    page.locator(".move.here").focus()
    for typed, label in [("e4", "1. e4"), ("e5", "1... e5"), ("Nc3", "2. Nc3")]:
        page.keyboard.type(typed)
        page.keyboard.press("Enter")
        expect(page.locator(".move.here")).to_have_attribute("aria-label", label)
    page.keyboard.press("Enter")
    expect(words(page, "2. Nc3")).to_be_focused()
    page.keyboard.type("White develops a knight.")
    page.keyboard.press("Enter")
    expect(move(page, "2. Nc3")).to_be_focused()
    page.keyboard.press("ArrowLeft")
    expect(move(page, "1... e5")).to_be_focused()
    page.keyboard.press("Enter")
    page.keyboard.type("The classical answer.")
    page.keyboard.press("Escape")
    on_disk(desk, "1. e4 e5 {The classical answer.} 2. Nc3 {White develops a knight.} *")
    game = chess.pgn.read_game(io.StringIO(desk.text))
    assert game
    assert [(n.san(), n.comment) for n in game.mainline()] == [
        ("e4", ""), ("e5", "The classical answer."), ("Nc3", "White develops a knight."),
    ]  # fmt: skip


def test_a_false_sentence_fails_and_shows_why(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start("1. e4 e5 2. Nf3 Nc6 3. Bb5 *"))
    move(page, "3. Bb5").click()
    page.keyboard.press("Enter")
    page.keyboard.type("The knight on c6 is pinned to the king.")
    sign = page.locator("desk-manuscript .sign.fails")
    expect(sign).to_contain_text("fails")
    sign.click()
    expect(page.locator(".note")).to_contain_text("The knight on c6 is pinned to the king")
    expect(page.locator(".note .why")).not_to_be_empty()
    # The same sentence is true once the pawn has left d7.
    move(page, "3. Bb5").click()
    page.keyboard.type("d6")
    page.keyboard.press("Enter")
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "3... d6")
    page.keyboard.press("Enter")
    expect(words(page, "3... d6")).to_be_focused()
    page.keyboard.type("The knight on c6 is pinned to the king.")
    expect(page.locator("desk-manuscript .sign.holds")).to_contain_text("holds")
    expect(sign).to_have_count(1)
    # What holds draws itself: the pin.
    expect(page.locator("lesson-board g.mark.pin")).to_have_count(1)


def test_the_evidence_is_stepped_through_and_taken_into_the_lesson(
    start: Start, new_page: NewPage
) -> None:
    desk = start("1. e4 e5 2. Qh5 Nc6 3. Bc4 {White threatens mate.} *")
    page = opened(new_page, desk)
    sign = page.locator("desk-manuscript .sign.holds")
    sign.click()
    board = page.locator("lesson-board .square")
    page.get_by_role("button", name="step on").click()
    evidence = page.get_by_role("group", name="Evidence, step by step").get_by_role("button")
    sans = [re.sub(r"^\d+\.+ ", "", text) for text in evidence.all_inner_texts()]
    assert sans[-1] == "Qxf7#"
    while page.get_by_role("button", name="step on").is_enabled():
        page.get_by_role("button", name="step on").click()
    expect(board.and_(page.locator('[data-square="f7"]'))).to_have_attribute(
        "aria-label", "f7, white queen"
    )
    page.get_by_role("button", name="back", exact=True).click()
    expect(board.and_(page.locator('[data-square="f7"]'))).to_have_attribute(
        "aria-label", "f7, black pawn"
    )


def test_a_move_played_on_the_board_extends_or_branches_and_says_so(
    start: Start, new_page: NewPage
) -> None:
    desk = start(SHORT)
    page = opened(new_page, desk)
    square = page.locator("lesson-board .square")
    move(page, "1. e4").click()
    expect(page.locator("lesson-board .grid.may")).to_have_count(1)
    for name in ("c7", "c5"):
        square.and_(page.locator(f'[data-square="{name}"]')).click()
    expect(page.get_by_role("status").filter(has_text="begins a branch")).to_have_text(
        "1... c5 begins a branch."
    )
    expect(page.get_by_role("heading", name="Instead of 1... e5")).to_be_visible()
    expect(page.locator("lesson-board .grid.may")).to_have_count(1)
    square.and_(page.locator('[data-square="g1"]')).drag_to(
        square.and_(page.locator('[data-square="f3"]'))
    )
    expect(page.locator("footer > [role=status]")).to_have_text("2. Nf3 goes on with the line.")
    on_disk(desk, "(1... c5 2. Nf3)")


def test_a_transposition_is_shown_as_it_happens(start: Start, new_page: NewPage) -> None:
    desk = start(TRANSPOSES)
    page = opened(new_page, desk)
    move(page, "2. Nc3").first.click()
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "2. Nc3")
    page.locator("#move").fill("e5")
    page.keyboard.press("Enter")
    expect(page.locator("footer > [role=status]")).to_contain_text("the lines join")
    expect(page.get_by_role("button", name="joins")).to_be_visible()
    expect(page.locator("desk-map .joining")).to_have_attribute("d", re.compile(r"^M.+C"))


def test_a_move_that_is_not_legal_is_refused_with_its_reason(
    start: Start, new_page: NewPage
) -> None:
    desk = start(SHORT)
    before = desk.text
    page = opened(new_page, desk)
    page.locator("#move").fill("Ke2")
    page.keyboard.press("Enter")
    expect(page.get_by_role("alert")).to_contain_text("Ke2")
    expect(page.locator("#move")).to_have_value("Ke2")
    assert desk.text == before


def test_fifty_steps_are_undone_and_done_again(start: Start, new_page: NewPage) -> None:
    desk = start(EMPTY)
    page = opened(new_page, desk)
    field = page.locator("#move")
    for index in range(50):
        san = ("Nf3", "Nf6", "Ng1", "Ng8")[index % 4]
        field.fill(san)
        field.press("Enter")
        expect(field).to_have_value("")
    saved(page)
    written = desk.text
    page.locator(".move.here").focus()
    for left in range(49, -1, -1):
        page.keyboard.press("Control+z")
        expect(page.locator("desk-manuscript .move")).to_have_count(left + 1)
    expect(page.get_by_role("button", name="undo")).to_be_disabled()
    for _ in range(50):
        page.keyboard.press("Control+Shift+z")
    expect(page.locator("desk-manuscript .move")).to_have_count(51)
    saved(page)
    for _ in range(50):
        if desk.text == written:
            break
        time.sleep(0.1)
    assert desk.text == written


def test_words_are_undone_too_and_the_rest_of_the_file_stays(
    start: Start, new_page: NewPage
) -> None:
    desk = start(SHORT)
    before = desk.text
    page = opened(new_page, desk)
    words(page, "1. e4").click()
    page.keyboard.press("End")
    page.keyboard.type(" Both kings sleep.")
    on_disk(desk, "{We take the centre. Both kings sleep.}")
    assert desk.text.replace(" Both kings sleep.", "") == before
    while page.get_by_role("button", name="undo").is_enabled():
        page.keyboard.press("Control+z")
        saved(page)
    expect(words(page, "1. e4")).to_have_text("We take the centre.")
    on_disk(desk, "{We take the centre.}")
    assert desk.text == before


def test_words_that_are_emptied_are_taken_out(start: Start, new_page: NewPage) -> None:
    desk = start(SHORT)
    page = opened(new_page, desk)
    words(page, "1. e4").click()
    page.keyboard.press("Control+a")
    page.keyboard.press("Delete")
    on_disk(desk, "1. e4 e5 2. Nc3")
    assert "{" not in desk.text.split("e5")[0]


def test_line_breaks_of_the_file_stay_where_the_author_did_not_write(
    start: Start, new_page: NewPage
) -> None:
    desk = start("1. e4 {One line\nand the next\nand a third.} e5 *\n")
    page = opened(new_page, desk)
    expect(words(page, "1. e4")).to_have_text("One line and the next and a third.")
    words(page, "1. e4").click()
    page.keyboard.press("Control+End")
    page.keyboard.type(" End.")
    on_disk(desk, "third. End.}")
    assert "{One line\nand the next\nand a third. End.}" in desk.text


def test_two_windows_stay_in_step(start: Start, new_page: NewPage) -> None:
    desk = start(SHORT)
    one, two = opened(new_page, desk), opened(new_page, desk)
    words(one, "1. e4").click()
    one.keyboard.press("End")
    one.keyboard.type(" And more.")
    expect(words(two, "1. e4")).to_have_text("We take the centre. And more.")
    words(two, "3. f4").first.click()
    two.keyboard.press("End")
    two.keyboard.type(" Twice.")
    expect(one.locator("desk-words", has_text="Twice.")).to_have_count(1)
    on_disk(desk, "And more.")
    on_disk(desk, "Twice.")


def test_a_line_is_promoted_cut_and_brought_back(start: Start, new_page: NewPage) -> None:
    desk = start(SHORT)
    before = desk.text
    page = opened(new_page, desk)
    move(page, "2... Nc6").click()
    page.get_by_role("button", name="tell this line first").click()
    on_disk(desk, "2... Nc6" if "2... Nc6" in desk.text else "2. Nc3 Nc6")
    expect(page.get_by_role("heading", name="Instead of 2... Nc6")).to_be_visible()
    page.get_by_role("button", name="cut 2... Nc6").click()
    expect(move(page, "2... Nc6")).to_have_count(0)
    page.get_by_role("button", name="undo").click()
    page.get_by_role("button", name="undo").click()
    expect(page.get_by_role("heading", name="Instead of 2... Nf6")).to_be_visible()
    on_disk(desk, "".join(" ".join(before.split())))


HOSTILE = (
    "<script>window.caught = 1</script> <img src=x onerror='window.caught = 2'> "
    "<a href='javascript:window.caught = 3'>here</a> \u202eright to left\u202c \U0001f469\u200d\U0001f52c Ａ &amp;"
)


def test_hostile_text_stays_text(start: Start, new_page: NewPage) -> None:
    tag = HOSTILE.replace('"', "'")
    page = opened(new_page, start(f'[Event "{tag}"]\n\n1. e4 {{{HOSTILE}}} e5 *\n'))
    expect(words(page, "1. e4")).to_have_text(HOSTILE)
    expect(page.get_by_role("heading", level=1)).to_have_text(tag)
    assert page.evaluate("window.caught") is None
    assert page.locator("desk-words :is(script, img, a)").count() == 0
    words(page, "1. e4").click()
    page.keyboard.press("End")
    page.keyboard.type("<img src=y onerror='window.caught = 4'>")
    saved(page)
    assert page.evaluate("window.caught") is None


def test_nothing_is_asked_of_anybody_else(start: Start, new_page: NewPage) -> None:
    desk = start(SHORT)
    page = new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(desk.address)
    expect(page.locator(".move.here")).to_be_visible()
    move(page, "3. f4").first.click()
    saved(page)
    origin = desk.address.split("/#")[0]
    token = desk.address.split("token=")[1].split("&")[0]
    assert len(asked) > 5
    assert [url for url in asked if not url.startswith((origin, "data:"))] == []
    assert [url for url in asked if token in url.split("#")[0]] == []


def test_without_the_token_nothing_is_shown(start: Start, new_page: NewPage) -> None:
    desk = start(SHORT)
    page = new_page()
    page.goto(desk.address.split("#")[0])
    expect(page.get_by_role("alert")).to_contain_text("token")
    expect(page.locator("desk-words")).to_have_count(0)


def test_what_was_written_waits_for_a_server_that_is_away(
    run: Start, new_page: NewPage, tmp_path: Path
) -> None:
    lines = tmp_path / "lesson.pgn"
    lines.write_text(SHORT, encoding="utf-8")
    desk = run(lines)
    page = opened(new_page, desk)
    desk.process.kill()
    desk.process.wait(10)
    expect(page.get_by_text("does not answer")).to_be_visible()
    words(page, "1. e4").click()
    page.keyboard.press("End")
    page.keyboard.type(" Still here.")
    expect(words(page, "1. e4")).to_have_text("We take the centre. Still here.")
    assert "centre.}" in desk.text


def test_the_demo_lesson_has_its_findings_in_the_margin(
    start_copy: Start, new_page: NewPage
) -> None:
    root = Path(__file__).resolve().parents[3]
    page = opened(new_page, start_copy(root / "examples" / "vienna-draft.pgn"))
    expect(page.locator("desk-manuscript .sign.holds").first).to_be_visible()
    fails = page.locator("desk-manuscript .sign.fails").first
    expect(fails).to_be_visible()


def test_a_comment_of_a_megabyte_of_hostile_text_stays_text(
    start: Start, new_page: NewPage
) -> None:
    size = 1_000_000
    text = (HOSTILE + " ") * (size // len(HOSTILE) + 1)
    text = text[:size].rstrip()
    page = opened(new_page, start(f"1. e4 {{{text}}} e5 {{The end.}} *\n"))
    said = words(page, "1. e4")
    assert said.text_content() == text
    assert page.evaluate("window.caught") is None
    assert page.locator("desk-words :is(script, img, a)").count() == 0
    # The rest of the lesson is there, and can be written.
    last = words(page, "1... e5")
    last.click()
    page.keyboard.press("End")
    page.keyboard.type(" It goes on.")
    expect(last).to_have_text("The end. It goes on.")
    saved(page)
    assert page.evaluate("window.caught") is None
