"""Material given back in the line shown. Values: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of


def test_a_pawn_given_back_in_the_line_shown(judge: Judge) -> None:
    # material: Black has a rook and a pawn against a rook
    setup = "r3k3/8/8/8/8/4p3/8/R3K3 b Qq - 0 1"
    text = "1... e2 {%s} 2. Kxe2 Kd7 3. Rd1+ Ke6 *"
    for words in (
        "Black gives the pawn back.",
        "Black returns the pawn.",
        "This gives back the pawn.",
        "Black hands back the pawn.",
        "The pawn is returned.",
    ):
        finding = judge(text % words, setup=setup, kind="gives-back")
        assert finding.claim.side == "black"
        assert finding.outcome is Outcome.HOLDS


def test_near_miss_a_side_that_was_not_ahead_gives_nothing_back(judge: Judge) -> None:
    setup = "r3k3/4p3/8/8/8/4p3/5PP1/R3K3 b Qq - 0 1"
    finding = judge("1... e2 {Black gives the pawn back.} 2. Kxe2 Kd7 *", setup=setup)
    assert finding.outcome is Outcome.FAILS
    assert "was not ahead" in finding.because


def test_a_pawn_kept_is_not_given_back(judge: Judge) -> None:
    setup = "r3k3/4p3/8/8/8/8/8/R3K3 b Qq - 0 1"
    text = "1... Kd7 {%s} 2. Rd1+ Ke6 *"
    assert judge(text % "Black gives back the pawn.", setup=setup).outcome is Outcome.FAILS
    denial = judge(text % "Black does not give back the pawn.", setup=setup)
    assert denial.claim.negated
    assert denial.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Black gives the move back.",
        "Black goes back.",
        "If Black gives the pawn back, all is well.",
        "Black returns to e8.",
    ],
)
def test_other_returns_are_not_read(words: str) -> None:
    setup = "r3k3/4p3/8/8/8/8/8/R3K3 b Qq - 0 1"
    claims = claims_of("1... Kd7 {%s} 2. Rd1+ *" % words, setup=setup)
    assert not [c for c in claims if c.kind == "gives-back"]


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("Black hands one of the pawns straight back with d5.", Outcome.HOLDS),
        ("With d5 Black returns a pawn.", Outcome.HOLDS),
        ("He tosses a pawn back.", Outcome.HOLDS),
        ("With d5 Black returns his queen.", Outcome.FAILS),
    ],
)
def test_the_move_that_gives_it_back_may_be_named(
    judge: Judge, words: str, outcome: Outcome
) -> None:
    text = "1. e4 e5 2. d4 exd4 3. c3 dxc3 4. Bc4 cxb2 5. Bxb2 d5 {%s} 6. Bxd5 Nf6 *"
    assert judge(text % words, kind="gives-back").outcome is outcome
