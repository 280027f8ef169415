"""Contradictions as every output says them: the reason, and both places."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from lineproof.proof import Proof

from .located import Located
from .markup import Html, join, tag
from .section import Section, beside, flat, lead, sign_of

CONTRADICTS: Final = "What contradicts itself"
"""The heading."""


@dataclass(frozen=True)
class Both:
    """Two findings whose claims cannot both be true, in the order of the text. rule: which of the documented rules says so."""

    pair: tuple[Located, Located]
    rule: str
    why: str


def contradicting(proof: Proof, findings: Sequence[Located]) -> Iterator[Both]:
    """Every contradiction of a proof."""
    by_finding = {id(f.finding): f for f in findings}
    for found in proof.contradictions:
        pair = by_finding[id(found.first)], by_finding[id(found.second)]
        yield Both(pair, found.rule, found.said)


def contradiction_section(proof: Proof, findings: Sequence[Located]) -> Section | None:
    """The section of the page; None where nothing contradicts."""
    rows = [_row(both) for both in contradicting(proof, findings)]
    if not rows:
        return None
    said = "Two claims that cannot both be true. Behind each stands what its check found."
    return Section("contradicts", CONTRADICTS, (lead(said), tag("ul", *rows, class_="plain")))


def _row(both: Both) -> Html:
    quoted = [
        tag(
            "p",
            f"“{flat(f.sentence)}” ",
            sign_of(f.outcome),
            tag("span", f"{beside(f.label)}, {f.address}", class_="reason"),
        )
        for f in both.pair
    ]
    return tag("li", tag("p", both.why), join(quoted))
