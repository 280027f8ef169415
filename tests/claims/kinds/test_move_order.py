"""Move order: which move must come first. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.move_order import check
from tests.claims.conftest import Scripted, claims_of
from tests.claims.kinds.sketching import kinds_of, sketched

ITALIAN = "1. e4 e5 2. Nf3 Nc6 3. Bc4 {%s} Nf6 4. d3 *"


def test_the_other_move_first_would_be_a_mistake() -> None:
    finding = sketched("move-order", ITALIAN % "First Bc4, only then Nxe5.")
    assert finding.claim.side == "white"
    assert finding.outcome is Outcome.HOLDS


def test_a_move_that_is_not_possible_yet_needs_the_other() -> None:
    text = "1. e4 e5 2. Nf3 {First Nf3, only then Bb5.} Nc6 *"
    blocked = "1. e4 e5 2. Nf3 {First Nf3, only then O-O.} Nc6 *"
    assert sketched("move-order", blocked).outcome is Outcome.HOLDS
    assert sketched("move-order", text).outcome is not Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "First Bc4, only then d3.",
        "The order matters.",
        "Bc4 has to come before d3.",
        "d3 only works after Bc4.",
        "White plays Bc4 first, and only then d3.",
        "First Bc4, and not d3 at once.",
        "The order of moves is important here.",
    ],
)
@pytest.mark.parametrize(
    ("points", "expected"),
    [
        (55, Outcome.FAILS),
        (54, Outcome.UNSETTLED),
        (49, Outcome.UNSETTLED),
        (48, Outcome.HOLDS),
    ],
)
def test_the_order_matters_from_a_mistake_and_not_for_a_safe_move(
    words: str, points: int, expected: Outcome
) -> None:
    (claim,) = claims_of(ITALIAN % words)
    ask = Scripted({"f1c4": 60, "d2d3": points}, "f1c4")
    assert check(claim, ask).outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "The order does not matter.",
        "The move order makes no difference here.",
        "Bc4 and d3 can be played in either order.",
        "The order of moves is irrelevant.",
    ],
)
def test_a_free_order_is_the_other_way_round(words: str) -> None:
    (claim,) = claims_of(ITALIAN % words)
    safe = Scripted({"f1c4": 60, "d2d3": 55}, "f1c4")
    assert check(claim, safe).outcome is Outcome.HOLDS
    mistake = Scripted({"f1c4": 60, "d2d3": 48}, "f1c4")
    assert check(claim, mistake).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "First things first.",
        "Order, please.",
        "The order would matter.",
        "First Bc4, then d3.",  # no more than a plan
        "Only then comes d3.",
        "The order is not unimportant.",
    ],
)
def test_other_orders_are_not_read(words: str) -> None:
    assert "move-order" not in kinds_of(ITALIAN % words)
