"""Topic: what a sentence leaves behind for the next, a piece that "it" will mean, or a side that it asks about."""

from __future__ import annotations

from .clause import Clause
from .noun import Noun
from .sentence import Sentence


def topic_of(sentence: Sentence, clauses: list[Clause]) -> str | None:
    """The piece that a sentence leaves behind as what "it" means in the next: "See that knight of ours on c3?", "The rook is the problem."."""
    if sentence.words and sentence.words[-1].norm == "?":
        clauses = [c for c in clauses if not c.inherited] or clauses  # "Where is it to hide?"
    if not clauses or any(
        n.type == "move" for c in clauses for n in [*c.objects, *([c.subject] if c.subject else [])]
    ):
        return None
    clause = clauses[-1]
    if sentence.words[-1].norm == "?":
        asked = [
            n
            for n in [
                *([clause.subject] if clause.subject else []),
                *clause.objects,
                *[p.noun for p in clause.places if p.noun],
            ]
            if n.type == "piece" and not n.plural and not n.parts
        ]
        return asked[-1].text if asked else None  # "What is wrong with the knight?"
    shown = clauses[0].lemma in {"see", "look at", "take", "watch"} or not clause.lemma
    nouns = [clause.subject] if clause.subject is not None else clause.objects if shown else []
    piece = nouns[0] if len(nouns) == 1 else None
    if piece is None or piece.type != "piece" or piece.plural or piece.parts or clause.inherited:
        return None
    return piece.text


def asked_of(sentence: Sentence, clauses: list[Clause]) -> Noun | None:
    """The side that a question asks about, of which the answer then speaks: "What have we got?", "How is he doing?"."""
    if not sentence.words or sentence.words[-1].norm != "?":
        return None
    if not clauses or clauses[-1].lemma not in {"have", "do", "be", "get", "stand", "fare"}:
        return None
    subject = clauses[-1].subject
    return subject if subject is not None and subject.type == "side" else None


__all__ = ["asked_of", "topic_of"]
