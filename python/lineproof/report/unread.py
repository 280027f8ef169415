"""The section of what was not read, each sentence with the reason."""

from __future__ import annotations

from collections.abc import Sequence

from lineproof.claims import Reading, Status

from .markup import Html, join, tag
from .plain import plain
from .section import Section, beside, lead


def unread(readings: Sequence[Reading]) -> Section | None:
    """None where every sentence was read in full."""
    silent = [r for r in readings if not r.claims]
    in_part = [r for r in readings if r.claims and (r.why or r.status is not Status.READ)]
    groups = (
        ("Not understood", [r for r in silent if r.status is Status.NOT_UNDERSTOOD]),
        ("Read only in part", in_part),
        ("In another language", [r for r in silent if r.status is Status.OTHER_LANGUAGE]),
        ("Left alone", [r for r in silent if r.status is Status.LEFT_ALONE]),
        ("Marked as your opinion", [r for r in silent if r.status is Status.OPINION]),
    )
    shown = [_group(title, some) for title, some in groups if some]
    if not shown:
        return None
    said = "A part of a sentence is read only when every word of it is accounted for. Nothing is guessed."
    return Section("unread", "What was not read, and why", (lead(said), *shown))


def _group(title: str, some: Sequence[Reading]) -> Html:
    return join(
        (
            tag("h3", f"{title} ({len(some)})", class_="group"),
            tag("ul", *(_row(r) for r in some), class_="plain columns"),
        )
    )


def _row(reading: Reading) -> Html:
    line, _ = reading.place.lesson.locate(reading.sentence.start)
    why = reading.why or str(reading.status)
    return tag(
        "li",
        f"“{plain(reading.sentence.text)}”",
        tag("span", f"{beside(reading.place.label)}, line {line}: {why}", class_="reason"),
    )
