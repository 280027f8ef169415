"""What changed since the last run, and why."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from lineproof.claims import Claim
from lineproof.engine.outside.program import is_outside

from .finding import NOT_ANSWERED, Finding


@dataclass(frozen=True)
class Change:
    """A claim whose finding is not what it was.

    before, after: outcomes, "" for a claim that was or is not there. place: the move that it stands beside.
    """

    words: str
    before: str
    after: str
    why: str
    place: str = ""


def changes(
    last: dict[str, Any] | None,
    findings: Sequence[Finding],
    effort: str,
    opinions: Sequence[Claim] = (),
) -> tuple[Change, ...]:
    """Compares with the last run's record; nothing without one. opinions: claims of sentences that the author has marked."""
    try:
        old = {f["fingerprint"]: f for f in last["findings"]} if last is not None else None
    except (KeyError, TypeError):
        old = None  # a damaged record is none
    if last is None or old is None:
        return ()
    found: list[Change] = []
    new_prints: set[str] = set()
    marked = {claim.fingerprint() for claim in opinions}
    marks = last.get("opinions")
    was_marked = {str(mark) for mark in marks} if isinstance(marks, list) else set()
    for finding in findings:
        record = finding.record()
        new_prints.add(record["fingerprint"])
        before = old.get(record["fingerprint"])
        words = finding.claim.words
        if before is None:
            found.append(
                Change(
                    words,
                    "",
                    record["outcome"],
                    "your mark on the sentence is taken back"
                    if record["fingerprint"] in was_marked
                    else "new words, or words that were changed",
                    record["place"],
                )
            )
        elif before["outcome"] != record["outcome"]:
            why = _why(before, record, last["effort"], effort)
            found.append(Change(words, before["outcome"], record["outcome"], why, record["place"]))
    for print_, before in old.items():
        if print_ not in new_prints:
            found.append(
                Change(
                    print_.rsplit("|", 1)[-1],
                    before["outcome"],
                    "",
                    "you marked the sentence as your opinion"
                    if print_ in marked
                    else "the words are gone or were changed",
                    before.get("place", ""),
                )
            )
    return tuple(found)


def _why(before: dict[str, Any], now: dict[str, Any], last_effort: str, effort: str) -> str:
    if now["why"] == NOT_ANSWERED:
        return "the outside engine did not answer this time"
    if before.get("why") == NOT_ANSWERED:
        return "the outside engine had not answered"
    if before["version"] != now["version"]:
        return "what this kind of claim means was defined anew"
    if before["engine"] != now["engine"]:
        outside = is_outside(before["engine"]) or is_outside(now["engine"])
        return "another engine was asked" if outside else "the engine is a newer one"
    if before.get("games", "") != now["games"]:
        return _why_games(before.get("games", ""), now["games"])
    if last_effort != effort:
        return f"the effort is {effort}; it was {last_effort}"
    if is_outside(now["engine"]):
        return "the line around it was edited, or the outside engine answered otherwise"
    return "the line around it was edited"


def _why_games(before: str, now: str) -> str:
    if not before:
        return "a collection of games was asked"
    if not now:
        return "no collection of games was asked"
    return "other games were counted"
