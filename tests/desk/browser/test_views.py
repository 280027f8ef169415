"""The views of the desk: the line map, the findings, what is set for a lesson; for everybody, by day and night."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.desk.test_outside import LEGAL
from tests.outside.engines import made

from .conftest import process_of
from .test_writing import SHORT, NewPage, Start, move, on_disk, opened, saved, words

ROOT = Path(__file__).resolve().parents[3]
DRAFT = ROOT / "examples" / "vienna-draft.pgn"
VIENNA = ROOT / "examples" / "vienna"

Accessible = Callable[[Page], list[str]]


def test_axe_finds_nothing(start: Start, new_page: NewPage, accessible: Accessible) -> None:
    desk = start(
        "1. e4 e5 2. Nf3 (2. f4 {A gambit.}) Nc6 3. Bb5 {The knight on c6 is pinned to the king.} *"
    )
    page = opened(new_page, desk)
    page.locator("desk-manuscript .sign.fails").click()
    expect(page.locator(".note")).to_be_visible()
    for width in (1440, 1000, 420):
        page.set_viewport_size({"width": width, "height": 900})
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
            assert (width, scheme, accessible(page)) == (width, scheme, [])


def test_axe_finds_nothing_where_nothing_is_written(
    start: Start, new_page: NewPage, accessible: Accessible
) -> None:
    page = opened(new_page, start("*"))
    expect(page.locator(".empty")).to_contain_text("Nothing is written yet")
    assert accessible(page) == []


def test_a_click_on_the_map_goes_to_the_move(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start(SHORT))
    page.locator("desk-map text", has_text="exf4").click()
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "3... exf4")
    expect(page.locator("desk-map text.lit")).to_have_text("exf4")


def test_the_map_has_a_track_for_each_branch_and_its_keys(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start(SHORT))
    lines = page.get_by_role("group", name="Line map")
    expect(lines).to_have_accessible_name(re.compile("9 moves on 2 tracks; at the start"))
    lines.focus()
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    expect(lines).to_have_accessible_name(re.compile("at 2. Nc3"))
    heights = {
        san: page.locator("desk-map text", has_text=re.compile(f"^{san}$")).bounding_box()
        for san in ("Nf6", "Nc6", "d5", "exf4")
    }
    tops = {san: box["y"] for san, box in heights.items() if box}
    assert tops["Nf6"] == tops["d5"] < tops["Nc6"] == tops["exf4"]


def test_nothing_lies_on_a_map_of_one_line(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start("1. e4 e5 2. Nc3 {The king is in check.} *"))
    expect(page.get_by_text("only what fails")).to_be_visible()
    lines, buttons = (page.locator(part).bounding_box() for part in (".map", ".zoom"))
    assert lines is not None and buttons is not None
    assert lines["y"] + lines["height"] <= buttons["y"]


def test_no_two_places_lie_on_the_same_spot_of_the_map(start: Start, new_page: NewPage) -> None:
    page = opened(
        new_page,
        start("1. e4 e5 (1... c5 2. Nf3 d6 3. d4) 2. Nf3 (2. f4 exf4) 2... Nc6 (2... d6) *"),
    )
    spots = page.locator("desk-map .stop").evaluate_all(
        "all => all.map(one => `${one.getAttribute('cx')} ${one.getAttribute('cy')}`)"
    )
    assert len(spots) == 12
    assert len(set(spots)) == 12


def test_the_map_is_drawn_smaller_and_larger_and_is_panned(
    start_copy: Start, new_page: NewPage
) -> None:
    page = opened(new_page, start_copy(VIENNA))

    def far(one: str, other: str) -> float:
        boxes = [
            page.locator("desk-map text", has_text=re.compile(f"^{san}$")).first.bounding_box()
            for san in (one, other)
        ]
        assert boxes[0] and boxes[1]
        return boxes[1]["x"] - boxes[0]["x"]

    before = far("e4", "e5")
    page.get_by_role("button", name="Draw the map larger").click()
    larger = far("e4", "e5")
    assert larger > before * 1.2
    e4 = page.locator("desk-map text", has_text=re.compile("^e4$"))
    was = e4.bounding_box()
    page.locator("desk-map .map").hover()
    page.mouse.wheel(80, 0)
    page.wait_for_timeout(100)
    now = e4.bounding_box()
    assert was and now
    assert round(was["x"] - now["x"]) == 80


def test_what_fails_is_marked_on_the_map_and_reached_one_after_the_other(
    start: Start, new_page: NewPage
) -> None:
    page = opened(
        new_page,
        start(
            "1. e4 {White is a pawn up.} e5 2. Nf3 {Black is a pawn up.} Nc6 {All is level in material.} *"
        ),
    )
    fails = page.get_by_role("button", name="2 fail")
    fails.click()
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "1. e4")
    fails.click()
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "2. Nf3")
    fails.click()
    expect(page.locator(".move.here")).to_have_attribute("aria-label", "1. e4")
    expect(page.locator("desk-map .failing")).to_have_count(2)


def test_a_sentence_is_marked_as_an_opinion_and_checked_again(
    start: Start, new_page: NewPage
) -> None:
    desk = start("1. e4 e5 2. f4 exf4 {He accepts. Black is a pawn up.} *", side="white")
    page = opened(new_page, desk)
    said = page.locator("desk-words", has_text="Black is a pawn up").first
    said.click()
    page.keyboard.press("End")
    expect(page.locator(".note")).to_contain_text("Black is a pawn up")
    page.get_by_role("button", name="this is my opinion").click()
    mine = page.locator("desk-sentences")
    expect(mine).to_contain_text("is your opinion and is not checked")
    settings = desk.lines.parent / "lesson.toml"
    kept = tomllib.loads(settings.read_text(encoding="utf-8"))["decisions"]["opinions"]
    assert any("Black is a pawn up" in one["words"] for one in kept)
    page.get_by_role("button", name="check it again").click()
    expect(mine).not_to_contain_text("is your opinion")


def test_title_side_and_audience_are_set(start: Start, new_page: NewPage) -> None:
    desk = start(SHORT, side="white")
    page = opened(new_page, desk)
    page.get_by_text("About this lesson").click()
    page.get_by_label("Title").fill("The Vienna on Tuesday")
    page.get_by_label("Players of about").fill("1250")
    page.get_by_role("button", name="set it so").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("The Vienna on Tuesday")
    expect(page.locator(".imprint")).to_contain_text("players of about 1250")
    told = tomllib.loads((desk.lines.parent / "lesson.toml").read_text(encoding="utf-8"))
    assert (told["title"], told["audience"], told["side"]) == (
        "The Vienna on Tuesday",
        1250,
        "white",
    )


def test_signs_are_typed_as_they_are_printed(start: Start, new_page: NewPage) -> None:
    desk = start(SHORT)
    page = opened(new_page, desk)
    move(page, "3... d5").click()
    field = page.get_by_label("Signs of 3... d5")
    field.fill("! +=")
    field.press("Enter")
    on_disk(desk, "d5! $14")
    expect(move(page, "3... d5")).to_have_text(re.compile(r"d5!\s\+="))
    field.fill("splendid")
    field.press("Enter")
    expect(page.get_by_role("alert")).to_contain_text("splendid is no sign")
    assert "splendid" not in desk.text


def test_a_line_is_told_earlier_and_its_source_is_kept(start: Start, new_page: NewPage) -> None:
    desk = start("1. e4 e5 (1... c5 {Sharp.}) (1... e6 {Solid.}) 2. Nc3 *", side="white")
    page = opened(new_page, desk)
    move(page, "1... c5").click()
    expect(page.get_by_role("button", name="cut 1... c5")).to_be_visible()
    expect(page.get_by_role("button", name="tell this line earlier")).to_have_count(0)
    move(page, "1... e6").click()
    page.get_by_role("button", name="tell this line earlier").click()
    on_disk(desk, "(1... e6 {Solid.}) (1... c5 {Sharp.})")
    page.get_by_label("Sort of source").select_option("pupil")
    page.get_by_label("From", exact=True).fill("Ann, on a Tuesday")
    page.get_by_label("From", exact=True).press("Enter")
    expect(page.locator("footer > [role=status]")).to_contain_text("Ann, on a Tuesday")
    saved(page)
    assert "Ann, on a Tuesday" in (desk.lines.parent / "lesson.toml").read_text(encoding="utf-8")
    page.reload()
    move(page, "1... e6").click()
    expect(page.get_by_label("From", exact=True)).to_have_value("Ann, on a Tuesday")
    expect(page.get_by_label("Sort of source")).to_have_value("pupil")


def test_a_pause_point_is_marked_on_the_map_and_told_beside_the_board(
    start: Start, new_page: NewPage
) -> None:
    legal = "rn1qkbnr/ppp2p1p/3p2p1/4N3/2B1P3/2N5/PPPP1PPP/R1BbK2R w KQkq - 0 6"  # Légal's mate
    text = f'[SetUp "1"]\n[FEN "{legal}"]\n\n6. Bxf7+ *\n'
    page = opened(new_page, start(text, side="white"))
    page.get_by_role("button", name="look for them").click()
    expect(page.locator("desk-map .pause")).to_have_attribute(
        "d", re.compile("^M.+v5"), timeout=60_000
    )
    expect(page.locator("desk-todo[here]")).to_contain_text("find Bxf7+")


def test_the_board_can_be_turned(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start(SHORT))
    first = page.locator("lesson-board .square").first
    expect(first).to_have_attribute("data-square", "a8")
    page.get_by_role("button", name="turn the board").click()
    expect(first).to_have_attribute("data-square", "h1")


def test_the_board_follows_the_caret_in_the_words(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start(SHORT))
    words(page, "1. e4").click()
    expect(page.locator("figcaption")).to_contain_text("After 1. e4. Black to move.")


def test_the_page_fits_a_narrow_window(start_copy: Start, new_page: NewPage) -> None:
    page = new_page()
    page.set_viewport_size({"width": 390, "height": 800})
    page.goto(start_copy(DRAFT).address)
    expect(page.locator(".move.here")).to_be_attached()
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.set_viewport_size({"width": 460, "height": 800})
    for part in ("lesson-board", "#move", ".zoom"):
        box = page.locator(part).first.bounding_box()
        assert box is not None and box["x"] >= 0 and box["x"] + box["width"] <= 460


GAMBIT = """[SetUp "1"]
[FEN "rnbqkb1r/pppp1ppp/5n2/4p3/4P3/2N5/PPPP1PPP/R1BQKBNR w KQkq - 2 3"]

3. f4 d5 {The best answer.} *
"""


def test_stale_words_stand_among_what_is_open_and_can_be_put_off(
    start: Start, new_page: NewPage, accessible: Callable[[Page], list[str]]
) -> None:
    text = "1. e4 e5 2. Nc3 {Later 4. fxe5 follows.} Nf6 3. f4 d5 4. fxe5 *"
    page = opened(new_page, start(text, side="white"))
    todo = page.locator("desk-todo:not([here])")
    expect(page.locator(".counted")).not_to_contain_text("Reading")
    expect(todo.get_by_text("Words that an edit has left behind")).to_have_count(0)
    move(page, "3. f4").click()
    page.get_by_role("button", name="cut 3. f4").click()
    expect(todo.get_by_text("Words that an edit has left behind")).to_be_visible()
    thing = todo.locator(".thing", has_text="4. fxe5")
    thing.get_by_role("button", name="see 2. Nc3").click()
    expect(page.locator("desk-todo[here]")).to_contain_text("stale words")
    thing.get_by_role("button", name="later").click()
    expect(todo.get_by_text("Words that an edit has left behind")).to_have_count(0)
    expect(page.locator("desk-todo[here]")).not_to_contain_text("stale words")
    todo.get_by_text("1 put off or dismissed").click()
    assert accessible(page) == []
    todo.get_by_role("button", name="open it again").click()
    expect(todo.get_by_text("Words that an edit has left behind")).to_be_visible()


def test_what_the_lesson_leaves_open_is_answered_put_off_or_dismissed(
    start: Start, new_page: NewPage
) -> None:
    desk = start(GAMBIT, side="white")
    page = opened(new_page, desk)
    todo = page.locator("desk-todo:not([here])")
    todo.get_by_role("button", name="look for them").click()
    things = todo.locator(".thing:not(details .thing)")
    expect(things.filter(has_text="3... exf4").first).to_be_visible(timeout=60_000)
    expect(page.locator("desk-map .stub")).to_have_attribute("d", re.compile("M.+a3 3"))
    count = things.count()
    dismissed = things.last.locator(".words").inner_text()
    things.last.get_by_role("button", name="dismiss").click()
    expect(things).to_have_count(count - 1)
    expect(todo.get_by_text("1 put off or dismissed")).to_be_visible()
    taken = things.filter(has_text="3... exf4").first
    taken.get_by_role("button", name="see 3. f4").click()
    expect(page.locator("desk-todo[here] summary", has_text="3... exf4").first).to_be_visible()
    taken.get_by_role("button", name="take it into the lesson").click()
    on_disk(desk, "3... exf4 4. e5")
    # What was decided outlives the desk.
    settings = (desk.lines.parent / "lesson.toml").read_text(encoding="utf-8")
    assert "dismissed" in settings
    todo.get_by_text("1 put off or dismissed").click()
    todo.locator("details .thing", has_text=dismissed).get_by_role(
        "button", name="open it again"
    ).click()
    expect(todo.get_by_text("1 put off or dismissed")).to_have_count(0)


def test_a_what_about_question_is_answered_with_a_line_that_can_be_taken(
    start: Start, new_page: NewPage
) -> None:
    desk = start("1. e4 e5 2. Nc3 Nf6 3. f4 d5 *", side="white")
    page = opened(new_page, desk)
    move(page, "3. f4").click()
    field = page.get_by_label("What about")
    field.fill("exf4")
    field.press("Enter")
    answer = page.get_by_role("region", name="Answer")
    expect(answer).to_contain_text("What about exf4?")
    expect(answer.get_by_role("group", name="Evidence")).to_contain_text("e5")
    answer.get_by_role("button", name="take it into the lesson").click()
    on_disk(desk, "(3... exf4 4. e5")


def test_a_question_that_is_no_move_is_refused_with_its_reason(
    start: Start, new_page: NewPage
) -> None:
    page = opened(new_page, start(GAMBIT, side="white"))
    field = page.get_by_label("What about")
    field.fill("castling?")
    field.press("Enter")
    expect(page.get_by_role("alert")).to_contain_text("castling?")


def test_the_effort_of_the_checks_is_chosen(start: Start, new_page: NewPage) -> None:
    page = opened(new_page, start("1. e4 {White is a pawn up.} *"))
    expect(page.locator("desk-manuscript .sign.fails")).to_be_visible()
    page.locator("desk-about summary").click()
    effort = page.get_by_label("Effort of each check")
    expect(effort).to_have_value("sketch")
    effort.select_option("thorough")
    expect(page.get_by_text("1 claim: 1 fails.")).to_be_visible()
    page.reload()
    expect(page.get_by_label("Effort of each check")).to_have_value("thorough")


def test_axe_finds_nothing_where_everything_is_open(
    start: Start, new_page: NewPage, accessible: Accessible
) -> None:
    moves = (
        "1. e4 e5 2. Nf3 (2. f4 {A gambit.}) Nc6 3. Bb5 {The knight on c6 is pinned to the king.} *"
    )
    page = opened(new_page, start(moves, side="white"))
    move(page, "3. Bb5").click()
    page.get_by_role("button", name="put a diagram here").click()
    expect(page.locator("figure.diagram")).to_be_visible()
    page.locator("desk-about summary").click()
    page.locator("desk-others summary").click()
    page.get_by_role("button", name="the running order, with times").click()
    expect(page.locator(".script")).to_be_visible()
    page.locator("#question").fill("Qh9")
    page.locator("#question").press("Enter")
    expect(page.get_by_role("alert")).to_be_visible()
    for width in (1440, 1000, 420):
        page.set_viewport_size({"width": width, "height": 900})
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
            assert (width, scheme, accessible(page)) == (width, scheme, [])


def test_the_squares_of_a_board_are_whole_pixels_wide(start: Start, new_page: NewPage) -> None:
    """Else the hatching differs from square to square."""
    page = opened(new_page, start(SHORT, side="white"))
    page.get_by_role("button", name="put a diagram here").click()
    expect(page.locator("figure.diagram")).to_be_visible()
    for width in (1440, 1111, 997, 460):
        page.set_viewport_size({"width": width, "height": 900})
        for board in page.locator("lesson-board .frame").all():
            box = board.bounding_box()
            assert box is not None
            square = box["width"] * 48 / 414
            assert (width, round(square, 2)) == (width, round(square))


def test_the_engine_that_answers_is_chosen(new_page: NewPage, tmp_path: Path) -> None:
    boat = made(tmp_path)
    lines = tmp_path / "lesson.pgn"
    lines.write_text(LEGAL, encoding="utf-8")
    process, address = process_of([str(lines), "--engine", str(boat.path)], tmp_path)
    try:
        page = new_page()
        page.goto(address)
        signs = page.locator("desk-manuscript .sign")
        expect(signs).to_contain_text(["fails"])
        page.locator("desk-about summary").click()
        who = page.get_by_label("Searches are answered by")
        expect(who.locator("option:checked")).to_contain_text("Paper Boat")
        who.select_option("Lineproof")
        expect(signs).to_contain_text(["holds"])
        expect(who).to_have_value("")
    finally:
        process.terminate()
        process.wait(20)
    assert boat.alive() == []
