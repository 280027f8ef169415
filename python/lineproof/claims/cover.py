"""Covering a sentence with clauses that phrases read: at each place where one may begin, the longest that can be read."""

from __future__ import annotations

import re
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from typing import Any

from .around import (
    BREAKS,
    HEDGE,
    LEAD,
    LEAD_MOVES,
    LIMITING,
    LIMITS,
    PUNCTUATION,
    SAYS,
    TRAIL_MOVES,
    condition,
)
from .claim import Claim
from .here import Here, Unread
from .phrase import MOVE, SHARED
from .said_phrases import Part, SaidPhrases, spelt, worded
from .verbs import Verb
from .word import Word

CLAUSE = 40
"""Words that a clause may have at most."""


class Cover(SaidPhrases):
    """Covers a sentence with clauses: at each place where a clause may begin, the longest that can be read.

    What stays unread may change the meaning of what was read beside it; then that is not read either.
    """

    @property
    def claims(self) -> list[Claim]:
        return [claim for part in self.parts for claim in part.claims or ()]

    @property
    def unread(self) -> list[str]:
        """The clauses that were not read, as written."""
        words = self.sentence.words
        found = []
        for part in self.parts:
            said = [i for i in range(part.first, part.last) if words[i].norm not in _EMPTY]
            if part.claims is None and said:
                start, end = self.sentence.slice(said[0], said[-1])
                text = self.sentence.text[start - self.sentence.start : end - self.sentence.start]
                found.append(" ".join(text.split()))
        return found

    def run(self) -> None:
        words = self.sentence.words
        ends = [i for i, w in enumerate(words) if i and w.norm in BREAKS] + [len(words)]
        first = 0
        while first < len(words):
            if words[first].norm in PUNCTUATION:
                first += 1
                continue
            within = [e for e in reversed(ends) if first < e <= first + CLAUSE]
            for last in () if self.idle else within:
                if self._clause(first, last):
                    first = last
                    break
            else:
                last = min(e for e in ends if e > first)
                self._skip(first, last)
                first = last
        self._doubt()

    def _doubt(self) -> None:
        """Drops what was read where an unread neighbour may change what it means."""
        for index, part in enumerate(self.parts):
            if part.claims is not None:
                continue
            before = self.parts[index - 1] if index else None
            after = self.parts[index + 1] if index + 1 < len(self.parts) else None
            claims = (before and before.claims) or (after and after.claims)
            line = self.norms(part.first, part.last) if claims else ""
            if before is not None and before.claims and self._limits(part, line):
                before.claims = None
                self.reasons.append("the rest of the sentence may change what it says")
            if after is not None and after.claims and SAYS.search(line):
                after.claims = None
                self.reasons.append("it is said of what others think")

    def _limits(self, part: Part, line: str) -> bool:
        """Whether an unread clause may limit or take back the one before it."""
        words = self.sentence.words
        attached = words[part.first - 1].norm not in PUNCTUATION
        if attached and words[part.first].norm in LIMITS:
            return True
        return bool(LIMITING.search(line) or SAYS.search(line))

    def _skip(self, first: int, last: int) -> None:
        line = self.norms(first, last)
        if self.idle:
            self.condition = self.condition or condition(line)
            self.parts.append(Part(first, last, None))
            return
        clause = self.sentence.words[first:last]
        moves = LEAD_MOVES.match(line + " ")
        if moves is not None and not (line + " ")[moves.end() :].strip():
            try:
                self.here = self.here.at(
                    self.here.play((moves["after"] or moves["sequence"]).strip())
                )
                return
            except Unread as reason:
                self.reasons.append(str(reason))
        self.adrift = self.adrift or self._leads_away(clause)
        self.condition = self.condition or condition(line)
        self.dangling = _BARE.fullmatch(line) is not None
        named = _SUBJECT.match(line)
        try:
            subject = self.here.side(named[1].strip()) if named else None
        except Unread:
            subject = None
        self.here = replace(
            self.here, subject=subject, unclear=subject is None, after_unread=True,
            topic=_topic(line) or self.here.topic, third=named_last(clause) or self.here.third,
        )  # fmt: skip
        self.parts.append(Part(first, last, None))

    def _leads_away(self, clause: Sequence[Word]) -> bool:
        """Whether a clause that was not read names a move other than the last: what follows may speak of the position after it."""
        for word in clause:
            if word.move is None or (word.san or "")[:1] in "abcdefgh":
                continue  # a square may be no more than a square
            try:
                if self.here.named(word.norm).after.moves != self.here.spot.moves:
                    return True
            except Unread:
                return True
        return False

    def _clause(self, first: int, last: int) -> bool:
        """Tries to read words first..last-1 as one clause."""
        words = self.sentence.words
        if self.dangling and words[first].norm == "and":
            return False  # the second of two things, of which the first was not read
        whole = first
        here, hedged = self.here, False
        try:
            while True:  # strip what leaves the meaning alone, and play the moves that lead in
                rest = self.norms(first, last)
                if not rest:
                    return False
                claims = self._match(here, first, last, hedged)
                if claims is not None:
                    break
                if (lead := LEAD.match(rest)) is not None:
                    first += _count(lead.group())
                elif (hedge := HEDGE.match(rest)) is not None:
                    first, hedged = first + _count(hedge.group()), True
                elif (moves := LEAD_MOVES.match(rest)) is not None:
                    here = here.at(here.play((moves["after"] or moves["sequence"]).strip()))
                    first += _count(moves.group())
                else:
                    break
            if claims is None:
                trail = TRAIL_MOVES.search(self.norms(first, last))
                if trail is None or trail.start() == 0:
                    return False
                here = here.at(here.play(trail["after"].strip()))
                claims = self._match(here, first, last - _count(trail.group()), hedged, last)
                if claims is None:
                    return False
        except Unread as reason:
            self.reasons.append(str(reason))
            return False
        self.parts.append(Part(whole, last, claims))
        self.dangling = False
        said = _spoken_of(here, words[first:last], claims)
        self.here = replace(
            here,
            subject=said or here.subject,
            unclear=False,
            after_unread=False,
            topic=_topic(self.norms(first, last)) or here.topic,
            third=named_last(words[first:last]) or here.third,
        )
        return True

    def _match(
        self, here: Here, first: int, last: int, hedged: bool, whole: int | None = None
    ) -> list[Claim] | None:
        found = self._phrase(first, last)
        if found is None:
            return None
        kind, slots = found
        assert kind.read is not None  # only kinds that read have phrases
        at = replace(worded(here, self.sentence, first, (whole or last) - 1), hedged=hedged)
        verb = slots.get("verb")
        if verb is not None and verb.supposed and not self._shown(here, slots, verb):
            raise Unread("said of what is not on the board")
        if self.adrift and "move" not in slots and not MOVE.fullmatch(str(slots.get("agent", ""))):
            raise Unread(
                "a move was named before that was not read, so it is not clear which position is meant"
            )
        claims = kind.read(at, dict(slots))
        if kind.flips and verb is not None and verb.negated:
            claims = [replace(claim, negated=not claim.negated) for claim in claims]
        return claims

    def _shown(self, here: Here, slots: dict[str, Any], verb: Verb) -> bool:
        """Whether a "would" or "could" speaks of moves that the sentence itself names."""
        named = here.spot is not self.here.spot or "move" in slots
        named = named or MOVE.fullmatch(str(slots.get("agent", ""))) is not None
        return named and verb.modal in {"would", "could"}


_SUBJECT = re.compile(
    rf"^(?: (?:and|but|so|now|here|then|because|while))*({SHARED['side']}) (?!'s)"
)
"""A clause that begins with a side as its subject."""


def named_last(words: Sequence[Word]) -> str | None:
    """The side that a clause names last, by its name."""
    return next((w.norm for w in reversed(words) if w.norm in {"white", "black"}), None)


def _spoken_of(here: Here, words: Sequence[Word], claims: Sequence[Claim]) -> str | None:
    """The side that a clause has as its subject: what a clause without one after it speaks of."""
    named = _SUBJECT.match(spelt(words))
    if named is not None:
        with suppress(Unread):
            return here.side(named[1].strip())
    return next((c.side for c in claims if c.side is not None), None)


_TOPIC = re.compile(
    rf"^(?: (?:and|but|so|now|here|then|because|while|since|for))*(?P<topic>{SHARED['target']})(?= )"
)


def _topic(line: str) -> str | None:
    """The piece that a clause begins with: what "it" means in the next."""
    match = _TOPIC.match(line)
    return None if match is None else match["topic"].strip()


_BARE = re.compile(rf"(?: (?:and|but|so|,))*{SHARED['target']}")
"""A piece alone, without a verb."""

_EMPTY = PUNCTUATION | {"and", "but", "so", "because", "for", "since", "as", "which", "while"}
"""Words that say nothing by themselves."""


def _count(text: str) -> int:
    return len(text.split())


__all__ = ["CLAUSE", "Cover", "named_last"]
