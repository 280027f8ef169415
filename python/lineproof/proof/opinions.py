"""Opinions set apart: the sentences of a lesson that its author marked, wherever an edit has carried them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from lineproof.claims import Claim, LessonReading, Reading, Status
from lineproof.lesson.opinions import Opinion, fingerprint

Marked = tuple[Opinion, tuple[Reading, ...]]
"""A mark with its sentences, none where the sentence is gone."""

WHY = "you marked it as your opinion"


@dataclass(frozen=True)
class Apart:
    """A reading with the marked sentences set apart.

    reading: the same, marked sentences without claims. dropped: the claims that the marked sentences would make.
    """

    reading: LessonReading
    marks: tuple[Marked, ...]
    dropped: tuple[Claim, ...]

    @property
    def gone(self) -> tuple[Opinion, ...]:
        """Marks whose sentence the lesson has no more."""
        return tuple(opinion for opinion, found in self.marks if not found)


def set_apart(reading: LessonReading, opinions: Sequence[Opinion]) -> Apart:
    """Finds the sentences that are marked and takes their claims out."""
    found = matched(reading.sentences, opinions)
    marked = {id(r) for some in found for r in some}
    sentences = tuple(
        replace(r, status=Status.OPINION, why=WHY, claims=()) if id(r) in marked else r
        for r in reading.sentences
    )
    dropped = tuple(c for r in reading.sentences if id(r) in marked for c in r.claims)
    return Apart(
        replace(reading, sentences=sentences), tuple(zip(opinions, found, strict=True)), dropped
    )


def matched(sentences: Sequence[Reading], opinions: Sequence[Opinion]) -> list[tuple[Reading, ...]]:
    """The sentences of each mark.

    Those of its words at its position. Where an edit has left none there: the one of its words beside the same move, or the only
    one in the lesson. What another mark has, or stood elsewhere unmarked already when it was made, is not taken for it.
    """
    same: dict[str, list[Reading]] = {}
    for reading in sentences:
        same.setdefault(fingerprint(reading.sentence.text), []).append(reading)
    found: dict[int, tuple[Reading, ...]] = {}
    for number, opinion in enumerate(opinions):
        exact = [
            r for r in same.get(opinion.fingerprint, ()) if opinion.position in (None, r.place.key)
        ]
        if exact:
            found[number] = tuple(exact)
    for beside in (True, False):
        for number, opinion in enumerate(opinions):
            if number in found:
                continue
            taken = {id(r) for some in found.values() for r in some}
            left = [
                r
                for r in same.get(opinion.fingerprint, ())
                if id(r) not in taken and r.place.key not in opinion.others
            ]
            if beside:
                left = [r for r in left if (r.place.san or "start") == opinion.san]
            if len(left) == 1:
                found[number] = (left[0],)
    return [found.get(number, ()) for number in range(len(opinions))]


def mark_of(reading: Reading, readings: Sequence[Reading]) -> Opinion:
    """The mark that a sentence gets, told from others of the same words."""
    words, key = fingerprint(reading.sentence.text), reading.place.key
    others = {r.place.key for r in readings if fingerprint(r.sentence.text) == words} - {key}
    return Opinion(reading.sentence.text, reading.place.label, key, tuple(sorted(others)))


def told_gone(last: dict[str, Any] | None) -> frozenset[str]:
    """The names of the marks that the last run has said to be without a sentence."""
    names = last.get("gone") if isinstance(last, dict) else None
    return (
        frozenset(n for n in names if isinstance(n, str))
        if isinstance(names, list)
        else frozenset()
    )
