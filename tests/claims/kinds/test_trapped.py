"""Trapped pieces. Definition: common practice. The trap of the Noah's Ark is from memory."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

ARK = (
    "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Ba4 d6 5. d4 b5 6. Bb3 Nxd4 7. Nxd4 exd4 8. Qxd4 c5 "
    "9. Qd5 Be6 10. Qc6+ Bd7 11. Qd5 c4 {%s} *"
)
GREEDY = "2k2r2/ppp2ppp/8/8/8/4B3/PPP2PPP/4R1K1 w - - 0 1"
GREEDY_LOOSE = "1nk5/ppp2ppp/8/8/8/4B3/PPP2PPP/6K1 w - - 0 1"


@pytest.mark.parametrize(
    "words",
    [
        "The bishop on b3 is trapped.",
        "Our bishop on b3 is trapped.",
        "The bishop is trapped.",
        "11...c4 traps the bishop.",
        "He traps our bishop on b3.",
        "Our bishop on b3 cannot get out.",
        "The bishop on b3 has no way out.",
        "The bishop on b3 has been caught.",
        "The bishop on b3 will be trapped.",
    ],
)
def test_a_trapped_piece_falls(words: str) -> None:
    finding = sketched("trapped", ARK % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "white"
    assert finding.because == (
        "The bishop on b3 has no safe square: the pawn on c4 attacks it, and best play wins it."
    )


@pytest.mark.parametrize(
    "words",
    [
        "The bishop has no squares.",
        "The bishop on b3 has nowhere to go.",
        "There is no safe square for the bishop on b3.",
    ],
)
def test_squares_alone_need_no_search(words: str) -> None:
    finding = sketched("trapped", ARK % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.because == "The bishop on b3 has no safe square."


def test_a_piece_with_a_safe_square_is_not_trapped() -> None:
    finding = sketched("trapped", ARK % "The queen on d5 is trapped.")
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "The queen on d5 can go to d1 or d2 or d4."


def test_a_piece_that_nothing_attacks_yet_is_trapped_when_it_falls_in_best_play() -> None:
    movetext = "1. Bxa7 b6 {The bishop on a7 is trapped.} *"
    assert outcome("trapped", movetext, setup=GREEDY) is Outcome.HOLDS


def test_near_miss_one_square_is_left_by_a_capture() -> None:
    movetext = "1. Bxa7 b6 {The bishop on a7 is trapped.} *"
    finding = sketched("trapped", movetext, setup=GREEDY_LOOSE)
    assert finding.outcome is Outcome.FAILS
    assert "b8" in finding.because


def test_with_the_enemy_to_move_his_best_move_is_asked() -> None:
    movetext = "1. Bxa7 {The bishop on a7 will be trapped.} 1... b6 *"
    finding = sketched("trapped", movetext, setup=GREEDY)
    assert finding.outcome is Outcome.HOLDS
    assert finding.because.startswith("After b6 the bishop on a7 has no safe square")


def test_a_denial_is_turned() -> None:
    assert outcome("trapped", ARK % "The bishop on b3 isn't trapped.") is Outcome.FAILS
    assert outcome("trapped", ARK % "The queen on d5 is not trapped.") is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "The king is caught in the centre.",
        "White falls into the trap.",
        "The queen is trapped.",  # two queens, neither without a square
        "The bishop on b3 was trapped a move ago.",
        "If the bishop on b3 is trapped, we resign.",
        "He traps the bishop and the knight.",
    ],
)
def test_what_is_not_clear_is_not_read(words: str) -> None:
    assert not read_as("trapped", ARK % words)


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("The bishop is caught on b3.", Outcome.HOLDS),
        ("Our bishop on b3 is a goner.", Outcome.HOLDS),
        ("Our bishop is out of squares.", Outcome.HOLDS),
        ("The queen on d5 is a goner.", Outcome.FAILS),
    ],
)
def test_trapped_in_other_words(words: str, expected: Outcome) -> None:
    assert outcome("trapped", ARK % words) is expected
