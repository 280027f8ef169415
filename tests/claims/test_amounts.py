"""Amounts of material in words."""

from __future__ import annotations

import re

import pytest

from lineproof.claims.amounts import AMOUNT, LEAST, LETTERS_OF, WORTH, Amount, pawns


@pytest.mark.parametrize(
    ("text", "name", "letters", "square"),
    [
        ("a pawn", "pawn", "p", None),
        ("his knight on f6", "piece", "n", "f6"),
        ("black 's bishop", "piece", "b", None),
        ("a whole piece", "piece", "nb", None),
        ("2 clean pawns", "two pawns", "p", None),
        ("2 pieces", "two pieces", "nb", None),
        ("the exchange", "exchange", "r", None),
        ("the rook in the corner", "rook", "r", None),
        ("material", "material", "pnbrq", None),
        ("the f pawn", "pawn", "p", None),
    ],
)
def test_words_of_an_amount(text: str, name: str, letters: str, square: str | None) -> None:
    assert re.fullmatch(AMOUNT, f" {text}")
    assert Amount.read(text) == Amount(name, letters, square)


@pytest.mark.parametrize(
    "text", ["the king", "time", "the game", "a tempo", "3 pieces", "pawn", "the"]
)
def test_what_is_no_amount(text: str) -> None:
    assert not re.fullmatch(AMOUNT, f" {text}")


def test_every_amount_has_its_numbers() -> None:
    assert set(LEAST) == set(LETTERS_OF) == set(WORTH) | {"material"}
    assert all(least <= clean for least, clean in LEAST.values())


def test_amounts_are_spelled() -> None:
    said = [str(Amount(name, "")) for name in ("pawn", "exchange", "two pawns")]
    assert said == ["a pawn", "the exchange", "two pawns"]
    assert [pawns(n) for n in (1, -1, 3)] == ["1 pawn", "1 pawn", "3 pawns"]
