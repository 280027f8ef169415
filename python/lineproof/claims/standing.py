"""Standing: on which square a thing stands that is called by what it is: "the backward pawn on d6", "the only defender on e5"."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .slot import PAWNS

if TYPE_CHECKING:
    from .clause import Clause
    from .noun import Noun


def where_stands(clause: Clause) -> None:
    """Gives such a noun its square; the place stays what it was."""
    if clause.subject is not None:
        clause.subject = _on(clause.subject, clause)
    clause.objects = [_on(noun, clause) for noun in clause.objects]


def _on(noun: Noun, clause: Clause) -> Noun:
    if noun.head not in PAWNS or noun.square or noun.plural:
        return noun
    for place in clause.places:
        square = place.noun.square if place.noun is not None and not place.noun.parts else ""
        if place.preposition in {"on", "at"} and place.first == noun.last + 1 and square:
            return replace(noun, square=square)
    return noun


__all__ = ["where_stands"]
