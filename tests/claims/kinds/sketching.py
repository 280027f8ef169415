"""The answer of a kind at sketch effort, for tests of kinds that search."""

from __future__ import annotations

from lineproof.claims import Claim, Outcome
from lineproof.proof import Effort, EvidenceStore, Finding, settle
from tests.claims.conftest import claims_of

_STORE = EvidenceStore(None)
"""The same question is searched once for all tests of a process."""


def read_as(
    kind: str, movetext: str, taught: str | None = "white", setup: str | None = None
) -> list[Claim]:
    """The claims of one kind in a movetext."""
    return [c for c in claims_of(movetext, taught, setup) if c.kind == kind]


def sketched(
    kind: str, movetext: str, taught: str | None = "white", setup: str | None = None
) -> Finding:
    """The finding of the only claim of a kind."""
    (claim,) = read_as(kind, movetext, taught, setup)
    return settle(claim, Effort.SKETCH, _STORE)


def outcome(
    kind: str, movetext: str, taught: str | None = "white", setup: str | None = None
) -> Outcome:
    return sketched(kind, movetext, taught, setup).outcome


def kinds_of(movetext: str, taught: str = "white", setup: str | None = None) -> list[str]:
    """The kinds of all claims that are read in a movetext, stale words apart."""
    return [c.kind for c in claims_of(movetext, taught, setup) if c.kind != "stale"]
