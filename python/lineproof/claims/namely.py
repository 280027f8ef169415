"""Namely: what is counted as one and named behind it, "he has one move here, and it is d5"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .chunk import Place
from .lexicon import NOUNS, VERBS, members

if TYPE_CHECKING:
    from .clause import Clause

_ONE = frozenset({*NOUNS["move"], *NOUNS["square"], *NOUNS["choice"], *NOUNS["escape"], "defence"})
_HAVING = members("have", VERBS) | members("be", VERBS) | {"remain"}
_JOINTS = frozenset({", and", "and", ",", "-", ":", ";"})


def names_one(before: Clause, clause: Clause) -> bool:
    """Puts the move with the one thing that it is: "there is only one move, and that is Ke6"."""
    subject = clause.subject
    if clause.lemma != "be" or subject is None or subject.head not in {"it", "that", "this"}:
        return False
    if (
        clause.joint not in _JOINTS
        or len(clause.objects) != 1
        or clause.verb.negated
        or clause.states
    ):
        return False
    named = clause.objects[0]
    if named.type not in {"move", "square"} or named.plural or before.verb.negated:
        return False
    one = next((o for o in before.objects if o.count == 1 and o.head in _ONE), None)
    if (
        one is None
        or before.lemma not in _HAVING
        or any(p.preposition == "namely" for p in before.places)
    ):
        return False
    before.places.append(Place("namely", named, named.first, named.last))
    return True


_REASONS = frozenset(
    {"because of", "on account of", "owing to", "due to", "in view of", "thanks to"}
)


def for_reason(before: Clause, clause: Clause) -> bool:
    """ "Would be a blunder, on account of Bb5": the reason told with what it is of."""
    if clause.lemma or clause.joint != "," or clause.objects or clause.states or not before.lemma:
        return False
    if not clause.places or any(p.preposition not in _REASONS for p in clause.places):
        return False
    before.places += clause.places
    return True


def has_is(before: Clause, clause: Clause) -> bool:
    """ "The best move we have is Ke6": the best move is."""
    if before.lemma not in {"have", "get"} or before.subject is None or len(before.objects) != 1:
        return False
    had, subject = before.objects[0], before.subject
    if (
        clause.lemma != "be"
        or clause.joint != "-"
        or subject.type != "side"
        or had.first > subject.first
    ):
        return False
    if had.head not in _ONE or (clause.subject is not None and not clause.inherited):
        return False
    if not clause.objects or before.verb.negated:
        return False
    before.lemma, before.subject, before.verb = "be", had, clause.verb
    before.objects, before.states = list(clause.objects), list(clause.states)
    before.places += clause.places
    return True


__all__ = ["for_reason", "has_is", "names_one"]
