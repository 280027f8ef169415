"""What a sentence counts attackers and defenders of: "Two of us glare at f7, one of him defends it"."""

from __future__ import annotations

from dataclasses import replace

from .chunk import Place
from .clause import Clause
from .lexicon import NOUNS, VERBS, members
from .noun import Noun

_DOING = members("attack", VERBS) | members("defend", VERBS)
_GUARDING = members("defend", VERBS)
_TAKING = members("capture", VERBS)
_LOOKING = frozenset({"look at", "watch", "see", "take", "consider", "count"})
_MEN = frozenset({*NOUNS["attacker"], *NOUNS["defender"]})
_HAVING = frozenset({"have", "be", "", "get"})


def aimed(clause: Clause) -> tuple[str, str] | None:
    """The square that a clause attacks, defends or counts for, and the noun that it counts ("defender") or ""."""
    heads = [o.head for o in clause.objects if o.head in _MEN]
    if clause.lemma in _GUARDING and not heads:
        heads = ["defender"]
    elif clause.lemma in _DOING and not heads:
        heads = ["attacker"]
    if clause.lemma not in _DOING | _TAKING | _LOOKING and not heads:
        return None
    nouns = [
        *clause.objects,
        *[
            p.noun
            for p in clause.places
            if p.noun is not None and p.preposition in {"of", "on", "against", "for", "at"}
        ],
    ]
    square = next((n.square for n in nouns if n.square and not n.parts), "")
    return (square, heads[0] if heads else "") if square else None


def fill(clause: Clause, aim: tuple[str, str]) -> None:
    """Puts the square where a clause leaves it out: "defends it", "the knight there", "White has two defenders"."""
    square, counted = aim
    said = Noun("square", square, square, clause.last, clause.last, square=square)
    if clause.lemma in _DOING:
        for number, noun in enumerate(clause.objects):
            if noun.type == "pronoun" and noun.head == "it":
                clause.objects[number] = replace(said, first=noun.first, last=noun.last)
            elif (
                noun.type == "piece"
                and not noun.square
                and not noun.plural
                and "there" in clause.adverbs
            ):
                clause.objects[number] = replace(
                    noun, square=square, text=f"{noun.text} on {square}"
                )
        return
    if clause.lemma == "make" and counted and len(clause.objects) == 1:
        told = clause.objects[0]
        if told.head.isdigit() or told.head in _MEN:
            head = counted if told.head.isdigit() else told.head
            clause.objects[0] = replace(told, head=head, type="noun")
            clause.places.append(Place("of", said, clause.last, clause.last))
        return  # "and the knight makes three"
    if clause.lemma not in _HAVING or clause.places:
        return
    for number, noun in enumerate(clause.objects):
        if counted and noun.head == "piece" and noun.whose == "their" and noun.count is not None:
            noun = replace(noun, head=counted, whose="")  # "there are three of them"
            clause.objects[number] = noun
        if noun.head in _MEN and noun.type == "noun":
            clause.places.append(Place("of", said, clause.last, clause.last))
            return


__all__ = ["aimed", "fill"]
