"""Moves said in words: which move is meant, and what is said of it."""

from __future__ import annotations

import pytest

from lineproof.claims.worded import Worded
from tests.claims.conftest import claims_of

FRIED = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 {%s} Nxd5 6. Nxf7 *"


@pytest.mark.parametrize(
    ("words", "move"),
    [
        ("The capture on d5, natural as it looks, is a mistake.", "e4d5"),
        ("A grave error, this capture.", "e4d5"),
        ("Recapturing with the knight would be a mistake.", "f6d5"),
        ("To take on d5 with the knight is a mistake.", "f6d5"),
        ("It is a mistake to take on d5 with the knight.", "f6d5"),
        ("The knight's retreat to b8 is a mistake.", "c6b8"),
        ("Developing the bishop to d6 is a mistake.", "f8d6"),
    ],
)
def test_a_move_in_words_is_the_one_played_or_the_only_one_that_fits(words: str, move: str) -> None:
    (claim,) = claims_of(FRIED % words, taught="black")
    assert (claim.kind, claim.params["move"], claim.params["mark"]) == ("move-mark", move, "?")


@pytest.mark.parametrize(
    "words",
    [
        "The bishop move is a mistake.",  # several, and none has been played
        "Taking the bishop is a mistake.",  # not possible
        "The same capture is a mistake.",
        "No capture is a mistake.",
    ],
)
def test_what_fits_several_moves_or_none_is_not_read(words: str) -> None:
    assert not claims_of(FRIED % words, taught="black")


def test_advice_speaks_of_the_move_to_come() -> None:
    for words in (
        "Don't take back with the knight.",
        "Recapturing with the knight is something I advise against.",
    ):
        (claim,) = claims_of(FRIED % words, taught="black")
        assert (claim.kind, claim.params["move"]) == ("not-recommended", "f6d5")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("the capture of the pawn on d4", Worded(takes=True, taken="p", to="d4")),
        ("the bishop to d7", Worded(by="b", to="d7")),
        ("clinging to the pawn with b5", Worded(by="p", to="b5", hits="p")),
        ("swapping the knights on d4", Worded(takes=True, by="n", taken="n", to="d4")),
        ("the e pawn", None),
    ],
)
def test_what_words_say_of_a_move(text: str, expected: Worded | None) -> None:
    assert Worded.read(text) == expected
