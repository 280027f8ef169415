"""Proof: checks run at an effort, findings, the evidence store."""

from __future__ import annotations

from .changes import Change
from .effort import Effort
from .finding import Finding
from .proving import Progress, Proof, prove
from .settling import settle
from .store import EvidenceStore, StoreError

__all__ = [
    "Change",
    "Effort",
    "EvidenceStore",
    "Finding",
    "Progress",
    "Proof",
    "StoreError",
    "prove",
    "settle",
]
