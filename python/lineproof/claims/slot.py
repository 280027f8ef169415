"""Slots: what a frame calls a noun phrase by what it is, `{target}`, `{amount}`, and the noun phrases that fit."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from .deed import deed
from .lexicon import NOUNS
from .noun import Noun

_PATTERNS = frozenset(NOUNS["pattern"])
_DOING = frozenset((
    *NOUNS["move"], *NOUNS["sacrifice"], *NOUNS["exchange"], "check", "castling", "promotion", "grab"
))  # fmt: skip
Test = Callable[[Noun], Any]
"""What a slot makes of a noun phrase; None when it does not fit."""


class InTable:
    """Looks a noun phrase up in a table of a kind, from words to values."""

    __slots__ = ("values",)

    def __init__(self, values: Mapping[str, Any]) -> None:
        self.values = values

    def __eq__(self, other: object) -> bool:
        return isinstance(other, InTable) and self.values is other.values

    def __hash__(self) -> int:
        return id(self.values)

    def __call__(self, noun: Noun) -> Any:
        for words in _phrasings(noun):
            if words in self.values:
                return self.values[words]
        return None


PAWNS = frozenset(
    w
    for name in ("isolated pawn", "doubled pawn", "backward pawn", "passed pawn", "hanging pawn")
    for w in NOUNS[name]
    if "pawn" in w or w == "passer"
) | {"extra pawn"}
"""Nouns that call a pawn by how it stands."""


def _pawn(noun: Noun) -> str | None:
    """ "The backward pawn on d6" is the pawn there."""
    if noun.head not in PAWNS or not noun.square or noun.plural or noun.no:
        return None
    return f"{noun.whose or 'the'} pawn on {noun.square}"


def _text(*types: str) -> Test:
    return lambda noun: noun.text if noun.type in types else None


def _agent(noun: Noun) -> str | None:
    if noun.head in {"there", "here"} or noun.no or "same" in noun.adjectives:
        return None
    if noun.type in {"side", "piece", "move", "square", "pronoun"}:
        return noun.text
    if noun.head in _PATTERNS and noun.det in {"this", "that"}:
        return "this"  # "this pattern is called a skewer"
    if (pawn := _pawn(noun)) is not None:
        return pawn
    return noun.text if noun.head in _DOING else None


def _target(noun: Noun) -> str | None:
    if "wrong" in noun.adjectives:
        return None
    if noun.type in {"piece", "square"} or (
        noun.type == "pronoun"
        and noun.head in {"it", "this", "that", "which", "who", "both", "ones"}
    ):
        return noun.text
    return _pawn(noun)


def _targets(noun: Noun) -> str | None:
    return noun.text if len(noun.parts) > 1 and noun.type in {"piece", "square"} else None


def _amount(noun: Noun) -> str | None:
    if noun.head == "extra pawn":
        noun = replace(noun, type="piece", head="pawn", square="")
    if noun.det in {"1 of", "one of"}:
        noun = replace(noun, plural=False, count=None)  # "one of his pawns"
    if noun.type == "piece" and noun.head not in {"king", ""}:
        number = f"{noun.count} " if noun.count is not None else ""
        lead = noun.whose or ("" if number else "a")
        return f"{lead} {number}{noun.head}{'s' if noun.plural else ''}{f' on {noun.square}' if noun.square else ''}".strip()
    if noun.head in {"exchange", "material", "piece"} and noun.type == "noun":
        return (
            noun.text
            if noun.head != "piece"
            else f"{noun.whose or 'a'} {f'{noun.count} ' if noun.count else ''}piece{'s' if noun.plural else ''}".replace(
                "a 2", "2"
            ).replace("a 3", "3")
        )
    return None


def _file(noun: Noun) -> str | None:
    return noun.file if noun.type == "file" else None


def _number(noun: Noun) -> str | None:
    return str(noun.count) if noun.count is not None else None


def _move(noun: Noun) -> str | None:
    return noun.text if noun.type in {"move", "square"} and not noun.plural else None


def _side(noun: Noun) -> str | None:
    return noun.text if noun.type == "side" else None


def _whose(noun: Noun) -> str | None:
    return noun.whose or None


SLOTS: dict[str, Test] = {
    "deed": deed, "other_deed": deed, "agent": _agent, "patient": _target, "side": _side, "whose": _whose, "guarded": _targets, "whose_piece": lambda n: n.head if n.type == "piece" and n.whose else None, "target": _target, "object": _target, "second": _target, "behind": _target, "pinner": _target,
    "defender": _text("piece"), "piece": _text("piece"), "targets": _targets, "square": lambda n: n.square if n.type == "square" and not n.parts else None,
    "anything": lambda n: n.text, "m": _number, "than": _agent, "played": lambda n: _agent(n) if n.type in {"move", "square", "pronoun"} or n.head in _DOING else None, "nobody": lambda n: n.text if n.no and n.head != "nowhere" and (n.type == "pronoun" or n.head in {"piece", "unit", "man"} or n.type == "piece") else None,
    "king": lambda n: n.text if n.type == "piece" and n.head == "king" and not n.parts else None, "none": lambda n: n.head if n.no and n.type == "noun" else None, "squares": _text("square"), "file": _file, "files": _file, "n": _number, "move": _move, "by": _move, "best": _move, "amount": _amount, "given": _amount,
    "fallen": _amount, "price": _amount, "described": lambda n: n.text if n.head in _DOING else None, "wing": lambda n: n.head if n.head in {"kingside", "queenside", "centre"} else "centre" if n.head in NOUNS["centre"] else None,
}  # fmt: skip
"""Slots that every kind may use, with the noun phrases that fit them."""

_ARTICLE = re.compile(r"(?:the|a|an|this|our|his|their|white 's|black 's) ")


def _phrasings(noun: Noun) -> Iterator[str]:
    yield noun.text
    amount = _amount(noun)
    if amount is not None:
        yield amount
    yield _ARTICLE.sub("", noun.text, count=1) if _ARTICLE.match(noun.text) else noun.text
    yield noun.head


__all__ = ["PAWNS", "SLOTS", "InTable", "Test"]
