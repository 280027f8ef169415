"""Passages: the comments and glyphs of a lesson, each with what was read in it. One that an edit leaves alone is not read again."""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace

from lineproof.claims import Claim, LessonReading, Reading, Status, read_comment, read_glyphs
from lineproof.lesson import Comment, Lesson, Place
from lineproof.lesson.opinions import OpinionError, read_opinions
from lineproof.proof.opinions import set_apart

from .naming import Names

FAULT = "the program has a fault in reading these words"


@dataclass(frozen=True)
class Spoken:
    """A comment, or a move with its glyphs, of one version. key: the same in each version that has it unchanged.

    place: the name of the place that it speaks of. index: of the comment; None for glyphs.
    """

    key: str
    place: str
    index: int | None
    comment: Comment | None
    at: Place

    @property
    def base(self) -> int:
        """Where the comment's words, or the move, begin in the lesson's text."""
        return self.comment.start if self.comment is not None else (self.at.span or (0, 0))[0]


@dataclass(frozen=True)
class Said:
    """A claim with its name. start..end: in the comment's text, or from the move on for a glyph."""

    id: str
    claim: Claim
    start: int
    end: int

    def at(self, one: Spoken, sentence: int) -> Claim:
        """The claim as it stands in another version, where the same is spoken. sentence: its number there."""
        return replace(
            self.claim,
            place=one.at,
            start=one.base + self.start,
            end=one.base + self.end,
            sentence=sentence,
        )


@dataclass(frozen=True)
class Sentence:
    """A sentence of a passage. start..end: in the comment's text. said: names of its claims."""

    start: int
    end: int
    status: str
    why: str
    said: tuple[str, ...]


@dataclass(frozen=True)
class Read:
    """What the reading gave: sentences of a comment, or claims of glyphs. fault: the error's name where it broke off, else ""."""

    of: Spoken
    readings: tuple[Reading, ...]
    glyphs: tuple[Claim, ...]
    fault: str = ""


@dataclass(frozen=True)
class Passage:
    """What was read in one comment, or of one move's glyphs."""

    sentences: tuple[Sentence, ...]
    said: tuple[Said, ...]


def spoken(lesson: Lesson, names: Names) -> Iterator[Spoken]:
    """Everything that is spoken, in the order of the text; a move's glyphs before the words beside it."""
    seen: Counter[str] = Counter()
    comments: dict[int, list[tuple[int, Comment]]] = {}
    for index, comment in enumerate(lesson.comments):
        comments.setdefault(comment.anchor.index, []).append((index, comment))
    for place in lesson.places:
        name = names.of(place)
        glyphs = [lesson.text[s:e] for _, s, e in lesson.pgn.glyphs(place.index)]
        if glyphs:
            yield Spoken(_key("glyphs", name, *glyphs), name, None, None, place)
        for index, comment in comments.get(place.index, ()):
            of = names.of(comment.place)
            key = _key("words", name, of, comment.text)
            seen[key] += 1
            if seen[key] > 1:
                key = _key(key, str(seen[key]))
            yield Spoken(key, of, index, comment, comment.place)


def read(lesson: Lesson, spoken: list[Spoken]) -> Iterator[Read]:
    """Reads the comments and glyphs one by one, so that the caller may stop between them."""
    for one in spoken:
        try:
            if one.comment is None:
                yield Read(one, (), tuple(read_glyphs(lesson, one.at)))
            else:
                yield Read(one, tuple(read_comment(lesson, one.comment)), ())
        except Exception as error:  # one sentence that breaks the reading must not end it
            yield Read(one, (), (), type(error).__name__)


def passages(lesson: Lesson, found: list[Read]) -> dict[str, Passage]:
    """By their keys. Sentences that the author has marked as his opinion make no claims."""
    readings = tuple(r for each in found for r in each.readings)
    try:
        opinions = read_opinions(lesson.settings.decisions)
    except OpinionError:  # lesson.toml was checked when it was read
        opinions = ()
    apart = iter(set_apart(LessonReading(readings, ()), opinions).reading.sentences)
    made = {}
    for each in found:
        one = each.of
        if each.fault and one.comment is not None:
            why = f"{FAULT} ({each.fault})"
            whole = Sentence(0, len(one.comment.text), str(Status.NOT_UNDERSTOOD), why, ())
            made[one.key] = Passage((whole,), ())
        elif one.comment is None:
            claims = enumerate(each.glyphs)
            made[one.key] = Passage((), tuple(_said(one, n, claim) for n, claim in claims))
        else:
            made[one.key] = _passage(one, [next(apart) for _ in each.readings])
    return made


def _passage(one: Spoken, readings: list[Reading]) -> Passage:
    sentences, all_said = [], []
    for reading in readings:
        said = [_said(one, number, claim) for number, claim in enumerate(reading.claims)]
        all_said += said
        sentence = reading.sentence
        sentences.append(
            Sentence(
                sentence.start - one.base,
                sentence.end - one.base,
                str(reading.status),
                reading.why,
                tuple(each.id for each in said),
            )
        )
    return Passage(tuple(sentences), tuple(all_said))


def _said(one: Spoken, number: int, claim: Claim) -> Said:
    start, end = claim.start - one.base, claim.end - one.base
    name = _key(one.key, str(number), claim.kind, str(start), str(end))
    return Said(name, claim, start, end)


def _key(*parts: str) -> str:
    return hashlib.blake2b("\0".join(parts).encode(), digest_size=8).hexdigest()
