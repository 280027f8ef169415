"""A finding: a claim with the answer of its check."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from lineproof.claims import Claim, Judgement, Outcome, Spot, kind_of
from lineproof.claims.showing import numbered
from lineproof.engine import ENGINE_VERSION

NOT_ANSWERED = "the engine did not answer"
"""`Finding.why_unsettled` of a claim that an outside engine left unanswered."""
TOO_FEW = "the games are too few"
"""`Finding.why_unsettled` of a claim of how often a move is played."""
NO_GAMES = "there is no collection of games"
"""The same where none can be counted."""


@dataclass(frozen=True)
class Finding:
    """What a check found of one claim.

    nodes: spent on it in all, 0 for a board fact. steps: how often the effort was raised, plus one.
    why_unsettled: "one off", "the last two steps disagree", "the effort ran out",
    "it cannot be asked here" (a threat of a side in check, say), `NOT_ANSWERED`, `TOO_FEW`, `NO_GAMES`, or "" when settled.
    engine: the version of ours or the identity of an outside one, whichever was asked. games: which were counted, "" for none.
    """

    claim: Claim
    outcome: Outcome
    judgement: Judgement
    nodes: int
    steps: int
    why_unsettled: str
    engine: str = ENGINE_VERSION
    games: str = ""

    @property
    def because(self) -> str:
        return self.judgement.because

    @property
    def line_from(self) -> Spot:
        return self.judgement.line_from or self.claim.spot

    def evidence(self) -> str:
        """The evidence line in SAN with move numbers, "" when the finding needs none."""
        return numbered(self.line_from, self.judgement.line)

    def record(self) -> dict[str, Any]:
        """What the next run compares with."""
        return {
            "fingerprint": self.claim.fingerprint(),
            "place": self.claim.place.label,
            "outcome": str(self.outcome),
            "because": self.because,
            "engine": self.engine,
            "games": self.games,
            "why": self.why_unsettled,
            "version": kind_of(self.claim.kind).version,
        }
