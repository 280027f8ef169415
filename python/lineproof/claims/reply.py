"""Reply: the answer to a question that the sentence before asked: "What do we have? The half-open c-file." says that we have it."""

from __future__ import annotations

from dataclasses import replace

from .clause import Clause
from .frame import LIGHT
from .sentence import Sentence

_ASKING = frozenset({"what", "who", "which"})
_GETTING = LIGHT | {"get", "win", "gain", "have", "own", "enjoy", "hold", "keep"}


def question_of(sentence: Sentence, clauses: list[Clause]) -> Clause | None:
    """The clause of a question that a bare noun, or "White does", may answer: "What did we get for it?", "Who has more space?"."""
    words = sentence.words
    if len(words) < 3 or words[-1].norm != "?":
        return None
    asking = next((c for c in clauses if c.sub in _ASKING and c.lemma), None)
    if asking is None or asking.lemma not in _GETTING or asking.verb.negated:
        return None
    return asking


def answered(question: Clause | None, clauses: list[Clause]) -> list[Clause]:
    """The clauses of an answer, the first of which takes from the question what it leaves out."""
    if question is None or not clauses:
        return clauses
    first = clauses[0]
    who = question.sub == "who" and question.objects
    if who and first.strays in (["does"], ["do"], ["did"]) and len(first.objects) == 1:
        first.lemma, first.form, first.strays = "do", "finite", []
        first.subject = first.objects.pop()  # "White does"
    if (
        who
        and first.lemma in {"have", "do", "be"}
        and first.subject is not None
        and first.subject.type == "side"
        and not (first.objects or first.states or first.places)
    ):
        first.lemma, first.objects = question.lemma, list(question.objects)
        first.places = list(question.places)
        return clauses
    what = question.sub == "what" and question.subject is not None and not question.objects
    if (
        what
        and question.subject is not None
        and question.subject.type == "side"
        and not first.lemma
        and first.objects
        and not first.states
        and first.objects[0].type in {"noun", "file", "piece"}
        and not first.verb.negated
    ):
        first.lemma, first.form = "have", "finite"
        first.subject = replace(question.subject, first=first.first, last=first.first)
    return clauses


__all__ = ["answered", "question_of"]
