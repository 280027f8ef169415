"""Contradictions of an open lesson, once all its findings are there: they are looked at together, as a proof does."""

from __future__ import annotations

from collections.abc import Mapping

from lineproof.claims import Outcome
from lineproof.lesson import Lesson
from lineproof.proof import Finding
from lineproof.proof.contradictions import contradictions

from .found import Answered
from .naming import Names
from .passages import Passage, spoken
from .wire import ContradictionShown


def contradictions_shown(
    lesson: Lesson, names: Names, table: Mapping[str, Passage], answers: Mapping[str, Answered]
) -> list[ContradictionShown] | None:
    """Every pair that excludes each other; None when something is not read or found yet."""
    findings: list[Finding] = []
    ids: dict[int, str] = {}
    count = 0
    for one in spoken(lesson, names):
        passage = table.get(one.key)
        if passage is None:
            return None
        sentences = {id_: n for n, each in enumerate(passage.sentences, count) for id_ in each.said}
        count += len(passage.sentences)
        for said in passage.said:
            answer = answers.get(said.id)
            if answer is None:
                return None
            # Where a check broke off, nothing contradicts what is not known.
            if answer.judgement is not None:
                claim = said.at(one, sentences.get(said.id, -1))
                finding = Finding(claim, Outcome(answer.outcome), answer.judgement, 0, 1, "")
                findings.append(finding)
                ids[id(finding)] = said.id
    return [
        ContradictionShown(findings=(ids[id(both.first)], ids[id(both.second)]), why=both.said)
        for both in contradictions(findings)
    ]
