"""Verdicts, on either side of the bands' edges and by real search."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.verdict import check
from tests.claims.conftest import Judge, Scripted, claims_of


@pytest.mark.parametrize(
    ("words", "points", "expected"),
    [
        ("White is slightly better.", 55, Outcome.HOLDS),
        ("White is slightly better.", 54, Outcome.UNSETTLED),
        ("Black is slightly worse.", 64, Outcome.HOLDS),
        ("Black is slightly better.", 46, Outcome.UNSETTLED),
        ("Black is slightly better.", 45, Outcome.HOLDS),
        ("The position is level.", 44, Outcome.UNSETTLED),
        ("White is winning.", 85, Outcome.HOLDS),
        ("White is winning.", 64, Outcome.FAILS),
        ("Black is lost.", 85, Outcome.HOLDS),
        ("White has a clear advantage.", 65, Outcome.HOLDS),
        ("White has equalised.", 50, Outcome.HOLDS),
        ("He is clearly better.", 30, Outcome.HOLDS),  # White is taught: he is Black
    ],
)
def test_the_side_spoken_of_decides(words: str, points: int, expected: Outcome) -> None:
    (claim,) = claims_of("1. e4 e5 {%s} *" % words)
    assert claim.kind == "verdict"
    assert check(claim, Scripted({"g1f3": points}, "g1f3")).outcome is expected


@pytest.mark.parametrize(
    ("nag", "points", "expected"),
    [
        ("$10", 50, Outcome.HOLDS),
        ("$14", 60, Outcome.HOLDS),
        ("$15", 40, Outcome.HOLDS),
        ("$16", 70, Outcome.HOLDS),
        ("$17", 70, Outcome.FAILS),
        ("$18", 90, Outcome.HOLDS),
        ("$19", 10, Outcome.HOLDS),
        ("$13", 71, Outcome.FAILS),
    ],
)
def test_glyphs_are_verdicts(nag: str, points: int, expected: Outcome) -> None:
    (claim,) = claims_of(f"1. e4 e5 {nag} *")
    assert check(claim, Scripted({"g1f3": points}, "g1f3")).outcome is expected


@pytest.mark.parametrize(
    ("words", "points", "expected"),
    [
        ("White is not better.", 52, Outcome.HOLDS),
        ("White is not better.", 53, Outcome.FAILS),
        ("White isn't winning yet.", 84, Outcome.HOLDS),
        ("White isn't winning yet.", 85, Outcome.FAILS),
        ("White is not clearly better.", 64, Outcome.HOLDS),
        ("White is not clearly better.", 65, Outcome.FAILS),
    ],
)
def test_a_denied_verdict_is_the_other_way_round(
    words: str, points: int, expected: Outcome
) -> None:
    (claim,) = claims_of("1. e4 e5 {%s} *" % words)
    assert check(claim, Scripted({"g1f3": points}, "g1f3")).outcome is expected


def test_a_hedge_that_was_needed_is_said() -> None:
    (claim,) = claims_of("1. e4 e5 {The position is about equal.} *")
    judgement = check(claim, Scripted({"g1f3": 59}, "g1f3"))
    assert judgement.outcome is Outcome.HOLDS
    assert "a hedge allows" in judgement.because


def test_a_queen_for_nothing_is_winning(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Qh5 Nf6 3. Qxe5+ Be7 4. Qxe7+ Qxe7 {Black is winning.} *")
    assert finding.outcome is Outcome.HOLDS


def test_the_wrong_side_fails_with_a_true_wording(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Qh5 Nf6 3. Qxe5+ Be7 4. Qxe7+ Qxe7 {White is winning.} *")
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.instead is not None and finding.judgement.instead.startswith(
        "Black is winning"
    )


@pytest.mark.parametrize(
    "words",
    [
        "White would be winning.",
        "If Black errs, White is winning.",
        "Is White better?",
        "Many players think White is winning.",
        "White is winning, unless Black finds a defence.",
        "White is almost winning.",
    ],
)
def test_near_miss_negation_condition_question_and_quotation_are_no_verdicts(words: str) -> None:
    assert not claims_of("1. e4 e5 {%s} *" % words)


@pytest.mark.parametrize(
    ("words", "points", "expected"),
    [
        ("The position is not level.", 54, Outcome.FAILS),
        ("The position is not level.", 55, Outcome.HOLDS),
        ("The position is not level.", 44, Outcome.HOLDS),
        ("The game is no longer unclear.", 71, Outcome.HOLDS),
        ("The game is no longer unclear.", 70, Outcome.FAILS),
        ("Black has not equalised.", 45, Outcome.FAILS),
        ("White is no longer better.", 52, Outcome.HOLDS),
        ("White is clearly better.", 60, Outcome.UNSETTLED),  # the adverb is the degree
        ("Black's position is winning.", 15, Outcome.HOLDS),
        ("2. Nf3 gives White a slight edge.", 60, Outcome.HOLDS),
        ("This gives White an advantage.", 53, Outcome.HOLDS),
        ("White keeps a small plus.", 55, Outcome.HOLDS),
        ("White obtains a clear advantage.", 65, Outcome.HOLDS),
        ("The advantage is with White.", 53, Outcome.HOLDS),
    ],
)
def test_more_ways_to_say_it(words: str, points: int, expected: Outcome) -> None:
    (claim,) = claims_of("1. e4 e5 {%s} 2. Nf3 *" % words)
    assert claim.kind == "verdict"
    assert check(claim, Scripted({"g1f3": points, "b8c6": points}, "g1f3")).outcome is expected


@pytest.mark.parametrize("words", ["White had the advantage.", "White can get an advantage."])
def test_what_was_or_can_be_is_no_verdict(words: str) -> None:
    assert not claims_of("1. e4 e5 {%s} 2. Nf3 *" % words)
