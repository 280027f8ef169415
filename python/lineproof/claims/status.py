"""What becomes of a sentence: a reading, with its claims or the reason why there are none."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from lineproof.lesson import Place

from .claim import Claim
from .sentence import Sentence


class Status(StrEnum):
    """What became of a sentence."""

    READ = "read"
    LEFT_ALONE = "left alone"
    NOT_UNDERSTOOD = "not understood"
    OTHER_LANGUAGE = "other language"
    OPINION = "your opinion"


@dataclass(frozen=True)
class Reading:
    """A sentence with its claims. why: the reason when it was not read, or not wholly."""

    place: Place
    sentence: Sentence
    status: Status
    why: str
    claims: tuple[Claim, ...]


@dataclass(frozen=True)
class LessonReading:
    """All that was read in a lesson: the sentences, and the claims of the glyphs."""

    sentences: tuple[Reading, ...]
    glyphs: tuple[Claim, ...]

    @property
    def claims(self) -> tuple[Claim, ...]:
        """Every claim, in the order of the text."""
        spoken = [c for r in self.sentences for c in r.claims]
        return tuple(sorted((*spoken, *self.glyphs), key=lambda c: (c.start, c.end, c.kind)))

    def count(self, status: Status) -> int:
        return sum(r.status is status for r in self.sentences)


__all__ = ["LessonReading", "Reading", "Status"]
