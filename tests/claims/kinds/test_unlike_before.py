"""Unlike before: what worked elsewhere does not work here. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.unlike_before import check
from tests.claims.conftest import Scripted, claims_of
from tests.claims.kinds.sketching import kinds_of, sketched

# the Petroff allows the capture that loses a piece after 2... Nc6 (any handbook, from memory)
LINES = "1. e4 e5 2. Nf3 d6 (2... Nc6 3. Nxe5 {%s} Nxe5) (2... Nf6 3. Nxe5) 3. d4 *"


@pytest.mark.parametrize(
    "words",
    [
        "This time Nxe5 is a mistake.",
        "Unlike after 2... Nf6, Nxe5 loses.",
        "This time Nxe5 does not work.",
        "Nxe5 is bad, unlike in the line with 2... Nf6.",
        "Unlike before, Nxe5 fails.",
        "In contrast to the line with 2... Nf6, Nxe5 backfires.",
        "Nxe5 is out of the question this time.",
    ],
)
def test_a_capture_that_works_only_elsewhere_holds(words: str) -> None:
    finding = sketched("unlike-before", LINES % words)
    assert finding.outcome is Outcome.HOLDS
    assert "2... Nf6 3. Nxe5" in finding.because


def test_the_wrong_way_round_fails() -> None:
    assert sketched("unlike-before", LINES % "This time Nxe5 works.").outcome is Outcome.FAILS


@pytest.mark.parametrize(
    ("points", "expected"),
    [(45, Outcome.HOLDS), (46, Outcome.UNSETTLED), (54, Outcome.UNSETTLED), (55, Outcome.FAILS)],
)
def test_what_fails_here_costs_fifteen(points: int, expected: Outcome) -> None:
    (claim,) = claims_of(LINES % "This time Nxe5 is a mistake.")

    class There(Scripted):
        def move(self, spot, uci):  # type: ignore[no-untyped-def]
            safe = uci == "f3e5" and spot.moves[-1] == "g8f6"
            return self._line(uci, 60 if safe else self.points[uci])

    ask = There({"d2d4": 60, "f3e5": points}, "d2d4")
    assert check(claim, ask).outcome is expected


def test_without_another_place_there_is_nothing_to_compare() -> None:
    alone = "1. e4 e5 2. Nf3 Nc6 3. Nxe5 {This time Nxe5 is a mistake.} *"
    assert sketched("unlike-before", alone).outcome is Outcome.UNSETTLED


def test_what_hits_nothing_did_elsewhere() -> None:
    # Qb3 looks at b7 in both lines; only without ...e6 does it look at f7 as well, which the king protects
    text = "1. d4 d5 2. c4 (2. Nc3 Nc6 3. e4 e5 4. exd5 Qxd5 {The queen is out.} 5. Nxd5) 2... c6 3. Nc3 {This time Nc3 hits nothing.} *"
    assert sketched("unlike-before", text).outcome is Outcome.FAILS
    met = "1. e4 e5 (1... d5 2. exd5 Qxd5 3. Nc3) 2. Nc3 {This time Nc3 hits nothing.} *"
    assert sketched("unlike-before", met).outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "This time he is late.",
        "This time White is better.",
        "Nxe5 is a mistake.",
        "Unlike in the main line, White stands better.",
    ],
)
def test_other_times_are_not_read(words: str) -> None:
    assert "unlike-before" not in kinds_of(LINES % words)
