"""Findings as the page gets them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lineproof.claims import Judgement, kind_of
from lineproof.collection import CollectionError
from lineproof.lesson import Lesson
from lineproof.proof import Finding
from lineproof.report.located import Located
from lineproof.report.plain import plain
from lineproof.report.printed import signs_of, with_sign

from .naming import Names
from .passages import Passage, Said, Sentence, Spoken, spoken
from .shown import evidence
from .wire import (
    ContradictionShown,
    Evidence,
    FindingShown,
    FindingsNews,
    FindingsShown,
    MarkShown,
    PassageShown,
    SentenceShown,
    WayShown,
)

FAULT = "The program has a fault in this check, so that it says nothing of the claim"


@dataclass(frozen=True)
class Answered:
    """What is shown of a settled claim, and what its check answered: plain values, which keep no lesson in memory.

    judgement: None where the check broke off by a fault of ours.
    """

    judgement: Judgement | None
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
        finding.judgement,
        outcome=str(finding.outcome),
        why=why,
        instead=told.instead or None,
        second=told.second or None,
        evidence=_evidence(finding),
        marks=tuple(
            MarkShown.model_validate({"kind": m.kind, "squares": list(m.squares), "side": m.side})
            for m in finding.judgement.marks
        ),
    )


def faulty(error: BaseException) -> Answered:
    """What is shown where a check broke off by a fault of ours."""
    return Answered(None, "unsettled", f"{FAULT} ({type(error).__name__}).", None, None, None, ())


def uncounted(error: CollectionError) -> Answered:
    """What is shown where games could not be counted."""
    return Answered(
        None, "unsettled", f"The games cannot be counted: {error}.", None, None, None, ()
    )


def _evidence(finding: Finding) -> Evidence | None:
    moves = finding.judgement.line
    return evidence(finding.line_from.board, moves, finding.evidence()) if moves else None


@dataclass(frozen=True)
class Shown:
    """A passage as the page has it: made once, and used again while nothing of it changes. said: what was read in it."""

    said: tuple[object, ...]
    answers: tuple[Answered | None, ...]
    findings: list[FindingShown]
    sentences: list[SentenceShown]


Made = Mapping[str, Shown]
"""Passages by their keys."""


@dataclass(frozen=True)
class Snapshot:
    """All that is found of a version by now. order: the keys of its passages, each with the number of its comment; made: has them, and maybe more."""

    version: int
    way: WayShown
    done: int
    of: int
    complete: bool
    order: tuple[tuple[str, int | None], ...]
    made: Made
    contradictions: list[ContradictionShown] | None

    def whole(self) -> FindingsShown:
        """All of it."""
        findings: list[FindingShown] = []
        sentences: list[SentenceShown] = []
        for key, index in self.order:
            shown = self.made[key]
            findings += (each.model_copy(update={"comment": index}) for each in shown.findings)
            sentences += (each.model_copy(update={"comment": index}) for each in shown.sentences)
        return FindingsShown(
            version=self.version,
            way=self.way,
            done=self.done,
            of=self.of,
            complete=self.complete,
            findings=findings,
            contradictions=self.contradictions,
            sentences=sentences,
        )

    def since(self, before: Snapshot | None) -> FindingsNews:
        """What is new in it; all, where there was none before."""
        known: Made = {} if before is None else {key: before.made[key] for key, _ in before.order}
        new = {key: self.made[key] for key, _ in self.order}
        same = before is not None and before.order == self.order
        return FindingsNews(
            version=self.version,
            way=self.way,
            done=self.done,
            of=self.of,
            complete=self.complete,
            order=None if same else list(self.order),
            passages=[
                PassageShown(key=key, findings=shown.findings, sentences=shown.sentences)
                for key, shown in new.items()
                if known.get(key) is not shown
            ],
            contradictions=self.contradictions,
        )


def snapshot(
    lesson: Lesson,
    names: Names,
    version: int,
    way: WayShown,
    table: Mapping[str, Passage],
    answers: Mapping[str, Answered],
    contradictions: list[ContradictionShown] | None,
    made: dict[str, Shown],
    *,
    read: bool,
) -> Snapshot:
    """All that is found of a version by now. made: passages of earlier snapshots; new ones are added. read: whether all of it has been read."""
    order: list[tuple[str, int | None]] = []
    here: dict[str, Shown] = {}
    done = of = 0
    for one in spoken(lesson, names):
        passage = table.get(one.key)
        if passage is None:
            continue
        known = tuple(answers.get(said.id) for said in passage.said)
        said = (passage.sentences, *(each.id for each in passage.said))
        shown = made.get(one.key)
        if shown is None or (shown.said, shown.answers) != (said, known):
            made[one.key] = shown = Shown(said, known, *_shown(one, passage, known))
        order.append((one.key, one.index))
        here[one.key] = shown
        done += sum(each.outcome != "waiting" for each in shown.findings)
        of += len(shown.findings)
    complete = read and done == of
    return Snapshot(version, way, done, of, complete, tuple(order), here, contradictions)


def _shown(
    one: Spoken, passage: Passage, answers: tuple[Answered | None, ...]
) -> tuple[list[FindingShown], list[SentenceShown]]:
    pairs = zip(passage.said, answers, strict=True)
    findings = [_finding(one, said, answer) for said, answer in pairs]
    sentences = (
        [] if one.index is None else [_sentence(one, one.index, s) for s in passage.sentences]
    )
    return findings, sentences


def _sentence(one: Spoken, index: int, sentence: Sentence) -> SentenceShown:
    return SentenceShown.model_validate(
        {
            "place": one.place,
            "comment": index,
            "start": sentence.start,
            "end": sentence.end,
            "status": sentence.status,
            "why": sentence.why or None,
            "findings": list(sentence.said),
        }
    )


def _finding(one: Spoken, said: Said, answer: Answered | None) -> FindingShown:
    claim, index = said.claim, one.index
    values = {
        "id": said.id,
        "place": one.place,
        "comment": index,
        "start": 0 if index is None else said.start,
        "end": 0 if index is None else said.end,
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
