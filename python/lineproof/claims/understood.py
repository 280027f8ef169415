"""What became of a sentence: claims, and reasons for what was not read."""

from __future__ import annotations

from dataclasses import dataclass, field

from .claim import Claim


@dataclass
class Understood:
    """What became of a sentence: the claims, and the reasons for what was not read. touched: a clause of it was read.
    named: the claims of a thing that is only named as known. left: the first and last words of clauses that neither claim nor play anything."""

    claims: list[Claim] = field(default_factory=list)
    reasons: list[str] = field(default_factory=list)
    touched: bool = False
    named: list[Claim] = field(default_factory=list)
    left: list[tuple[int, int]] = field(default_factory=list)


__all__ = ["Understood"]
