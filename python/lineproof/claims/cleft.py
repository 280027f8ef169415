"""Clefts: one thing said in two clauses, "it is the bishop that pins", "what he has is the bishop pair"; each becomes one."""

from __future__ import annotations

from .chunk import Place
from .clause import Clause
from .lexicon import VERBS, members

_SEEING = frozenset({"see", "expect", "find", "notice", "spot", "consider", "overlook", "foresee", "mention"})  # fmt: skip
_DEFEND = members("defend", VERBS)
_ONES = frozenset({"one", "piece", "man", "unit"})
_WITH_PREPOSITION = frozenset(w for words in VERBS.values() for w in words if w.count(" ") == 1)


def cleft(before: Clause, clause: Clause) -> bool:
    """ "It is the bishop that pins", "that's a mate he threatens", "a pawn is what it cost us": one clause, put into `before`."""
    if before.lemma != "be" or not clause.lemma or clause.form != "finite":
        return False
    pointed = before.subject is not None and before.subject.head in {"it", "that", "this"}
    if (
        clause.subject is not None
        and clause.subject.no
        and (not clause.sub or clause.lemma in _SEEING)
    ):
        return False  # "that is a move nobody saw"
    if before.sub == "if" and not clause.sub:
        return False  # "if this isn't an open game we close it"
    if pointed and before.objects and before.objects[-1].head == "position":
        return False  # "this is the position we had last week"
    if (
        pointed
        and before.objects
        and clause.sub in {"that", "who", "which", ""}
        and (clause.sub or clause.joint == "-")
        and "," not in clause.joint
    ):
        what = before.objects[-1]
        negated = before.verb.negated
        rather = next(
            (p for p in before.places if p.preposition == "but" and p.noun is not None), None
        )
        if rather is not None and rather.noun is not None:
            what, negated = rather.noun, False  # "it isn't the king but the queen that"
            before.places.remove(rather)
        twin = before.objects[-1] if what is not before.objects[-1] else None
        if clause.subject is None:
            clause.subject = what
            clause.twin = twin if twin is not None and twin.type == "piece" else None
        elif (clause.places and clause.places[-1].noun is None) or (
            clause.adverbs and clause.adverbs[-1] in {"to", "on", "with", "at", "for", "by"}
        ):
            preposition = (
                clause.places.pop().preposition
                if clause.places and clause.places[-1].noun is None
                else clause.adverbs.pop()
            )
            clause.places.append(Place(preposition, what, what.first, what.last))
        else:
            clause.objects.append(what)
        _take_over(before, clause, negated)
        return True
    if (
        pointed
        and clause.sub == "that"
        and "," not in clause.joint
        and clause.subject is not None
        and len(before.places) == 1
        and not (before.objects or before.states)
        and before.places[0].noun is not None
    ):
        place = before.places.pop()  # "it is to White that the pair of bishops belongs"
        if f"{clause.lemma} {place.preposition}" in _WITH_PREPOSITION and place.noun is not None:
            clause.lemma = f"{clause.lemma} {place.preposition}"
            clause.objects.append(place.noun)
        else:
            clause.places.append(place)
        _take_over(before, clause, before.verb.negated)
        return True
    if (
        clause.sub == "what"
        and clause.lemma in {"call", "name"}
        and pointed
        and not before.objects
        and clause.subject is not None
        and clause.subject.type == "side"
        and clause.objects
        and not clause.verb.negated
    ):
        before.objects = clause.objects  # "this is what we call a skewer"
        before.see(clause)
        return True
    if clause.joint == "what" and before.subject is not None and not before.objects:
        what = before.subject
        if clause.subject is None:
            clause.subject = what
        else:
            clause.objects.append(what)
        _take_over(before, clause, before.verb.negated)
        return True
    return False


def all_one_has(found: list[Clause], clause: Clause) -> bool:
    """ "One legal move is all he has", "one legal move, that's all he's been left with": he has only that; True when it is put into `clause`."""
    before = found[-1] if found else None
    if (
        before is None
        or before.lemma != "be"
        or before.adverbs != ["all"]
        or before.subject is None
    ):
        return False
    if before.objects or before.states or before.places or before.verb.negated or before.sub:
        return False
    if clause.joint not in {"-", "that"} or clause.form != "finite" or clause.verb.negated:
        return False
    what, start = before.subject, before
    if what.head in {"that", "this"} and len(found) > 1 and not found[-2].lemma:
        start = found[-2]
        if len(start.objects) != 1 or start.places or start.states or start.strays:
            return False
        what = start.objects[0]
    if what.type != "noun" and what.type != "piece":
        return False
    if clause.lemma == "leave" and clause.passive and _stranded(clause):
        clause.lemma, clause.passive, clause.adverbs, clause.places = "have", False, [], []
    if clause.lemma not in VERBS["have"] or clause.subject is None or clause.objects:
        return False
    clause.objects, clause.joint, clause.sub = [what], start.joint, start.sub
    clause.adverbs = [*clause.adverbs, "only"]
    clause.see(start)
    return True


def _stranded(clause: Clause) -> bool:
    """ "He has been left with": nothing follows the preposition."""
    if clause.places:
        return len(clause.places) == 1 and clause.places[0].noun is None and not clause.adverbs
    return clause.adverbs == ["with"]


def what_first(before: Clause, clause: Clause) -> bool:
    """ "What he has is the bishop pair": one clause, put into `before`."""
    if before.sub != "what" or not before.lemma or clause.lemma != "be" or clause.joint != "-":
        return False
    if before.objects or (clause.subject is not None and not clause.inherited):
        return False
    before.sub, before.joint = "", before.joint.replace("what", "").strip()
    before.objects, before.states = clause.objects, [*before.states, *clause.states]
    before.places = before.places + clause.places
    before.adverbs, before.strays = before.adverbs + clause.adverbs, before.strays + clause.strays
    before.see(clause)
    if clause.verb.negated:
        before.deny()
    return True


def only_one(before: Clause, clause: Clause) -> bool:
    """ "The king is the only piece that guards the queen", "the only one guarding her": he alone does; one clause, put into `before`."""
    if before.lemma != "be" or before.subject is None or len(before.objects) != 1:
        return False
    if before.verb.negated or before.verb.modal or before.places or before.states:
        return False
    one = before.objects[0]
    if one.head not in _ONES or not {"only", "one"} & set(one.adjectives) or one.plural:
        return False
    relative = clause.sub in {"that", "which", "who"} and clause.form == "finite"
    if not (relative or clause.form == "ing") or "," in clause.joint or clause.passive:
        return False
    if clause.lemma not in _DEFEND or len(clause.objects) != 1:
        return False
    verb = before.verb if clause.form == "ing" else clause.verb
    clause.subject, clause.form, clause.verb, clause.inherited = (
        before.subject,
        "finite",
        verb,
        False,
    )
    before.objects = []
    _take_over(before, clause, negated=False)
    before.adverbs = [*before.adverbs, "only"]
    return True


def _take_over(before: Clause, clause: Clause, negated: bool) -> None:
    places, adverbs, strays = before.places, before.adverbs, before.strays
    joint, sub, hedged, first, last = (
        before.joint,
        before.sub,
        before.hedged,
        before.first,
        before.last,
    )
    before.__dict__.update(clause.__dict__)
    before.joint, before.sub, before.hedged = joint, sub, hedged or clause.hedged
    before.places, before.adverbs, before.strays = (
        places + clause.places,
        adverbs + clause.adverbs,
        strays + clause.strays,
    )
    before.first, before.last = min(first, clause.first), max(last, clause.last)
    if negated:
        before.deny()


__all__ = ["all_one_has", "cleft", "only_one", "what_first"]
