"""Naming: a thing that a clause names as known, "the half-open file", whatever it says of it."""

from __future__ import annotations

from typing import Any

from .chunk import Place
from .clause import CONDITIONS, Clause
from .element import KNOWN, Element
from .lexicon import VERBS, members
from .noun import Noun
from .rest import Rest

_STRIVING = (["fight"], ["compete"], ["struggle"], ["look"], ["care"])
_ENDS = (
    members("win", VERBS)
    | members("lose", VERBS)
    | members("capture", VERBS)
    | members("exchange", VERBS)
    | members("cost", VERBS)
    | members("come off", VERBS)
)
"""Verbs after which a thing is there no more."""
_DOING = (
    members("attack", VERBS)
    | members("defend", VERBS)
    | members("capture", VERBS)
    | members("exchange", VERBS)
    | members("block", VERBS)
    | members("remove", VERBS)
)
"""Verbs of what is done to a thing that is there."""
_UNREAL = frozenset({"want", "avoid", "prevent", "create", "become", "need", "prepare", "dream", "open", "say", "call", "tell", "discuss", "await", "imagine"})  # fmt: skip
"""Verbs that speak of what is not there, or not yet."""
_UNLIKE = frozenset({"without", "like", "against", "from", "but", "as"})
"""Prepositions behind which a thing may not be there."""


def known(clause: Clause) -> list[Noun]:
    """The nouns of a clause that are named as known: not the one before a relative clause, nor what is there no more.

    Of a condition ("if that overworked bishop takes") it is what is pointed at. What is planned to be done to a thing leaves it there; of what is only wished for, the subject alone is there.
    """
    if clause.sub in CONDITIONS:
        subject = [clause.subject] if clause.subject is not None and not clause.inherited else []
        nouns = subject + (clause.objects if clause.lemma in _DOING else [])
        return [n for n in nouns if (n.whose or n.det in {"that", "this"}) and not n.no]
    if clause.unreal:
        return [o for o in clause.objects if o.whose and not o.no] if clause.lemma in _DOING else []
    nouns = [*clause.objects] if clause.lemma not in _ENDS else []
    if clause.subject is not None and not clause.inherited and clause.lemma not in _ENDS:
        nouns.insert(0, clause.subject)
    nouns += [p.noun for p in clause.places if p.noun is not None]
    if clause.lemma.split()[:1] and clause.lemma.split()[0] in _UNREAL:
        nouns = [n for n in nouns if n is clause.subject and clause.lemma != "become"]
    return [
        n for n in nouns if (n.whose or n.det in KNOWN) and not n.no and n.first >= clause.first
    ]


def named_in(clause: Clause, first: Element, others: tuple[Element, ...]) -> dict[str, Any] | None:
    """The slots of the first noun that fits, with its words as the span, or None. others: the places behind it."""
    places = {id(p.noun): p for p in clause.places if p.noun is not None}
    for noun in known(clause):
        before = places.get(id(noun))
        slots: dict[str, Any] = {}
        if (
            clause.subject is not None
            and clause.subject.type == "side"
            and before is not None
            and before.preposition == "with"
        ):
            slots["side"] = clause.subject.text  # "with the bishop pair we are better"
        if not first.fits(noun, slots):
            continue
        if first.slot and noun.whose:
            slots.setdefault("whose", noun.whose)
        if _of_something(noun, clause) or (before is not None and _unlike(before, clause)):
            continue
        last = _last(noun, clause, others, slots)
        if last is not None:
            return {**slots, "span": (noun.first, last)}
    return None


def _of_something(noun: Noun, clause: Clause) -> bool:
    """ "The majority of my pupils"."""
    return any(
        p.preposition == "of"
        and p.first == noun.last + 1
        and p.noun is not None
        and p.noun.type == "noun"
        for p in clause.places
    )


def _unlike(place: Place, clause: Clause) -> bool:
    if place.preposition == "for":
        return clause.lemma.split()[:1] not in _STRIVING
    return place.preposition in _UNLIKE


def _last(
    noun: Noun, clause: Clause, others: tuple[Element, ...], slots: dict[str, Any]
) -> int | None:
    """The last word of a thing with the places that belong to it; None when one is not there."""
    last = noun.last
    for other in others:
        behind = [p for p in clause.places if p.first == last + 1]
        if behind and other.take(Rest([], list(behind), [], []), slots):
            last = behind[0].last
        elif not other.optional:
            return None
    return last


__all__ = ["known", "named_in"]
