"""Possessives without their noun: "ours", "theirs on e2", "Black's", "that on f1" after a bishop or a king was spoken of."""

from __future__ import annotations

from dataclasses import replace

from .chunk import Place
from .clause import Clause
from .noun import Noun

_WHOSE = {"ours": "our", "mine": "our", "yours": "your", "his": "his", "hers": "his", "theirs": "their", "white 's": "white 's", "black 's": "black 's"}  # fmt: skip
_BARE = frozenset({"that", "one"})


def named(clause: Clause, head: str) -> None:
    """Puts the piece spoken of into the subject and the objects of a clause: "ours" is "our bishop" after a bishop."""
    if not head:
        return
    subject = clause.subject
    if subject is not None and not clause.inherited:
        clause.subject = _piece(subject, clause.places, head)
    clause.places = [
        p._replace(noun=_piece(p.noun, [], head))
        if p.noun is not None and p.preposition == "than" and p.noun.head in _WHOSE
        else p
        for p in clause.places
    ]
    clause.objects = [
        _piece(o, clause.places, head) if o.head in _WHOSE else o for o in clause.objects
    ]


def _piece(noun: Noun, places: list[Place], head: str) -> Noun:
    if noun.type != "pronoun" or (noun.head not in _WHOSE and noun.head not in _BARE):
        return noun
    at = next(
        (p for p in places if p.preposition in {"on", "at"} and p.noun is not None and p.noun.type == "square" and p.first == noun.last + 1),
        None,
    )  # fmt: skip
    if noun.head in _BARE and at is None:
        return noun
    square = ""
    if at is not None and at.noun is not None:
        square = at.noun.square
        places.remove(at)
    whose = _WHOSE.get(noun.head, "")
    text = f"{whose or 'the'} {head}{f' on {square}' if square else ''}"
    return replace(noun, type="piece", head=head, text=text, square=square, whose=whose)


__all__ = ["named"]
