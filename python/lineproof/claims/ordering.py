"""Ordering: "first Bc4, only then d3", "Bc4 and d3 in either order" told as one clause: what comes second stands behind "only then" or "beside"."""

from __future__ import annotations

from .chunk import Place
from .clause import Clause
from .lexicon import NOUNS
from .noun import Noun

_ORDERS = frozenset({"order", "move order", "sequence"})
_AT_ONCE = frozenset({"at once", "straight away", "immediately", "right away"})
_ANY = frozenset({"either", "any"})


def order(noun: Noun) -> str | None:
    """The word for an order of moves; None for anything else."""
    return "order" if noun.head in _ORDERS and not noun.no and noun.type == "noun" else None


def ordered(before: Clause, clause: Clause) -> bool:
    """ "First Bc4, only then d3", "White plays Bc4 first, and not d3 at once"."""
    second = _move_alone(clause)
    if second is None or not _first(before):
        return False
    said = set(clause.adverbs)
    if clause.verb.negated:
        if _AT_ONCE.isdisjoint(said):
            return False
    elif not {"only", "then"} <= said:
        return False
    before.places.append(Place("only then", second, clause.first, clause.last))
    return True


def not_otherwise(found: list[Clause], clause: Clause) -> bool:
    """ "Take on c5 first, then e4, never the other way round": what comes second is told with what comes first."""
    if len(found) < 2 or not clause.verb.negated or clause.lemma or clause.places:
        return False
    noun = clause.objects[0] if len(clause.objects) == 1 else None
    if noun is None or noun.head not in {"way", "order"} or "other" not in noun.adjectives:
        return False
    before, then = found[-2:]
    second = _move_alone(then)
    if second is None or "then" not in then.adverbs or then.verb.negated or not _first(before):
        return False
    before.places.append(Place("only then", second, then.first, then.last))
    before.see(clause)
    found.pop()
    return True


def perpetual(before: Clause, clause: Clause) -> bool:
    """ "A perpetual with Qf4 and Qg3": the second of its checks is no move of the line."""
    second = _move_alone(clause)
    with_move = before.places and before.places[-1].preposition in {"with", "by"}
    if second is None or clause.joint != "and" or not with_move:
        return False
    first = before.places[-1].noun
    if first is None or first.type != "move" or first.last + 2 != clause.first:
        return False
    if not any(o.head in NOUNS["perpetual"] for o in before.objects):
        return False
    before.see(clause)
    return True


def _first(clause: Clause) -> bool:
    """Whether a clause says of a move that it comes first."""
    if clause.verb.negated or clause.sub:
        return False
    noun = clause.objects[0] if len(clause.objects) == 1 else clause.subject
    if noun is None or noun.type not in {"move", "square"} or noun.parts:
        return False
    return "first" in clause.adverbs or "first" in noun.adjectives


def either(before: Clause, clause: Clause) -> bool:
    """ "Bc4 and d3 can be played in either order": the first is told with the second."""
    first = _move_alone(before)
    if first is None or before.adverbs or clause.joint != "and" or not clause.lemma:
        return False
    if not any(p.noun is not None and order(p.noun) and p.noun.det in _ANY for p in clause.places):
        return False
    clause.places.append(Place("beside", first, before.first, before.last))
    clause.joint = before.joint
    clause.see(before)
    return True


def _move_alone(clause: Clause) -> Noun | None:
    """The one move that a part without a verb names."""
    if clause.lemma or clause.subject or clause.places or clause.states or clause.strays:
        return None
    noun = clause.objects[0] if len(clause.objects) == 1 else None
    if noun is None or noun.type not in {"move", "square"} or noun.parts:
        return None
    return noun


__all__ = ["either", "not_otherwise", "order", "ordered", "perpetual"]
