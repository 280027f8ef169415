"""Timing: a verb speaks of the position here, of what may come, or of what was."""

from __future__ import annotations

import pytest

from tests.claims.conftest import claims_of
from tests.claims.kinds.sketching import kinds_of

ITALIAN = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. d3 {%s} Be7 5. Ng5 *"


@pytest.mark.parametrize(
    "words", ["The knight on f3 protects d4.", "The knight on f3 still protects d4."]
)
def test_the_present_is_read(words: str) -> None:
    assert kinds_of(ITALIAN % words) == ["defends"]


@pytest.mark.parametrize(
    "words",
    [
        "The knight on f3 will protect d4.",
        "The knight on f3 can protect d4.",
        "The knight on f3 would protect d4.",
        "The knight on f3 was protecting d4.",
        "The knight on f3 should protect d4.",
    ],
)
def test_what_may_come_and_what_was_are_not(words: str) -> None:
    assert kinds_of(ITALIAN % words) == []


@pytest.mark.parametrize(
    "words",
    [
        "After 4... Be7 the pawn on d3 will protect the pawn on e4.",
        "d3 will protect the pawn on e4.",
    ],
)
def test_what_a_move_named_brings_is_read(words: str) -> None:
    assert kinds_of(ITALIAN % words) == ["defends"]


@pytest.mark.parametrize(
    "words",
    [
        "White prepares Bxf7, with tempo.",
        "One day Nbd2 comes, protecting the pawn on e4.",
    ],
)
def test_a_participle_after_a_move_that_nobody_has_played_is_not_read(words: str) -> None:
    assert [k for k in kinds_of(ITALIAN % words) if k != "idea"] == []


def test_a_participle_after_a_move_announced_speaks_of_the_position_after_it() -> None:
    words = ITALIAN % "White prepares Ng5, threatening Nxf7."
    (threat,) = [c for c in claims_of(words) if c.kind == "threat"]
    assert threat.params["move"] == "Nxf7"
    assert threat.spot.boards[-2].san(threat.spot.moves[-1]) == "Ng5"


def test_a_participle_after_the_move_just_played_is_read() -> None:
    assert kinds_of(ITALIAN % "White plays d3, protecting the pawn on e4.") == ["defends"]
    assert kinds_of(ITALIAN % "A quiet move, protecting the pawn on e4.") == ["defends"]
