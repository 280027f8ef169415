"""The author's verdicts in one wording, so that a sign, a phrase and another phrase for the same can be compared."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from lineproof.claims import Claim
from lineproof.claims.bands import Band

_DEGREES: Final = {
    Band.SLIGHT: "slightly better",
    Band.CLEAR: "clearly better",
    Band.WINNING: "winning",
}


@dataclass(frozen=True)
class Said:
    """A verdict. key: of the position. after: the move that leads to it, as printed. words: "White is clearly better"."""

    key: int
    after: str
    words: str


def said_by(claim: Claim) -> Said | None:
    """The verdict that a claim is; None for another kind, and for what is merely denied."""
    if claim.kind != "verdict" or claim.negated:
        return None
    degree = claim.params["degree"]
    if degree == "unclear":
        words = "the position is unclear"
    elif degree == Band.LEVEL:
        words = "the position is level"
    else:
        side = (claim.side or "white").capitalize()
        words = f"{side} is {_DEGREES.get(degree, 'better')}"
    return Said(claim.spot.board.key, claim.place.label, words)


def verdicts(claims: Iterable[Claim]) -> dict[int, tuple[Said, ...]]:
    """By the key of a position what is said of it, in the order of the text, nothing twice."""
    found: dict[int, dict[str, Said]] = {}
    for claim in claims:
        said = said_by(claim)
        if said is not None:
            found.setdefault(said.key, {}).setdefault(said.words, said)
    return {key: tuple(each.values()) for key, each in found.items()}
