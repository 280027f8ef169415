"""Prevention: a move that is not legal any more, or would be a mistake. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.prevents import check
from tests.claims.conftest import Scripted, claims_of
from tests.claims.kinds.sketching import kinds_of, sketched

PHILIDOR = "1. e4 e5 2. Nf3 d6 3. h3 {%s} Nf6 *"


@pytest.mark.parametrize(
    "words",
    [
        "This prevents Bg4.",
        "h3 keeps the bishop off g4.",
        "White stops Bg4 once and for all.",
        "h3 stops Black from playing Bg4.",
        "The pawn on h3 keeps the knight out of g4.",
        "To prevent Bg4.",
        "h3 is directed against Bg4.",
        "h3 does not allow Bg4.",
        "Bg4 is prevented.",
        "h3 takes g4 away from the bishop.",
    ],
)
def test_a_square_that_is_guarded_is_kept_free(words: str) -> None:
    finding = sketched("prevents", PHILIDOR % words)
    assert finding.claim.side == "white"
    assert finding.outcome is Outcome.HOLDS


def test_a_move_that_stays_possible_is_not_prevented() -> None:
    finding = sketched("prevents", PHILIDOR % "h3 stops Nf6.")
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.instead is not None and "still possible" in finding.judgement.instead


def test_a_move_that_is_no_longer_legal_is_prevented_without_a_search() -> None:
    pinned = "1. e4 e5 2. Nf3 d6 3. Bb5+ {This stops Nf6.} c6 *"
    finding = sketched("prevents", pinned)
    assert finding.outcome is Outcome.HOLDS
    assert finding.nodes == 0


@pytest.mark.parametrize(
    ("points", "expected"),
    # White's points after Nf6: best is 50, so these cost Black 5, 6, 11 and 12
    [
        (55, Outcome.FAILS),
        (56, Outcome.UNSETTLED),
        (61, Outcome.UNSETTLED),
        (62, Outcome.HOLDS),
    ],
)
def test_prevented_is_what_would_be_a_mistake(points: int, expected: Outcome) -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 d6 {The pawn on e5 waits.} 3. h3 {h3 stops Nf6.} *")
    ask = Scripted({"b8c6": 50, "g8f6": points}, "b8c6")
    found = check(claim, ask)
    if expected is Outcome.HOLDS:  # before h3 it cost as much: then h3 has not changed it
        assert found.outcome is Outcome.UNSETTLED
        assert "before as well" in found.because
    else:
        assert found.outcome is expected


def test_a_denial_turns_the_answer() -> None:
    denied = "h3 does not prevent Bg4."
    assert sketched("prevents", PHILIDOR % denied).outcome is Outcome.FAILS


def test_nothing_prevents_what_is_safe() -> None:
    assert sketched("prevents", PHILIDOR % "Nothing prevents Nf6.").outcome is Outcome.HOLDS
    assert sketched("prevents", PHILIDOR % "Nothing prevents Bg4.").outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "This prevents the worst.",
        "White keeps the bishop.",
        "h3 would have stopped me from sleeping.",
        "White stops h3.",
    ],
)
def test_other_stops_are_not_read(words: str) -> None:
    assert "prevents" not in kinds_of(PHILIDOR % words)


@pytest.mark.parametrize(
    "words",
    [
        "h3 stops the bishop from coming to g4.",
        "h3 takes the g4 square away from the bishop.",
        "The point of h3 is to stop Bg4.",
        "It is a precaution against Bg4.",
        "g4 is denied to the bishop.",
        "h3 keeps the bishop out of g4.",
        "What does h3 prevent? Bg4.",
    ],
)
def test_prevention_is_said_in_many_ways(words: str) -> None:
    assert [c.side for c in claims_of(PHILIDOR % words) if c.kind == "prevents"] == ["white"]


def test_to_keep_a_piece_out_is_not_to_defend_it() -> None:
    assert kinds_of(PHILIDOR % "h3 keeps the bishop out of g4.") == ["prevents"]
