"""In-between moves. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

INSTEAD = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. Bxf7+ Kxf7 5. Nxe5+ Nxe5 6. d4 Bxd4 7. Qh5+ {%s} *"
RECAPTURE = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {%s} *"
QUIET = "1. e4 e5 2. Nf3 d5 3. exd5 h6 {%s} *"


@pytest.mark.parametrize(
    "words",
    [
        "This is an in-between move.",
        "7. Qh5+ is a zwischenzug.",
        "White inserts 7. Qh5.",
        "First the in-between check, Qh5.",
        "Instead of taking back, White plays Qh5.",
        "With an intermezzo.",
        "White throws in the intermediate check Qh5.",
        "White plays an in-between move.",
        "White plays Qh5 first before recapturing.",
        "7. Qh5 first, before recapturing.",
    ],
)
def test_a_true_one_holds(words: str) -> None:
    finding = sketched("zwischenzug", INSTEAD % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "white"
    assert (
        finding.because == "White could have taken back on d4; Qh5+ comes first, and it is check."
    )


def test_the_recapture_itself_is_none() -> None:
    finding = sketched("zwischenzug", RECAPTURE % "This is an in-between move.")
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "dxc6 itself takes the bishop on c6, which had just moved there."


def test_near_miss_a_recapture_was_due_but_the_move_forces_nothing() -> None:
    finding = sketched("zwischenzug", QUIET % "3...h6 is an in-between move.")
    assert finding.outcome is Outcome.FAILS
    assert finding.because.endswith("neither checks nor takes nor threatens anything new.")


def test_where_nothing_was_due_there_is_none() -> None:
    assert outcome("zwischenzug", "1. e4 {This is a zwischenzug.} *") is Outcome.FAILS


def test_a_denial_is_turned() -> None:
    assert outcome("zwischenzug", INSTEAD % "It isn't an in-between move.") is Outcome.FAILS
    assert outcome("zwischenzug", INSTEAD % "It is no zwischenzug.") is Outcome.FAILS
    assert outcome("zwischenzug", RECAPTURE % "This is no intermezzo.") is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "In between the moves he drinks tea.",
        "If White had an in-between move, it would be Qh5.",
        "The interval is our intermezzo.",
        "Remember to look for the in-between move.",
    ],
)
def test_other_intervals_are_not_read(words: str) -> None:
    assert not read_as("zwischenzug", INSTEAD % words)


def test_a_move_inserted_in_between_is_asked_the_same() -> None:
    line = "1. d4 d5 2. c4 e6 3. Nc3 Nf6 4. Bg5 Nbd7 5. cxd5 exd5 6. Nxd5 Nxd5 7. Bxd8 {%s} Bb4+ *"
    assert outcome("zwischenzug", line % "In between Black plays Bb4+.") is Outcome.HOLDS
    assert outcome("zwischenzug", line % "In between Black plays h6.") is Outcome.FAILS
