"""Space. Definition: two counts, common practice, joined in our own way."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

FRENCH = "1. e4 e6 2. d4 d5 3. e5 {%s} Ne7 4. Nf3 *"


@pytest.mark.parametrize(
    "words",
    [
        "White has more space.",
        "White enjoys more room.",
        "White has a space advantage.",
        "White gains space on the kingside.",
        "This gains space.",
        "Black is a little cramped.",
        "Black lacks space.",
        "This gives White more space.",
    ],
)
def test_pawns_further_on_mean_space(judge: Judge, words: str) -> None:
    finding = judge(FRENCH % words)
    assert (finding.claim.kind, finding.claim.side) == ("space", "white")
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    ["Black has more space.", "White is cramped.", "White has more space on the queenside."],
)
def test_false_claims(judge: Judge, words: str) -> None:
    # d4 and d5 have gone equally far: on the queenside nobody has more
    assert judge(FRENCH % words).outcome is Outcome.FAILS


def test_nobody_has_more_where_both_counts_are_level(judge: Judge) -> None:
    assert judge("1. e4 e5 {White has more space.} 2. Nf3 *").outcome is Outcome.FAILS


def test_where_the_counts_disagree_it_is_unsettled(judge: Judge) -> None:
    # White's pawn has gone further, Black's queen and rook reach more
    setup = "3qk2r/8/7p/8/4P3/8/8/4K3 w k - 0 1"
    finding = judge("{White has more space.} 1. Kf1 *", setup=setup)
    assert finding.outcome is Outcome.UNSETTLED
    assert "disagree" in finding.because


def test_a_denial(judge: Judge) -> None:
    finding = judge(FRENCH % "Black does not have more space.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "He is a little cramped, but Black is not losing.",  # who?
        "There is no room for doubt.",
        "The club has more room now.",
        "White could gain space.",
    ],
)
def test_left_unread(words: str) -> None:
    found = claims_of(FRENCH % words, taught="black")
    assert not [c for c in found if c.kind == "space"]
