"""Outposts. Definition: Nimzowitsch, My System (from memory), made exact in the kind."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

SVESHNIKOV = "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 d6 {%s} 7. Bg5 *"


@pytest.mark.parametrize(
    "words",
    [
        "d5 is an outpost for White's knight.",
        "White has an outpost on d5.",
        "d5 is an ideal outpost for the knight.",
        "White has a strong knight outpost on d5.",
        "This gives White an outpost on d5.",
        "White has an outpost.",
        "There is an outpost on d5 for White.",
    ],
)
def test_a_square_that_no_enemy_pawn_can_attack_is_an_outpost(judge: Judge, words: str) -> None:
    finding = judge(SVESHNIKOV % words)
    assert (finding.claim.kind, finding.claim.side) == ("outpost", "white")
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("f5 is an outpost for White.", "The pawn on g7 attacks f5 or can come to attack it."),
        ("Black has an outpost on d4.", "The pawn on c2 attacks d4 or can come to attack it."),
        ("The knight on b5 has an outpost.", "The pawn on a7"),
        ("d3 is an outpost for White.", "not on the fourth to seventh rank"),
    ],
)
def test_other_squares_are_not(judge: Judge, words: str, why: str) -> None:
    finding = judge(SVESHNIKOV % words)
    assert finding.outcome is Outcome.FAILS
    assert why in finding.because


def test_whether_a_pawn_protects_it_is_a_second_finding(judge: Judge) -> None:
    finding = judge(SVESHNIKOV % "d5 is an outpost for White.")
    assert finding.judgement.second == "The pawn on e4 protects it."
    setup = "4k3/8/8/3N4/8/8/8/4K3 w - - 0 1"
    alone = judge("{The knight on d5 stands on an outpost.} 1. Kd2 *", setup=setup)
    assert alone.judgement.second == "No pawn of White protects it."


def test_a_pawn_that_has_gone_past_drives_nobody_away(judge: Judge) -> None:
    words = "{The knight on d5 has an outpost.} 1. Kd2 *"
    behind = "4k3/2p5/8/3N4/4P3/8/8/4K3 w - - 0 1"
    past = "4k3/8/8/2pN4/4P3/8/8/4K3 w - - 0 1"
    assert judge(words, setup=behind).outcome is Outcome.FAILS
    assert judge(words, setup=past).outcome is Outcome.HOLDS


def test_a_denial(judge: Judge) -> None:
    finding = judge(SVESHNIKOV % "White has no outpost on d5.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    ["d5 would be an outpost.", "Our club is an outpost of the chess world."],
)
def test_left_unread(words: str) -> None:
    assert not claims_of(SVESHNIKOV % words)
