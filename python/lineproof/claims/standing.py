"""Standing: on which square a thing stands that is called by what it is: "the backward pawn on d6", "the only defender on e5"."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .noun import on_square
from .slot import PAWNS

if TYPE_CHECKING:
    from .clause import Clause
    from .noun import Noun


def where_stands(clause: Clause) -> None:
    """Gives such a noun its square; the place stays what it was."""
    if clause.subject is not None:
        clause.subject = _piece_on(_on(clause.subject, clause), clause)
    clause.objects = [_on(noun, clause) for noun in clause.objects]


def _on(noun: Noun, clause: Clause) -> Noun:
    if noun.head not in PAWNS or noun.square or noun.plural:
        return noun
    for place in clause.places:
        square = place.noun.square if place.noun is not None and not place.noun.parts else ""
        if place.preposition in {"on", "at"} and place.first == noun.last + 1 and square:
            return replace(noun, square=square)
    return noun


def _piece_on(noun: Noun, clause: Clause) -> Noun:
    """ "The knight in front of it on d5": on d5."""
    if noun.type != "piece" or noun.square or noun.parts or noun.plural or clause.inherited:
        return noun
    places = [p for p in clause.places if noun.last < p.first and p.last < clause.verb_at]
    if len(places) < 2 or places[0].first != noun.last + 1:
        return noun
    square = next((p.noun.square for p in places[1:] if p.preposition in {"on", "at"} and p.noun and not p.noun.parts), "")  # fmt: skip
    return replace(on_square(noun, square, noun.last), square=square) if square else noun


__all__ = ["where_stands"]
