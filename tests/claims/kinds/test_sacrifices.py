"""Sacrifices: material that may be taken with gain on its square."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge, claims_of

# the Fried Liver (from memory): a knight for a pawn
FRIED = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 {%s} Kxf7 7. Qf3+ *"
VIENNA = "1. e4 e5 2. Nc3 Nf6 3. f4 {%s} exf4 4. e5 Ng8 *"


@pytest.mark.parametrize(
    "words",
    [
        "White sacrifices a knight on f7.",
        "White sacrifices a piece.",
        "White gives up the knight for a pawn.",
        "This is a piece sacrifice.",
        "Nxf7 is a sacrifice.",
        "White offers a knight.",
        "A knight is offered on f7.",
        "White sacrifices on f7.",
        "White has sacrificed a piece.",
        "The capture is a knight sacrifice.",
    ],
)
def test_a_knight_offered_for_a_pawn_is_sacrificed(judge: Judge, words: str) -> None:
    finding = judge(FRIED % words)
    assert (finding.claim.kind, finding.claim.side) == ("sacrifices", "white")
    assert finding.outcome is Outcome.HOLDS
    assert "the knight on f7" in finding.because


def test_a_gambit_pawn_is_sacrificed(judge: Judge) -> None:
    assert judge(VIENNA % "White sacrifices a pawn.").outcome is Outcome.HOLDS
    assert judge(VIENNA % "White gambits the f-pawn.").outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "because"),
    [
        ("White sacrifices a piece.", "White does not offer a piece: none can be taken with gain."),
        ("White sacrifices the exchange.", "does not offer the exchange"),
        ("White sacrifices his queen.", "does not offer the queen"),
        ("White sacrifices a pawn on e4.", "on e4"),
    ],
)
def test_what_cannot_be_taken_is_not_sacrificed(judge: Judge, words: str, because: str) -> None:
    finding = judge(VIENNA % words)
    assert finding.outcome is Outcome.FAILS
    assert because in finding.because


def test_near_miss_a_protected_piece_attacked_by_its_equal_is_no_sacrifice(judge: Judge) -> None:
    setup = "4k3/8/8/3n4/8/3N4/4P3/4K3 w - - 0 1"
    protected = judge("1. Nf4 {White sacrifices a knight.} Nxf4 *", setup=setup)
    assert protected.outcome is Outcome.HOLDS  # nothing protects f4
    setup = "4k3/8/8/3n4/8/3N2P1/8/4K3 w - - 0 1"
    exchange = judge("1. Nf4 {White sacrifices a knight.} Nxf4 *", setup=setup)
    assert exchange.outcome is Outcome.FAILS  # g3 takes back


def test_a_rook_for_a_knight_is_the_exchange(judge: Judge) -> None:
    setup = "4k3/1p6/2n5/8/8/8/8/2R1K3 w - - 0 1"
    text = "1. Rxc6 {White sacrifices %s.} bxc6 *"
    assert judge(text % "the exchange", setup=setup).outcome is Outcome.HOLDS
    assert judge(text % "a rook", setup=setup).outcome is Outcome.FAILS


def test_whether_the_material_comes_back_is_a_second_finding(judge: Judge) -> None:
    # Legal's mate (from memory): the queen is offered, and taking it ends in mate
    legal = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 {White offers the queen.} Bxd1 *"
    finding = judge(legal)
    assert finding.outcome is Outcome.HOLDS
    assert finding.judgement.second is not None and "ends in mate" in finding.judgement.second


def test_a_denial_is_turned_round(judge: Judge) -> None:
    finding = judge(VIENNA % "White does not sacrifice a piece.")
    assert finding.claim.negated
    assert finding.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "White gives up.",
        "White offers a draw.",
        "White sacrifices his evening.",
        "White might sacrifice a piece.",
    ],
)
def test_other_offers_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(FRIED % words) if c.kind == "sacrifices"]


def test_it_shows_how_the_material_comes_back_or_the_mate(judge: Judge) -> None:
    fork = judge("1. e4 e5 2. Nf3 Nc6 3. Nc3 Nf6 4. Bc4 Nxe4 {Black sacrifices a knight.} *")  # fmt: skip
    assert fork.judgement.second == "It is a sham sacrifice: taken, the material comes back with best play."  # fmt: skip
    assert fork.evidence().startswith("5. Nxe4 d5 ")
    assert len(fork.judgement.line) <= 10
    mate = judge("1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 {White sacrifices the queen.} 5. Nxe5 *")  # fmt: skip
    assert mate.judgement.second == "It is a sham sacrifice: taken, it ends in mate for White."
    assert mate.evidence() == "5... Bxd1 6. Bxf7+ Ke7 7. Nd5#"
