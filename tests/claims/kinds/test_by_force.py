"""Results that cannot be avoided: best play from the position itself."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# two rooks drive the king back
ROOKS = "7k/8/R7/1R6/8/8/8/4K3 b - - 0 1"
# the knight on a8 is lost: attacked, and it has no move that saves it
CORNER = "n3k3/8/2K5/8/8/8/8/7R w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "Mate cannot be avoided.",
        "Mate is unavoidable.",
        "Black cannot avoid mate.",
        "Nothing can stop mate.",
        "There is no defence against mate.",
        "Mate is inevitable.",
        "Black has no defence against mate.",
        "Nobody can prevent mate.",
        "Mate can no longer be prevented.",
        "White wins by force.",
    ],
)
def test_a_forced_mate_cannot_be_avoided(judge: Judge, words: str) -> None:
    finding = judge("{%s} 1... Kg7 *" % words, setup=ROOKS)
    assert (finding.claim.kind, finding.claim.side) == ("by-force", None)
    assert not finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


def test_near_miss_a_mate_that_can_be_parried(judge: Judge) -> None:
    text = "1. e4 e5 2. Qh5 Nc6 3. Bc4 {%s} g6 *"
    assert judge(text % "Black cannot avoid mate.").outcome is Outcome.FAILS
    finding = judge(text % "Mate is not unavoidable.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


def test_a_piece_that_cannot_be_saved(judge: Judge) -> None:
    words = ("The knight on a8 cannot be saved.", "Black cannot save the knight on a8.")
    for said in words:
        assert judge("{%s} 1. Kb7 *" % said, setup=CORNER).outcome is Outcome.HOLDS
    safe = "4k3/8/8/8/8/2n5/8/4K2R w - - 0 1"
    finding = judge("{The knight on c3 cannot be saved.} 1. Kf2 *", setup=safe)
    assert finding.outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "Mate can be avoided.",
        "The pawn cannot be saved.",  # which?
        "Black cannot avoid the exchange of queens.",
        "White plays with force.",
        "Time trouble is unavoidable.",
    ],
)
def test_what_is_not_said_to_be_forced_is_not_read(words: str) -> None:
    claims = claims_of("1. e4 e5 2. Qh5 Nc6 3. Bc4 {%s} g6 *" % words)
    assert not [c for c in claims if c.kind == "by-force"]


@pytest.mark.parametrize(
    "words",
    [
        "There's no stopping mate.",
        "Black has no way to stop mate.",
        "There is no way of stopping mate.",
    ],
)
def test_that_there_is_no_stopping_it_affirms_it(judge: Judge, words: str) -> None:
    finding = judge("{%s} 1... Kg7 *" % words, setup=ROOKS)
    assert (finding.claim.negated, finding.outcome) == (False, Outcome.HOLDS)


def test_that_nothing_can_be_done_is_a_loss_of_a_pawn_at_least(judge: Judge) -> None:
    words = "There is nothing that Black can do about it."
    assert judge("{%s} 1... Kg7 *" % words, setup=ROOKS).outcome is Outcome.HOLDS
    assert judge("1. e4 {%s} e5 *" % words).outcome is Outcome.FAILS


def test_near_miss_a_way_to_stop_it_is_no_claim_that_it_is_forced() -> None:
    claims = claims_of("{Black has a way to stop mate.} 1... Kg7 *", setup=ROOKS)
    assert "by-force" not in [c.kind for c in claims]
