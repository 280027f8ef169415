"""The handout: a real PDF, read back by Poppler and by pikepdf."""

from __future__ import annotations

import builtins
import io
import random
import re
import subprocess
from dataclasses import replace
from pathlib import Path
from typing import Any

import chess
import pikepdf
import pytest

from lineproof.claims import Judgement, Outcome
from lineproof.claims.reading import read_lesson
from lineproof.collection.interval import wilson
from lineproof.facade import Lesson
from lineproof.proof import Finding
from lineproof.publish import Choices, Found, PublishError, chosen
from lineproof.publish.handout.document import document
from lineproof.publish.handout.exercises import _sentence
from lineproof.publish.handout.figures import FREQUENCY
from lineproof.publish.handout.fitting import fitted
from lineproof.publish.handout.lines import printed_lines
from lineproof.publish.handout.shape import shapes
from lineproof.publish.handout.spread import spread
from lineproof.publish.handout.typeset import foot
from lineproof.publish.moments import moments
from lineproof.replies.model_games import ModelGames, Result, Step

from .lessons import TRANSPOSING, long_lesson, nothing_found, unstudied

EXAMPLES = Path(__file__).parents[2] / "examples"
(HANDOUT,) = chosen(["handout"])


def pdf_of(found: Found, **choices: Any) -> bytes:
    files = HANDOUT.make(found.proof.lesson, found, Choices(**choices))
    (data,) = files.values()
    return data


def read(pdf: bytes, *options: str) -> str:
    """The text of a PDF, as Poppler reads it."""
    ran = subprocess.run(
        ["pdftotext", "-enc", "UTF-8", *options, "-", "-"], input=pdf, capture_output=True
    )
    return ran.stdout.decode()


def close(text: str) -> str:
    """Without blanks and hyphens, which the breaking of lines puts in and takes out."""
    return re.sub(r"[\s\u00ad\u2060‐-]", "", text)


def unfound(text: str, **settings: Any) -> Found:
    """A lesson that is printed with nothing proved or studied; its words are there all the same."""
    lesson = Lesson.from_text(text, side="white", **settings)
    found = nothing_found(lesson)
    proof = replace(found.proof, reading=read_lesson(lesson))
    return Found(proof, unstudied(lesson))


@pytest.fixture(scope="module")
def trap_pdf(found: Found) -> bytes:
    return pdf_of(found, columns=1)


def in_order(text: str, parts: list[str]) -> None:
    """Each part is in the text, one behind the other."""
    at = 0
    squeezed = close(text)
    for part in parts:
        where = squeezed.find(close(part), at)
        assert where >= 0, (part, squeezed[at : at + 200])
        at = where + len(close(part))


def test_every_move_and_every_sentence_is_there_in_order(trap: Lesson, trap_pdf: bytes) -> None:
    in_order(
        read(trap_pdf),
        [
            'The trap "at sea" <b>now</b>',
            "For players of about 1400 who have White.",
            "Good evening. *Stars*, _lines_, `ticks`, [a link](http://example.org), <script>alert(1)</script> &amp; <b>bold</b>.",
            "# No heading | no | table ~~gone~~ $x$ ![picture](http://example.org/p.png) <http://example.org> www.example.org",
            "1.e4 e5 2.Nf3 d6 3.Bc4 Bg4 The bishop pins the knight to the queen.",
            "4.Nc3 g6 1. This is no list. - Nor this.",
            "5.Nxe5",
            "Donaudampfschiff" * 40,
            "5...Bxd1",
            "1a 5...dxe5 6.Qxg4 (White is winning) After Qxg4 it is good.",
            "6.Bxf7+ Ke7 7.Nd5# This is mate.",
            "Find the move",
            "Solutions",
            "Positions",
            "Sources",
            "Annotator: Harbour Street club (invented)",
        ],
    )


def test_every_word_of_a_sideline_stands_between_the_moves_of_its_line(trap_pdf: bytes) -> None:
    assert "5...dxe5" in close(read(trap_pdf))
    with pytest.raises(AssertionError):
        in_order(read(trap_pdf), ["7.Nd5#", "5...dxe5 6.Qxg4"])


def test_it_is_tagged_titled_and_marked_as_pdf_ua(trap_pdf: bytes) -> None:
    with pikepdf.open(io.BytesIO(trap_pdf)) as pdf:
        root = pdf.Root
        assert bool(root.MarkInfo.Marked) and "/StructTreeRoot" in root
        assert str(root.Lang) == "en"
        assert bool(root.ViewerPreferences.DisplayDocTitle)
        with pdf.open_metadata() as metadata:
            assert metadata["pdfuaid:part"] == "1"
            assert metadata["dc:title"] == 'The trap "at sea" <b>now</b>'


def alternatives(pdf: bytes) -> list[str]:
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        return [
            str(item.Alt)
            for item in opened.objects
            if isinstance(item, pikepdf.Dictionary)
            and "/Alt" in item
            and item.get("/S") == "/Figure"
        ]


def test_every_picture_has_its_text_alternative(
    trap: Lesson, found: Found, trap_pdf: bytes
) -> None:
    said = alternatives(trap_pdf)
    value = document(trap, found, Choices(columns=1))
    shown = [
        block["alt"]
        for s in value["sections"]
        for block in s["blocks"]
        if block["kind"] == "diagram"
    ]
    asked = [exercise["alt"] for exercise in value["exercises"]]
    assert shown and asked and value["map"]
    assert sorted(said) == sorted([*shown, *asked, value["map"]["alt"]])
    assert all("to move. White: king" in text for text in (*shown, *asked))


def test_an_exercise_does_not_show_its_solution_on_the_same_page(
    trap: Lesson, found: Found, trap_pdf: bytes
) -> None:
    pages = read(trap_pdf).split("\f")
    value = document(trap, found, Choices(columns=1))
    (asks,) = [number for number, page in enumerate(pages) if "Find the move" in page]
    (solves,) = [number for number, page in enumerate(pages) if re.search("^Solutions", page, re.M)]
    assert asks < solves
    assert value["solutions"]
    for solution in value["solutions"]:
        assert close("".join(solution["line"])) in close(pages[solves])
        assert close("".join(solution["line"])) not in close(pages[asks])


def test_a_solution_begins_with_a_capital_letter_and_a_pawn_move_never() -> None:
    assert _sentence("the rook on a8 falls") == "The rook on a8 falls."
    assert (
        _sentence("not 8. g3, which loses: the rook falls")
        == "Not 8. g3, which loses: the rook falls."
    )
    assert _sentence("g3 wins") == "g3 wins."


def test_the_same_lesson_gives_the_same_bytes(found: Found, trap_pdf: bytes) -> None:
    assert pdf_of(found, columns=1) == trap_pdf
    assert pdf_of(found, columns=2) != trap_pdf


def sizes(pdf: bytes) -> set[tuple[int, int]]:
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        return {(round(page.mediabox[2]), round(page.mediabox[3])) for page in opened.pages}


@pytest.mark.parametrize(
    ("paper", "size"), [("a4", (595, 842)), ("letter", (612, 792))]
)  # ISO 216 and ANSI Y14.1, from memory, in points
@pytest.mark.parametrize("page", [{"columns": 1}, {"columns": 2}, {"large": True}])
def test_it_comes_in_every_format(
    found: Found, paper: str, size: tuple[int, int], page: dict[str, Any]
) -> None:
    pdf = pdf_of(found, paper=paper, **page)
    assert sizes(pdf) == {size}
    assert close("6.Bxf7+ Ke7 7.Nd5#") in close(read(pdf))


def font_sizes(pdf: bytes) -> set[float]:
    found = read(pdf, "-bbox")
    heights = re.findall(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">mate\.<', found)
    return {round(float(low) - float(high), 1) for high, low in heights}


def test_large_type_is_large(found: Found, trap_pdf: bytes) -> None:
    assert min(font_sizes(pdf_of(found, large=True))) > 1.5 * max(font_sizes(trap_pdf))


@pytest.mark.parametrize(
    ("language", "moves"),
    [
        ("en", "6.Bxf7+ Ke7 7.Nd5#"),
        ("de", "6.Lxf7+ Ke7 7.Sd5#"),
        ("fr", "6.Fxf7+ Re7 7.Cd5#"),
        ("es", "6.Axf7+ Re7 7.Cd5#"),
        ("nl", "6.Lxf7+ Ke7 7.Pd5#"),
    ],
)
def test_moves_are_in_the_letters_of_the_language(found: Found, language: str, moves: str) -> None:
    assert close(moves) in close(read(pdf_of(found, language=language)))


def test_figurines_stand_for_letters_in_every_language(found: Found) -> None:
    said = close(read(pdf_of(found, notation="figurine", language="de")))
    assert close("6.♗xf7+ Ke7".replace("K", "♔") + "7.♘d5#") in said
    assert close("1. This is no list. - Nor this.") in said


@pytest.mark.parametrize("choices", [{}, {"notation": "figurine"}])
def test_only_fonts_that_are_carried_along_are_used(found: Found, choices: dict[str, Any]) -> None:
    fonts = set()
    with pikepdf.open(io.BytesIO(pdf_of(found, **choices))) as pdf:
        for item in pdf.objects:
            if isinstance(item, pikepdf.Dictionary) and item.get("/Type") == "/FontDescriptor":
                assert {"/FontFile2", "/FontFile3"} & set(item.keys())
                fonts.add(str(item.FontName).partition("+")[2])
    figurines = {name for name in fonts if name.startswith("LineproofFigurine")}
    assert all(name.startswith("LibertinusSerif") for name in fonts - figurines)
    assert bool(figurines) == bool(choices)


def test_without_typst_the_extra_is_named(found: Found, monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def without(name: str, *rest: Any, **more: Any) -> Any:
        if name == "typst":
            raise ImportError(name)
        return real(name, *rest, **more)

    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(
        PublishError, match=r"trap.pgn: the handout needs typst; pip install 'lineproof\[publish\]'"
    ):
        pdf_of(found)


HOSTILE = (
    '#panic("no") #read("handout.typ") $x$ *b* _i_ `raw` <label> @ref = Heading \\ // gone /* gone */ #{while true {}} '
    "https://example.org ~ -- --- ... [x] #sys.inputs \u202e turned \x1b[31m ♔ end"
)


def test_what_looks_like_markup_stays_words() -> None:
    text = f'[Event "#panic(1) *x* <a>"]\n[Annotator "#eval(2) $y$"]\n\n1. e4 {{{HOSTILE.replace("{", "(").replace("}", ")")}}} e5 *\n'
    pdf = pdf_of(unfound(text), columns=1)
    said = read(pdf)
    in_order(
        said,
        [
            "#panic(1) *x* <a>",
            '#panic("no") #read("handout.typ") $x$ *b* _i_ `raw` <label> @ref = Heading \\ // gone /* gone */',
            "https://example.org ~",
            "... [x] #sys.inputs",
            "end",
            "Annotator: #eval(2) $y$",
        ],
    )
    assert "\x1b" not in said and "\u202e" not in said


def test_a_character_that_no_font_has_is_replaced_and_the_rest_is_printed() -> None:
    text = '[Event "Café 日本"]\n\n1. e4 {Ж and é, 語 and 😀 and \U0001f1e9\U0001f1ea; e\u0301.} e5 *\n'
    said = read(pdf_of(unfound(text)))
    assert close("Café ��") in close(said)
    assert close("Ж and é, � and � and ��;") in close(said)


def test_a_lesson_without_a_word_is_printed() -> None:
    said = read(pdf_of(unfound(long_lesson(9))))
    assert close("1.Nf3 Nf6 2.Ng1 Ng8 3.Nf3 Nf6 4.Ng1 Ng8 5.Nf3") in close(said)
    assert "Find the move" not in said


def test_a_very_long_line_is_printed_whole() -> None:
    said = close(read(pdf_of(unfound(long_lesson(1200)))))
    assert "600.Ng1Ng8" in said and "1.Nf3Nf62.Ng1Ng8" in said


def branching(plies: int) -> str:
    """A random game of so many half-moves, with words and another move at each."""
    chance, board, parts = random.Random(7), chess.Board(), []
    words = "Somebody brought a cake along. " * 8
    while board.ply() < plies:
        number = f"{board.fullmove_number}{'.' if board.turn else '...'}"
        move, other = (board.san(m) for m in chance.sample(list(board.legal_moves), 2))
        parts.append(f"{number} {move} {{{words}}} ({number} {other})")
        board.push_san(move)
    return " ".join(parts) + " *\n"


def test_three_hundred_diagrams_are_all_printed() -> None:
    found = unfound(branching(300))
    pdf = pdf_of(found)
    assert len([alt for alt in alternatives(pdf) if "to move" in alt]) >= 299


def test_lines_that_meet_are_told_with_their_pages() -> None:
    said = close(read(pdf_of(unfound(TRANSPOSING), columns=1)))
    assert close("Line 1a after 3.Nc3 (page 1) = line 1 after 3.Nf3 (page 1).") in said


def test_figures_of_a_collection_are_told_with_counts_and_intervals() -> None:
    found = unfound("1. e4 e5 2. Nc3 Nf6 *")
    end = found.proof.lesson.places[-1]
    steps = (Step("f2f4", "f4", 8, 12),)
    games = ModelGames(end, "white", 12, Result(6, 3, 3, wilson(7.5, 12)), steps, 12, 9, ())
    assert found.study is not None
    counted = Found(found.proof, replace(found.study, model_games=(games,)))
    said = close(read(pdf_of(counted)))
    assert close("From the games") in said
    assert (
        close("After 2...Nf6 (page 1): 12 games come to it. White scores 62 of 100 (95 %:") in said
    )
    assert close("6 won, 3 drawn, 3 lost. Mostly 3. f4 (8 of 12).") in said
    assert close("From the games") not in close(read(pdf_of(found)))


def test_a_move_that_was_counted_is_told_with_its_count() -> None:
    found = unfound("1. e4 e5 2. Nf3 d6 {This is the most common move.} *")
    (claim,) = found.proof.reading.claims
    assert claim.kind == FREQUENCY
    words = "2... d6 was played in 42 of 60 games, 70.0 of 100 (95 % interval 57.5 to 80.1)."
    numbers = {"collection": "club", "games": 60, "played": 42}
    judgement = Judgement(Outcome.HOLDS, words, (), claim.spot, numbers)
    finding = Finding(claim, Outcome.HOLDS, judgement, 0, 1, "")
    counted = Found(replace(found.proof, findings=(finding,)), found.study)
    assert close(f"After 2...d6 (page 1): {words}") in close(read(pdf_of(counted)))
    none = replace(finding, judgement=replace(judgement, numbers={"games": 0}))
    uncounted = Found(replace(found.proof, findings=(none,)), found.study)
    assert close("From the games") not in close(read(pdf_of(uncounted)))


@pytest.fixture(scope="module")
def many() -> Found:
    return unfound(branching(90))


@pytest.mark.parametrize("choices", [{"columns": 1}, {"columns": 2}, {"large": True}])
def test_no_column_leaves_much_free(many: Found, choices: dict[str, Any]) -> None:
    lesson, page = many.proof.lesson, Choices(**choices)
    first, *_ = shapes(page)
    plain = foot(document(lesson, many, page), "x")
    best = foot(fitted(lesson, many, page), "x")
    assert max(column.free for column in plain) > first.free
    assert max(column.free for column in best) <= first.free


def test_a_diagram_stands_on_the_page_of_its_move(many: Found) -> None:
    """The move is in bold text before the caption, on the same page."""
    captions = 0
    for page in read(pdf_of(many, columns=1)).split("\f"):
        for caption in re.finditer(
            r"^\s*After (\d+\.(?:\.\.)?\S+)\. (White|Black) to move\.", page, re.M
        ):
            captions += 1
            number, _, move = re.fullmatch(r"(\d+\.(\.\.)?)(.+)", caption[1]).groups()  # type: ignore[union-attr]
            assert re.search(rf"{re.escape(move)}\s", page[: caption.start()]), (number, move)
    assert captions > 10


def test_no_page_ends_with_a_heading(many: Found, trap_pdf: bytes) -> None:
    for pdf in (pdf_of(many, columns=1), trap_pdf):
        for page in read(pdf).split("\f")[:-1]:
            last = page.strip().splitlines()[-1]
            assert not re.match(r"\d+\s{2,}\d+\.|After .*, instead of ", last), last


@pytest.mark.parametrize("name", ["vienna", "budapest"])
def test_every_sentence_and_every_move_of_a_demo_is_printed(name: str) -> None:
    text = (EXAMPLES / name / "lines.pgn").read_text("utf-8")
    found = unfound(text)
    lesson = found.proof.lesson
    said = close(read(pdf_of(found)))
    for reading in found.proof.reading.sentences:
        assert close(reading.sentence.text) in said, reading.sentence.text
    assert len(found.proof.reading.sentences) > 40
    for end in lesson.lines():
        for place in end.path()[1:]:
            move = re.escape(close(place.san or ""))
            first = re.escape(close(place.number))
            if place.parent and place.parent.san:
                first += "|" + re.escape(close(place.parent.san)) + r"[!?]*(?:\([^)]*\))?"
            assert re.search(f"(?:{first}){move}", said), place.label


def test_what_is_said_before_each_game_is_printed() -> None:
    text = TRANSPOSING.replace("10... Kd7", "{Another story.} 10... Kd7").replace(
        "1. e4 e5 (", "{The story.} 1. e4 e5 ("
    )
    in_order(
        read(pdf_of(unfound(text), columns=1)),
        ["The story.", "1.e4", "From a position", "Another story.", "10...Kd7"],
    )


def test_each_game_has_its_own_title_and_its_lines_their_numbers() -> None:
    said = read(pdf_of(unfound(TRANSPOSING), columns=1))
    assert close("1 Two roads") in close(said) and close("3 From a position") in close(said)
    assert close("After 1.e4, instead of 1...e5 (line 1, page 1).") in close(said)
    several = read(pdf_of(unfound("1. e4 (1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5) e5 *"), columns=1))
    assert close("At the start, instead of 1.e4 (line 1, page 1).") in close(several)


def test_the_position_in_which_games_begin_is_not_shown() -> None:
    found = unfound("1. e4 (1. d4 d5) e5 *")
    assert [moment.place.ply for moment in moments(found.proof.lesson, found)] == [0]
    assert "The start" not in read(pdf_of(found))


def test_an_authors_diagram_is_never_left_out(many: Found) -> None:
    """Kinds that are none of ours are the author's own choice."""
    lesson = many.proof.lesson
    lines = printed_lines(lesson)
    chosen = {m.place.index: m for m in moments(lesson, many)}
    few = spread(lesson, lines, chosen, apart=10_000)
    assert len(few) < len(chosen)
    own = {index: replace(moment, kinds=("author",)) for index, moment in chosen.items()}
    assert spread(lesson, lines, own, apart=10_000).keys() == own.keys()
