"""Asides: what the author throws in between a verb and what it says, "is, in my respectful opinion, a mistake".

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> for said in ("Nxd5 is, in my respectful opinion, a mistake.", "Nxd5 is, if I may say so, dubious.", "Nxd5 was, I am afraid, weak."):
...     (clause,) = plain(sentences(said, 0)[0])
...     print(clause.subject.text, [n.text for n in clause.objects], [s.lemma for s in clause.states])
Nxd5 ['a mistake'] []
Nxd5 [] ['dubious']
Nxd5 [] ['weak']
"""

from __future__ import annotations

from .clause import Clause
from .lexicon import VERBS, members

_COPULAS = members("be", VERBS)
_ON_BOARD = frozenset({"piece", "square", "move", "file", "side"})
_FELT = frozenset({"afraid", "sorry", "sure", "certain", "glad", "told", "convinced", "honest"})
_SAID = frozenset({"think", "fear", "believe", "suppose", "feel", "admit", "confess", "regret", "say", "know", "reckon", "suspect", "like", "please", "mean", "ask", "put", "read", "may", "remember"})  # fmt: skip


def without_asides(clauses: list[Clause]) -> list[Clause]:
    """The clauses, less asides between a copula and its complement."""
    found: list[Clause] = []
    for number, clause in enumerate(clauses):
        then = clauses[number + 1] if number + 1 < len(clauses) else None
        before = found[-1] if found else None
        if (
            before is not None
            and then is not None
            and _waits(before)
            and _completes(then)
            and _aside(clause)
        ):
            before.hedged = before.hedged or clause.hedged or not clause.sub
            before.see(clause)
            then.joint = ","
            continue
        found.append(clause)
    return found


def _waits(clause: Clause) -> bool:
    """Whether a verb of being has not yet said what."""
    return (
        clause.lemma in _COPULAS
        and clause.form == "finite"
        and (clause.subject is not None or clause.joint == "-")  # "taking on d5 is"
        and not (clause.objects or clause.states or clause.places or clause.complement)
    )


def _completes(clause: Clause) -> bool:
    return (
        not clause.lemma
        and not clause.sub
        and clause.joint.endswith(",")
        and bool(clause.objects or clause.states)
    )


def _aside(clause: Clause) -> bool:
    """Whether a clause speaks of the author, or of nothing on the board."""
    if not clause.joint.startswith(","):
        return False
    nouns = [*clause.objects, *(p.noun for p in clause.places if p.noun is not None)]
    if any(n.type in _ON_BOARD and n.text not in {"i", "me", "you"} for n in nouns):
        return False
    if not clause.lemma:
        return bool(clause.places) and not (clause.objects or clause.states)
    if clause.subject is None or clause.subject.text not in {"i", "you", "we"}:
        return False
    felt = clause.lemma == "be" and any(s.lemma in _FELT for s in clause.states)
    return felt or clause.lemma.partition(" ")[0] in _SAID


def tag(before: Clause, clause: Clause) -> bool:
    """ "That's winning, that": the subject said once more."""
    if clause.lemma or clause.joint != "," or clause.places or clause.states or clause.adverbs:
        return False
    if len(clause.objects) != 1 or before.subject is None or not before.lemma:
        return False
    return clause.objects[0].type == "pronoun" and clause.objects[0].head == before.subject.head


__all__ = ["tag", "without_asides"]
