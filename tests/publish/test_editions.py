"""Editions: one for each published state of a lesson, kept with its date."""

from __future__ import annotations

import errno
import json
from datetime import date
from pathlib import Path

import pytest

from lineproof.facade import Lesson
from lineproof.lesson import LessonError
from lineproof.lesson.lesson import HOME
from lineproof.publish import Choices, Found, Product, PublishError, chosen, publish
from lineproof.publish.editions import EditionError, due, edition, editions, keep

from .lessons import unstudied
from .test_handout import read

LINES = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5# $18 *\n"
FIRST, LATER = date(2026, 3, 9), date(2026, 11, 29)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "trap"
    made.mkdir()
    (made / "lesson.toml").write_text('format = 1\ntitle = "The trap"\nside = "white"\n')
    (made / "lines.pgn").write_text(LINES)
    return made


def published(folder: Path, day: date) -> int:
    lesson = Lesson.open(folder)
    found = Found(lesson.prove("sketch"))
    edition = publish(found, folder.parent / "out", chosen(["pgn"]), today=day).edition
    assert edition is not None
    return edition.number


def test_the_same_state_is_the_same_edition_with_its_first_date(folder: Path) -> None:
    assert published(folder, FIRST) == 1
    assert published(folder, LATER) == 1
    (one,) = editions(Lesson.open(folder))
    assert (one.number, one.day, one.words) == (1, FIRST, "Edition 1, 9 March 2026")
    assert one.text == LINES and one.settings.title == "The trap"
    assert [(v.said.words, v.outcome.value, v.white) for v in one.verdicts] == [
        ("White is winning", "holds", 100)
    ]


def test_other_lines_or_settings_are_a_new_edition_and_the_old_one_stays(folder: Path) -> None:
    published(folder, FIRST)
    (folder / "lines.pgn").write_text(LINES.replace("7. Nd5#", "7. Nd5# {Mate.}"))
    assert published(folder, LATER) == 2
    toml = folder / "lesson.toml"
    toml.write_text(toml.read_text() + "audience = 1700\n")
    assert published(folder, LATER) == 3
    (folder / "lines.pgn").write_text(LINES)
    toml.write_text(toml.read_text().replace("audience = 1700\n", ""))
    assert published(folder, LATER) == 1
    assert [(one.number, one.day) for one in editions(Lesson.open(folder))] == [
        (1, FIRST),
        (2, LATER),
        (3, LATER),
    ]
    assert edition(Lesson.open(folder), 1).lesson("trap@1").places[-1].label == "7. Nd5#"
    with pytest.raises(EditionError, match="there is no edition 4; choose another: it has 1, 2, 3"):
        edition(Lesson.open(folder), 4)


def test_a_bare_file_has_its_editions_with_its_history(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("LINEPROOF_DATA", str(tmp_path / "data"))
    file = tmp_path / "trap.pgn"
    file.write_text(LINES)
    lesson = Lesson.open(file, side="white")
    done = publish(Found(lesson.prove("sketch")), tmp_path / "out", chosen(["pgn"]))
    assert done.edition is not None and done.edition.number == 1
    assert [path.name for path in (tmp_path / "data").rglob("editions/*.json")] == ["0001.json"]


def test_a_lesson_in_no_file_has_none(tmp_path: Path) -> None:
    lesson = Lesson.from_text(LINES, side="white")
    assert publish(Found(lesson.prove("sketch")), tmp_path, chosen(["pgn"])).edition is None


def test_what_could_not_be_published_is_no_edition(folder: Path) -> None:
    def broken(*_: object) -> dict[str, bytes]:
        raise PublishError("no ink", path="pen")

    lesson = Lesson.open(folder)
    with pytest.raises(PublishError, match="no ink"):
        publish(Found(lesson.prove("sketch")), folder / "out", [Product("poem", "", broken)])
    assert editions(lesson) == ()
    published(folder, FIRST)
    with pytest.raises(PublishError, match="no ink"):
        publish(Found(lesson.prove("sketch")), folder / "out", [Product("poem", "", broken)])
    assert len(editions(lesson)) == 1


def test_an_edition_is_kept_only_once_its_products_are_made(folder: Path) -> None:
    def looking(lesson: Lesson, found: Found, _: Choices) -> dict[str, bytes]:
        # whoever kills the program here leaves no edition behind
        assert found.edition is not None and found.edition.number == 1
        assert editions(lesson) == ()
        return {"poem.txt": b"made"}

    lesson = Lesson.open(folder)
    publish(Found(lesson.prove("sketch")), folder / "out", [Product("poem", "", looking)])
    assert [one.number for one in editions(lesson)] == [1]


def test_a_number_that_another_run_has_used_meanwhile_is_not_used_again(folder: Path) -> None:
    def slow(lesson: Lesson, *_: object) -> dict[str, bytes]:
        keep(lesson, due(lesson, (), LATER)[0])
        return {"poem.txt": b"made"}

    lesson = Lesson.open(folder)
    with pytest.raises(
        EditionError, match="edition 1 was published by another run meanwhile; publish again"
    ):
        publish(
            Found(lesson.prove("sketch")), folder / "out", [Product("poem", "", slow)], today=FIRST
        )
    assert not (folder / "out").exists()
    assert [one.day for one in editions(lesson)] == [LATER]


def test_an_edition_that_cannot_be_recorded_leaves_nothing_published(folder: Path) -> None:
    history = folder / HOME / "history"
    history.mkdir(parents=True)
    (history / "editions").write_text("no folder")
    with pytest.raises(EditionError, match="the edition cannot be recorded"):
        published(folder, FIRST)
    assert not (folder.parent / "out").exists()


def test_on_a_full_disk_nothing_is_published(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object, **__: object) -> int:
        raise OSError(errno.ENOSPC, "No space left on device")

    lesson = Lesson.open(folder)
    found = Found(lesson.prove("sketch"))
    monkeypatch.setattr("lineproof.lesson.save.os.write", full)
    with pytest.raises(LessonError, match="no space left on device"):
        publish(found, folder.parent / "out", chosen(["pgn"]))
    monkeypatch.undo()
    assert not (folder.parent / "out").exists()
    assert editions(lesson) == ()
    assert published(folder, FIRST) == 1


@pytest.mark.parametrize("text", ["", "{}", '{"format": 2}', '{"format": 1, "edition": "x"}', "[]"])
def test_a_damaged_edition_is_named(folder: Path, text: str) -> None:
    published(folder, FIRST)
    (folder / HOME / "history" / "editions" / "0001.json").write_text(text)
    with pytest.raises(EditionError, match=r"0001\.json: this"):
        published(folder, FIRST)


def test_the_products_carry_number_and_date(folder: Path) -> None:
    (folder / "lines.pgn").write_text(LINES.replace("7. Nd5#", "7. Nd5# {This is mate.}"))
    lesson = Lesson.open(folder)
    found = Found(lesson.prove("sketch"), unstudied(lesson))
    one = publish(found, folder.parent / "out", chosen(["article", "handout"]), today=FIRST)
    again = publish(found, folder.parent / "out", chosen(["article", "handout"]), today=LATER)
    assert one.files == again.files
    article = (folder.parent / "out" / "article" / "the-trap.md").read_text()
    assert "who have White. Edition 1, 9 March 2026.*" in article
    pdf = (folder.parent / "out" / "handout" / "the-trap.pdf").read_bytes()
    assert "Edition 1, 9 March 2026" in " ".join(read(pdf).split())
    assert b"D:20260309" in pdf and b"D:2026112" not in pdf


def test_decisions_of_the_author_belong_to_the_state(folder: Path) -> None:
    published(folder, FIRST)
    toml = folder / "lesson.toml"
    toml.write_text(toml.read_text() + "\n[decisions]\nasked = 2026-11-29\n")
    assert published(folder, LATER) == 2
    assert published(folder, LATER) == 2
    values = json.loads((folder / HOME / "history" / "editions" / "0002.json").read_text())
    assert values["settings"]["decisions"] == {"asked": "2026-11-29"}
