"""Thoughts that are denied: "White thinks the pawn is free. It isn't.", "You'd think it is pinned, but it isn't.", "Was it free? It wasn't."."""

from __future__ import annotations

from .clause import Clause
from .plain import plain
from .sentence import Sentence
from .verbs import Verb

_THINKING = frozenset({"think", "believe", "reckon", "imagine", "suppose", "hope", "assume", "expect", "say", "claim", "feel", "fancy", "guess", "argue"})  # fmt: skip
_POINTING = frozenset({"it", "he", "she", "they", "that", "this"})
_BRIEF = 7
"""Words that such a denial has at most."""


def _denial(clause: Clause) -> bool:
    """ "It isn't", "it's not": no more than a denial of what has been said."""
    subject = clause.subject
    return (
        clause.lemma == "be"
        and subject is not None
        and (subject.head in _POINTING or subject.text in _POINTING)
        and clause.verb.negated
        and not clause.verb.modal
        and not (
            clause.objects or clause.states or clause.places or clause.sub or clause.complement
        )
    )


def _held(clauses: list[Clause]) -> Clause | None:
    """What is thought or asked by the last of some clauses, if it says that something is so."""
    if not clauses:
        return None
    last = clauses[-1]
    thinks = any(
        c.lemma in _THINKING
        and not c.verb.negated
        and c.subject is not None
        and c.subject.text != "i"
        for c in clauses[:-1]
    )
    asks = last.sub == "if" and not clauses[:-1]
    so = last.form == "finite" and (last.passive or bool(last.states) or bool(last.objects))
    return last if so and (thinks or asks) and not last.verb.negated else None


def thought_of(sentence: Sentence, then: Sentence) -> Clause | None:
    """What a sentence says that others think, or asks, where the next one is no more than its denial."""
    if len(then.words) > _BRIEF or not any(w.norm in _POINTING for w in then.words[:3]):
        return None
    denying = plain(then)
    if not denying or not _denial(denying[0]):
        return None
    clauses = plain(sentence)
    if sentence.words[-1].norm == "?":
        clauses = clauses[-1:]
    return _held(clauses)


def denied(thought: Clause | None, clauses: list[Clause]) -> list[Clause]:
    """The clauses with what is denied in those that only deny. thought: what the sentence before left to deny."""
    for number, clause in enumerate(clauses):
        held = thought if number == 0 else _held(clauses[:number])
        if held is None or not _denial(clause) or (number and "but" not in clause.joint.split()):
            continue
        past = clause.verb.past
        clause.lemma, clause.passive, clause.subject = held.lemma, held.passive, held.subject
        clause.objects, clause.places = list(held.objects), list(held.places)
        clause.states, clause.adverbs = list(held.states), [*held.adverbs, *clause.adverbs]
        clause.verb = held.verb._replace(negated=True, past=past) if not past else Verb(True)
        clause.inherited = clause.unreal = False
    return clauses


__all__ = ["denied", "thought_of"]
