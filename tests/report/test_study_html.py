"""The sheet of a study: all that was found, each with its diagram and its place in the lines, in one file."""

from __future__ import annotations

import dataclasses

import pytest

from lineproof.collection.interval import wilson
from lineproof.facade import Lesson, Study
from lineproof.replies.model_games import ModelGames, Result, Step, Stood
from lineproof.report.item import SHOWN
from lineproof.report.studied_html import study_html
from lineproof.report.study_items import listings

from .parsed import Node, assert_in_order, assert_one_file, parsed


@pytest.fixture(scope="module")
def page(study: Study) -> Node:
    return parsed(study_html(study))


def flat(text: str) -> str:
    return " ".join(text.split())


def section(page: Node, id_: str) -> Node:
    return next(n for n in page.all("section") if n.attributes["id"] == id_)


def test_it_opens_with_the_share_of_games_and_what_is_dangerous(study: Study, page: Node) -> None:
    assert page.one("h1").text == "Légal's mate"
    answer = page.one("p", "answer").text
    assert answer.startswith("Of 100 games of this audience ")
    assert f"{len(study.dangerous)} dangerous repl" in answer
    assert "whose weights are guesses: no games were counted" in page.one("div", "rest").text


def test_all_that_was_found_is_on_it(study: Study, page: Node) -> None:
    within = [slip for slip in study.slips if slip.within_reach]
    wanted = {
        "dangerous": len(study.dangerous),
        "met": len([one for one in study.met if not one.dangerous]),
        "slips": len(within),
        "footnotes": len(study.slips) - len(within),
        "costly": len(study.costly),
        "pauses": len(study.pauses),
        "heart": len(study.by_heart),
        "stops": len(study.stops),
        "ideas": len(study.ideas),
        "plans": len(study.plans),
        "orders": len(study.detours),
    }
    # the lesson has something of almost every sort
    assert sum(bool(number) for number in wanted.values()) >= 9, wanted
    for id_, number in wanted.items():
        found = [n for n in page.all("section") if n.attributes["id"] == id_]
        assert bool(found) == bool(number), id_
        for one in found:
            articles = one.all("article")
            shown = 0 if id_ in {"met", "footnotes"} else min(number, SHOWN)
            assert len(articles) == shown, id_
            rows = [li for li in one.all("li") if li.attributes.get("id", "").startswith(id_)]
            assert len(articles) + len(rows) == number, id_


def test_each_item_leads_to_its_place_and_the_place_to_it(page: Node) -> None:
    script = section(page, "script")
    moves = {n.attributes["id"]: n.text for n in script.all("span", "played")}
    back = {a.attributes["href"] for a in script.all("a")}
    for article in page.all("article"):
        link = article.one("h3").one("a")
        target = link.attributes["href"].removeprefix("#")
        if target in moves:
            san = link.text.split(",")[0].split(" ")[-1]
            assert san in moves[target], link.text
        else:
            assert target == "script"
        assert f"#{article.attributes['id']}" in back


def test_the_trap_is_a_pause_point_with_its_wrong_answers(study: Study, page: Node) -> None:
    """6. Bxf7+ mates in two; Légal's mate."""
    (article,) = [
        a for a in section(page, "pauses").all("article") if "5... Bxd1" in a.one("h3").text
    ]
    rows = dict(
        zip([n.text for n in article.all("dt")], [n.text for n in article.all("dd")], strict=True)
    )
    assert rows["Answer"] == "6. Bxf7+" and rows["Point"] == "It mates"
    assert "costs" in rows["Wrong"] and "in 100" in rows["Wrong"]
    assert flat(article.one("figcaption").text) == "After 5... Bxd1. White to move."
    # the board asks, it does not answer
    assert not article.all("g", "shown-move")
    assert section(page, "slips").all("article")[0].all("g", "shown-move")


def test_an_idea_has_two_boards(study: Study, page: Node) -> None:
    article = section(page, "ideas").all("article")[0]
    assert "takes on e5" in article.one("p", "words").text
    captions = [n.text for n in article.all("figcaption")]
    assert captions[0].startswith("Good. After") and captions[1].startswith("Bad. After")


def test_the_lines_have_every_move_and_every_sentence(study: Study, page: Node) -> None:
    script = section(page, "script")
    played = [n.attributes["id"] for n in script.all("span", "played")]
    assert played == [f"place-{p.index}" for p in study.lesson.places if p.san]
    said = flat(" ".join(p.text for p in script.all("p", "said")))
    for words in ("Good evening.", "A pin that is none.", "This fails."):
        assert words in said


def test_model_games_are_told_with_their_counts(study: Study) -> None:
    end = next(p for p in study.lesson.places if p.label == "4... Nf6")
    games = ModelGames(
        end, "white", 12, Result(6, 3, 3, wilson(7.5, 12)), (Step("d2d4", "d4", 8, 12),), 12, 9, (Stood("K", "g1", 7),)
    )  # fmt: skip
    page = parsed(study_html(dataclasses.replace(study, model_games=(games,))))
    article = section(page, "games").one("article")
    assert article.one("p", "words").text == "12 games"
    rows = [n.text for n in article.all("dd")]
    assert (
        rows[0].startswith("White scores 62 of 100 (95 %: ") and "6 won, 3 drawn, 3 lost" in rows[0]
    )
    assert rows[1] == "5. d4 (8 of 12)"
    assert rows[2].endswith("so: king on g1 (7).")


def test_it_is_one_file_in_good_order(study: Study) -> None:
    text = study_html(study)
    assert_one_file(text)
    assert_in_order(text)
    assert study_html(study) == text


def test_a_lesson_in_which_nothing_is_found_has_its_sheet() -> None:
    found = Lesson.from_text("1. f3 e5 2. g4 Qh4# *", side="black").study("sketch")
    bare = dataclasses.replace(
        found, open=(), slips=(), costly=(), pauses=(), by_heart=(), stops=(), ideas=(), plans=(), detours=()
    )  # fmt: skip
    text = study_html(bare)
    assert listings(bare) == ()
    assert "no dangerous reply is left open" in text
    assert_one_file(text)
    assert_in_order(text)


def test_hostile_words_are_shown_as_words() -> None:
    text = '[Event "<script>alert(1)</script>"]\n\n1. f3 {<b onclick=x>Here</b>} e5 2. g4 Qh4# *'
    sheet = study_html(Lesson.from_text(text, side="black").study("sketch"))
    assert_one_file(sheet)
    page = parsed(sheet)
    assert page.one("h1").text == "<script>alert(1)</script>"
    assert "<b onclick=x>Here</b>" in section(page, "script").text


def test_a_lesson_for_black_is_seen_from_blacks_side() -> None:
    sheet = study_html(Lesson.from_text("1. e4 e5 2. Qh5 *", side="black").study("sketch"))
    drawn = parsed(sheet).all("use", "piece")
    height = {n.attributes["data-square"]: float(n.attributes["y"]) for n in reversed(drawn)}
    assert height["a8"] > height["a1"]
