"""Lead in development. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome, Spot
from lineproof.claims.kinds.development_lead import tempi
from tests.claims.conftest import Judge, lesson

# White: Nf3, Bc4, Nc3, castled, e-pawn (5); Black: e-pawn (1) and an exposed queen (0)
GREEDY = "1. e4 e5 2. Nf3 Qf6 3. Bc4 Qg6 4. Nc3 Qxg2 5. Rg1 Qh3 {%s} *"


def test_tempi_are_counted_as_defined() -> None:
    place = lesson("1. e4 e5 2. Nf3 Qf6 3. Bc4 Qg6 4. O-O Qxe4 *").lines()[0]
    assert tempi(Spot.of(place), "white")[0] == 4  # knight, bishop, castling, e-pawn
    assert tempi(Spot.of(place), "black")[0] == 1  # e-pawn; the queen counts none


def test_a_captured_knight_no_longer_counts() -> None:
    place = lesson("1. e4 e5 2. Nf3 Nc6 3. Nxe5 Nxe5 *").lines()[0]
    assert tempi(Spot.of(place), "white")[0] == 1
    assert tempi(Spot.of(place), "black")[0] == 2


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White leads in development.", Outcome.HOLDS),
        ("Black is far behind in development.", Outcome.HOLDS),
        ("White is three tempi ahead in development.", Outcome.HOLDS),
        ("White is four tempi ahead in development.", Outcome.HOLDS),  # within one
        ("White is five tempi ahead in development.", Outcome.FAILS),
        ("Black leads in development.", Outcome.FAILS),
        ("Development is about level.", Outcome.FAILS),
    ],
)
def test_a_lead_is_two_and_n_is_within_one(judge: Judge, words: str, expected: Outcome) -> None:
    finding = judge(GREEDY % words)
    assert finding.judgement.numbers["lead"] in {3, -3}
    assert finding.outcome is expected


def test_near_miss_one_tempo_is_no_lead(judge: Judge) -> None:
    assert judge("1. e4 e5 2. Nf3 {White leads in development.} *").outcome is Outcome.FAILS


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White is ahead in development.", Outcome.HOLDS),
        ("Black lags behind in development.", Outcome.HOLDS),
        ("We are three pieces ahead in development.", Outcome.HOLDS),
        ("This gives White a lead in development.", Outcome.HOLDS),
        ("We're three tempi in front with our development.", Outcome.HOLDS),
        ("Black isn't behind in development.", Outcome.FAILS),
        ("Black does not lead in development.", Outcome.HOLDS),
        ("Neither side is ahead in development.", Outcome.FAILS),
    ],
)
def test_a_lead_is_said_and_denied_in_many_ways(
    judge: Judge, words: str, expected: Outcome
) -> None:
    finding = judge(GREEDY % words)
    assert finding.claim.kind == "development-lead"
    assert finding.outcome is expected


@pytest.mark.parametrize(
    "words", ["White would lead in development.", "White was ahead in development."]
)
def test_a_lead_of_another_time_is_not_read(words: str) -> None:
    from tests.claims.conftest import claims_of

    assert not claims_of(GREEDY % words)
