"""Weak back ranks. Definition: common practice; the count of guards is ours."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

SETUP = "1r4k1/5ppp/8/8/8/8/5PPP/2R1R1K1 w - - 0 1"
WEAK = "1. Ra1 Rb7 {%s} *"


@pytest.mark.parametrize(
    "words",
    [
        "Black's back rank is weak.",
        "The back rank is weak.",
        "Black has a weak back rank.",
        "Black has a back-rank problem.",
        "He is weak on the back rank.",
        "Black has trouble on the back rank.",
        "His first rank is unguarded.",
    ],
)
def test_a_weak_back_rank_holds(words: str) -> None:
    finding = sketched("back-rank", WEAK % words, setup=SETUP)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "black"
    assert finding.because.startswith("Black's king on g8 has no square off its first rank")


@pytest.mark.parametrize(
    "words",
    [
        "Black has no luft.",
        "The king on g8 has no escape square.",
        "Our king has no air.",
        "Our king has no escape square on the first rank.",
    ],
)
def test_a_king_without_luft(words: str) -> None:
    assert outcome("back-rank", WEAK % words, setup=SETUP) is Outcome.HOLDS


def test_near_miss_two_rooks_guard_the_rank() -> None:
    finding = sketched("back-rank", WEAK % "White's back rank is weak.", setup=SETUP)
    assert finding.outcome is Outcome.FAILS
    assert finding.because.endswith("but the rook on a1 and the rook on e1 guard the rank.")


def test_luft_ends_it() -> None:
    luft = "1. h3 {White makes luft with h3.} *"
    finding = sketched("back-rank", luft, setup=SETUP)
    assert (finding.outcome, finding.claim.side) == (Outcome.HOLDS, "white")
    none = "1. Ra1 {White makes luft.} *"
    assert outcome("back-rank", none, setup=SETUP) is Outcome.FAILS


def test_a_back_rank_mate_is_threatened_when_a_pass_allows_it() -> None:
    setup = "1r4k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1"
    words = "{White threatens a back-rank mate.}"
    assert outcome("back-rank", f"1. Ra7 {words} *", setup=setup) is Outcome.FAILS  # guarded
    bare = "6k1/1r3ppp/8/8/8/8/5PPP/R5K1 w - - 0 1"
    finding = sketched("back-rank", f"1. Rc1 {words} *", setup=bare)
    assert (finding.outcome, finding.claim.side) == (Outcome.HOLDS, "black")
    assert finding.because == "If Black passes, Rc8# is mate on the back rank."


def test_a_denial_is_turned() -> None:
    assert (
        outcome("back-rank", WEAK % "Black's back rank isn't weak.", setup=SETUP) is Outcome.FAILS
    )
    assert (
        outcome("back-rank", WEAK % "White's back rank is not weak.", setup=SETUP) is Outcome.HOLDS
    )


@pytest.mark.parametrize(
    "words",
    [
        "Black is fighting for air.",
        "The rook lifts to the third rank.",
        "The rooks rank among the best pieces.",
        "If Black's back rank were weak, we would play for it.",
    ],
)
def test_other_ranks_are_not_read(words: str) -> None:
    assert not read_as("back-rank", WEAK % words, setup=SETUP)
