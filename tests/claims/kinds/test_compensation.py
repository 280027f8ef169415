"""Compensation of the side behind in material."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.compensation import check
from tests.claims.conftest import Scripted, claims_of

# White is a pawn behind, and to move
GAMBIT = "1. e4 e5 2. Nc3 Nf6 3. f4 exf4 {%s} 4. e5 *"


@pytest.mark.parametrize(
    ("words", "points", "expected"),
    [
        ("White has some compensation for the pawn.", 35, Outcome.HOLDS),
        ("White has some compensation for the pawn.", 45, Outcome.UNSETTLED),
        ("White has some compensation for the pawn.", 34, Outcome.UNSETTLED),
        ("White has some compensation for the pawn.", 14, Outcome.FAILS),
        ("White has compensation for the pawn.", 60, Outcome.HOLDS),
        ("White has enough compensation for the pawn.", 45, Outcome.HOLDS),
        ("White has enough compensation for the pawn.", 44, Outcome.UNSETTLED),
        ("White has enough compensation for the pawn.", 34, Outcome.FAILS),
        ("White has more than enough for the pawn.", 55, Outcome.HOLDS),
        ("White has more than enough for the pawn.", 54, Outcome.UNSETTLED),
        ("White has more than enough for the pawn.", 44, Outcome.FAILS),
        ("White has no compensation.", 34, Outcome.HOLDS),
        ("White has no compensation.", 35, Outcome.FAILS),
        ("White does not have enough compensation for the pawn.", 44, Outcome.HOLDS),
        ("White does not have enough compensation for the pawn.", 45, Outcome.FAILS),
        ("I think White has enough compensation for the pawn.", 40, Outcome.HOLDS),  # a hedge
    ],
)
def test_both_sides_of_the_edges(words: str, points: int, expected: Outcome) -> None:
    (claim,) = claims_of(GAMBIT % words)
    assert (claim.kind, claim.side) == ("compensation", "white")
    assert check(claim, Scripted({"e4e5": points}, "e4e5")).outcome is expected


@pytest.mark.parametrize(
    ("words", "degree", "negated"),
    [
        ("There is full compensation for the pawn.", "enough", False),
        ("White has good play for the pawn.", "enough", False),
        ("White's compensation is sufficient.", "enough", False),
        ("White is fully compensated for the pawn.", "enough", False),
        ("White has nothing for the pawn.", "at least some", True),
        ("This gives White some compensation for the pawn.", "some", False),
        ("With enough compensation for the pawn.", "enough", False),
        ("White has plenty for the pawn.", "enough", False),
        ("White doesn't have full compensation.", "enough", True),
        ("White gets ample compensation.", "enough", False),
    ],
)
def test_ways_to_say_it(words: str, degree: str, negated: bool) -> None:
    (claim,) = claims_of(GAMBIT % words)
    assert (claim.side, claim.params["degree"], claim.negated) == ("white", degree, negated)


def test_a_side_that_is_not_behind_has_nothing_to_compensate() -> None:
    (claim,) = claims_of(GAMBIT % "Black has enough compensation.")
    found = check(claim, Scripted({"e4e5": 10}, "e4e5"))
    assert found.outcome is Outcome.FAILS
    assert found.because == "Black is not behind in material."


def test_the_amount_named_must_be_the_one_given() -> None:
    (claim,) = claims_of(GAMBIT % "White has enough compensation for the piece.")
    assert check(claim, Scripted({"e4e5": 50}, "e4e5")).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    ["White has good play.", "White has play on the kingside.", "White has nothing to fear."],
)
def test_play_that_is_not_for_material_is_not_read(words: str) -> None:
    assert not [c for c in claims_of(GAMBIT % words) if c.kind == "compensation"]
