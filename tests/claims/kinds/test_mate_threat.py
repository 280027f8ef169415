"""Mate threats: what happens if the opponent passes."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

SCHOLAR = "1. e4 e5 2. Qh5 Nc6 3. Bc4 {%s} g6 *"


@pytest.mark.parametrize(
    "words",
    [
        "White threatens mate.",
        "White threatens mate on f7.",
        "The threat is Qxf7 mate.",
        "This threatens mate.",
        "We threaten Qxf7 mate.",
    ],
)
def test_a_true_threat_holds(judge: Judge, words: str) -> None:
    finding = judge(SCHOLAR % words)
    assert finding.outcome is Outcome.HOLDS
    assert "Qxf7" in finding.because


def test_a_threat_on_another_square_fails(judge: Judge) -> None:
    assert judge(SCHOLAR % "White threatens mate on e5.").outcome is Outcome.FAILS


def test_a_threat_of_another_move_fails(judge: Judge) -> None:
    assert judge(SCHOLAR % "The threat is Qxe5 mate.").outcome is Outcome.FAILS


def test_near_miss_a_defended_square_is_no_threat(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. Qh5 Nc6 3. Bc4 Qe7 4. Nf3 {White threatens mate.} d6 *")
    assert finding.outcome is Outcome.FAILS


def test_a_side_in_check_is_not_asked(judge: Judge) -> None:
    finding = judge("1. e4 e5 2. f4 Qh4+ {Black threatens mate.} 3. g3 *", taught="black")
    assert finding.outcome is Outcome.UNSETTLED


@pytest.mark.parametrize(
    "words",
    ["White does not threaten mate.", "No mate is threatened.", "There is no threat of mate."],
)
def test_a_denied_threat_fails_where_mate_is_threatened(judge: Judge, words: str) -> None:
    finding = judge(SCHOLAR % words)
    assert finding.claim.negated
    assert finding.outcome is Outcome.FAILS


def test_a_threat_that_is_gone_is_read_as_denied(judge: Judge) -> None:
    assert judge(SCHOLAR % "White no longer threatens mate.").outcome is Outcome.FAILS
    quiet = "1. e4 e5 2. Qh5 Nc6 3. Bc4 Qe7 4. Nf3 {White no longer threatens mate.} *"
    assert judge(quiet).outcome is Outcome.HOLDS


def test_a_threat_of_mate_in_three_is_a_threat_of_mate(judge: Judge) -> None:
    setup = "8/8/8/8/5K2/1Q6/5k2/8 b - - 0 1"
    assert judge("{White threatens mate.} 1... Kg1 *", setup=setup).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Bc4 threatens mate.",
        "Our queen threatens mate on f7.",
        "We are threatening checkmate.",
        "Mate on f7 is threatened.",
        "Mate is in the air on f7.",
        "There is already a threat of mate.",
        "White renews the threat of mate.",
        "Qxf7 mate is the threat.",
        "This creates a threat of mate on f7.",
        "With mate threatened on f7.",
    ],
)
def test_a_threat_of_mate_is_said_in_many_ways(judge: Judge, words: str) -> None:
    finding = judge(SCHOLAR % words)
    assert (finding.claim.kind, finding.claim.side) == ("mate-threat", "white")
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    ["White will threaten mate.", "White never threatens mate.", "White was threatening mate."],
)
def test_a_threat_of_another_time_is_not_read(words: str) -> None:
    from tests.claims.conftest import claims_of

    assert not claims_of(SCHOLAR % words)


OWN = "6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1"


def test_the_side_to_move_threatens_what_it_can_do_at_once(judge: Judge) -> None:
    assert judge("{White threatens mate.} 1. Ra8# *", setup=OWN).outcome is Outcome.HOLDS
    safe = OWN.replace("6k1/5ppp/8", "1r4k1/5pp1/7p")
    assert judge("{White threatens mate.} 1. Kf1 *", setup=safe).outcome is Outcome.FAILS


def test_two_mates_are_two_threats() -> None:
    text = "1. e4 e5 2. Nc3 Nf6 3. Bc4 Nxe4 4. Qh5 {Two mates hang in the air, one on f7 and one on e5.} Nd6 *"
    found = [(c.kind, c.params["square"]) for c in claims_of(text)]
    assert found == [("mate-threat", "f7"), ("mate-threat", "e5")]
