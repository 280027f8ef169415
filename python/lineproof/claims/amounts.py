"""Amounts of material in words: "a pawn", "the exchange", "his knight on f6".

>>> Amount.read("the sacrificed pawn").name
'pawn'
>>> Amount.read("his knight on f6")
Amount(name='piece', letters='n', square='f6')
"""

from __future__ import annotations

import re
from dataclasses import dataclass

LEAST: dict[str, tuple[float, float]] = {
    "pawn": (1, 1), "two pawns": (2, 2), "three pawns": (3, 3), "exchange": (1, 1), "piece": (1, 2), "rook": (3, 3), "queen": (3, 3), "material": (1, 1), "two pieces": (5, 5),
}  # fmt: skip
"""Net gain in pawns from which a claim of it holds, and from which it holds without a note."""

MOST = {"exchange": 2.5}
"""Net gain in pawns above which it is no longer that."""

WORTH = {
    "pawn": 1,
    "two pawns": 2,
    "three pawns": 3,
    "exchange": 2,
    "piece": 3,
    "rook": 5,
    "queen": 9,
    "two pieces": 6,
}
"""Value in pawns."""

LETTERS_OF = {
    "pawn": "p", "two pawns": "p", "three pawns": "p", "exchange": "r", "piece": "nb", "two pieces": "nb", "rook": "r", "queen": "q", "material": "pnbrq",
}  # fmt: skip
"""Pieces (FEN letters) that are given up when the amount is."""

_WHOSE = r" (?:a|an|the|his|her|our|your|their|my|this|that|1|another|black 's|white 's)"
_OF_WHAT = r"(?: (?:whole|clear|clean|full|single|healthy|second|third|extra|lost|missing|sacrificed|gambit|centre|central|important|minor|sound|black|white|good|valuable|[a-h]))*"
_AT = r"(?: (?:on [a-h][1-8]|in the corner))?"
AMOUNT = (
    rf"(?:{_WHOSE}{_OF_WHAT} (?:pawn|piece|knight|bishop|rook|queen|exchange){_AT}"
    r"|(?: (?:the|his|her|our|your|their|both))?(?: 2(?: (?:whole|clear|clean|healthy|full|minor))* (?:pawns|pieces)| 3(?: (?:whole|clear|clean|healthy))* pawns)"
    r"|(?: (?:the|some|his|her|our|your))? material)"
)
"""The regular expression of an amount, for a slot. It takes its own leading blank."""


@dataclass(frozen=True)
class Amount:
    """An amount. name: a key of `LEAST`. letters: the pieces that it can be. square: where the piece stands, where said."""

    name: str
    letters: str
    square: str | None = None

    @classmethod
    def read(cls, text: str) -> Amount:
        """Reads the words of an `AMOUNT` slot."""
        words = text.split()
        at = re.search(r" on ([a-h][1-8])$", f" {text}")
        square = at[1] if at else None
        for number, plural in (("2", "two"), ("3", "three")):
            if number in words:
                name = f"{plural} {'pawns' if 'pawns' in words else 'pieces'}"
                return cls(name, LETTERS_OF[name], square)
        for word, letter in (("knight", "n"), ("bishop", "b")):
            if word in words:
                return cls("piece", letter, square)
        for name in ("exchange", "pawn", "piece", "rook", "queen"):
            if name in words:
                return cls(name, LETTERS_OF[name], square)
        return cls("material", LETTERS_OF["material"], square)

    def __str__(self) -> str:
        """As a sentence says it: "a pawn", "the exchange", "two pawns"."""
        if self.name in {"material", "two pawns", "three pawns", "two pieces"}:
            return self.name
        return f"{'the' if self.name == 'exchange' else 'a'} {self.name}"


def pawns(count: float) -> str:
    """ "one pawn" as "1 pawn", "3 pawns"; the sign is left out."""
    return f"{abs(count)} pawn{'s' if abs(count) != 1 else ''}"
