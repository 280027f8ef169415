"""Which move the words mean."""

from __future__ import annotations

import pytest

from tests.claims.conftest import claims_of

TEXT = "1. e4 e5 2. Nf3 {%s} Nc6 *"


def _moves(words: str) -> list[str]:
    return [c.params["move"] for c in claims_of(TEXT % words) if c.kind == "move-mark"]


@pytest.mark.parametrize(
    ("words", "moves"),
    [
        ("This is a mistake.", ["g1f3"]),
        ("2. Nc3 is a mistake.", ["b1c3"]),
        ("The knight move is a mistake.", ["g1f3"]),
        ("2... Nc6 is a mistake.", ["b8c6"]),
        ("After 2... Nc6 this is a mistake.", ["b8c6"]),
    ],
)
def test_a_move_named_described_or_pointed_at(words: str, moves: list[str]) -> None:
    assert _moves(words) == moves


@pytest.mark.parametrize(
    "words",
    [
        "2. Nc3 has a point too, but it is a mistake.",  # Nc3, or the move just played?
        "The pawn on e5 is attacked, and it is weak.",
        "3. Nxd5 is a mistake.",
        "The bishop move is a mistake.",
    ],
)
def test_a_pointer_that_may_mean_another_is_not_followed(words: str) -> None:
    assert _moves(words) == []


def test_a_reply_given_as_the_reason_is_not_played_first() -> None:
    text = "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {%s} 4. Qxf7# *"
    (claim,) = claims_of(text % "Nf6 cannot be played because of Qxf7.")
    assert (claim.kind, claim.params["by"]) == ("refuted-by", "h5f7")
    assert not claims_of(text % "Nf6 is good thanks to 4. Qxf7.")


@pytest.mark.parametrize(
    "words",
    ["Nf3 looks bad, but the queen is out.", "This looks bad.", "That cannot be right."],
)
def test_what_only_looks_so_is_not_read(words: str) -> None:
    assert _moves(words) == []
