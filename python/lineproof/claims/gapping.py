"""Gapping: a second part of a clause without its verb: "by the queen and by the bishop", "one defender and two attackers", "d7 twice and f6 twice".

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> for said in ("f7 is attacked by the queen and by the bishop.", "We attack d7 twice and f6 once.", "The knight has two defenders and one attacker."):
...     print([(c.lemma, c.objects[0].text) for c in plain(sentences(said, 0)[0])])
[('attack', 'f7')]
[('attack', 'd7'), ('attack', 'f6')]
[('have', '2 defenders'), ('have', '1 attacker')]
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from .chunk import Place
from .lexicon import NOUNS, VERBS, members
from .noun import listed

if TYPE_CHECKING:
    from .clause import Clause

_ITSELF = frozenset({"itself", "himself", "herself", "themselves"})
_WINGS = frozenset({"kingside", "queenside", *NOUNS["centre"]})
_AND = frozenset({"and", ", and", ",", "but", ", but"})
_MEN = frozenset({*NOUNS["attacker"], *NOUNS["defender"]})
_ON = members("attack", VERBS) | members("defend", VERBS)
_HAVING = members("have", VERBS)
_TIMES = frozenset({"once", "twice", "thrice", *(f"{n} times" for n in range(2, 8))})


def also_by(before: Clause, clause: Clause) -> bool:
    """ "By the queen and by the bishop": by both; True when nothing of the second part is left."""
    if clause.joint not in {"and", ", and"} or clause.lemma or not before.lemma:
        return False
    if clause.objects or clause.states or clause.strays or len(clause.places) != 1:
        return False
    more = clause.places[0]
    for number, place in enumerate(before.places):
        if place.preposition != more.preposition or place.preposition not in {"by", "with"}:
            continue
        if place.noun is None or more.noun is None or more.noun.no or place.last != before.last:
            continue
        if place.noun.type == more.noun.type == "piece":
            both = listed([place.noun, more.noun])
            before.places[number] = place._replace(noun=both, last=more.last)
            before.adverbs += clause.adverbs
            return True
    return False


def on_wing(before: Clause, clause: Clause) -> bool:
    """ "Queenside, four of ours against three": there; True where the wing has become a place of the count behind it."""
    nouns = [*before.objects, *(p.noun for p in before.places if p.noun is not None)]
    if before.lemma or clause.lemma or len(nouns) != 1 or before.states:
        return False
    wing = nouns[0]
    if wing.head not in _WINGS or clause.joint not in {",", ":"} or before.strays:
        return False
    if len(clause.objects) != 1 or clause.objects[0].count is None:
        return False
    if not any(p.preposition in {"against", "to", "versus"} for p in clause.places):
        return False
    clause.places.append(Place("on", wing, wing.first, wing.last))
    clause.joint = before.joint
    clause.see(before)
    return True


def never_seen_one(clauses: list[Clause]) -> list[Clause]:
    """ "If this isn't an open game I've never seen one": it is one."""
    for number in range(len(clauses) - 1):
        said, then = clauses[number], clauses[number + 1]
        denied = (
            said.sub == "if" and said.lemma == "be" and said.verb.negated and bool(said.objects)
        )
        never = then.verb.negated or "never" in then.adverbs
        seen = then.lemma == "see" and never and [o.head for o in then.objects] == ["one"]
        know = then.lemma == "know" and then.verb.negated
        if denied and (seen or know) and then.subject is not None and then.subject.text == "i":
            said.deny()
            said.sub, said.joint = "", said.joint.replace("if", "").strip()
            what = clauses[number + 2 :][:1]
            rest = 3 if know and what and what[0].sub == "what" else 2
            return [*clauses[: number + 1], *clauses[number + rest :]]
    return clauses


def by_whom(before: Clause, clause: Clause) -> bool:
    """ "Is well supported, by the pawn on d5": the agent behind a comma belongs to the passive before it."""
    if clause.joint != "," or clause.lemma or clause.objects or clause.states or clause.strays:
        return False
    by = clause.places[0] if len(clause.places) == 1 else None
    if by is None or by.preposition != "by" or by.noun is None or by.noun.type != "piece":
        return False
    if _TIMES & set(before.adverbs) or any(p.preposition == "by" for p in before.places):
        return False
    if not before.passive or before.form != "finite":
        return False
    before.places.append(by)
    before.adverbs += clause.adverbs
    return True


def itself(clause: Clause) -> None:
    """ "Is itself defended by the queen": no more than it."""
    if clause.passive and clause.objects and clause.objects[0].head in _ITSELF:
        del clause.objects[0]
        return
    own = clause.subject
    if own is None or own.head not in _ITSELF:
        return
    if clause.objects and clause.objects[-1].last + 1 == own.first:
        clause.subject = clause.objects.pop()  # "the pawn itself is poisoned"
    elif clause.joint in _AND - {","}:
        clause.subject = None


def again(before: Clause, clause: Clause) -> None:
    """ "We attack d7 twice and f6 twice", "it has one defender and two attackers": the verb is that of the clause before."""
    if clause.lemma or clause.joint not in _AND or clause.states or clause.strays:
        return
    if before.form != "finite" or before.verb.modal or before.sub:
        return
    way = clause.places[0] if clause.places and not clause.objects else None
    if (
        way is not None
        and way.noun is not None
        and (way.preposition, way.noun.head) == ("on", "way")
    ):
        if before.subject is not None and before.subject.type == "piece":
            clause.lemma, clause.form, clause.subject = "be", "finite", before.subject
        return  # "back goes the knight to d2, on its way to c4"
    if len(clause.objects) != 1:
        return
    thing = clause.objects[0]
    if before.lemma in _ON:
        same = thing.type in {"piece", "square"} and before.passive is False
        if not (same and _TIMES & set(clause.adverbs) and before.objects):
            return
    elif not (before.lemma in _HAVING and thing.type == "noun" and thing.head in _MEN):
        return
    clause.lemma, clause.form, clause.verb = before.lemma, before.form, before.verb
    clause.subject, clause.inherited = before.subject, False


def by_which(clause: Clause) -> None:
    """ "The knight by which e5 is guarded": which guards e5."""
    if clause.sub in {"by which", "by whom"} and clause.passive and clause.subject is not None:
        clause.objects, clause.subject = [clause.subject, *clause.objects], None
        clause.passive = False
        clause.joint = clause.joint.replace(clause.sub, "which")
        clause.sub = "which"


__all__ = ["again", "also_by", "by_which", "by_whom", "itself", "never_seen_one", "on_wing"]
