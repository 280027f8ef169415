"""Publishing: which lessons are refused, which products there are, what comes out."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

import pytest

from lineproof.facade import Lesson
from lineproof.lesson.save import save
from lineproof.publish import (
    Choices,
    Found,
    Product,
    PublishError,
    RefusedError,
    UnknownProductError,
    all_products,
    chosen,
    publish,
)
from lineproof.publish.publishing import check

from .lessons import nothing_found

FALSE = "1. e4 e5 2. Nf3 {The knight on f3 is pinned to the king.} Nc6 *\n"
STALE = "1. e4 e5 2. Nf3 {Bxf7+ wins at once.} Nc6 *\n"


def test_what_fails_is_counted(tmp_path: Path) -> None:
    both = FALSE.replace("king.", "king. Bxf7+ wins at once. Black is in check.")
    lesson = Lesson.from_text(both, side="white")
    with pytest.raises(RefusedError, match="2 claims fail and 1 sentence is stale, so"):
        lesson.publish(tmp_path / "out", "sketch", only=["pgn"])


def test_the_products_are_found_by_their_modules() -> None:
    assert [product.name for product in all_products()] == [
        "article",
        "captions",
        "diagrams",
        "epd",
        "handout",
        "page",
        "pgn",
        "video",
    ]
    assert chosen(["pgn", "epd", "pgn"]) == tuple(
        p for p in all_products() if p.name in ("epd", "pgn")
    )


def test_the_video_is_made_only_where_it_is_named() -> None:
    assert {p.name for p in all_products()} - {p.name for p in chosen(None)} == {"video"}
    assert [product.name for product in chosen(["video"])] == ["video"]


@pytest.mark.parametrize("names", [["pgn", "song"], [""], []])
def test_a_name_that_no_product_has_is_refused(names: list[str]) -> None:
    with pytest.raises(
        UnknownProductError,
        match="choose from article, captions, diagrams, epd, handout, page, pgn, video",
    ):
        chosen(names)


@pytest.mark.parametrize(
    ("text", "said"), [(FALSE, "1 claim fails"), (STALE, "1 sentence is stale")]
)
def test_a_lesson_with_a_false_or_stale_sentence_is_refused(
    tmp_path: Path, text: str, said: str
) -> None:
    lesson = Lesson.from_text(text, side="white")
    with pytest.raises(RefusedError) as refused:
        lesson.publish(tmp_path / "out", "sketch", only=["pgn"])
    assert [finding.outcome.value for finding in refused.value.failing] == ["fails"]
    assert f"{said}, so nothing was published" in str(refused.value)
    assert not (tmp_path / "out").exists()


def test_words_whose_move_was_changed_are_stale_too(tmp_path: Path) -> None:
    """They may still be true, so their finding is unsettled; they are to be read again before they are taught."""
    (tmp_path / "lines.pgn").write_text("1. e4 e5 2. Nf3 {A quiet choice.} *\n")
    (tmp_path / "lesson.toml").write_text('format = 1\ntitle = "x"\nside = "white"\n')
    lesson = Lesson.open(tmp_path)
    save(lesson.with_text("1. e4 e5 2. Nc3 {A quiet choice.} *\n"))
    edited = Lesson.open(tmp_path)
    with pytest.raises(RefusedError, match="1 sentence is stale") as refused:
        edited.publish(tmp_path / "out", "sketch", only=["pgn"])
    assert [finding.outcome.value for finding in refused.value.failing] == ["unsettled"]


def test_anyway_publishes_it_and_the_products_are_the_same_as_ever(tmp_path: Path) -> None:
    lesson = Lesson.from_text(FALSE, side="white")
    published = lesson.publish(tmp_path / "out", "sketch", only=["pgn"], anyway=True)
    assert len(published.failing) == 1
    texts = [path.read_text() for path in (tmp_path / "out" / "pgn").iterdir()]
    assert FALSE in texts
    assert not any("fail" in text for text in texts)


def test_an_opinion_is_published(tmp_path: Path) -> None:
    (tmp_path / "lines.pgn").write_text(FALSE)
    (tmp_path / "lesson.toml").write_text('format = 1\ntitle = "x"\nside = "white"\n')
    lesson, _ = Lesson.open(tmp_path).mark_opinion("The knight on f3 is pinned to the king.")
    assert lesson.publish(tmp_path / "out", "sketch", only=["pgn"]).failing == ()


def test_what_is_listed_is_what_is_there(tmp_path: Path, trap: Lesson, found: Found) -> None:
    out = tmp_path / "out"
    published = publish(found, out, chosen(None), Choices(30))
    there = {
        str(path.relative_to(out)).replace(os.sep, "/") for path in out.rglob("*") if path.is_file()
    }
    assert {file.name for file in published.files} == there
    for file in published.files:
        data = (out / file.name).read_bytes()
        assert (len(data), hashlib.sha256(data).hexdigest()) == (file.size, file.sha256)
        assert file.name.startswith(f"{file.product}/")


def test_publishing_again_gives_the_same_bytes(tmp_path: Path, found: Found) -> None:
    first = publish(found, tmp_path / "a", chosen(None), Choices(30))
    again = publish(found, tmp_path / "a", chosen(None), Choices(30))
    elsewhere = publish(found, tmp_path / "b", chosen(None), Choices(30))
    assert first.files == again.files == elsewhere.files


def test_a_product_that_fails_leaves_what_was_there(tmp_path: Path, found: Found) -> None:
    publish(found, tmp_path, chosen(["pgn"]))
    before = {path: path.read_bytes() for path in tmp_path.rglob("*.pgn")}

    def broken(*_: object) -> dict[str, bytes]:
        raise PublishError("no ink", path="pen")

    with pytest.raises(PublishError, match="pen: no ink"):
        publish(found, tmp_path, (*chosen(["pgn"]), Product("poem", "", broken)))
    assert {path: path.read_bytes() for path in tmp_path.rglob("*.pgn")} == before
    assert not (tmp_path / "poem").exists()


def test_a_product_that_needs_no_study_is_made_without_one(tmp_path: Path) -> None:
    lesson = Lesson.from_text("1. e4 e5 *", side="white")
    assert not any(product.needs_study for product in chosen(["pgn"]))
    publish(nothing_found(lesson), tmp_path, chosen(["pgn"]))
    with pytest.raises(ValueError, match="needs the study"):
        publish(nothing_found(lesson), tmp_path, chosen(["epd"]))


@pytest.mark.parametrize(
    ("text", "side", "message"),
    [
        (
            '[Event "x"]\n\n*\n',
            "white",
            "lesson.pgn: the lesson has no moves; write its lines first",
        ),
        (
            "1. e4 *",
            None,
            "lesson.pgn: the lesson does not say which side is taught; say it with --side",
        ),
    ],
)
def test_a_lesson_with_nothing_to_publish_is_refused_before_any_work(
    tmp_path: Path, text: str, side: str | None, message: str
) -> None:
    lesson = Lesson.from_text(text, side="white" if side else None)
    with pytest.raises(PublishError) as refused:
        check(lesson, tmp_path)
    assert str(refused.value) == message


def test_the_folder_of_a_lessons_history_is_no_place_to_publish(tmp_path: Path) -> None:
    lesson = Lesson.from_text("1. e4 *", side="white")
    with pytest.raises(PublishError, match="history"):
        check(lesson, tmp_path / ".lineproof" / "out")
