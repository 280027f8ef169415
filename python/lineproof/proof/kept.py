"""What the last run of a lesson found to hold, as far as the lesson still says it."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.claims import Claim, Outcome, kind_of, read_lesson
from lineproof.lesson import Lesson
from lineproof.lesson.opinions import read_opinions

from .opinions import set_apart
from .store import EvidenceStore


@dataclass(frozen=True)
class Kept:
    """A claim of the lesson that the last run found to hold. because: the reason that it gave."""

    claim: Claim
    because: str


def held(lesson: Lesson, store: EvidenceStore) -> tuple[Kept, ...]:
    """The claims that the last run found to hold and that still stand in the lesson, of a kind that still means the same. Nothing is searched.

    None where there was no run, or where its record is damaged.
    """
    last = store.last_run()
    try:
        because = {
            (str(one["fingerprint"]), int(one["version"])): str(one["because"])
            for one in (last or {"findings": ()})["findings"]
            if one["outcome"] == Outcome.HOLDS
        }
    except (KeyError, TypeError, ValueError):
        return ()
    if not because:
        return ()
    reading = set_apart(read_lesson(lesson), read_opinions(lesson.settings.decisions)).reading
    found = []
    for claim in reading.claims:
        print_ = (claim.fingerprint(), kind_of(claim.kind).version)
        if print_ in because:
            found.append(Kept(claim, because[print_]))
    return tuple(found)
