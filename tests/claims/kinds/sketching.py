"""Findings at sketch effort, for claims that need a search."""

from __future__ import annotations

from lineproof.proof import Effort, EvidenceStore, Finding, settle
from tests.claims.conftest import claims_of


def sketch(
    movetext: str, store: EvidenceStore, kind: str, taught: str = "white", setup: str | None = None
) -> Finding:
    """The finding of the only claim of a kind in a movetext."""
    claims = [c for c in claims_of(movetext, taught, setup) if c.kind == kind]
    assert len(claims) == 1, [(c.kind, c.words) for c in claims_of(movetext, taught, setup)]
    return settle(claims[0], Effort.SKETCH, store)


def kinds_of(movetext: str, taught: str = "white", setup: str | None = None) -> list[str]:
    """The kinds of all claims that are read in a movetext, stale words apart."""
    return [c.kind for c in claims_of(movetext, taught, setup) if c.kind != "stale"]
