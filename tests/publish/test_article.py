"""The article, rendered by a Markdown library: what the author wrote stays his words, and is all there."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from lineproof.claims import read_lesson
from lineproof.facade import Lesson
from lineproof.lesson.diagrams import with_diagram
from lineproof.publish import Choices, Found, PublishError
from lineproof.publish.letters import Language
from lineproof.publish.markdown import heading, picture, words
from lineproof.publish.products import article as products_article
from lineproof.publish.products.article import make
from lineproof.report.plain import plain

from .lessons import TRANSPOSING, nothing_found, unstudied

OURS = {"h1", "h2", "h3", "p", "strong", "em", "img", "ol", "ul", "li"}


class Page(HTMLParser):
    """What a browser would make of a page: its elements, the sources of its pictures, its text."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.elements: set[str] = set()
        self.pictures: list[dict[str, str | None]] = []
        self.words = ""
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.add(tag)
        if tag == "img":
            self.pictures.append(dict(attrs))

    def handle_data(self, data: str) -> None:
        self.words += data

    def handle_comment(self, data: str) -> None:
        self.elements.add("comment")

    def handle_decl(self, decl: str) -> None:
        self.elements.add("declaration")


def rendered(markdown: str) -> Page:
    """With HTML let through, as the standard has it, and the commonest extensions."""
    reader = MarkdownIt("commonmark", {"html": True}).enable(["table", "strikethrough"])
    return Page(reader.render(markdown))


def article(
    lesson: Lesson, found: Found, language: Language = "en"
) -> tuple[str, dict[str, bytes]]:
    files = dict(make(lesson, found, Choices(100, language)))
    (name,) = [name for name in files if name.endswith(".md")]
    return files.pop(name).decode(), files


def read_only(text: str) -> tuple[Lesson, Found]:
    """A lesson whose sentences are read and not proved."""
    lesson = Lesson.from_text(text, side="white")
    found = nothing_found(lesson)
    proof = replace(found.proof, reading=read_lesson(lesson))
    return lesson, Found(proof, unstudied(lesson))


def test_hostile_words_make_no_element_of_their_own(trap: Lesson, found: Found) -> None:
    page = rendered(article(trap, found)[0])
    assert page.elements <= OURS
    assert {"h1", "p", "strong", "img", "ol"} <= page.elements
    assert all(re.fullmatch(r"[A-Za-z0-9-]+\.svg", p["src"] or "") for p in page.pictures)
    assert "<script>alert(1)</script> &amp; <b>bold</b>" in page.words
    assert "*Stars*, _lines_, `ticks`, [a link](http://example.org)" in page.words


def test_every_word_of_every_comment_is_there(trap: Lesson, found: Found) -> None:
    shown = " ".join(rendered(article(trap, found)[0]).words.split())
    for comment in trap.comments:
        for reading in found.proof.reading.sentences:
            if comment.start <= reading.sentence.start < comment.end:
                assert plain(reading.sentence.text) in shown
        for word in comment.text.split():
            assert word in shown


@pytest.mark.parametrize(
    "text",
    [
        "<b>x</b>", "<!-- x -->", "<!DOCTYPE x>", "<?x ?>", "<![CDATA[x]]>", "&lt;b&gt;", "&#60;b&#62;", "**x** __x__ *x* _x_",
        "`x` ``x`` ~~x~~ ==x==", "[x](y) ![x](y) [x]: y [x][y] <http://x.example> <x@y.example>", "# x", "## x ##", "1. x", "1) x",
        "- x", "+ x", "* x", "> x", "=====", "-----", "***", "| a | b |", "\\*x\\*", "x\\", "    x", "\tx", "```x", "~~~", "$x$",
        "{#id .class}", "www.x.example http://x.example", ":smile:", "@x", "a" * 5000, "x  ", "\u2028x", "\x1b[31mx", "C #", "12:30",
        "3. f4 is #1, e8=Q# and Qh4#!", "<img src=x onerror=alert(1)>", "javascript:alert(1)",
    ],
)  # fmt: skip
def test_any_words_are_shown_as_they_are(text: str) -> None:
    for markdown, elements in (
        (words(text), {"p"}),
        (heading(2, text), {"h2"}),
        (f"**9. a3** {words(text)}", {"p", "strong"}),
        (f"1. {words(text)}", {"ol", "li"}),
    ):
        page = rendered(markdown)
        assert page.elements == elements
        assert page.words.strip().removeprefix("9. a3").strip() == plain(text)
    page = rendered(picture(text, "x.svg"))
    assert page.elements == {"p", "img"} and page.pictures[0]["alt"] == plain(text)


@given(st.text(st.characters(codec="utf-8"), min_size=1, max_size=60))
def test_words_are_only_ever_words(text: str) -> None:
    if plain(text):
        page = rendered(words(text))
        assert page.elements == {"p"} and page.words.strip() == plain(text)


def test_it_says_for_whom_and_asks_and_answers(trap: Lesson, found: Found) -> None:
    markdown, _ = article(trap, found)
    head, for_whom, *_ = markdown.split("\n\n")
    assert (
        head.startswith("# The trap ") and for_whom == "*For players of about 1400 who have White.*"
    )
    asked = re.findall(r"^\*Pause (\d+): find (White|Black)’s move\.\*$", markdown, re.M)
    answers = markdown[markdown.index("## Answers") :]
    assert [number for number, _ in asked] == re.findall(r"^(\d+)\. After ", answers, re.M)
    own = [pause for pause in found.studied.pauses if pause.place.board.turn == "white"]
    assert own and len(asked) == len(own)
    assert {side for _, side in asked} == {"White"}
    assert ": **6. Bxf7+ Ke7 7. Nd5#**: it mates." in answers
    assert "## Sources\n\n* Annotator: Harbour Street club (invented)" in markdown


def test_it_asks_no_more_than_a_reader_bears_and_first_what_is_met_most(
    trap: Lesson, found: Found, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(products_article, "ASKED", 1)
    first = next(p for p in found.studied.pauses if p.place.board.turn == "white")
    markdown, _ = article(trap, found)
    assert markdown.count("*Pause ") == 1
    assert f"\n1. After {first.place.label}: " in markdown


def test_an_answer_names_the_other_safe_moves(trap: Lesson, found: Found) -> None:
    (mate,) = [p for p in found.studied.pauses if p.best == "Bxf7+"]
    study = replace(
        found.studied,
        pauses=(replace(mate, best="Nd5", line=("c3d5",), safe=("Nd5", "Bxf7+", "Nxf7")),),
    )
    markdown, _ = article(trap, Found(found.proof, study))
    assert "**6. Nd5**: it mates. Bxf7+, as played here, and Nxf7 are safe too." in markdown


def test_diagrams_stand_beside_it_with_their_text_alternative(trap: Lesson, found: Found) -> None:
    markdown, pictures = article(trap, found)
    shown = rendered(markdown).pictures
    assert [p["src"] for p in shown] == sorted(pictures)
    for p in shown:
        svg = pictures[str(p["src"])].decode()
        title, desc = re.findall(r"<(?:title|desc) [^>]*>([^<]*)<", svg)
        assert p["alt"] == f"{title} {desc}"
        assert " to move. White: king" in desc


def test_the_diagram_is_seen_from_the_taught_side() -> None:
    for side, row in (("white", 7), ("black", 0)):
        lesson = Lesson.from_text(
            "1. e4 {Yes.} e5 (1... c5) *", side="white" if side == "white" else "black"
        )
        found = nothing_found(lesson)
        found = Found(replace(found.proof, reading=read_lesson(lesson)), unstudied(lesson))
        ((_, svg),) = article(lesson, found)[1].items()
        (y,) = re.findall(r'data-square="e1" href="[^"]*" x="\d+" y="(\d+)"', svg.decode())
        assert int(y) // 48 == row


LETTERS = {
    "en": ("6. Bxf7+ Ke7 7. Nd5#", "6. Qxg4"),
    "de": ("6. Lxf7+ Ke7 7. Sd5#", "6. Dxg4"),
    "fr": ("6. Fxf7+ Re7 7. Cd5#", "6. Dxg4"),
    "es": ("6. Axf7+ Re7 7. Cd5#", "6. Dxg4"),
    "nl": ("6. Lxf7+ Ke7 7. Pd5#", "6. Dxg4"),
}
"""Letters of the pieces in five languages (common practice)."""


@pytest.mark.parametrize("language", ["en", "de", "fr", "es", "nl"])
def test_moves_have_the_letters_of_the_language_and_words_stay(
    trap: Lesson, found: Found, language: Language
) -> None:
    markdown, _ = article(trap, found, language)
    mate, queen = LETTERS[language]
    assert f"**{mate}** This is mate." in markdown
    assert f"{queen}** (White is winning) After {queen[3:]} it is good." in markdown
    assert "The bishop pins the knight to the queen." in markdown
    if language != "en":
        assert "Qxg4" not in markdown and "Bxf7" not in markdown


def test_verdict_signs_are_words_and_marks_stay_marks() -> None:
    markdown, _ = article(*read_only(TRANSPOSING.replace("1. e4 e5", "{Hello.} 1. e4 e5", 1)))
    assert "3. Nf3!" in markdown
    assert "4. d4** (White is slightly better, White is clearly better) **4... exd4**" in markdown
    assert "$14" not in markdown and "±" not in markdown
    assert "2. Nc3?" in markdown


def test_every_move_of_the_lesson_is_there_in_the_order_of_the_text() -> None:
    lesson, found = read_only(TRANSPOSING.replace("1. e4 e5", "{Hello.} 1. e4 e5", 1))
    markdown, _ = article(lesson, found)
    moves = re.findall(r"\*\*(.*?)\*\*", markdown)
    played = [w.rstrip("!?") for run in moves for w in run.split() if not w[0].isdigit()]
    assert played == [place.san for place in lesson.places if place.san is not None]


def test_commands_of_clocks_and_programs_are_no_words() -> None:
    lesson, found = read_only(
        "1. e4 {[%clk 0:05:00]} e5 {[%emt 0:00:01] Sound. [%clk 0:04:59]} 2. Nc3 {[not a command] stays.} *"
    )
    markdown, _ = article(lesson, found)
    assert "%" not in markdown and "clk" not in markdown
    shown = " ".join(rendered(markdown).words.split())
    assert shown.endswith("1. e4 e5 Sound. 2. Nc3 [not a command] stays.")


def test_a_lesson_without_words_is_no_article() -> None:
    lesson = Lesson.from_text("1. e4 e5 *", name="bare.pgn", side="white")
    with pytest.raises(PublishError) as refused:
        make(lesson, Found(nothing_found(lesson).proof, unstudied(lesson)), Choices())
    assert str(refused.value) == (
        "bare.pgn: the lesson has no words, and an article is made of them;"
        " write comments, or leave the article out with --only"
    )


def test_players_and_events_are_sources_where_they_are_known() -> None:
    lesson, found = read_only(
        '[White "Steinitz"]\n[Black "Zukertort"]\n[Site "?"]\n[Event "Match"]\n[Date "1872.??.??"]\n\n1. e4 {Yes.} *\n'
    )
    assert article(lesson, found)[0].endswith(
        "## Sources\n\n* Steinitz against Zukertort, Match, 1872\n"
    )
    unknown, nothing = read_only(
        '[White "Lesson"]\n[Black "Lesson"]\n[Annotator "?"]\n\n1. e4 {Yes.} *\n'
    )
    assert "Sources" not in article(unknown, nothing)[0]


def test_the_same_lesson_gives_the_same_bytes(trap: Lesson, found: Found) -> None:
    assert article(trap, found) == article(trap, found)


def test_the_authors_own_diagram_stands_where_he_put_it() -> None:
    lesson = Lesson.from_text("1. e4 e5 2. Nf3 {A knight.} Nc6 {Another.} *", side="black")
    lesson = lesson.with_settings(with_diagram(lesson.places[3], True))
    found = Found(lesson.prove("sketch"), unstudied(lesson))
    files = make(lesson, found, Choices(60))
    text = files["lesson.md"].decode()
    assert re.search(
        r"A knight\.\n\n!\[After 2.* author.*\]\(\S+-author\.svg\)\n\n\*After 2. Nf3", text
    )
    assert text.index("author.svg") < text.index("Another.")
