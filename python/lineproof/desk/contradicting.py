"""Contradictions of an open lesson, once all its findings are there: they are looked at together, as a proof does."""

from __future__ import annotations

from collections.abc import Callable

from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, Finding, settle
from lineproof.proof.asker import Interrupted
from lineproof.proof.at_hand import AtHand
from lineproof.proof.contradictions import contradictions

from .naming import Names
from .passages import passages, read, spoken
from .wire import ContradictionShown


def contradictions_shown(
    lesson: Lesson,
    names: Names,
    effort: Effort,
    store: EvidenceStore,
    stopped: Callable[[], bool],
) -> list[ContradictionShown] | None:
    """Every pair that excludes each other; None when it was stopped, or a search is missing."""
    found = []
    for one in read(lesson, list(spoken(lesson, names))):
        found.append(one)
        if stopped():
            return None
    at_hand = AtHand(store)
    findings: list[Finding] = []
    ids: dict[int, str] = {}
    for passage in passages(lesson, found).values():
        for said in passage.said:
            if stopped():
                return None
            try:
                finding = settle(said.claim, effort, at_hand)
            except Interrupted:
                return None
            except Exception:  # said where it broke, and nothing contradicts what is not known
                continue
            findings.append(finding)
            ids[id(finding)] = said.id
    return [
        ContradictionShown(findings=(ids[id(both.first)], ids[id(both.second)]), why=both.said)
        for both in contradictions(findings)
    ]
