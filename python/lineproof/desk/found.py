"""Findings as the page gets them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lineproof.claims import kind_of
from lineproof.lesson import Lesson
from lineproof.proof import Finding
from lineproof.report.located import Located
from lineproof.report.plain import plain
from lineproof.report.printed import signs_of, with_sign

from .naming import Names
from .passages import Passage, Said, spoken
from .shown import evidence
from .wire import (
    ContradictionShown,
    Evidence,
    FindingShown,
    FindingsShown,
    MarkShown,
    SentenceShown,
)

FAULT = "The program has a fault in this check, so that it says nothing of the claim"


@dataclass(frozen=True)
class Answered:
    """What is shown of a settled claim. Plain values, which keep no lesson in memory."""

    outcome: str
    why: str
    instead: str | None
    second: str | None
    evidence: Evidence | None
    marks: tuple[MarkShown, ...]


def answered(finding: Finding) -> Answered:
    """What is shown of a finding: as every report says it."""
    told = Located(0, finding, None)
    why = " ".join(part for part in (told.why, told.unsettled_because) if part)
    return Answered(
        outcome=str(finding.outcome),
        why=why,
        instead=told.instead or None,
        second=told.second or None,
        evidence=_evidence(finding),
        marks=tuple(
            MarkShown(kind=m.kind, squares=list(m.squares), side=m.side)
            for m in finding.judgement.marks
        ),
    )


def faulty(error: BaseException) -> Answered:
    """What is shown where a check broke off by a fault of ours."""
    return Answered("unsettled", f"{FAULT} ({type(error).__name__}).", None, None, None, ())


def _evidence(finding: Finding) -> Evidence | None:
    moves = finding.judgement.line
    return evidence(finding.line_from.board, moves, finding.evidence()) if moves else None


def findings_shown(
    lesson: Lesson,
    names: Names,
    version: int,
    table: Mapping[str, Passage],
    answers: Mapping[str, Answered],
    contradictions: list[ContradictionShown] | None,
    *,
    read: bool,
) -> FindingsShown:
    """All that is found of a version by now. read: whether all of it has been read."""
    findings: list[FindingShown] = []
    sentences: list[SentenceShown] = []
    for one in spoken(lesson, names):
        passage = table.get(one.key)
        if passage is None:
            continue
        findings += [
            _finding(said, answers.get(said.id), one.place, one.index) for said in passage.said
        ]
        if one.index is not None:
            sentences += [
                SentenceShown(
                    place=one.place,
                    comment=one.index,
                    start=sentence.start,
                    end=sentence.end,
                    status=sentence.status,
                    why=sentence.why or None,
                    findings=list(sentence.said),
                )
                for sentence in passage.sentences
            ]
    done = sum(finding.outcome != "waiting" for finding in findings)
    return FindingsShown(
        version=version,
        done=done,
        of=len(findings),
        complete=read and done == len(findings),
        findings=findings,
        contradictions=contradictions,
        sentences=sentences,
    )


def _finding(said: Said, answer: Answered | None, place: str, index: int | None) -> FindingShown:
    claim = said.claim
    values = {
        "id": said.id,
        "place": place,
        "comment": index,
        "start": said.start,
        "end": said.end,
        "words": _words(said) if index is None else plain(claim.words),
        "kind": claim.kind,
        "title": kind_of(claim.kind).title,
    }
    if answer is None:
        rest = {"outcome": "waiting", "why": "", "instead": None, "second": None}
        return FindingShown.model_validate({**values, **rest, "evidence": None, "marks": []})
    return FindingShown.model_validate(
        {
            **values,
            "outcome": answer.outcome,
            "why": answer.why,
            "instead": answer.instead,
            "second": answer.second,
            "evidence": answer.evidence,
            "marks": list(answer.marks),
        }
    )


def _words(said: Said) -> str:
    """The move with the sign that makes the claim."""
    claim = said.claim
    for start, _, sign in signs_of(claim.place):
        if start == claim.start:
            return with_sign(claim.place.label, sign)
    return plain(claim.words)
