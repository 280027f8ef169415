"""Echoes: a clause that says no more than that another does the same, or does not: "and so has White", "as does the bishop", "White did not".

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> for said in ("Black has castled, and so has White.", "White has not castled, nor has Black.", "The knight attacks f7, as does the bishop."):
...     clause = plain(sentences(said, 0)[0])[-1]
...     print(clause.subject.text, clause.lemma, clause.verb.negated)
white castle False
black castle True
the bishop attack False
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .apposition import owned
from .lexicon import NOUNS, VERBS, members
from .noun import Noun

if TYPE_CHECKING:
    from .clause import Clause
    from .verbs import Verb

_AUXILIARIES = frozenset({"does", "do", "did", "has", "have", "is", "are"})
_BELONGING = members("belong", VERBS) | {"be"}
_HAVING = members("have", VERBS) | members("lose", VERBS) | members("win", VERBS) | _BELONGING | {"get", "gain", "keep"}  # fmt: skip
_TEMPI = frozenset(NOUNS["tempo"])
_MINE = {"ours": "our", "his": "his", "theirs": "their"}
_WHERE = frozenset({"kingside", "queenside", *NOUNS["centre"], *NOUNS["position"], "board"})
_OWNERS = {"ours": "we", "mine": "we", "yours": "we", "his": "he", "hers": "he", "theirs": "they"}
_AGAIN = frozenset({"it", "one", *_MINE})
_DENYING = frozenset({"neither", "nor"})
_ACTING = frozenset({"piece", "side", "square", "file"})


def echoed(before: Clause, clause: Clause) -> None:
    """Gives a clause the verb of the one before, and what that says of it."""
    who = _who(clause)
    if who is None or not before.lemma or before.form != "finite" or before.sub:
        return
    if before.subject is None or before.verb.modal or before.subject.type not in _ACTING:
        return
    joint = clause.joint.split()[-1:]
    if _does_not(before, clause):
        _tell(before, clause, who, before.verb._replace(negated=True))
        return
    nor = joint == ["nor"] or not _DENYING.isdisjoint(clause.adverbs)
    if nor:
        denied = before.verb.negated or any(o.no for o in before.objects)
    elif joint in (["so"], ["as"]):
        denied = not (before.verb.negated or any(o.no for o in before.objects))
    else:
        return
    if not denied or who.first == clause.first or not _fits(before, clause):
        return  # "as e5 did before" says it of an earlier moment
    if joint in (["nor"], ["so"], ["as"]):
        clause.first -= 1
    _tell(before, clause, who, before.verb)


def _tell(before: Clause, clause: Clause, who: Noun, verb: Verb) -> None:
    """Says of somebody what the clause before says."""
    whose = before.subject.whose if before.subject is not None else ""
    if who.type == "piece" and not who.whose and whose:
        who = replace(who, whose=whose, text=who.text.replace("the ", f"{whose} ", 1))
    clause.subject, clause.lemma, clause.form = who, before.lemma, "finite"
    clause.passive, clause.verb, clause.sub = before.passive, verb, ""
    clause.objects, clause.states = list(before.objects), list(before.states)
    clause.places = list(before.places)
    clause.adverbs = [a for a in clause.adverbs if a not in _DENYING]
    clause.strays, clause.turned = [], False


def _does_not(before: Clause, clause: Clause) -> bool:
    """ "We have castled, White did not"."""
    return (
        set(clause.strays) <= {"does", "do", "did"}
        and bool(clause.objects)
        and clause.objects[0].first == clause.first
        and clause.adverbs == ["not"]
        and not (before.verb.negated or before.lemma == "be" or before.passive)
        and clause.joint.removeprefix(", ") in {",", "and", "but", ";", "while", "whereas"}
    )


def taken_up(before: Clause, clause: Clause) -> None:
    """ "White has the majority in the centre, Black has it on the queenside": what a side has is said once, and then is "it", "one" or "ours"."""
    if not clause.lemma and not before.lemma and len(before.objects) == len(clause.objects) == 1:
        thing, one = before.objects[0], clause.objects[0]
        if (
            owned(thing)
            and one.head == "one"
            and one.adjectives
            and clause.joint in {",", "and", ", and", ";"}
        ):
            text = one.text.removesuffix("one") + thing.head
            clause.objects = [replace(one, head=thing.head, text=text)]
        return  # "a queenside majority for Black, a central one for White"
    nouns = [*before.objects, *([before.subject] if before.subject is not None else [])]
    said = [noun for noun in nouns if owned(noun) or noun.head in _TEMPI]
    if len(said) != 1 or clause.lemma not in _HAVING:
        return
    thing = said[0]
    subject = clause.subject
    if subject is not None and subject.text == "it" and clause.lemma in _BELONGING - {"be"}:
        clause.subject = replace(thing, first=subject.first, last=subject.last)
    clause.objects = [
        replace(thing, first=o.first, last=o.last, whose=_MINE.get(o.head, ""), no=False)
        if o.head in _AGAIN and (o.type == "pronoun" or (o.head == "one" and not o.adjectives))
        else o
        for o in clause.objects
    ]


def belongs(clause: Clause) -> None:
    """ "In the centre the majority is ours", "the bishop pair belongs to Black": we have it, he has it."""
    thing = clause.subject
    if clause.lemma not in _BELONGING or thing is None or len(clause.objects) != 1:
        return
    said = clause.objects[0]
    who = _OWNERS.get(said.head) or (said.text.removesuffix(" 's") if said.type == "side" else "")
    if not who or clause.states or not owned(thing):
        return
    if clause.lemma == "be" and said.type == "side" and said.text == who:
        return  # "the bishop pair is White"
    if any(p.noun is not None and p.noun.type == "noun" and p.noun.head not in _WHERE for p in clause.places):  # fmt: skip
        return  # "the majority on the committee is ours"
    clause.lemma, clause.objects = "have", [thing]
    clause.subject = Noun("side", who, who, said.first, said.last)
    clause.inherited = False


def _who(clause: Clause) -> Noun | None:
    """The one noun of a clause that has beside it no more than an auxiliary."""
    if clause.places or clause.states or not set(clause.strays) <= _AUXILIARIES:
        return None
    if clause.lemma not in {"", "be", "have", "do"} or (not clause.lemma and not clause.strays):
        return None
    nouns = [*([clause.subject] if clause.subject is not None else []), *clause.objects]
    return nouns[0] if len(nouns) == 1 and nouns[0].type in _ACTING and not nouns[0].no else None


def _fits(before: Clause, clause: Clause) -> bool:
    """Whether the auxiliary is the one that the verb before has."""
    said = clause.lemma or next(iter(clause.strays), "")
    is_ = before.lemma == "be" or before.passive
    if said in {"be", "is", "are"}:
        return is_ or before.lemma == "have"  # "we have it, and so's he"
    if said in {"have", "has"}:
        return before.verb.done or before.lemma == "have"
    return not is_


__all__ = ["belongs", "echoed", "taken_up"]
