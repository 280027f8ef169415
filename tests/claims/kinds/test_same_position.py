"""The same position by another way. Source: FIDE Laws of Chess, article 9.2.3."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.conftest import Judge
from tests.claims.kinds.sketching import kinds_of

TWO_ROADS = "1. e4 e5 2. Nc3 Nf6 (2... Nc6 3. f4 Nf6 {%s} 4. Nf3) 3. f4 Nc6 4. Nf3 *"


@pytest.mark.parametrize(
    "words",
    [
        "This is identical to the position in the main line.",
        "This position also arises after 2... Nf6 3. f4 Nc6.",
        "We have seen this position before.",
        "This is no different from the main line.",
        "1. e4 e5 2. Nc3 Nf6 3. f4 Nc6 leads to the same position.",
        "The same as always, so we have already been here before.",
    ],
)
def test_the_same_position_holds(judge: Judge, words: str) -> None:
    finding = judge(TWO_ROADS % words)
    assert finding.claim.kind == "same-position"
    assert finding.outcome is Outcome.HOLDS


def test_another_position_fails(judge: Judge) -> None:
    words = "This is identical to the position after 1. e4 e5 2. Nc3 Nf6 3. f4 d5."
    assert judge(TWO_ROADS % words, kind="same-position").outcome is Outcome.FAILS


def test_near_miss_castling_rights_tell_positions_apart(judge: Judge) -> None:
    text = "1. Nf3 Nf6 2. Ng1 Ng8 (2... Rg8 3. Nf3 Rh8 4. Ng1 Ng8 {This is identical to the main line.}) 3. Nf3 Nf6 4. Ng1 Ng8 *"
    assert judge(text).outcome is Outcome.FAILS


def test_a_denial_turns_the_answer(judge: Judge) -> None:
    words = "This is not identical to the position in the main line."
    assert judge(TWO_ROADS % words).outcome is Outcome.FAILS


@pytest.mark.parametrize(
    "words",
    [
        "The same thing happens every Tuesday.",
        "This is identical to the position of last week.",
        "The ideas are the same.",
        "We reach the same conclusion.",
    ],
)
def test_other_samenesses_are_not_read(words: str) -> None:
    assert kinds_of(TWO_ROADS % words) == []


PANOV = "1. e4 c6 2. d4 d5 3. exd5 cxd5 4. c4 {%s} Nf6 *"


@pytest.mark.parametrize(
    ("words", "outcome"),
    [
        ("You get here too by c4, c6, e4, d5, takes, takes, d4, and it is this very position.", Outcome.HOLDS),
        ("This is the identical position you would reach by c4 c6 e4 d5 exd5 cxd5 d4.", Outcome.HOLDS),
        ("You get here too by c4, c6, e4, d5, takes, takes, d3, and it is this very position.", Outcome.FAILS),
    ],
)  # fmt: skip
def test_the_moves_of_the_sentence_are_played_from_the_first(
    judge: Judge, words: str, outcome: Outcome
) -> None:
    assert judge(PANOV % words, kind="same-position").outcome is outcome


def test_near_miss_moves_that_do_not_follow_are_not_read() -> None:
    words = "You get here too by c4, c6, e4, e5, takes, and it is this very position."
    assert "same-position" not in kinds_of(PANOV % words)
