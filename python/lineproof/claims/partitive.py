"""Partitives: of which things it is said that none, both or one of them is so: "of White's two bishops neither is developed".

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> for said in ("Of White's two rooks neither is developed.", "Of Black's knights both are at home."):
...     clause = plain(sentences(said, 0)[0])[-1]
...     print(clause.subject.text, clause.verb.negated, clause.nobody)
white 's rooks True True
black 's knights False False
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .verbs import Verb

if TYPE_CHECKING:
    from .clause import Clause
    from .noun import Noun

_NONE = frozenset({"neither", "none"})
_BOTH = frozenset({"both", "all"})


def partitive(clause: Clause) -> None:
    """Makes the things the subject of a clause that has none."""
    first = clause.places[0] if clause.places else None
    if (
        first is None
        or first.noun is None
        or first.preposition != "of"
        or clause.subject is not None
    ):
        return
    if not clause.lemma or clause.objects or first.first != clause.first:
        return
    things = _several(first.noun)
    said = {*clause.adverbs, *(s.lemma for s in clause.states)}
    if things is None or said.isdisjoint(_NONE | _BOTH):
        return
    clause.places = clause.places[1:]
    clause.adverbs = [a for a in clause.adverbs if a not in _NONE | _BOTH]
    clause.states = [s for s in clause.states if s.lemma not in _NONE | _BOTH]
    verb = clause.verb
    clause.verb = Verb(False, verb.modal, verb.done, verb.past)
    clause.form = "finite"
    none = not said.isdisjoint(_NONE)
    clause.subject = replace(things, no=none, det="neither of" if none else "both")


def _several(noun: Noun) -> Noun | None:
    """Several pieces; "two bishops" are bishops here, not the pair."""
    if noun.head.endswith(" bishops"):
        text = f"{noun.whose or 'the'} bishops"
        return replace(noun, type="piece", head="bishop", text=text, plural=True, count=2)
    return noun if noun.type == "piece" and noun.plural else None


def the_latter(clauses: list[Clause]) -> list[Clause]:
    """ "King and rook are attacked, and the latter is lost": which of the two named together."""
    pair: tuple[Noun, ...] = ()
    for clause in clauses:
        if pair:
            if clause.subject is not None:
                clause.subject = _of_pair(clause.subject, pair)
            clause.objects = [_of_pair(o, pair) for o in clause.objects]
            clause.places = [
                p._replace(noun=_of_pair(p.noun, pair)) if p.noun is not None else p
                for p in clause.places
            ]
        named = [
            n for n in (clause.subject, *clause.objects, *(p.noun for p in clause.places)) if n
        ]
        pair = next((n.parts for n in reversed(named) if len(n.parts) == 2), pair)
    return clauses


def _of_pair(noun: Noun, pair: tuple[Noun, ...]) -> Noun:
    if noun.type != "noun" or noun.head not in {"latter", "former"} or noun.plural:
        return noun
    meant = pair[-1] if noun.head == "latter" else pair[0]
    return replace(meant, first=noun.first, last=noun.last)


__all__ = ["partitive", "the_latter"]
