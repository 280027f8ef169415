"""Contradictions: pairs that cannot both be true are found, on whatever road; what can both be true is left in peace."""

from __future__ import annotations

import pytest

from lineproof.claims import read_lesson
from lineproof.facade import Lesson
from lineproof.proof import Effort, EvidenceStore, settle
from lineproof.proof.contradictions import RULES, Contradiction, contradictions

STORE = EvidenceStore(None)
TWO_ROADS = "1. e4 e5 2. Nf3 (2. Nc3 Nc6 3. Nf3 {%s}) 2... Nc6 3. Nc3 {%s} Nf6 *"
"""The same position by two roads."""


def found(movetext: str, setup: str | None = None) -> list[Contradiction]:
    head = f'[SetUp "1"]\n[FEN "{setup}"]\n\n' if setup else ""
    claims = read_lesson(Lesson.from_text(head + movetext, side="white")).claims
    assert len(claims) >= 2, [c.words for c in claims]
    return list(contradictions([settle(c, Effort.SKETCH, STORE) for c in claims]))


def rules(movetext: str, setup: str | None = None) -> list[str]:
    return [c.rule for c in found(movetext, setup)]


@pytest.mark.parametrize(
    ("one", "other", "rule"),
    [
        ("The position is level.", "White is clearly better.", "verdicts"),
        ("White is slightly better.", "Black is slightly better.", "verdicts"),
        ("White is winning.", "White is slightly better.", "verdicts"),
        ("White is better.", "Black is slightly better.", "verdicts"),
        ("White is two pawns up.", "Material is level.", "counts"),
        ("White is a pawn up.", "Black is a pawn up.", "counts"),
        ("The pawn on e5 is attacked once.", "The pawn on e5 is attacked twice.", "counts"),
        ("White leads in development.", "Black leads in development.", "counts"),
        ("The pawn on e5 is unprotected.", "The pawn on e5 is protected.", "denial"),
        ("The knight on c6 is pinned.", "The knight on c6 is not pinned.", "denial"),
        ("The position is open.", "The position is closed.", "opposites"),
        ("Black has lost the right to castle.", "Black can still castle.", "denial"),
    ],
)  # fmt: skip
def test_what_excludes_each_other_is_found_through_a_transposition(
    one: str, other: str, rule: str
) -> None:
    for first, second in ((one, other), (other, one)):
        pairs = found(TWO_ROADS % (first, second))
        assert [p.rule for p in pairs] == [rule], [p.why for p in pairs]
        assert pairs[0].transposed
        assert pairs[0].first.claim.start < pairs[0].second.claim.start


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("White is better.", "White is slightly better."),
        ("White is better.", "White is clearly better."),
        ("The position is roughly level.", "White is slightly better."),
        ("The position is unclear.", "White is slightly better."),
        ("The pawn on e5 is attacked once.", "The pawn on e5 is protected once."),
        ("White leads in development.", "White is three tempi ahead in development."),
        ("The knight on c6 is not pinned.", "The knight on f3 is pinned."),
        ("Material is level.", "White is clearly better."),
        ("Black cannot castle.", "Black can castle later, of course. White cannot castle."),
    ],
)
def test_near_miss_what_can_both_be_true_is_left_in_peace(one: str, other: str) -> None:
    assert rules(TWO_ROADS % (one, other)) == []


def test_words_about_two_positions_do_not_contradict() -> None:
    text = "1. e4 e5 {The position is level.} 2. Qh5 Nf6 {White is winning.} *"
    assert rules(text) == []


@pytest.mark.parametrize(
    ("one", "other", "rule"),
    [
        ("3. f4 is the best move.", "The best move is 3. Nf3.", "best move"),
        ("3. f4 is better than 3. Nf3.", "3. Nf3 is the best move.", "best move"),
        ("3. f4 is better than 3. Nf3.", "3. Nf3 is better than 3. f4.", "best move"),
        ("3. f4 is the only move.", "3. Nf3 is playable.", "only move"),
        ("3. f4 is the only move.", "3. Nf3 is a good move.", "only move"),
        ("3. f4 is a good move.", "3. f4 is a mistake.", "one move"),
        ("3. f4 is playable.", "3. f4 is a blunder.", "one move"),
    ],
)
def test_claims_of_moves_that_exclude_each_other(one: str, other: str, rule: str) -> None:
    text = "1. e4 e5 2. Nc3 (2. Nf3 Nf6 3. Nc3) 2... Nf6 {%s %s} 3. f4 *"
    assert rules(text % (one, other)) == [rule]


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("3. f4 is a good move.", "3. Nf3 is a good move."),
        ("3. f4 is the best move.", "3. Nf3 is playable."),
        ("3. f4 is one of the best moves.", "The best move is 3. Nf3."),
        ("3. f4 is a mistake.", "3. f4 is a blunder."),
        ("3. f4 is better than 3. Nf3.", "3. Nf3 is playable."),
        ("3. f4 is playable.", "3. f4 is a good move."),
    ],
)
def test_near_miss_moves_that_may_both_be_so(one: str, other: str) -> None:
    claims = "1. e4 e5 2. Nc3 Nf6 {%s %s} 3. f4 {Material is level.} *"
    assert rules(claims % (one, other)) == []


def test_glyphs_contradict_words() -> None:
    assert rules("1. e4 e5 2. Nc3 Nf6 3. f4 $18 {The position is level.} *") == ["verdicts"]
    assert rules("1. e4 e5 2. Nc3 Nf6 3. f4 $4 {Here f4 is the best move.} *") == ["one move"]


def test_a_move_that_loses_contradicts_a_verdict_after_it() -> None:
    text = "1. e4 e5 2. Nc3 Nf6 {3. f4 loses.} 3. f4 {%s} *"
    assert rules(text % "The position is level.") == ["verdicts"]
    assert rules(text % "Black is winning.") == []


def test_one_sentence_does_not_contradict_itself() -> None:
    assert rules("1. e4 e5 {White is slightly better, and White is clearly better.} *") == []


def test_verdicts_with_good_moves_between_contradict_and_with_a_mistake_they_do_not() -> None:
    good = "1. e4 e5 {The position is level.} 2. Nc3 $1 Nf6 $1 3. f4 {%s} *"
    plain = "1. e4 e5 {The position is level.} 2. Nc3 $1 Nf6%s 3. f4 $1 {White is winning.} *"
    assert rules((good % "White is winning.").replace("3. f4", "3. f4 $1")) == ["verdicts in line"]
    assert rules((good % "White is slightly better.").replace("3. f4", "3. f4 $1")) == []
    assert rules(good % "White is winning.") == []  # nobody calls 3. f4 good
    assert rules(plain % " $4") == []
    assert rules(plain % "") == []
    assert rules(plain % " $1") == ["verdicts in line"]


def test_castling_that_is_lost_and_castling_later() -> None:
    text = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 {%s} 4. O-O {%s} *"
    assert rules(text % ("White can never castle now.", "White has castled.")) == ["castling"]
    assert rules(text % ("Black can never castle now.", "White has castled.")) == []
    assert rules(text % ("White cannot castle yet.", "White has castled.")) == []
    both = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O {%s} Nf6 {%s} *"
    assert rules(both % ("White has castled.", "White can no longer castle.")) == []
    assert rules(both % ("White has castled.", "White can still castle.")) == ["castling"]


def test_won_and_level() -> None:
    text = "1. e3 d6 2. Qg4 Bxg4 {%s %s} *"
    assert rules(text % ("Black has won the queen.", "Material is level.")) == ["won and level"]
    won_back = "1. e4 d5 2. exd5 Nf6 3. d4 Nxd5 {%s %s} *"
    assert rules(won_back % ("Black has won the pawn back.", "Material is level.")) == []


def test_every_rule_is_documented_and_named_in_the_schema() -> None:
    from lineproof.report.schemas import schema

    shape = schema("proof")["properties"]["contradictions"]["items"]["properties"]
    assert shape["rule"]["enum"] == list(RULES)


def test_the_report_shows_both_places() -> None:
    from rich.console import Console

    from lineproof.report.html import html
    from lineproof.report.json import proof_json
    from lineproof.report.terminal import terminal

    text = TWO_ROADS % ("The position is level.", "White is winning.")
    proof = Lesson.from_text(text, name="two.pgn").prove("sketch")
    value = proof_json(proof)
    (pair,) = value["contradictions"]
    first, second = (f"two.pgn:1:{text.index(words) + 1}" for words in ("The position", "White is"))
    assert pair["places"] == [first, second]
    assert "The lesson reaches it by two roads." in pair["why"]
    assert "In one place the lesson contradicts itself." in value["answer"]["said"]
    said = terminal(proof, Console(width=80))
    part = said.split("What contradicts itself")[1]
    assert part.index(first) < part.index("The position is level") < part.index(second)
    page = html(proof)
    assert '<section id="contradicts"' in page
    assert page.count(second) >= 1


def test_a_sentence_that_is_the_authors_opinion_contradicts_nothing() -> None:
    text = TWO_ROADS % ("The position is level.", "White is winning.")
    lesson = Lesson.from_text(text)
    from dataclasses import replace

    opinions = {"opinions": [{"words": "White is winning."}]}
    marked = lesson.with_settings(replace(lesson.settings, decisions=opinions))
    assert marked.prove("sketch").contradictions == ()
