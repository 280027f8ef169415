"""A deed: a noun phrase that means a move, "the capture of the pawn on d4", "the bishop to d7"; the slot of that name takes it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .lexicon import VERBS, members
from .noun import Noun
from .patterns import MOVE
from .verbs import forms
from .worded import DOING, GENERAL, NOMINAL, TAKING, Worded

if TYPE_CHECKING:
    from .clause import Clause


_WITH_IT = frozenset({"on", "to", "of", "with", "at", "by", "from", "into"})

MEN = frozenset({"piece", "square", "move"})

OTHER = frozenset(
    {
        "same",
        "other",
        "another",
        "only",
        "sole",
        "single",
        "better",
        "best",
        "next",
        "previous",
        "last",
        "such",
        "stronger",
        "strongest",
    }
)


_GAINING = members("win", VERBS) | members("lose", VERBS) | {"be", "cost"}
_REASONS = frozenset({"because of", "thanks to", "on account of", "owing to", "in view of", "due to"})  # fmt: skip


def deed(noun: Noun) -> str | None:
    """The words of a noun phrase that means a move, written out or not; None for any other."""
    if noun.no or noun.plural or noun.parts:
        return None
    if (
        noun.head in NOMINAL
        and {"last", "previous"} & set(noun.adjectives)
        and (noun.whose or noun.det == "the")
    ):
        return noun.text  # "his last move"
    if not OTHER.isdisjoint(noun.adjectives):
        return None
    if noun.type in {"move", "square"}:
        return (
            None if noun.type == "square" and noun.det else noun.text
        )  # "the square d5" is no move
    if noun.type == "pronoun":
        return noun.text if noun.head in {"it", "this", "that", "which"} else None
    if noun.type != "noun" or noun.head not in NOMINAL:
        return None
    said = Worded.read(noun.text)
    named = any(MOVE.fullmatch(w) for w in noun.text.split())
    told = (
        said is not None and said.telling and (noun.head not in GENERAL or bool(said.to or said.by))
    )
    known = noun.det in {"this", "that"} or (
        noun.head not in GENERAL and (noun.det in {"the", ""} or bool(noun.whose))
    )
    return noun.text if named or told or known else None


def doing(clause: Clause) -> Noun:
    """A move in words, from a clause: "taking on c4"."""
    parts = [f"{p.preposition} {p.noun.text}" for p in clause.places if p.noun is not None]
    ing = clause.lemma if clause.lemma.endswith("ing") else forms(clause.lemma)[4]
    text = " ".join([ing, *(o.text for o in clause.objects), *parts])
    return Noun("noun", "move", text, clause.first, clause.last)


def whole(clause: Clause) -> None:
    """Puts what belongs to a noun of a move with it: "the capture" "of the pawn" "on d4"."""
    if clause.subject is not None:
        clause.subject = joined_deed(clause, _taking(clause, clause.subject))
    clause.objects = [joined_deed(clause, noun) for noun in clause.objects]
    for place in list(clause.places):
        if place.noun is not None and place in clause.places:
            noun = joined_deed(clause, place.noun)
            if noun is not place.noun:
                at = clause.places.index(place)
                clause.places[at] = place._replace(noun=noun, last=max(place.last, noun.last))
    if not clause.lemma and len(clause.objects) == 1 and clause.places:
        piece, place = clause.objects[0], clause.places[0]
        goes = place.preposition == "to" and place.noun is not None and place.noun.type == "square"
        if goes and piece.type == "piece" and not piece.plural and place.first == piece.last + 1:
            assert place.noun is not None
            text = f"{piece.text} to {place.noun.text}"
            clause.objects[0] = replace(piece, type="noun", head="move", text=text, square="", last=place.last)  # fmt: skip
            del clause.places[0]


def _taking(clause: Clause, noun: Noun) -> Noun:
    """ "The exchange on c6" is a capture, "the exchange" alone may be material."""
    if noun.head not in {"exchange", "trade", "swap"} or noun.plural or noun.type != "noun":
        return noun
    if clause.lemma not in _GAINING:
        return noun
    on = next((p for p in clause.places if p.first == noun.last + 1), None)
    if on is None or on.preposition != "on" or on.noun is None or on.noun.type != "square":
        return noun
    return replace(noun, head="capture", text="the capture", adjectives=())


def joined_deed(clause: Clause, noun: Noun) -> Noun:
    going = next((a for a in noun.adjectives if a.endswith("ing") and a in DOING), "")
    if going and noun.type in {"square", "piece"} and not noun.det:
        noun = replace(noun, type="noun", head="move", text=f"{going} {noun.text}", adjectives=())
    elif noun.type != "noun" or noun.head not in NOMINAL:
        return noun
    reason = next((p for p in clause.places if p.noun is noun and p.preposition in _REASONS), None)
    if (
        noun.head == "check"
        and reason is None
        and (noun.det != "the" or {"discovered", "double"} & set(noun.adjectives))
    ):
        return noun  # "gives a check from h5"
    while True:
        place = next((p for p in clause.places if p.first == noun.last + 1), None)
        if (
            place is None
            or place.preposition not in _WITH_IT
            or place.noun is None
            or place.noun.type not in MEN
            or place.noun.parts
            or (place.preposition == "by" and clause.passive)
            or (
                place.preposition in {"with", "by"}
                and noun.head
                not in TAKING | {"move", "advance", "surrender", "sacrifice", "offer", "loss"}
                and place.noun.type != "piece"
            )
        ):
            return noun
        noun = replace(noun, text=f"{noun.text} {place.preposition} {place.noun.text}", last=place.last)  # fmt: skip
        clause.places.remove(place)


__all__ = ["deed", "doing", "joined_deed", "whole"]
