"""<lesson-board> on a page of its own: moves are dragged, clicked and keyed in; marks are those of the printed diagrams."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from lineproof.diagram import PRINT, MarkedSquare, Pin, ShownMove
from lineproof.diagram.mark_drawing import draw_mark
from lineproof.diagram.squares import file_and_rank
from lineproof.engine import Board

SCRIPT = Path(__file__).resolve().parents[3] / "python/lineproof/desk/page/assets/lesson-board.js"
START = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"
PROMOTES = "7k/4P3/8/8/8/8/8/4K3 w - - 0 1"
PAGE = """<!doctype html><html lang="en"><title>A board</title><main><h1>A board</h1>
<lesson-board style="width:400px"></lesson-board></main></html>"""


@pytest.fixture
def show(new_page: Callable[..., Page]) -> Callable[..., Page]:
    """A page with nothing but the component and a position."""

    def shown(fen: str = START, **properties: object) -> Page:
        page = new_page()
        page.set_content(PAGE)
        page.add_script_tag(content=SCRIPT.read_text(encoding="utf-8"), type="module")
        board = Board(fen)
        moves = [{"uci": uci, "san": board.san(uci)} for uci in board.legal_moves()]
        page.evaluate(
            """async (properties) => {
              const board = document.querySelector("lesson-board");
              window.played = [];
              board.addEventListener("played", (event) => window.played.push(event.detail.uci));
              await customElements.whenDefined("lesson-board");
              Object.assign(board, properties);
              await board.updateComplete;
            }""",
            {"fen": fen, "moves": moves, **properties},
        )
        return page

    return shown


def played(page: Page) -> list[str]:
    found: list[str] = page.evaluate("window.played")
    return found


def at(page: Page, square: str) -> Locator:
    return page.locator(f'.square[data-square="{square}"]')


def test_a_piece_is_dragged_to_its_square(show: Callable[..., Page]) -> None:
    page = show()
    at(page, "g1").drag_to(at(page, "f3"))
    assert played(page) == ["g1f3"]


def test_a_piece_dragged_to_a_wrong_square_goes_back(show: Callable[..., Page]) -> None:
    page = show()
    at(page, "g1").drag_to(at(page, "g4"))
    assert played(page) == []
    expect(page.locator('.piece[data-square="g1"]')).to_have_count(1)


def test_two_clicks_make_a_move(show: Callable[..., Page]) -> None:
    page = show()
    at(page, "e2").click()
    goals = page.locator(".goal").evaluate_all("all => all.map(one => one.dataset.goal)")
    assert sorted(goals) == ["e3", "e4"]
    at(page, "e4").click()
    assert played(page) == ["e2e4"]


def test_the_other_sides_pieces_and_shown_boards_do_not_move(show: Callable[..., Page]) -> None:
    page = show()
    at(page, "e7").click()
    at(page, "e5").click()
    page.evaluate("document.querySelector('lesson-board').moves = []")
    at(page, "e2").click()
    at(page, "e4").click()
    assert played(page) == []


def test_arrow_keys_and_enter_make_a_move(show: Callable[..., Page]) -> None:
    page = show()
    page.keyboard.press("Tab")
    expect(at(page, "e2")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.get_by_role("status")).to_have_text("e2 chosen")
    for _ in range(2):
        page.keyboard.press("ArrowUp")
    expect(at(page, "e4")).to_have_attribute("aria-label", "e4, empty, may go here")
    page.keyboard.press("Enter")
    assert played(page) == ["e2e4"]


def test_a_move_that_is_not_legal_is_refused_aloud(show: Callable[..., Page]) -> None:
    page = show()
    at(page, "e2").focus()
    page.keyboard.press("Enter")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    expect(page.get_by_role("status")).to_have_text("No move from e2 to e1")
    assert played(page) == []


@pytest.mark.parametrize(("key", "uci"), [("n", "e7e8n"), ("q", "e7e8q")])
def test_a_pawn_on_the_last_rank_asks_what_to_become(
    show: Callable[..., Page], key: str, uci: str
) -> None:
    page = show(PROMOTES)
    at(page, "e7").click()
    at(page, "e8").click()
    choices = page.get_by_role("group", name="Becomes a …").get_by_role("button")
    expect(choices).to_have_count(4)
    page.keyboard.press(key)
    assert played(page) == [uci]


def test_escape_takes_the_promotion_back(show: Callable[..., Page]) -> None:
    page = show(PROMOTES)
    at(page, "e7").click()
    at(page, "e8").click()
    page.keyboard.press("Escape")
    expect(page.locator(".promotion")).to_have_count(0)
    assert played(page) == []


@pytest.mark.parametrize("flipped", [False, True])
def test_the_board_is_seen_from_either_side(show: Callable[..., Page], flipped: bool) -> None:
    page = show(flipped=flipped)
    king, grid = page.locator('.piece[data-square="e1"]'), page.get_by_role("grid")
    king_box, box = king.bounding_box(), grid.bounding_box()
    assert king_box and box
    at_top = king_box["y"] < box["y"] + box["height"] / 2
    assert at_top is flipped
    # The squares that answer to the pointer lie where they are drawn.
    cell = at(page, "e1").bounding_box()
    assert cell
    assert cell["x"] < king_box["x"] + king_box["width"] / 2 < cell["x"] + cell["width"]
    assert cell["y"] < king_box["y"] + king_box["height"] / 2 < cell["y"] + cell["height"]


@pytest.mark.parametrize(
    ("fen", "uci", "said"),
    [
        (START, "g1f3", "White: knight f3"),
        ("rnbqkbnr/ppp1pppp/8/3p4/4P3/8/PPPP1PPP/RNBQKBNR w KQkq - 0 2", "e4d5", "White: e takes d5"),
        ("r3k2r/8/8/8/8/8/8/4K3 b kq - 0 1", "e8g8", "Black: castles short"),
        (PROMOTES, "e7e8q", "White: e8, becomes a queen, check"),
    ],
)  # fmt: skip
def test_the_move_that_is_shown_is_spoken(
    show: Callable[..., Page], fen: str, uci: str, said: str
) -> None:
    page = show(fen)
    board = Board(fen)
    page.evaluate(
        "([fen, last]) => Object.assign(document.querySelector('lesson-board'), {fen, last})",
        [board.play(uci).fen, {"uci": uci, "san": board.san(uci)}],
    )
    expect(page.get_by_role("status")).to_have_text(said)


PIN = "r1bqkbnr/ppp2ppp/2np4/1B2p3/4P3/5N2/PPPP1PPP/RNBQK2R w KQkq - 0 4"
MARKS = [
    (MarkedSquare("c6", "white"), {"kind": "square", "squares": ["c6"], "side": "white"}),
    (ShownMove("f3", "e5", "white"), {"kind": "move", "squares": ["f3", "e5"], "side": "white"}),
    (ShownMove("d8", "h4", "black"), {"kind": "move", "squares": ["d8", "h4"], "side": "black"}),
    (Pin("b5", "e8", "white"), {"kind": "pin", "squares": ["b5", "e8"], "side": "white"}),
]


@pytest.mark.parametrize(("mark", "told"), MARKS)
def test_marks_are_drawn_as_in_the_printed_diagrams(
    show: Callable[..., Page], mark: MarkedSquare | ShownMove | Pin, told: dict[str, object]
) -> None:
    page = show(PIN, marks=[told])
    drawn = page.locator("g.mark path").evaluate_all(
        "all => all.map(one => [one.getAttribute('d'), one.getAttribute('stroke-dasharray')])"
    )

    def corner(square: str) -> tuple[int, int]:
        file, rank = file_and_rank(square)
        return file * 48, (7 - rank) * 48

    occupied = {square for square, _ in Board(PIN).pieces()}
    printed = re.findall(r'<path d="([^"]*)"([^>]*)', draw_mark(mark, corner, PRINT, occupied))
    dashes = [re.search(r'stroke-dasharray="([^"]*)"', rest) for _, rest in printed]
    wanted = [
        [path, found[1] if found else None]
        for (path, _), found in zip(printed, dashes, strict=True)
    ]
    assert [[numbers(path), dash] for path, dash in drawn] == [
        [numbers(path), dash] for path, dash in wanted
    ]


def numbers(path: str) -> list[float]:
    return [round(float(number), 2) for number in re.findall(r"-?\d+(?:\.\d+)?", path)]


def test_the_board_has_no_accessibility_violations(
    show: Callable[..., Page], accessible: Callable[[Page], list[str]]
) -> None:
    page = show(PIN, marks=[told for _, told in MARKS])
    assert accessible(page) == []
