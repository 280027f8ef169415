"""What a collection counted for the lesson: how often the moves that it speaks of are played, and how games went on from the ends of its lines.

Every share has its count and its interval of 95 %.
"""

from __future__ import annotations

from collections.abc import Iterator

from lineproof.claims import Outcome
from lineproof.publish.product import Found
from lineproof.report.modelled import modelled

from .blocks import Writer, anchor

FREQUENCY = "frequency"
"""The kind of claim that is counted."""


def figures(writer: Writer, found: Found) -> Iterator[dict[str, str]]:
    """In the order of the lesson; nothing without a collection, nor of claims that its games do not settle."""
    counted = []
    for finding in found.proof.findings:
        numbers = finding.judgement.numbers
        settled = finding.outcome is not Outcome.UNSETTLED
        if finding.claim.kind == FREQUENCY and numbers.get("games") and settled:
            counted.append((finding.claim.place, finding.because))
    if found.study is not None:
        counted += [(games.place, modelled(games)) for games in found.study.model_games]
    for place, words in sorted(counted, key=lambda each: each[0].index):
        yield {
            "at": writer.at(place),
            "anchor": anchor(place),
            "words": writer.notation.words(words),
        }
