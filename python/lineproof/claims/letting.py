"""Letting: "lets the queen go", "we let him have the queen": the piece is given up.

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> for said in ("White lets the queen go.", "We let him have the queen."):
...     (clause,) = plain(sentences(said, 0)[0])
...     print(clause.subject.text, clause.lemma, clause.objects[-1].text)
white give up the queen
we give up the queen
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .clause import Clause

_HAVING = frozenset({"have", "take", "capture", "grab", "keep"})


def lets_go(before: Clause, clause: Clause) -> bool:
    """Puts "gives up" for "lets ... go" and "lets him have ..."."""
    if before.lemma != "let" or len(before.objects) != 1 or before.subject is None:
        return False
    if clause.form not in {"base", "finite"} or clause.verb.negated or clause.sub:
        return False
    left = before.objects[0]
    goes = clause.lemma == "go" and not (clause.objects or clause.places)
    if goes and left.type == "piece" and left.head != "king":
        before.lemma, before.complement = "give up", False
        return True
    takes = clause.lemma in _HAVING and len(clause.objects) == 1
    if not takes or left.type != "side" or clause.objects[0].type != "piece":
        return False
    before.lemma, before.complement = "give up", False
    before.objects = list(clause.objects)
    before.places += clause.places
    return True


def left_so(before: Clause, clause: Clause) -> bool:
    """ "f4 leaves him stalemated" stalemates him: the verb of the participle, told of who leaves him so."""
    if before.lemma != "leave" or before.passive or len(before.objects) != 1:
        return False
    if before.objects[0].type != "side" or before.objects[0].no or before.subject is None:
        return False
    if clause.lemma == "leave" or clause.subject or clause.objects or clause.verb.negated:
        return False
    before.lemma = clause.lemma
    before.places += clause.places
    before.adverbs += clause.adverbs
    before.strays += clause.strays
    before.see(clause)
    return True


__all__ = ["left_so", "lets_go"]
