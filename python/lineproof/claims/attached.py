"""Attached parts: "a pawn down" beside the side of which it is said, in front of the clause, inside it or behind it.

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> for said in ("A pawn down, Black must hurry.", "Black, though a pawn down, is better."):
...     print([c.subject.text for c in plain(sentences(said, 0)[0]) if c.subject])
['black', 'black']
['black', 'black']
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .clause import Clause

COUNTED = frozenset(
    {
        "up",
        "down",
        "ahead",
        "behind",
        "to the good",
        "to the bad",
        "in arrears",
        "in the red",
        "in credit",
    }
)
"""Adverbs with which a number of pieces says how a side stands."""
_BESIDE = frozenset({"", "though", "although", "while", "even though", "albeit", "if"})


def attach(clauses: Sequence[Clause]) -> None:
    """Gives such a part its subject: the side that the clause behind it has, or else the one before."""
    for number, clause in enumerate(clauses):
        if not _counts(clause):
            continue
        after = clauses[number + 1] if number + 1 < len(clauses) else None
        before = clauses[number - 1] if number else None
        for near in (after, before):
            subject = near.subject if near is not None and near.lemma else None
            if subject is not None and subject.type == "side":
                clause.subject, clause.inherited = subject, True
                break
        if clause.sub in {"if", "even if"}:
            clause.sub = "though"  # "Black, if a pawn down, is better"


def contrast(before: Clause | None, clause: Clause) -> None:
    """ "Black does not lose a piece, he loses a pawn": what is said instead is said of the same side."""
    subject = clause.subject
    if (
        before is not None
        and subject is not None
        and subject.text in {"he", "they"}
        and subject.type == "side"
        and clause.joint in {",", ";", ", -"}
        and clause.lemma == before.lemma
        and before.verb.negated
        and not clause.verb.negated
        and before.subject is not None
        and before.subject.text in {"white", "black"}
    ):
        clause.subject = replace(before.subject, first=subject.first, last=subject.last)


def not_while(before: Clause, clause: Clause) -> None:
    """ "It does not work, not as long as the bishop watches g5": a reason, which is so."""
    if clause.sub not in {"as long as", "so long as", "while"} or not before.verb.negated:
        return
    if before.adverbs and before.adverbs[-1] == "not" and not clause.verb.modal:
        before.adverbs.pop()
        clause.sub, clause.joint = "because", ", because"


def _counts(clause: Clause) -> bool:
    if clause.lemma or clause.subject is not None or len(clause.objects) > 1:
        return False
    if clause.sub not in _BESIDE or clause.joint not in {
        "",
        ",",
        "and",
        ", and",
        "but",
        ", but",
        clause.sub,
        f", {clause.sub}",
    }:
        return False
    if not clause.objects:
        return len(clause.places) == 1 and clause.places[0].preposition in {"up", "down"}
    return clause.objects[0].type in {"piece", "noun"} and not COUNTED.isdisjoint(clause.adverbs)


__all__ = ["COUNTED", "attach", "contrast", "not_while"]
