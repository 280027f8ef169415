"""Castling. Source: FIDE Laws of Chess, article 3.8.2."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.proof import Effort, EvidenceStore, settle
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import read_as

MOVED = "1. e4 e5 2. Bc4 Nc6 3. Bxf7+ Kxf7 {%s} 4. Nf3 *"
READY = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 {%s} 4. c3 *"


@pytest.mark.parametrize(
    "words",
    [
        "Black cannot castle any more.",
        "Black has lost the right to castle.",
        "He can no longer castle.",
        "Black can't castle kingside.",
    ],
)
def test_a_king_that_has_moved_cannot_castle(judge: Judge, words: str) -> None:
    finding = judge(MOVED % words)
    assert finding.outcome is Outcome.HOLDS
    assert "for good" in finding.because


@pytest.mark.parametrize(
    "words", ["White cannot castle.", "We cannot castle.", "White can't castle kingside."]
)
def test_a_side_that_can_castle_at_once_is_found_out(judge: Judge, words: str) -> None:
    finding = judge(READY % words)
    assert finding.outcome is Outcome.FAILS
    assert "O-O" in finding.because


def test_near_miss_pieces_in_the_way_now_is_said_to_be_now(judge: Judge) -> None:
    finding = judge(READY % "White cannot castle queenside.")
    assert finding.outcome is Outcome.HOLDS
    assert "keeps the right" in finding.because


def test_an_attacked_square_on_the_way_forbids_it_now(judge: Judge) -> None:
    setup = "4k3/8/b7/8/8/8/8/4K2R w K - 0 1"
    assert judge("{White cannot castle.} 1. Kd2 *", setup=setup).outcome is Outcome.HOLDS


def test_can_castle_is_the_other_way_round(judge: Judge) -> None:
    for words in ("can castle", "can still castle", "can always castle", "may castle kingside"):
        assert judge(READY % f"White {words}.").outcome is Outcome.HOLDS
        assert judge(MOVED % f"Black {words}.").outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "White cannot castle queenside any more.",
        "We have lost the right to castle.",
        "White can no longer castle.",
    ],
)
def test_words_of_loss_ask_for_the_right_itself(judge: Judge, words: str) -> None:
    finding = judge(READY % words)
    assert finding.outcome is Outcome.FAILS
    assert "still has the right" in finding.because


def test_a_right_that_a_check_takes_by_force_is_lost(judge: Judge) -> None:
    # the Traxler check on f7: only king moves answer it
    text = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 Bc5 5. Bxf7+ {Black can no longer castle.} *"
    finding = judge(text)
    assert finding.outcome is Outcome.HOLDS
    assert "by force" in finding.because


@pytest.mark.parametrize(
    "words",
    [
        "The capture costs Black the right to castle.",
        "Black is no longer able to castle.",
        "White deprives Black of castling.",
        "Black gives up the right to castle.",
        "White prevents Black from castling.",
        "So Black can't castle yet.",
        "Black has no castling rights any more.",
        "Black will never be able to castle.",
    ],
)
def test_a_lost_right_is_said_in_many_ways(judge: Judge, words: str) -> None:
    finding = judge(MOVED % words, kind="cannot-castle")
    assert finding.claim.side == "black"
    assert finding.outcome is Outcome.HOLDS


def test_a_right_that_is_kept_is_the_other_way_round(judge: Judge) -> None:
    assert judge(READY % "White keeps the right to castle.").outcome is Outcome.HOLDS
    assert judge(MOVED % "Black keeps the right to castle.").outcome is Outcome.FAILS


def test_a_right_that_is_not_lost_is_kept(judge: Judge) -> None:
    assert judge(MOVED % "White has not lost the right to castle.").outcome is Outcome.HOLDS
    assert judge(MOVED % "White has not forfeited castling.").outcome is Outcome.HOLDS
    assert judge(MOVED % "Black has not lost the right to castle.").outcome is Outcome.FAILS


def test_a_loss_that_is_only_supposed_is_not_read() -> None:
    from tests.claims.conftest import claims_of

    assert not claims_of(MOVED % "This would cost Black the right to castle.")


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Neither side can castle.", [Outcome.FAILS, Outcome.HOLDS]),
        ("There is no castling for Black.", [Outcome.HOLDS]),
        ("There is no castling for White.", [Outcome.FAILS]),
    ],
)
def test_no_castling_for_a_side(words: str, expected: list[Outcome]) -> None:
    line = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 Kxf7 {%s} 7. Qf3+ *"
    found = [
        settle(c, Effort.SKETCH, EvidenceStore(None)).outcome
        for c in read_as("cannot-castle", line % words)
    ]
    assert found == expected


LATER = "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 {%s} 4. O-O *"


@pytest.mark.parametrize(
    "words",
    [
        "Black still has the right to castle.",
        "Black has the right to castle.",
        "Black keeps the right to castle.",
    ],
)
def test_a_right_is_had_also_where_it_cannot_be_used_now(judge: Judge, words: str) -> None:
    assert judge(LATER % words).outcome is Outcome.HOLDS
    assert judge(MOVED % "Black still has the right to castle.").outcome is Outcome.FAILS
    assert judge(LATER % "Black can castle right now.").outcome is Outcome.FAILS


def test_the_true_wording_of_a_lost_right_holds_when_it_is_said(judge: Judge) -> None:
    said = judge(LATER % "Black has lost the right to castle.")
    assert said.outcome is Outcome.FAILS and said.judgement.instead
    assert judge(LATER % said.judgement.instead).outcome is Outcome.HOLDS
