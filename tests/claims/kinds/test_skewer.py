"""Skewers. Definition: Chess Programming Wiki, "Skewer" (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

SETUP = "8/8/4k2r/8/8/8/8/2R1K3 w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "The rook skewers king and rook.",
        "1. Rc6 skewers the king and the rook on h6.",
        "This is a skewer.",
        "The king and the rook are skewered.",
        "His king is skewered to the rook on h6.",
        "1. Rc6 is a skewer against king and rook.",
        "White skewers the king against the rook.",
        "With a skewer of the king and the rook.",
        "Skewering king and rook.",
        "The rook skewers the king to the rook along the rank.",
    ],
)
def test_a_true_skewer_holds_and_pays(words: str) -> None:
    finding = sketched("skewer", "1. Rc6+ {%s} 1... Kd5 *" % words, setup=SETUP)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "white"
    assert finding.because == (
        "The rook on c6 attacks the king on e6, and behind it on the same line stands the rook on h6."
    )
    assert (
        finding.judgement.second
        == "It pays: best play wins 5 pawns for White; the rook on h6 falls."
    )


def test_a_false_skewer_fails() -> None:
    assert outcome("skewer", "1. Rc5 {This is a skewer.} *", setup=SETUP) is Outcome.FAILS


def test_near_miss_the_bigger_piece_stands_behind_so_it_is_a_pin() -> None:
    setup = "4k3/4n3/8/8/8/8/8/2R3K1 w - - 0 1"
    assert outcome("skewer", "1. Re1 {This is a skewer.} *", setup=setup) is Outcome.FAILS


def test_near_miss_a_pawn_behind_counts_only_when_named() -> None:
    setup = "8/8/4k2p/8/8/8/8/2R1K3 w - - 0 1"
    assert outcome("skewer", "1. Rc6+ {This is a skewer.} *", setup=setup) is Outcome.FAILS
    named = "1. Rc6+ {The rook skewers the king and the pawn on h6.} *"
    assert outcome("skewer", named, setup=setup) is Outcome.HOLDS


def test_a_denial_is_turned() -> None:
    assert outcome("skewer", "1. Rc6+ {It isn't a skewer.} *", setup=SETUP) is Outcome.FAILS
    assert outcome("skewer", "1. Rc5 {It is no skewer.} *", setup=SETUP) is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "The rook skewers king and queen.",  # there is no queen: not half of it either
        "He skewers his lamb on Tuesdays.",
        "If the rook skewers king and rook, it is over.",
        "The rook would skewer the king.",
    ],
)
def test_what_is_not_clear_is_not_read(words: str) -> None:
    assert not read_as("skewer", "1. Rc6+ {%s} *" % words, setup=SETUP)
