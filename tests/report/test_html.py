"""The HTML report: one file that says what was found, fetches nothing, runs nothing and can be read by all."""

from __future__ import annotations

import dataclasses
import os
import re
from pathlib import Path

import pytest

from lineproof.claims import Outcome
from lineproof.diagram import PRINT, PRINT_DARK, contrast_ratio
from lineproof.facade import Lesson, Proof
from lineproof.proof import Change
from lineproof.report import answer, located
from lineproof.report.html import html, save_html

from .parsed import Node, assert_in_order, assert_one_file, parsed


def flat(text: str) -> str:
    return " ".join(text.split())


@pytest.fixture(scope="module")
def page(proof: Proof) -> Node:
    return parsed(html(proof))


def test_it_opens_with_the_answer_in_one_sentence(proof: Proof, page: Node) -> None:
    assert page.one("h1").text == "The Vienna Gambit for White"
    assert page.one("p", "answer").text == answer(proof).checked
    assert [p.text for p in page.one("div", "rest").all("p")] == list(
        answer(proof).sentences_said()[1:]
    )


def test_each_open_finding_stands_beside_one_diagram(proof: Proof, page: Node) -> None:
    open_ = [f for f in located(proof) if f.outcome is not Outcome.HOLDS]
    articles = page.all("article", "finding")
    assert sorted(a.attributes["id"] for a in articles) == sorted(
        f"finding-{f.number}" for f in open_
    )
    by_id = {a.attributes["id"]: a for a in articles}
    for f in open_:
        article = by_id[f"finding-{f.number}"]
        assert f"{f.outcome}" in article.one("h3").text
        assert f.label in article.one("h3").text
        assert flat(article.one("blockquote").text).strip("“”") == f.sentence
        assert flat(article.one("mark").text) == f.words
        rows = [dd.text for dd in article.all("dd")]
        assert {f.why, f.evidence, f.instead} - {""} <= set(rows)
        figure = article.one("figure")
        drawn = figure.all("svg")
        assert len(drawn) == 2  # one by day and one by night
        assert [n.classes for n in figure.parts if isinstance(n, Node) and n.name == "div"] == [
            ["by-day"],
            ["by-night"],
        ]
        for svg in drawn:
            assert svg.attributes["role"] == "img"
            assert "to move" in svg.one("title").text
            assert "king" in svg.one("desc").text
            placed = svg.all("use", "piece")
            assert len(placed) == len(f.finding.line_from.board.pieces())


def test_what_fails_comes_before_what_is_unsettled_and_the_script(page: Node) -> None:
    order = [n.attributes["id"] for n in page.all("section")]
    known = ["fails", "off", "open", "script", "unread", "changes", "method"]
    assert order == [id_ for id_ in known if id_ in order]
    assert {"fails", "script", "unread", "method"} <= set(order)


def test_the_script_has_every_sentence_in_its_order(proof: Proof, page: Node) -> None:
    script = next(s for s in page.all("section") if s.attributes["id"] == "script")
    # a sign is tied to its words by a no-break space, which goes with it
    said = " ".join(
        p.text_without("sign", "played").replace("\xa0", "") for p in script.all("p", "said")
    )
    at = 0
    for reading in proof.reading.sentences:
        found = flat(said).find(flat(reading.sentence.text), at)
        assert found >= 0, reading.sentence.text
        at = found


def test_the_script_has_every_move_in_its_order(proof: Proof, page: Node) -> None:
    script = next(s for s in page.all("section") if s.attributes["id"] == "script")
    played = [re.sub(r"^\d+\.+ |[!?]+$", "", word.text) for word in script.all("span", "played")]
    assert played == [p.san for p in proof.lesson.places if p.san]


def test_every_claim_has_its_sign_and_its_note(proof: Proof, page: Node) -> None:
    script = next(s for s in page.all("section") if s.attributes["id"] == "script")
    links = script.all("a", "sign")
    assert [n.attributes["href"] for n in links] == [f"#note-{f.number}" for f in located(proof)]
    for f, link in zip(located(proof), links, strict=True):
        assert f"{f.outcome}" in link.text
        assert link.one("span", "glyph").text in "●▲◐"
        note = next(n for n in script.all("li") if n.attributes["id"] == f"note-{f.number}")
        if f.outcome is Outcome.HOLDS:
            assert f.why in note.text
        else:
            assert note.one("a").attributes["href"] == f"#finding-{f.number}"


def test_what_was_not_read_is_listed_with_its_reason(proof: Proof, page: Node) -> None:
    unread = next(s for s in page.all("section") if s.attributes["id"] == "unread")
    rows = [flat(li.text) for li in unread.all("li")]
    for reading in proof.reading.sentences:
        if reading.why:
            text = flat(reading.sentence.text)
            assert any(text in row and reading.why in row for row in rows), text


def test_it_says_effort_engine_and_definitions(proof: Proof, page: Node) -> None:
    method = next(s for s in page.all("section") if s.attributes["id"] == "method")
    assert "At sketch effort a search looks at 40,000 positions." in method.text
    assert f"Engine version {proof.engine}" in method.text
    from lineproof.claims import kind_of

    for kind in {f.claim.kind for f in proof.findings}:
        assert kind_of(kind).definition in method.text


def test_what_changed_has_its_section_only_when_something_did(proof: Proof) -> None:
    assert 'id="changes"' not in html(proof)
    change = Change("White wins.", "holds", "fails", "the line around it was edited")
    text = html(dataclasses.replace(proof, changes=(change,)))
    assert "“White wins.” held, and now fails: the line around it was edited." in text


def test_nothing_is_fetched_or_run(proof: Proof, hostile: Proof) -> None:
    for some in (proof, hostile):
        text = html(some)
        assert_one_file(text)
        outside = text.replace('xmlns="http://www.w3.org/2000/svg"', "")
        if some is proof:
            assert "http:" not in outside and "https:" not in outside


def test_hostile_words_are_shown_as_words(hostile: Proof) -> None:
    page = parsed(html(hostile))
    assert page.one("h1").text == "</title><script>alert(1)</script>"
    assert page.one("head").one("title").text.startswith("</title><script>")
    said = flat(" ".join(p.text for p in page.all("p", "said")))
    assert (
        "<script src=\"http://example.org/x.js\"></script> Look at <b onclick='x'>this</b>" in said
    )
    assert '<b>"x"</b>.pgn' in page.one("footer").text
    assert "\x1b" not in html(hostile) and "\u202e" not in html(hostile)


def test_marked_words_are_right_where_the_text_is_hostile(hostile: Proof) -> None:
    page = parsed(html(hostile))
    articles = {a.attributes["id"]: a for a in page.all("article")}
    for f in located(hostile):
        if f.outcome is not Outcome.HOLDS:
            assert flat(articles[f"finding-{f.number}"].one("mark").text) == f.words


def test_headings_and_landmarks_are_in_order(proof: Proof) -> None:
    for text in (html(proof), html(Lesson.from_text("1. e4 {Hello.} *").prove("sketch"))):
        assert_in_order(text)


def test_a_lesson_for_black_is_seen_from_blacks_side(hostile: Proof, proof: Proof) -> None:
    def height(some: Proof, square: str) -> float:
        use = next(
            n
            for n in parsed(html(some)).all("use", "piece")
            if n.attributes.get("data-square") == square
        )
        return float(use.attributes["y"])

    assert height(hostile, "a8") > height(hostile, "a1")
    assert height(proof, "a8") < height(proof, "a1")


def colours(style: str) -> list[dict[str, str]]:
    """The custom colours of the page by day and by night."""
    blocks = re.findall(r":root \{(.*?)\}", style, re.S)
    return [dict(re.findall(r"--([a-z]+): (#[0-9A-F]{6})", block)) for block in blocks]


def test_text_has_the_contrast_of_wcag_2_2_aa(page: Node) -> None:
    """Success criterion 1.4.3: 4.5 to 1."""
    day, night = colours(page.one("style").text)
    assert day["paper"] == PRINT.page and night["paper"] == PRINT_DARK.page
    for theme in (day, night):
        for name in ("ink", "soft", "rubric"):
            assert contrast_ratio(theme[name], theme["paper"]) >= 4.5, name


def test_the_same_proof_gives_the_same_page(proof: Proof) -> None:
    assert html(proof) == html(proof)


def test_a_report_is_replaced_whole_or_not_at_all(proof: Proof, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    save_html(proof, file)
    assert file.read_text(encoding="utf-8") == html(proof)
    assert [p.name for p in tmp_path.iterdir()] == ["report.html"]
    with pytest.raises(IsADirectoryError):
        save_html(proof, tmp_path)
    with pytest.raises(FileNotFoundError):
        save_html(proof, tmp_path / "nowhere" / "report.html")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no /dev/full")
def test_a_full_disk_is_an_error_of_the_system(proof: Proof) -> None:
    with pytest.raises(OSError, match=os.strerror(28)):
        save_html(proof, Path("/dev/full"))


def test_no_file_that_lies_in_the_way_is_written_through(proof: Proof, tmp_path: Path) -> None:
    """Whoever may write to the folder could put a link under a name that can be foreseen."""
    tmp_path.joinpath("precious").write_text("precious")
    tmp_path.joinpath(".report.html.new").symlink_to("precious")
    save_html(proof, tmp_path / "report.html")
    assert tmp_path.joinpath("precious").read_text() == "precious"
    assert tmp_path.joinpath(".report.html.new").is_symlink()
    assert tmp_path.joinpath("report.html").read_text(encoding="utf-8") == html(proof)


def test_a_name_that_is_taken_is_not_opened(
    proof: Proof, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    names = iter(["taken", "free"])
    monkeypatch.setattr("secrets.token_hex", lambda _: next(names))
    tmp_path.joinpath("precious").write_text("precious")
    tmp_path.joinpath(".taken.new").symlink_to("precious")
    save_html(proof, tmp_path / "report.html")
    assert tmp_path.joinpath("precious").read_text() == "precious"
    assert sorted(p.name for p in tmp_path.iterdir()) == [".taken.new", "precious", "report.html"]


def test_a_link_stays_and_its_file_is_written(proof: Proof, tmp_path: Path) -> None:
    (tmp_path / "web").mkdir()
    for name in ("old.html", "new.html"):
        link = tmp_path / f"to-{name}"
        link.symlink_to(Path("web") / name)
        if name == "old.html":
            (tmp_path / "web" / name).write_text("old")
            (tmp_path / "web" / name).chmod(0o640)
        save_html(proof, link)
        assert link.is_symlink()
        assert (tmp_path / "web" / name).read_text(encoding="utf-8") == html(proof)
    assert (tmp_path / "web" / "old.html").stat().st_mode & 0o777 == 0o640
    assert sorted(p.name for p in (tmp_path / "web").iterdir()) == ["new.html", "old.html"]
