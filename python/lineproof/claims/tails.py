"""Tails: the particles and fixed words that belong to a verb, "pick up", "put the question to"."""

from __future__ import annotations

from functools import cache

from .lexicon import VERBS
from .scan import Scan


@cache
def _tails() -> dict[str, tuple[tuple[str, ...], ...]]:
    """The words that may follow a verb as part of it, the longest first."""
    found: dict[str, set[tuple[str, ...]]] = {}
    for words in VERBS.values():
        for verb in words:
            base, *tail = verb.split()
            if tail:
                found.setdefault(base, set()).add(tuple(tail))
    return {base: tuple(sorted(t, key=len, reverse=True)) for base, t in found.items()}


@cache
def _verbs() -> frozenset[str]:
    """The verbs of the lexicon that need no particle."""
    return frozenset(w for words in VERBS.values() for w in words if " " not in w)


class Tails(Scan):
    """Finds what belongs to a verb."""

    def _tail(self, lemma: str, at: int) -> tuple[str, int]:
        """The particles and fixed words that belong to a verb, perhaps behind an adverb, and where the tokens go on."""
        tails = _tails().get(lemma)
        if tails is None:
            return lemma, at
        start = at
        while (t := self._token(start)) is not None and "adverb" in t.tags:
            start += 1
        starts = [(at, self._spelt(at))]
        if start != at:
            starts.append((start, self._spelt(start)))
        for tail in tails:
            for first, words in starts:
                if words[: len(tail)] != tail:
                    continue
                end, count = first, 0
                while count < len(tail):
                    count += len(self.tokens[end].norm.split())
                    end += 1
                if count == len(tail) and not (lemma == "be" and self._token(end) is None):
                    return f"{lemma} {' '.join(tail)}", end
        return lemma, at

    def _spelt(self, at: int) -> tuple[str, ...]:
        """The words of the next tokens."""
        return tuple([w for t in self.tokens[at : at + 7] for w in t.norm.split()])

    def _alone(self, at: int) -> bool:
        """Whether a preposition is a verb of the lexicon by itself, or with the particle that follows: "round up"."""
        return any(
            base in _verbs() or self._tail(base, at + 1)[0] != base
            for base, _ in self.tokens[at].verbs
        )


__all__ = ["Tails"]
