"""Checks. Definition: FIDE Laws of Chess, article 3.9."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import outcome, read_as, sketched

GIVEN = "1. e4 e5 2. f4 exf4 3. Bc4 Qh4+ {%s} 4. Kf1 *"
BEFORE = "1. e4 e5 2. f4 exf4 3. Bc4 {%s} 3... Qh4+ *"
AFTER = "1. e4 e5 2. f4 exf4 3. Bc4 Qh4+ 4. Kf1 {%s} 4... d6 *"


@pytest.mark.parametrize(
    "words",
    [
        "Black gives check.",
        "This is check.",
        "Check!",
        "3...Qh4 is check.",
        "The queen checks the king.",
        "White is in check.",
        "Our king is in check from the queen.",
        "His queen comes out with check.",
        "He gives check with the queen on h4.",
        "The queen checks on h4.",
        "Black has given check.",
    ],
)
def test_a_true_check_holds(words: str) -> None:
    finding = sketched("check", GIVEN % words)
    assert finding.outcome is Outcome.HOLDS
    assert finding.claim.side == "black"
    assert finding.because == "The queen on h4 attacks White's king on e1."


@pytest.mark.parametrize(
    "words",
    ["White is not in check.", "It's not check.", "It is no check.", "3...Qh4 isn't check."],
)
def test_a_denied_check_fails_where_there_is_one(words: str) -> None:
    assert outcome("check", GIVEN % words) is Outcome.FAILS


def test_a_check_that_has_been_answered_is_one_of_the_move_before() -> None:
    assert outcome("check", AFTER % "Black has given check.") is Outcome.HOLDS
    assert outcome("check", AFTER % "White is in check.") is Outcome.FAILS
    assert outcome("check", AFTER % "White is no longer in check.") is Outcome.HOLDS


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Black has a check on h4.", Outcome.HOLDS),
        ("There is a check on h4.", Outcome.HOLDS),
        ("Black can give check on h4.", Outcome.HOLDS),
        ("Black has the check 3...Qh4.", Outcome.HOLDS),
        ("Black has no check.", Outcome.FAILS),
        ("Black can give check.", Outcome.HOLDS),
        ("Black can play 3...Qh4 with check.", Outcome.HOLDS),
        ("Black can play 3...Qf6 with check.", Outcome.FAILS),
        ("The bishop on c4 can take on f7 with check.", Outcome.HOLDS),
        ("Black has a check on g5.", Outcome.FAILS),
        ("White has a check on f7.", Outcome.HOLDS),  # after a pass
        ("White has a check on h5.", Outcome.FAILS),
        ("Now Black gives check.", Outcome.HOLDS),  # the next move of the line
    ],
)
def test_a_possible_check_is_a_legal_move(words: str, expected: Outcome) -> None:
    assert outcome("check", BEFORE % words) is expected


def test_near_miss_a_piece_that_only_uncovers_the_check_does_not_give_it() -> None:
    setup = "4k3/8/8/4N3/8/8/8/4R1K1 w - - 0 1"
    assert outcome("check", "1. Nc6+ {The knight gives check.} *", setup=setup) is Outcome.FAILS
    assert outcome("check", "1. Nc6+ {The rook checks.} *", setup=setup) is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "We must keep his queen in check.",
        "Let's check the line.",
        "White has never been in check.",
        "He can't take back with check.",
        "Black must give check.",
        "White will be in check.",
        "White blocks with check.",
        "Check your moves twice.",
        "If Black gives check, we are lost.",
        "The bishop gives check.",  # four bishops
    ],
)
def test_other_checks_are_not_read(words: str) -> None:
    assert not read_as("check", GIVEN % words)


def test_a_bare_check_is_not_read_where_there_is_none() -> None:
    assert not read_as("check", "1. e4 {Check!} e5 *")


def test_a_check_said_as_a_thing_is_played(judge: Judge) -> None:
    text = "1. e4 e6 2. d4 d5 3. c4 dxc4 {%s} 4. Nf3 *"
    finding = judge(text % "A queen check on a4 would win the pawn back.", kind="check")
    assert (finding.claim.side, finding.outcome) == ("white", Outcome.HOLDS)
    miss = judge(text % "A queen check on b3 would win the pawn back.", kind="check")
    assert miss.outcome is Outcome.FAILS
