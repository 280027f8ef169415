"""Opinions: what the author marked is not checked, and the mark finds its sentence after edits nearby."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof.facade import Lesson, Proof
from lineproof.lesson import LessonError, errors
from lineproof.lesson.folder import new
from lineproof.lesson.opinions import Opinion, fingerprint, read_opinions
from lineproof.lesson.save import versions
from lineproof.proof.marking import NoSuchSentenceError, SeveralSentencesError, opinions
from lineproof.report import answer

LINES = """[Event "The Vienna Gambit"]
[Result "*"]

1. e4 e5 2. Nc3 Nf6 3. f4 {Material is level. Black is a queen up.} 3... d5 (3... exf4 {Black is a pawn up.
White is a rook up.} 4. e5 {White is a pawn up.} 4... Ng8) (3... d6 4. Nf3 {White is a pawn up.}) 4. fxe5 *
"""
LIE = "Black is a queen up."


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    source = tmp_path / "lines.pgn"
    source.write_text(LINES, encoding="utf-8")
    new(tmp_path / "vienna", source, "white")
    return tmp_path / "vienna"


def edited(folder: Path, old: str, new_: str) -> Lesson:
    """The lesson after its author changed the file with an editor of his own."""
    file = folder / "lines.pgn"
    text = file.read_text(encoding="utf-8")
    assert text.count(old) == 1
    file.write_text(text.replace(old, new_), encoding="utf-8")
    return Lesson.open(folder)


def proved(folder: Path) -> Proof:
    return Lesson.open(folder).prove("sketch")


def failing(proof: Proof) -> list[str]:
    return [f.claim.words for f in proof.findings if str(f.outcome) == "fails"]


def test_a_marked_sentence_is_not_checked_and_counted_apart(folder: Path) -> None:
    before = proved(folder)
    assert LIE[:-1] in [w.rstrip(".") for w in failing(before)]
    Lesson.open(folder).mark_opinion(LIE)
    after = proved(folder)
    assert len(failing(after)) == len(failing(before)) - 1
    assert answer(after).opinions == 1
    assert "1 sentence is marked as your opinion." in answer(after).not_checked
    assert answer(after).sentences == answer(before).sentences


def test_the_mark_stands_in_lesson_toml_and_the_file_of_the_lines_is_not_touched(
    folder: Path,
) -> None:
    before = (folder / "lines.pgn").read_bytes()
    Lesson.open(folder).mark_opinion("black is a QUEEN\nup")
    text = (folder / "lesson.toml").read_text(encoding="utf-8")
    assert (
        '[[decisions.opinions]]\nwords = "Black is a queen up."\nmove = "3. f4"\nposition = '
        in text
    )
    assert (folder / "lines.pgn").read_bytes() == before
    assert versions(Lesson.open(folder), "lesson.toml")


@pytest.mark.parametrize(
    ("old", "new_"),
    [
        ("{Material is level. Black is a queen up.}", "{Black is a queen up. Material is level.}"),
        ("{Material is level. Black is a queen up.}", "{Material is level. Well,\n\n  now.   Black is\na queen up!}"),
        ("{Material is level. Black is a queen up.}", "{Material is level.}  {BLACK is a queen up.}"),
        ("1. e4 e5 2. Nc3 Nf6", "1. Nc3 Nf6 2. e4 e5"),
        ("1. e4 e5 2. Nc3 Nf6", "1. e4 e5 2. a3 a6 3. Nc3 Nf6"),
        ("1. e4 e5 2. Nc3 Nf6", "1. e4 (1. d4 d5 {Black is up.}) 1... e5 2. Nc3 (2. Nf3 Nc6) 2... Nf6"),
        ("2. Nc3 Nf6 3. f4", "2. Nc3 Nf6 3. f4 $1"),
        ("{Material is level. Black is a queen up.} 3... d5", "{Material is level.} 3... d5 {Black is a queen up.}"),
        (" 3... d5", " 3... d5 {Material is level now.}"),
        ("{Material is level. Black is a queen up.} 3... d5 (3... exf4", "{Material is level.} 3... d5 (3... exf4 {Black is a queen up.}"),
    ],
    ids=["order of sentences", "words between", "comment of its own", "other move order", "other moves before", "variations inserted",
         "a glyph", "a move later", "a comment after it", "into a variation"],
)  # fmt: skip
def test_the_mark_survives_edits_nearby(folder: Path, old: str, new_: str) -> None:
    Lesson.open(folder).mark_opinion(LIE)
    lesson = edited(folder, old, new_)
    proof = lesson.prove("sketch")
    assert answer(proof).opinions == 1
    assert not [w for w in failing(proof) if "queen" in w]
    assert proof.newly_gone == ()


def test_other_words_are_another_sentence(folder: Path) -> None:
    Lesson.open(folder).mark_opinion(LIE)
    proof = edited(folder, LIE, "Black is two queens up, or rather: Black is a queen up.").prove(
        "sketch"
    )
    assert answer(proof).opinions == 0
    assert [o.words for o in proof.newly_gone] == [LIE]


def test_a_mark_without_a_sentence_is_told_once(folder: Path) -> None:
    Lesson.open(folder).mark_opinion(LIE)
    proved(folder)
    edited(folder, f" {LIE}", "")
    assert [o.words for o in proved(folder).newly_gone] == [LIE]
    assert proved(folder).newly_gone == ()
    assert [(o.words, found) for o, found in proved(folder).opinions] == [(LIE, ())]
    edited(
        folder, "Material is level.", f"Material is level. {LIE}"
    )  # it is back, and so is the mark
    assert answer(proved(folder)).opinions == 1


def test_the_same_words_elsewhere_are_not_taken_for_the_marked_ones(folder: Path) -> None:
    """Two sentences say "White is a pawn up."; one is marked and then deleted."""
    lesson = Lesson.open(folder)
    with pytest.raises(SeveralSentencesError, match="2 sentences have the words"):
        lesson.mark_opinion("White is a pawn up.")
    line, column = lesson.locate(lesson.text.index("White is a pawn up."))
    lesson.mark_opinion("White is a pawn up.", (line, column))
    assert answer(proved(folder)).opinions == 1
    gone = edited(folder, "4. e5 {White is a pawn up.}", "4. e5").prove("sketch")
    assert answer(gone).opinions == 0
    assert "White is a pawn up." in [f"{w.rstrip('.')}." for w in failing(gone)]
    assert len(gone.newly_gone) == 1


def test_a_repeated_sentence_is_still_found_when_the_line_before_it_changes(folder: Path) -> None:
    lesson = Lesson.open(folder)
    at = lesson.locate(lesson.text.index("White is a pawn up."))
    lesson.mark_opinion("White is a pawn up.", at)
    proof = edited(folder, "4. e5 {", "4. Nf3 g5 5. e5 {").prove("sketch")
    (((_, found),)) = proof.opinions
    assert [r.place.label for r in found] == ["5. e5"]


def test_both_of_two_marked_twins_are_found_again(folder: Path) -> None:
    lesson = Lesson.open(folder)
    for start in (
        lesson.text.index("White is a pawn up."),
        lesson.text.rindex("White is a pawn up."),
    ):
        Lesson.open(folder).mark_opinion("White is a pawn up.", lesson.locate(start))
    proof = edited(folder, "2. Nc3 Nf6", "2. a3 a6 3. Nc3 Nf6").prove("sketch")
    assert answer(proof).opinions == 2


def test_the_same_words_of_the_same_position_have_the_mark_on_every_road(tmp_path: Path) -> None:
    text = "1. e4 e5 2. Nf3 (2. Nc3 Nc6 3. Nf3 {White is a pawn up.}) 2... Nc6 3. Nc3 {White is a pawn up.} *"
    source = tmp_path / "two.pgn"
    source.write_text(text, encoding="utf-8")
    new(tmp_path / "two", source, "white")
    lesson = Lesson.open(tmp_path / "two")
    lesson.mark_opinion(at=lesson.locate(text.rindex("White")))
    assert answer(proved(tmp_path / "two")).opinions == 2


def test_the_report_says_why_a_finding_went_and_why_it_came_back(folder: Path) -> None:
    proved(folder)
    Lesson.open(folder).mark_opinion(LIE)
    (gone,) = [c for c in proved(folder).changes if "queen" in c.words]
    assert (gone.after, gone.why) == ("", "you marked the sentence as your opinion")
    Lesson.open(folder).take_back_opinion(LIE)
    (back,) = [c for c in proved(folder).changes if "queen" in c.words]
    assert (back.before, back.after, back.why) == (
        "",
        "fails",
        "your mark on the sentence is taken back",
    )


def test_a_mark_is_taken_back_and_the_file_is_as_before(folder: Path) -> None:
    before = (folder / "lesson.toml").read_text(encoding="utf-8")
    lesson, words = Lesson.open(folder).mark_opinion("queen")
    assert words == LIE
    lesson, words = lesson.take_back_opinion("queen")
    assert words == LIE
    assert read_opinions(lesson.settings.decisions) == ()
    assert (folder / "lesson.toml").read_text(encoding="utf-8").startswith(before.rstrip())
    with pytest.raises(NoSuchSentenceError, match="no sentence that is marked"):
        lesson.take_back_opinion("queen")


def test_a_mark_whose_sentence_is_gone_can_be_taken_back(folder: Path) -> None:
    Lesson.open(folder).mark_opinion(LIE)
    lesson = edited(folder, f" {LIE}", "")
    lesson.take_back_opinion("queen")
    assert opinions(Lesson.open(folder)) == ()


def test_marking_twice_marks_once(folder: Path) -> None:
    Lesson.open(folder).mark_opinion(LIE)
    before = (folder / "lesson.toml").read_bytes()
    Lesson.open(folder).mark_opinion(LIE)
    assert (folder / "lesson.toml").read_bytes() == before


def test_comments_and_other_decisions_in_lesson_toml_stay(folder: Path) -> None:
    file = folder / "lesson.toml"
    mine = '\n[decisions]\n# asked Anna\n"b2" = "dismissed"\n\n[[decisions.opinions]] # mine\nwords = "I like it."\n# why: taste\n'
    file.write_text(file.read_text(encoding="utf-8") + mine, encoding="utf-8")
    lesson, _ = Lesson.open(folder).mark_opinion(LIE)
    lesson.take_back_opinion(LIE)
    assert mine.rstrip() in file.read_text(encoding="utf-8")
    assert Lesson.open(folder).settings.decisions["b2"] == "dismissed"


def test_words_alone_mark_every_sentence_of_these_words(folder: Path) -> None:
    file = folder / "lesson.toml"
    text = (
        file.read_text(encoding="utf-8") + '[[decisions.opinions]]\nwords = "white is a pawn up"\n'
    )
    file.write_text(text, encoding="utf-8")
    assert answer(proved(folder)).opinions == 2


def test_a_bare_file_has_nowhere_to_keep_a_mark(tmp_path: Path) -> None:
    file = tmp_path / "vienna.pgn"
    file.write_text(LINES, encoding="utf-8")
    with pytest.raises(errors.SettingsError, match="a bare PGN file has no settings"):
        Lesson.open(file).mark_opinion(LIE)


@pytest.mark.parametrize(
    ("written", "line", "message"),
    [
        ("decisions.opinions = 3", 2, "decisions.opinions is no list of tables"),
        ('decisions.opinions = ["White is better."]', 2, "an opinion is 'White is better.'"),
        ("[decisions]\nopinions = [[1]]", 2, "an opinion is"),
        ('[[decisions.opinions]]\nmove = "3. f4"', 2, "an opinion has no words"),
        ('[[decisions.opinions]]\nwords = "..."', 2, "an opinion has no words"),
        ("[[decisions.opinions]]\nwords = 7", 2, "an opinion has no words"),
        ('[[decisions.opinions]]\nwords = "a"\n\n[[decisions.opinions]]\nwords = "b"\nmove = 3', 5, "the move of an opinion is 3"),
        ('[[decisions.opinions]]\nwords = "a"\nposition = "xyz"', 2, "a position of an opinion is 'xyz'"),
        ('[[decisions.opinions]]\nwords = "a"\nposition = 12', 2, "a position of an opinion is 12"),
        ('[[decisions.opinions]]\nwords = "a"\nothers = "0123456789abcdef"', 2, "the other positions of an opinion are"),
        ('[[decisions.opinions]]\nwords = "a"\nothers = ["0123456789ABCDEF"]', 2, "a position of an opinion is"),
        ('[[decisions.opinions]]\nwords = "a"\nbecause = "b"', 2, "because is nothing that an opinion has"),
    ],
)  # fmt: skip
def test_a_wrong_entry_is_refused_with_its_place(
    folder: Path, written: str, line: int, message: str
) -> None:
    (folder / "lesson.toml").write_text(f"format = 1\n{written}\n", encoding="utf-8")
    with pytest.raises(LessonError) as caught:
        Lesson.open(folder)
    assert f"lesson.toml:{line}:1: {message}" in str(caught.value)
    assert "`lineproof opinion`" in str(caught.value)


def test_hostile_words_stay_words(folder: Path) -> None:
    """Quotes, control characters and a thousand entries neither break the file nor match a sentence."""
    many = "".join(
        f'[[decisions.opinions]]\nwords = "\\u001b[31m \\" ] = {n}"\nposition = "{n:016x}"\n' for n in range(1000)
    )  # fmt: skip
    (folder / "lesson.toml").write_text(f"format = 1\n{many}", encoding="utf-8")
    Lesson.open(folder).mark_opinion(LIE)
    assert len(read_opinions(Lesson.open(folder).settings.decisions)) == 1001
    proof = proved(folder)
    assert answer(proof).opinions == 1
    assert len(proof.newly_gone) == 1000


@pytest.mark.parametrize(
    ("one", "other", "whether"),
    [
        ("White is better.", "white  is\nbetter!", True),
        ("“White is better.”", "White is better", True),
        ("White is better.", "White is better here.", False),
        ("Nf3 is best.", "nf3 is best", True),
    ],
)
def test_what_counts_as_the_same_words(one: str, other: str, whether: bool) -> None:
    assert (fingerprint(one) == fingerprint(other)) == whether


def test_entries_that_say_the_same_are_one() -> None:
    entry = {"words": "I like it.", "position": "00000000000000ff"}
    assert read_opinions({"opinions": [entry, dict(entry)]}) == (Opinion("I like it.", "", 255),)
