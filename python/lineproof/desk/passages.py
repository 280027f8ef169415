"""Passages: the comments and glyphs of a lesson, each with what was read in it. One that an edit leaves alone is not read again."""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from lineproof.claims import Claim, LessonReading, Reading, read_comment, read_glyphs
from lineproof.lesson import Comment, Lesson, Place
from lineproof.lesson.opinions import OpinionError, read_opinions
from lineproof.proof.opinions import set_apart

from .naming import Names


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


@dataclass(frozen=True)
class Said:
    """A claim with its name. start..end: in the comment's text; 0..0 for a glyph."""

    id: str
    claim: Claim
    start: int
    end: int


@dataclass(frozen=True)
class Sentence:
    """A sentence of a passage. start..end: in the comment's text. said: names of its claims."""

    start: int
    end: int
    status: str
    why: str
    said: tuple[str, ...]


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


def read(lesson: Lesson, spoken: list[Spoken]) -> Iterator[tuple[Spoken, list[Reading] | None]]:
    """Reads the comments one by one, so that the caller may stop between them; for glyphs None. The sentences are numbered through."""
    count = 0
    for one in spoken:
        found = None if one.comment is None else read_comment(lesson, one.comment, count)
        count += len(found or ())
        yield one, found


def passages(
    lesson: Lesson, found: list[tuple[Spoken, list[Reading] | None]]
) -> dict[str, Passage]:
    """By their keys. Sentences that the author has marked as his opinion make no claims."""
    readings = tuple(r for _, some in found for r in some or ())
    try:
        opinions = read_opinions(lesson.settings.decisions)
    except OpinionError:  # lesson.toml was checked when it was read
        opinions = ()
    apart = iter(set_apart(LessonReading(readings, ()), opinions).reading.sentences)
    made = {}
    for one, some in found:
        if some is None:
            claims = read_glyphs(lesson, one.at)
            said = tuple(Said(_id(one, n, c, 0, 0), c, 0, 0) for n, c in enumerate(claims))
            made[one.key] = Passage((), said)
        else:
            made[one.key] = _passage(one, [next(apart) for _ in some])
    return made


def _passage(one: Spoken, readings: list[Reading]) -> Passage:
    base = one.comment.start if one.comment else 0
    sentences, all_said = [], []
    for reading in readings:
        said = [
            Said(
                _id(one, number, claim, claim.start - base, claim.end - base),
                claim,
                claim.start - base,
                claim.end - base,
            )
            for number, claim in enumerate(reading.claims)
        ]
        all_said += said
        sentence = reading.sentence
        sentences.append(
            Sentence(
                sentence.start - base,
                sentence.end - base,
                str(reading.status),
                reading.why,
                tuple(each.id for each in said),
            )
        )
    return Passage(tuple(sentences), tuple(all_said))


def _id(one: Spoken, number: int, claim: Claim, start: int, end: int) -> str:
    return _key(one.key, str(number), claim.kind, str(start), str(end))


def _key(*parts: str) -> str:
    return hashlib.blake2b("\0".join(parts).encode(), digest_size=8).hexdigest()
