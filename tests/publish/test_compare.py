"""Two editions: what was added, taken out and changed, by position."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import jsonschema
import pytest

from lineproof.facade import Comparison, Lesson
from lineproof.publish import Found, chosen, publish
from lineproof.publish.compare import notice, opened
from lineproof.publish.compare.json import values
from lineproof.publish.editions import EditionError
from lineproof.report.schemas import schema

from .lessons import random_lesson

OLD = "1. e4 e5 2. Nc3 Nf6 3. f4 d5 (3... Nc6 4. fxe5) 4. d3 exf4 5. exd5 $14 {Quiet.} *"


def compared(old: str, new: str, side: str | None = "white") -> Comparison:
    taught = "white" if side == "white" else None
    older = Lesson.from_text(old, side=taught)
    found = Lesson.from_text(new, side=taught).compare(older)
    jsonschema.Draft202012Validator(schema("compare")).validate(values(found))
    return found


def moves(change: object) -> list[str]:
    return [place.san for place in change]  # type: ignore[attr-defined]


def test_the_same_lesson_has_no_changes_whatever_its_spelling() -> None:
    found = compared(
        OLD, "{}1. e4 e5\n2.Nc3 Nf6 3.f4 d5 (3...Nc6 4.fxe5) 4.d3 exf4 5.exd5 += {Quiet.} *"
    )
    assert found.nothing
    assert "Nothing has changed" in notice(found)


def test_a_new_line_an_old_one_and_one_that_goes_on() -> None:
    new = "1. e4 e5 2. Nc3 Nf6 3. f4 d5 (3... d6 4. Nf3 (4. d3) 4... Nc6) 4. d3 exf4 5. exd5 $14 {Quiet.} Nxd5 *"
    found = compared(OLD, new)
    one, two = found.added
    assert (one.place.label, moves(one.new), one.more, one.goes_on) == (
        "3. f4",
        ["d6", "Nf3", "Nc6"],
        1,
        False,
    )
    assert (two.place.label, moves(two.new), two.goes_on) == ("5. exd5", ["Nxd5"], True)
    (gone,) = found.removed
    assert (gone.place.label, moves(gone.old), gone.new) == ("3. f4", ["Nc6", "fxe5"], ())
    assert not (found.changed or found.advice or found.verdicts or found.words)


def test_advice_that_changed_is_told_with_both_moves() -> None:
    new = OLD.replace("4. d3 exf4 5. exd5 $14 {Quiet.}", "4. fxe5 Nxe4")
    found = compared(OLD, new)
    assert (
        "After 1. e4 e5 2. Nc3 Nf6 3. f4 d5 the lesson now recommends 4. fxe5 in place of 4. d3."
        in notice(found)
    )
    (change,) = found.changed
    assert (moves(change.old), moves(change.new)) == (["d3", "exf4", "exd5"], ["fxe5", "Nxe4"])
    assert not found.added and not found.removed


def test_a_move_that_became_a_sideline_is_advice_though_no_line_changed() -> None:
    old = "1. e4 e5 2. Nc3 (2. f4) *"
    found = compared(old, "1. e4 e5 2. f4 (2. Nc3) *")
    assert [(c.old.san, c.new and c.new.san) for c in found.advice] == [("Nc3", "f4")]
    assert not (found.added or found.removed or found.changed)
    marked = compared(old, "1. e4 e5 2. Nc3 $2 (2. f4) *")
    assert [(c.old.san, c.new and c.new.san) for c in marked.advice] == [("Nc3", "f4")]
    assert compared(old, "1. e4 e5 2. f4 (2. Nc3) *", side=None).advice == ()


def test_replies_of_the_opponent_do_not_replace_each_other() -> None:
    found = compared("1. e4 e5 *", "1. e4 c5 *")
    assert [moves(c.new) for c in found.added] == [["c5"]]
    assert [moves(c.old) for c in found.removed] == [["e5"]]
    assert not found.changed and not found.advice


def test_lines_that_transpose_are_the_same_line() -> None:
    """The same positions by another order of the games, and a new road that ends where it meets an old one."""
    old = "1. e4 e5 2. Nc3 Nf6 3. Nf3 Nc6 {Four knights.} *"
    new = "1. e4 e5 2. Nc3 (2. Nf3 Nf6 3. Nc3 Nc6 {Four knights.}) 2... Nf6 3. Nf3 *"
    found = compared(old, new)
    (added,) = found.added
    assert moves(added.new) == ["Nf3", "Nf6", "Nc3"]
    assert added.joins is not None and added.joins.label == "3. Nf3"
    assert "which comes to the position after 1. e4 e5 2. Nc3 Nf6 3. Nf3." in notice(found)
    assert not (found.removed or found.words)


def test_verdicts_are_compared_by_what_they_say_not_by_how() -> None:
    said = OLD.replace("$14 {Quiet.}", "{Quiet. White is slightly better.}")
    assert compared(OLD, said).verdicts == ()
    found = compared(OLD, OLD.replace("$14", "$10"))
    assert [(c.place.label, c.old, c.new) for c in found.verdicts] == [
        ("5. exd5", ("White is slightly better",), ("the position is level",))
    ]
    assert "the position is level; before, White is slightly better." in notice(found)
    assert compared(OLD, OLD.replace(" $14", "")).verdicts[0].new == ()


def test_changed_words_and_settings_are_told() -> None:
    found = compared(OLD, OLD.replace("Quiet.", "Calm."))
    assert [(c.place.label, c.old, c.new) for c in found.words] == [("5. exd5", "Quiet.", "Calm.")]
    older = Lesson.from_text(OLD, side="white", audience=1200)
    newer = Lesson.from_text(OLD, side="white", audience=1700)
    (change,) = newer.compare(older).settings
    assert (change.what, change.old, change.new) == ("audience", "1200", "1700")


def test_what_lies_behind_a_null_move_is_left_out() -> None:
    assert compared("1. e4 e5 *", "1. e4 e5 2. -- d5 *").nothing


def test_editions_are_opened_by_their_number(tmp_path: Path) -> None:
    folder = tmp_path / "vienna"
    folder.mkdir()
    (folder / "lesson.toml").write_text('format = 1\ntitle = "The Vienna"\nside = "white"\n')
    lines = folder / "lines.pgn"
    mate = '[Event "Another name"]\n\n'
    mate += "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 4. Qxf7# $18 *\n"
    for text in (mate, mate.replace("$18", "$18 {Mate.}")):
        lines.write_text(text)
        lesson = Lesson.open(folder)
        found = Found(lesson.prove("sketch"))
        publish(found, tmp_path / "out", chosen(["pgn"]), today=date(2026, 3, 9))
    older = opened(f"{folder}@1")
    assert older.lesson.text == mate and older.words == "edition 1 of 9 March 2026"
    text = notice(Lesson.open(folder).compare(f"{folder}@1"))
    assert text.startswith("The Vienna: what has changed from edition 1 of 9 March 2026 to ")
    assert "title" not in text
    assert text.endswith(
        "Words that are new or different:\n  After 2... Nc6 3. Bc4 Nf6 4. Qxf7#.\n"
    )
    with pytest.raises(EditionError, match=r"there is no edition 7; choose another: it has 1, 2"):
        opened(f"{folder}@7")
    odd = tmp_path / "odd@2"
    odd.write_text(mate)
    assert opened(odd).edition is None


def test_a_verdict_that_no_longer_holds_is_told(tmp_path: Path) -> None:
    """The words are the same; what was found of them in the two editions is not."""
    from dataclasses import replace

    from lineproof.claims import Outcome
    from lineproof.publish.compare import Side, compare
    from lineproof.publish.editions import Edition, FoundVerdict
    from lineproof.publish.said import Said

    lesson = Lesson.from_text(OLD, side="white")
    key = lesson.places[-1].key
    at = next(place.key for place in lesson.places if place.label == "5. exd5")
    assert key == at
    one = FoundVerdict(Said(at, "5. exd5", "White is slightly better"), Outcome.HOLDS, 57)
    first = Edition(1, date(2026, 3, 9), OLD, lesson.settings, (one,))
    second = replace(first, number=2, verdicts=(replace(one, outcome=Outcome.FAILS, white=50),))
    found = compare(Side("x@1", lesson, first), Side("x@2", lesson, second))
    assert "that White is slightly better no longer holds; before, it held." in notice(found)
    assert values(found)["verdicts"][0]["holds"] == "fails"


def edges(lesson: Lesson) -> set[tuple[int, str]]:
    """Moves by their positions, by another way than the comparison's."""
    found = set()
    for place in lesson.places:
        if place.parent is not None and place.uci is not None:
            found.add((place.parent.key, place.uci))
    return found


@pytest.mark.parametrize("seed", range(6))
def test_each_move_that_only_one_has_is_told_once(seed: int) -> None:
    old = Lesson.from_text(random_lesson(seed), side="white")
    cut = random_lesson(seed).replace("Random", "Other")
    other = Lesson.from_text(random_lesson(seed + 100), side="white")
    assert Lesson.from_text(cut, side="white").compare(old).added == ()
    found = other.compare(old)
    told = sum(len(c.new) + c.more for c in (*found.added, *found.changed))
    assert told == len(edges(other) - edges(old))
    gone = sum(len(c.old) + c.more for c in found.removed)
    assert gone <= len(edges(old) - edges(other))
    if not found.changed:
        assert gone == len(edges(old) - edges(other))
    back = old.compare(other)
    assert len(back.added) == len(found.removed) and len(back.removed) == len(found.added)
    named = [(place.parent.key, place.uci) for c in found.added for place in c.new]
    assert len(named) == len(set(named))
    assert set(named) <= edges(other) - edges(old)
