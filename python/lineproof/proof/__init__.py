"""Proof: checks run at an effort, findings, the evidence store."""

from __future__ import annotations

from .changes import Change
from .effort import Effort
from .finding import NO_GAMES, NOT_ANSWERED, TOO_FEW, Finding
from .proving import Progress, Proof, evidence_file, prove
from .settling import settle
from .store import EvidenceStore

__all__ = [
    "NOT_ANSWERED",
    "NO_GAMES",
    "TOO_FEW",
    "Change",
    "Effort",
    "EvidenceStore",
    "Finding",
    "Progress",
    "Proof",
    "evidence_file",
    "prove",
    "settle",
]
