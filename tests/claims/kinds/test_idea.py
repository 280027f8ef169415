"""Ideas: the move that is prepared must make sense. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.idea import check
from tests.claims.conftest import Scripted, claims_of
from tests.claims.kinds.sketching import kinds_of, sketched

GIUOCO = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 {%s} Nf6 5. d4 *"


@pytest.mark.parametrize(
    "words",
    [
        "White prepares d4.",
        "c3 prepares d4.",
        "The idea is to play d4.",
        "The idea of c3 is d4.",
        "With the idea of d4.",
        "c3 paves the way for d4.",
        "White plans to play d4 next.",
        "Preparing d4.",
        "This move prepares d4.",
        "d4 is the idea.",
    ],
)
def test_a_sensible_plan_holds(words: str) -> None:
    finding = sketched("idea", GIUOCO % words)
    assert finding.claim.side == "white"
    assert finding.outcome is Outcome.HOLDS


def test_a_plan_that_loses_a_piece_fails() -> None:
    assert sketched("idea", GIUOCO % "White prepares Nxe5.").outcome is Outcome.FAILS
    bring = "We plan to bring the knight to g5."
    assert sketched("idea", GIUOCO % bring).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    ("points", "expected"),
    [
        (55, Outcome.HOLDS),
        (54, Outcome.UNSETTLED),
        (49, Outcome.UNSETTLED),
        (48, Outcome.FAILS),
    ],
)
def test_sensible_is_a_cost_of_five_and_no_sense_a_mistake(points: int, expected: Outcome) -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 {White prepares d4.} *")
    ask = Scripted({"b2b4": 60, "d2d4": points}, "b2b4")
    assert check(claim, ask).outcome is expected


def test_a_plan_of_more_than_one_move_is_asked_where_the_line_plays_it() -> None:
    shown = "1. e4 e5 2. Nf3 {White prepares short castling.} Nc6 3. Bc4 Bc5 4. O-O *"
    finding = sketched("idea", shown)
    assert finding.outcome is Outcome.HOLDS
    assert "in the line shown" in finding.because
    bare = "1. e4 e5 2. Nf3 {White prepares short castling.} Nc6 *"
    assert sketched("idea", bare).outcome is Outcome.UNSETTLED


def test_castling_without_the_right_is_no_plan() -> None:
    moved = "1. e4 e5 2. Ke2 Nc6 3. Ke1 Nf6 4. Nf3 {White prepares long castling.} *"
    assert sketched("idea", moved).outcome is Outcome.FAILS


def test_a_denial_turns_the_answer() -> None:
    finding = sketched("idea", GIUOCO % "White does not prepare d4.")
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    ["The idea is good.", "We want to win.", "White could prepare d4.", "A plan is half the game."],
)
def test_other_ideas_are_not_read(words: str) -> None:
    assert "idea" not in kinds_of(GIUOCO % words)


@pytest.mark.parametrize(
    "words",
    [
        "Our plan is simple: d4.",
        "The point of c3, of course, is d4.",
        "Next comes d4.",
        "c3 is played with d4 in mind.",
        "We play c3 in order to follow up with d4.",
        "The pawn goes to c3, so that d4 can follow.",
    ],
)
def test_a_plan_is_said_in_many_ways(words: str) -> None:
    found = [c for c in claims_of(GIUOCO % words) if c.kind == "idea"]
    assert [c.params["moves"] for c in found] == [("d4",)]


def test_a_piece_is_wanted_on_a_square_or_on_its_way_there() -> None:
    for words in ("The knight on b1 is heading for d2.", "The knight on b1 is on its way to d2."):
        finding = sketched("idea", GIUOCO % words)
        assert (finding.claim.params["origins"], finding.claim.params["square"]) == (["b1"], "d2")
    assert "idea" not in kinds_of(GIUOCO % "The bishop is on its way to c4.")  # it stands there


@pytest.mark.parametrize(
    "words",
    ["White refuses to play d4.", "White forgets to play d4.", "White dreams of better days."],
)
def test_what_is_not_done_is_no_plan(words: str) -> None:
    assert "idea" not in kinds_of(GIUOCO % words)
