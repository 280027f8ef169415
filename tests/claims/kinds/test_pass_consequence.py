"""What happens after a pass. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import kinds_of, sketched

TWO_KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} d5 *"


@pytest.mark.parametrize(
    "words",
    [
        "Left alone, White plays Nxf7.",
        "If Black does nothing, White plays Nxf7.",
        "If Black does nothing, White wins a pawn.",
        "If he ignores it, Nxf7 follows.",
        "If Black does not react, White takes on f7.",
        "White wins the exchange if Black does nothing.",
        "Otherwise White plays Nxf7.",
    ],
)
def test_what_a_pass_lets_through_holds(words: str) -> None:
    finding = sketched("pass-consequence", TWO_KNIGHTS % words)
    assert finding.claim.side == "white"
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words", ["If Black does nothing, White plays d3.", "Left alone, White plays Qh5."]
)
def test_a_move_that_is_not_the_point_fails(words: str) -> None:
    assert sketched("pass-consequence", TWO_KNIGHTS % words).outcome is Outcome.FAILS


def test_near_miss_less_than_the_amount_named_fails() -> None:
    ruy = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 {%s} 4. Ba4 *"
    piece = "If White does nothing, Black wins a piece."
    queen = "If White does nothing, Black wins the queen."
    assert sketched("pass-consequence", ruy % piece).outcome is Outcome.HOLDS
    assert sketched("pass-consequence", ruy % queen).outcome is Outcome.FAILS


def test_a_denial_turns_the_answer() -> None:
    words = "If Black does nothing, White does not win a pawn."
    assert sketched("pass-consequence", TWO_KNIGHTS % words).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "If White does nothing, Black plays d5.",  # White is not to move
        "If Black takes, White plays Nxf7.",
        "Left alone in the corner, I think of tea.",
    ],
)
def test_other_conditions_are_not_read(words: str) -> None:
    assert kinds_of(TWO_KNIGHTS % words) == []


@pytest.mark.parametrize(
    "words",
    [
        "If Black dozes off, Nxf7 follows.",
        "If he sleeps we go Nxf7.",
        "Let Black pass and White plays Nxf7.",
        "If we are given a free hand, Nxf7 comes next.",
    ],
)
def test_a_side_that_is_let_pass_in_other_words(words: str) -> None:
    finding = sketched("pass-consequence", TWO_KNIGHTS % words)
    assert finding.claim.side == "white"
    assert finding.outcome is Outcome.HOLDS


def test_near_miss_a_quiet_move_after_such_a_pass_fails() -> None:
    words = "Let Black pass and White plays d3."
    assert sketched("pass-consequence", TWO_KNIGHTS % words).outcome is Outcome.FAILS


def test_the_side_that_has_just_moved_cannot_pass() -> None:
    assert "pass-consequence" not in kinds_of(TWO_KNIGHTS % "If White sleeps, d5 follows.")


@pytest.mark.parametrize(
    "words",
    [
        "Left in peace, White plays Nxf7.",
        "Ignored, White plays Nxf7.",
        "Given time, White takes on f7.",
        "If nothing happens, Nxf7 follows.",
        "Should Black do nothing, Nxf7 follows.",
        "Let Black pass, and Nxf7 would be most unpleasant.",
    ],
)
def test_a_pass_in_other_words(words: str) -> None:
    assert sketched("pass-consequence", TWO_KNIGHTS % words).outcome is Outcome.HOLDS
