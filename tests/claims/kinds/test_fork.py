"""Forks. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge

FRIED = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 {%s} Kxf7 *"


@pytest.mark.parametrize(
    "words",
    [
        "The knight forks the queen and the rook.",
        "Now the knight on f7 forks the queen on d8 and the rook on h8.",
        "Nxf7 forks his queen and rook.",
        "This is a fork.",
        "We fork queen and rook.",
        "White forks the queen and the rook with 6. Nxf7.",
    ],
)
def test_a_true_fork_holds(judge: Judge, words: str) -> None:
    finding = judge(FRIED % words)
    assert finding.claim.kind == "fork"
    assert finding.outcome is Outcome.HOLDS
    assert finding.judgement.marks[0].squares == ("f7",)


@pytest.mark.parametrize(
    ("words", "missing"),
    [
        ("The knight forks the king and the queen.", "the king on e8"),
        ("The knight forks the queen and the knight on d5.", "the knight on d5"),
    ],
)
def test_a_false_fork_fails_and_says_what_is_not_attacked(
    judge: Judge, words: str, missing: str
) -> None:
    finding = judge(FRIED % words)
    assert finding.outcome is Outcome.FAILS
    assert missing in finding.because
    assert (
        finding.judgement.instead == "The knight on f7 attacks the queen on d8 and the rook on h8."
    )


def test_a_protected_piece_of_no_more_worth_is_no_target(judge: Judge) -> None:
    # near miss: the knight attacks bishop and knight, but both are protected
    setup = "4k3/1p3p2/2n3b1/4N3/8/8/8/4K3 w - - 0 1"
    finding = judge("{The knight on e5 forks the knight and the bishop.} 1. Kd2 *", setup=setup)
    assert finding.outcome is Outcome.FAILS
    assert "protected" in finding.because


def test_a_piece_that_only_the_other_target_guards_is_a_target(judge: Judge) -> None:
    # the queen alone guards the knight; with a pawn beside her it is protected
    setup = "4k3/8/3q4/8/4N3/6n1/8/4K3 w - - 0 1"
    words = "{The knight on e4 forks the queen and the knight.} 1. Kf2 *"
    finding = judge(words, setup=setup)
    assert finding.outcome is Outcome.HOLDS
    guarded = judge(words, setup="4k3/8/3q4/8/4N2p/6n1/8/4K3 w - - 0 1")
    assert guarded.outcome is Outcome.FAILS
    assert "protected" in guarded.because


def test_a_piece_that_the_king_guards_is_no_target(judge: Judge) -> None:
    # near miss: the king is a target too, and guards the bishop
    setup = "8/4k3/3b4/5N2/8/8/8/4K3 b - - 0 1"
    finding = judge("{The knight on f5 forks the king and the bishop.} 1... Kd7 *", setup=setup)
    assert finding.outcome is Outcome.FAILS


def test_a_pawn_is_a_target_only_when_named_and_unprotected(judge: Judge) -> None:
    setup = "4k3/8/2p5/4N3/6r1/8/8/4K3 w - - 0 1"
    named = judge("{The knight on e5 forks the pawn on c6 and the rook.} 1. Kd2 *", setup=setup)
    assert named.outcome is Outcome.HOLDS
    unnamed = judge(
        "1. Kd2 Kf8 2. Ke2 {The knight on e5 forks the rook and the king.} *", setup=setup
    )
    assert unnamed.outcome is Outcome.FAILS


def test_whether_it_pays_is_a_second_finding(judge: Judge) -> None:
    setup = "r3k3/8/8/3N4/8/8/8/4K3 w - - 0 1"
    finding = judge("1. Nc7+ {The knight forks the king and the rook.} *", setup=setup)
    assert finding.outcome is Outcome.HOLDS
    assert (
        finding.judgement.second
        == "It pays: best play wins 5 pawns for White; the rook on a8 falls."
    )
    assert finding.evidence().startswith("1... K")
    assert finding.evidence().endswith(" 2. Nxa8")


def test_no_fork_is_read_where_it_is_denied_or_only_wished_for() -> None:
    from tests.claims.conftest import claims_of

    (denial,) = claims_of(FRIED % "The knight does not fork the queen and the rook.")
    assert denial.negated
    assert not claims_of(FRIED % "The knight would fork the queen and the rook.")
    assert not claims_of(FRIED % "If the knight forks the queen and the rook, we are happy.")


def test_a_fork_by_another_piece_is_asked_of_that_piece(judge: Judge) -> None:
    by_bishop = judge(FRIED % "The queen and the rook are forked by the bishop on c4.")
    assert by_bishop.outcome is Outcome.FAILS
    assert (
        judge(FRIED % "The queen and the rook are forked by the knight on f7.").outcome
        is Outcome.HOLDS
    )


def test_squares_name_what_stands_on_them(judge: Judge) -> None:
    finding = judge(FRIED % "The knight forks d8 and h8.")
    assert finding.outcome is Outcome.HOLDS
