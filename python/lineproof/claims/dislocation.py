"""Dislocation: a noun that is named first and then taken up, or named again: "the c-file, it's half open", "the square before it, d4, is weak".

The two functions put it where the plain order has it; clauses without a verb are what they look at.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .chunk import Place
from .lexicon import NOUNS
from .noun import Noun

if TYPE_CHECKING:
    from .clause import Clause

_ON_THE_BOARD = frozenset({"piece", "square", "file"})
_PLACES = frozenset({"square", "point", "spot", "hole", "outpost", "field", "weakness"})
_KNOWN = frozenset({"the", "that", "this", "those", "these", "both"})
_UNSURE = frozenset({"if", "unless", "when", "until", "once", "before", "after"})
_ALIKE = frozenset(
    {"too", "also", "as well", "not", "yet", "either", "still", "not yet", "has not"}
)
_LOOKING = frozenset(
    {"mind", "mind out for", "look", "look at", "see", "watch", "take", "consider"}
)


def apposed(rough: list[Clause]) -> list[Clause]:
    """Puts the name of a square for the words before it: "the square in front of it, d4, belongs to White"."""
    found: list[Clause] = []
    for number, clause in enumerate(rough):
        before = found[-1] if found else None
        then = rough[number + 1] if number + 1 < len(rough) else None
        if (
            before is not None
            and then is not None
            and not before.lemma
            and not clause.lemma
            and clause.joint == ","
            and len(before.objects) == len(clause.objects) == 1
            and before.objects[0].head in _PLACES
            and before.objects[0].det in _KNOWN
            and clause.objects[0].type == "square"
            and not (clause.places or clause.states or clause.strays)
            and then.joint == ","
        ):
            before.objects[0] = replace(clause.objects[0], first=before.objects[0].first)
            before.places = []
            before.see(clause)
            continue
        found.append(clause)
    return found


def compared(before: Clause, clause: Clause) -> bool:
    """ "The same structure as in the Slav": what it is the same as, told with the clause before; True when nothing of it is left."""
    if clause.sub != "as" or clause.lemma or clause.strays or not clause.joint.endswith("as"):
        return False
    nouns = [*before.objects, *([before.subject] if before.subject is not None else [])]
    last = max(nouns, key=lambda n: n.last, default=None)
    if last is None or last.last != before.last:
        return False
    if last.head != "same" and not {"same", "identical"} & set(last.adjectives):
        return False
    before.places += clause.places
    before.places += [Place("as", o, o.first, o.last) for o in clause.objects]
    before.adverbs += clause.adverbs
    before.states += clause.states
    before.see(clause)
    return True


def elided(before: Clause, clause: Clause) -> None:
    """ "White has castled, Black has not": the verb of the clause before, with a denial of its own."""
    subject, other = clause.subject, before.subject
    if (
        subject is None
        or other is None
        or subject.type != "side"
        or other.type != "side"
        or subject.text == other.text
        or clause.objects
        or clause.states
        or clause.places
        or clause.strays
        or clause.inherited
        or clause.sub in _UNSURE
        or before.sub in _UNSURE
        or not set(clause.adverbs) <= _ALIKE
        or clause.verb.modal
    ):
        return
    if (
        clause.lemma == "be"
        and before.lemma in {"be", "castle"}
        and clause.verb.negated != before.verb.negated
        and (before.states or before.lemma == "castle")
        and before.verb.modal == clause.verb.modal == ""
        and not (before.verb.past or clause.verb.past)
    ):
        clause.lemma, clause.form, clause.passive = before.lemma, before.form, before.passive
        clause.states, clause.places = list(before.states), list(before.places)
        return
    has = clause.lemma == "have" and before.verb.done and before.lemma != "have"
    does = clause.lemma == "have" and before.lemma == "have" and bool(before.objects)
    if not (has or does) or before.verb.modal or before.verb.past or before.passive:
        return
    clause.lemma, clause.form = before.lemma, before.form
    clause.objects, clause.states = list(before.objects), list(before.states)
    clause.places = list(before.places)
    clause.verb = before.verb._replace(negated=clause.verb.negated)


def dislocated(before: Clause, clause: Clause) -> bool:
    """Whether a clause says "it" or "they" of the noun just named, which then takes its place; `before` may go where nothing else is in it."""
    subject = clause.subject
    if (
        subject is None
        or clause.joint not in {",", ", -", "-"}
        or not clause.lemma
        or clause.inherited
    ):
        return False
    many = subject.text == "they"
    if subject.head != "it" and not many:
        return False
    bare = not before.lemma
    if not bare and (before.lemma not in _LOOKING or before.form != "base"):
        return False
    nouns = [*before.objects, *(p.noun for p in before.places if p.noun is not None)]
    last = max(nouns, key=lambda n: n.last, default=None)
    if last is None or last.last != before.last or not _named(last, many):
        return False
    if bare and (len(before.objects) != 1 or before.places or before.states or before.strays):
        return False
    clause.subject = replace(last, first=subject.first, last=subject.last)
    if not bare:
        return False
    clause.joint, clause.adverbs = before.joint, before.adverbs + clause.adverbs
    clause.hedged = clause.hedged or before.hedged
    clause.see(before)
    return True


def _named(noun: Noun, many: bool) -> bool:
    rank = noun.type == "noun" and noun.head in NOUNS["back rank"]
    if (noun.type not in _ON_THE_BOARD and not rank) or noun.no or noun.plural != many:
        return False
    return bool(
        noun.type != "piece" or noun.whose or noun.square or noun.file or noun.det in _KNOWN
    )


__all__ = ["apposed", "compared", "dislocated", "elided"]
