"""Works now, or not yet. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.works_now import KIND
from tests.claims.conftest import Scripted, claims_of
from tests.claims.kinds.sketching import kinds_of, sketched

TWO_KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} Bc5 *"


@pytest.mark.parametrize(
    "words",
    [
        "Now Nxf7 is on.",
        "Now Nxf7 works.",
        "White can now play Nxf7.",
        "Only now does Nxf7 work.",
        "It is time for d5.",
        "At last Nxf7 is possible.",
    ],
)
def test_a_move_that_is_sensible_works(words: str) -> None:
    assert sketched("works-now", TWO_KNIGHTS % words).outcome is Outcome.HOLDS


def test_whether_it_worked_before_is_a_second_finding() -> None:
    second = sketched("works-now", TWO_KNIGHTS % "It is time for d5.").judgement.second
    assert second is not None and second.startswith("A move earlier d5 would")


def test_a_move_that_loses_does_not_work() -> None:
    early = "1. e4 e5 2. Nf3 Nc6 {%s} 3. Bc4 *"
    assert sketched("works-now", early % "Now Nxe5 is on.").outcome is Outcome.FAILS
    for words in ("Nxe5 does not work yet.", "It is too early for Nxe5.", "Nxe5 is not on yet."):
        assert sketched("works-now", early % words).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "points", "expected"),
    [
        ("Now d4 is on.", 55, Outcome.HOLDS),
        ("Now d4 is on.", 54, Outcome.UNSETTLED),
        ("Now d4 is on.", 46, Outcome.UNSETTLED),
        ("Now d4 is on.", 45, Outcome.FAILS),
        ("d4 does not work yet.", 55, Outcome.FAILS),
        ("d4 does not work yet.", 45, Outcome.HOLDS),
    ],
)
def test_five_points_work_and_fifteen_do_not(words: str, points: int, expected: Outcome) -> None:
    (claim,) = claims_of("1. e4 e5 {%s} *" % words)
    ask = Scripted({"g1f3": 60, "d2d4": points}, "g1f3")
    assert KIND.judge(claim, ask).outcome is expected


@pytest.mark.parametrize(
    "words",
    ["Now White is better.", "It is time for tea.", "Now Nxf7 could work.", "Nxf7 is on my list."],
)
def test_other_moments_are_not_read(words: str) -> None:
    assert "works-now" not in kinds_of(TWO_KNIGHTS % words)
