"""Ordering: "first Bc4, only then d3", "Bc4 and d3 in either order" told as one clause: what comes second stands behind "only then" or "beside"."""

from __future__ import annotations

from .chunk import Place
from .clause import Clause
from .deed import deed
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
    after = _after_that(clause)
    second = _move_alone(clause, after=after)
    if second is None or not _first(before):
        return False
    said = {*clause.adverbs, "then"} if after else set(clause.adverbs)
    if clause.verb.negated:
        if _AT_ONCE.isdisjoint(said):
            return False
    elif not {"only", "then"} <= said:
        return False
    before.places.append(Place("only then", second, clause.first, clause.last))
    return True


def insisted(clauses: list[Clause]) -> list[Clause]:
    """ "First Bc4 and then d3, never the other way about": what comes second comes only then."""
    found: list[Clause] = []
    for clause in clauses:
        before = found[-1] if found else None
        if before is not None and _turned_round(clause):
            after = _after_that(before)
            then = after or "then" in before.adverbs or before.joint.endswith("then")
            if then and _move_alone(before, after=after):
                before.adverbs += ["only", "then"]
                before.see(clause)
                continue
        found.append(clause)
    return found


def _turned_round(clause: Clause) -> bool:
    """ "Never the other way about", "not the reverse"."""
    if clause.lemma or clause.subject or clause.places or len(clause.objects) != 1:
        return False
    noun = clause.objects[0]
    other = noun.head in {"way", "order"} and "other" in noun.adjectives
    return clause.verb.negated and (other or noun.head in {"reverse", "opposite"})


def _after_that(clause: Clause) -> bool:
    """ "After that the capture on d4": what comes second."""
    places = clause.places
    return (
        len(places) == 1
        and places[0].preposition == "after"
        and places[0].noun is not None
        and places[0].noun.head == "that"
    )


def _first(clause: Clause) -> bool:
    """Whether a clause says of a move that it comes first."""
    if clause.verb.negated or clause.sub:
        return False
    noun = clause.objects[0] if len(clause.objects) == 1 else clause.subject
    if noun is None or deed(noun) is None or noun.type == "pronoun":
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


def _move_alone(clause: Clause, *, after: bool = False) -> Noun | None:
    """The one move that a part without a verb names; after: behind "after that"."""
    if clause.lemma or clause.subject or clause.states or clause.strays:
        return None
    if clause.places and not after:
        return None
    noun = clause.objects[0] if len(clause.objects) == 1 else None
    return noun if noun is not None and noun.type != "pronoun" and deed(noun) else None


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


__all__ = ["either", "insisted", "order", "ordered", "perpetual"]
