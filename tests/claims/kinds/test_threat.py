"""Threats: what happens if the opponent passes. Definition: common practice. Lines of handbooks, from memory."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import kinds_of, sketched

TWO_KNIGHTS = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} d5 *"


@pytest.mark.parametrize(
    "words",
    [
        "White threatens Nxf7.",
        "We threaten to take on f7.",
        "This threatens the pawn on f7.",
        "White is threatening to win a pawn.",
        "The threat is Nxf7.",
        "Nxf7 is threatened.",
        "The pawn on f7 is threatened by the knight on g5.",
        "With the threat of Nxf7.",
        "There is a nasty threat of Nxf7.",
        "The bishop on c4 threatens f7.",
        "Now White goes for the pawn on f7.",
    ],
)
def test_a_capture_that_wins_a_pawn_after_a_pass_is_a_threat(words: str) -> None:
    finding = sketched("threat", TWO_KNIGHTS % words)
    assert finding.claim.side == "white"
    assert finding.outcome is Outcome.HOLDS
    assert "If Black passes" in finding.because


def test_a_move_that_gains_nothing_is_no_threat() -> None:
    finding = sketched("threat", TWO_KNIGHTS % "White threatens Qh5.")
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.instead is not None


def test_near_miss_a_quiet_move_beside_the_one_that_gains_is_no_threat() -> None:
    # after d3 the knight still takes on f7, but it is not d3 that gains
    assert sketched("threat", TWO_KNIGHTS % "White threatens d3.").outcome is Outcome.FAILS


def test_a_piece_that_cannot_take_the_target_does_not_threaten_it() -> None:
    finding = sketched("threat", TWO_KNIGHTS % "The knight on g5 threatens the pawn on e5.")
    assert finding.outcome is Outcome.FAILS
    assert "cannot take the pawn on e5" in finding.because


def test_an_amount_named_must_be_won() -> None:
    exchange = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 {%s} 4. Ba4 *"
    finding = sketched("threat", exchange % "Black threatens to win the queen.")
    assert finding.outcome is Outcome.FAILS
    assert sketched("threat", exchange % "Black threatens to win a piece.").outcome is Outcome.HOLDS


def test_to_win_a_piece_asks_more_than_a_capture() -> None:
    # the rook can be taken, but a bishop and a pawn are given for it
    setup = "4k3/8/8/1p6/r7/8/2B5/4K3 b - - 0 1"
    words = "{White threatens to %s the rook.} 1... Kd8 *"
    assert sketched("threat", words % "take", setup=setup).outcome is Outcome.HOLDS
    assert sketched("threat", words % "win", setup=setup).outcome is Outcome.FAILS


def test_a_denial_turns_the_answer() -> None:
    words = ("White does not threaten Nxf7.", "White no longer threatens Nxf7.")
    for said in words:
        assert sketched("threat", TWO_KNIGHTS % said).outcome is Outcome.FAILS
    quiet = "1. e4 e5 2. Nf3 Nc6 3. h3 {%s} Nf6 *"
    for said in ("White threatens nothing.", "White does not threaten anything."):
        assert sketched("threat", quiet % said).outcome is Outcome.HOLDS
    assert sketched("threat", quiet % "White does not threaten Nxe5.").outcome is Outcome.HOLDS


def test_a_side_in_check_is_not_asked() -> None:
    check = "1. e4 e5 2. f4 Qh4+ {Black threatens Qxe4.} 3. g3 *"
    assert sketched("threat", check, "black").outcome is Outcome.UNSETTLED


def test_a_square_without_a_piece_is_the_move_and_with_one_the_piece() -> None:
    text = "1. e4 e5 2. Nf3 Nc6 3. Bb5 {%s} a6 *"
    from tests.claims.conftest import claims_of

    (piece,) = claims_of(text % "White threatens e5.")
    assert piece.params["targets"] == ["e5"]
    (move,) = claims_of(text % "White threatens d4.")
    assert move.params["move"] == "d4"


@pytest.mark.parametrize(
    "words",
    [
        "White would threaten Nxf7.",
        "White will threaten Nxf7.",
        "The threat was Nxf7.",
        "The threat is stronger than its execution.",
        "White threatens to run away with the game.",
        "Black threatens Nxe4.",  # it is Black's own move
    ],
)
def test_what_may_come_and_other_threats_are_not_read(words: str) -> None:
    assert kinds_of(TWO_KNIGHTS % words) == []


def test_what_the_opponent_wants_next_is_a_threat_or_no_claim_that_fails() -> None:
    he = sketched("threat", TWO_KNIGHTS % "He wants to play Nxf7 next.", "black")
    assert he.outcome is Outcome.HOLDS
    assert "threat" not in kinds_of(TWO_KNIGHTS % "We want to play Nxf7 next.")


HOUSE = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} d5 *"


@pytest.mark.parametrize(
    "words",
    [
        "The knight on g5 attacks f7.",
        "The bishop on c4 hits the pawn on f7.",
        "The pawn on f7 is attacked.",
        "Ng5 bears down on f7.",
        "The pawn on f7 is under fire from the bishop on c4.",
        "The knight has come to g5 with an attack on f7.",
    ],
)
def test_an_attack_is_a_fact_of_the_board(words: str) -> None:
    finding = sketched("threat", HOUSE % words)
    assert finding.claim.side == "white"
    assert finding.outcome is Outcome.HOLDS
    assert finding.because.endswith(" f7.")


def test_an_attack_that_gains_nothing_is_an_attack_all_the_same() -> None:
    # the knight on c6 is protected twice: Bb5 attacks it, though it wins nothing
    spanish = "1. e4 e5 2. Nf3 Nc6 3. Bb5 {The bishop attacks the knight on c6.} a6 *"
    assert sketched("threat", spanish).outcome is Outcome.HOLDS


def test_near_miss_a_piece_that_does_not_reach_the_square_does_not_attack_it() -> None:
    finding = sketched("threat", HOUSE % "The knight on g5 attacks e5.")
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "The knight on g5 does not attack the pawn on e5."


@pytest.mark.parametrize(
    "words",
    [
        "The knight attacks only f7.",
        "The bishop attacks f7 twice.",
        "Nothing attacks f7.",
        "Look at f7.",
    ],
)
def test_more_than_an_attack_is_no_bare_attack(words: str) -> None:
    assert "threat" not in kinds_of(HOUSE % words)
