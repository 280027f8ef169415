"""The opening answer: its counts add up, and its sentences are English."""

from __future__ import annotations

import dataclasses

import pytest

from lineproof.claims import Outcome
from lineproof.facade import Lesson, Proof
from lineproof.proof import Change
from lineproof.report import Answer, answer, changed
from lineproof.report.counted import counted, listed
from lineproof.report.located import groups, located

NOTHING = Answer(*[0] * 12)


def said(**counts: int) -> tuple[str, ...]:
    return dataclasses.replace(NOTHING, **counts).sentences_said()


def test_the_sentences_of_a_usual_run() -> None:
    assert said(
        claims=52, sentences=58, sentences_checked=41, holds=47, fails=3, unsettled=2, one_off=1,
        left_alone=12, not_understood=4, other_language=1,
    ) == (
        "52 claims in 41 sentences were checked: 47 hold, 3 fail, 2 are unsettled.",
        "Of the 2 unsettled, 1 is only one band or one mark off and search could not settle 1.",
        "12 sentences were left alone, 4 were not understood, 1 is in another language.",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("counts", "sentences"),
    [
        (
            {"claims": 1, "sentences_checked": 1, "fails": 1},
            ("1 claim in 1 sentence was checked: it fails.",),
        ),
        (
            {"claims": 2, "sentences_checked": 1, "holds": 2},
            ("2 claims in 1 sentence were checked: both hold.",),
        ),
        (
            {"claims": 9, "glyphs": 4, "sentences_checked": 3, "holds": 9},
            ("9 claims were checked, 5 in 3 sentences and 4 glyphs: all hold.",),
        ),
        ({"claims": 1, "glyphs": 1, "holds": 1}, ("1 glyph was checked: it holds.",)),
        (
            {"claims": 3, "sentences_checked": 3, "holds": 1, "fails": 1, "unsettled": 1},
            (
                "3 claims in 3 sentences were checked: 1 holds, 1 fails, 1 is unsettled.",
                "Search could not settle it.",
            ),
        ),
        (
            {"claims": 2, "sentences_checked": 2, "holds": 1, "unsettled": 1, "want_games": 1},
            (
                "2 claims in 2 sentences were checked: 1 holds, 1 is unsettled.",
                "Only more games could settle it.",
            ),
        ),
        (
            {"claims": 4, "sentences_checked": 4, "unsettled": 4, "one_off": 1, "want_games": 2},
            (
                "4 claims in 4 sentences were checked: all are unsettled.",
                "Of the 4 unsettled, 1 is only one band or one mark off, search could not settle 1 and only more games could settle 2.",
            ),
        ),
        (
            {"claims": 2, "sentences_checked": 2, "unsettled": 2, "one_off": 2},
            (
                "2 claims in 2 sentences were checked: both are unsettled.",
                "The unsettled ones are only one band or one mark off.",
            ),
        ),
        (
            {"claims": 1, "sentences_checked": 1, "unsettled": 1, "one_off": 1},
            (
                "1 claim in 1 sentence was checked: it is unsettled.",
                "The unsettled one is only one band or one mark off.",
            ),
        ),
        (
            {"sentences": 1, "left_alone": 1},
            ("Nothing was found that can be checked.", "1 sentence was left alone."),
        ),
        (
            {"sentences": 1, "other_language": 1},
            ("Nothing was found that can be checked.", "1 sentence is in another language."),
        ),
        (
            {"claims": 1, "sentences_checked": 1, "holds": 1, "in_part": 1},
            (
                "1 claim in 1 sentence was checked: it holds.",
                "1 checked sentence was read only in part.",
            ),
        ),
        (
            {"claims": 1234, "sentences_checked": 1000, "holds": 1234},
            ("1,234 claims in 1,000 sentences were checked: all hold.",),
        ),
        ({}, ("There are no words and no glyphs to check.",)),
    ],
)
def test_singulars_and_plurals(counts: dict[str, int], sentences: tuple[str, ...]) -> None:
    assert said(**counts) == sentences


def test_the_counts_of_a_real_run_add_up(proof: Proof) -> None:
    counts = answer(proof)
    assert counts.claims == len(proof.findings) > 5
    assert counts.holds + counts.fails + counts.unsettled == counts.claims
    assert counts.sentences == (
        counts.sentences_checked + counts.left_alone + counts.not_understood + counts.other_language
    )
    assert counts.glyphs == 2  # 3... d5 $1 and 5... Ng8 $4
    assert counts.fails >= 2
    assert 0 <= counts.one_off <= counts.unsettled


def test_what_only_games_could_settle_is_not_laid_to_search() -> None:
    proof = Lesson.from_text("1. e4 {e5 is often played here.} e5 *", side="white").prove("sketch")
    counts = answer(proof)
    assert (counts.unsettled, counts.want_games, counts.open) == (1, 1, 0)
    assert "Only more games could settle it." in counts.sentences_said()
    assert [group.title for group in groups(located(proof))] == [
        "Unsettled: only more games could settle it"
    ]


def test_changes_are_sorted_into_turned_new_and_gone(proof: Proof) -> None:
    some = (
        Change("a", "holds", "fails", "the line around it was edited"),
        Change("b", "", "holds", "new words"),
        Change("c", "", "fails", "new words"),
        Change("d", "fails", "", "the words are gone"),
    )
    what = changed(dataclasses.replace(proof, changes=some))
    assert (len(what.turned), len(what.new), len(what.gone)) == (1, 2, 1)
    assert what.said == "Since the last run 1 claim turned, 2 claims are new and 1 claim is gone."
    assert not changed(dataclasses.replace(proof, changes=()))


def test_a_lesson_without_words_has_an_answer_too() -> None:
    counts = answer(Lesson.from_text("1. e4 e5 *").prove("sketch"))
    assert counts.claims == 0
    assert counts.checked == "There are no words and no glyphs to check."


def test_counts_and_lists_in_words() -> None:
    assert counted(0, "claim") == "0 claims"
    assert listed(()) == ""
    assert listed(("a",)) == "a"
    assert listed(("a", "b", "c")) == "a, b and c"


def test_every_outcome_is_in_the_real_run(proof: Proof) -> None:
    """The other tests of the reports rest on it."""
    assert proof.count(Outcome.HOLDS) and proof.count(Outcome.FAILS)
