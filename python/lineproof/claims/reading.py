"""Reading: from a comment to sentences, and from a sentence to claims, or to the reason why there is none.

Precision before recall: a clause is read only when every word of it is accounted for.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cache
from itertools import accumulate
from typing import Any

from lineproof.lesson import Comment, Lesson, Place

from .answers import answered
from .around import (
    ABOUT,
    BREAKS,
    CORRECTED,
    HEDGE,
    LEAD,
    LEAD_MOVES,
    LIMITING,
    LIMITS,
    PUNCTUATION,
    QUOTED,
    SAYS,
    TOLD,
    TRADE,
    TRAIL,
    TRAIL_MOVES,
    condition,
)
from .claim import NULL_MOVE, Claim, Spot
from .clause import Clause
from .here import Here, Unread
from .kind import Kind
from .language import is_english
from .meaning import understand
from .phrase import MOVE, SHARED
from .plain import plain
from .registry import all_kinds, kind_of
from .reply import question_of
from .sentence import Sentence, Word, sentences
from .topic import asked_of, topic_of
from .verbs import Verb

CLAUSE = 40
"""Words that a clause may have at most."""
SENTENCE = 200
"""Words that a sentence may have at most."""


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


def read_lesson(lesson: Lesson) -> LessonReading:
    """Reads every comment and every glyph of a lesson."""
    found: list[Reading] = []
    glyphs: list[Claim] = []
    for place in lesson.places:
        for comment in place.comments:
            for reading in read_comment(lesson, comment, len(found)):
                found.append(reading)
        glyphs.extend(_read_glyphs(lesson, place))
    found.sort(key=lambda r: r.sentence.start)
    return LessonReading(tuple(found), tuple(glyphs))


def read_comment(lesson: Lesson, comment: Comment, first: int = 0) -> list[Reading]:
    """Reads one comment. first: the number of its first sentence in the lesson."""
    if not is_english(comment.text):
        return [
            Reading(comment.place, sentence, Status.OTHER_LANGUAGE, "not English", ())
            for sentence in sentences(comment.text, comment.start)
        ]
    here = Here(lesson, comment.place, Spot.of(comment.place), opening=comment.opening)
    found: list[Reading] = []
    topic: str | None = None
    asked: Clause | None = None
    about: str | None = None
    spoken = sentences(comment.text, comment.start)
    for number, sentence in enumerate(spoken):
        told = answered(sentence, spoken[number + 1]) if number + 1 < len(spoken) else None
        sentence = told or sentence
        at = replace(here, sentence=first + number, topic=topic, asked=asked, subject=about)
        about = None
        if number + 1 == len(spoken):
            found.append(read_sentence(at, sentence))
            break  # nobody asks what the last one leaves behind
        clauses = plain(sentence)
        topic = topic_of(sentence, clauses)
        asked = question_of(sentence, clauses) if told is None else None
        side = asked_of(sentence, clauses) if told is None else None
        found.append(read_sentence(at, sentence, clauses))
        if side is not None:
            with suppress(Unread):
                about = here.side(side.text)
    return found


def _read_glyphs(lesson: Lesson, place: Place) -> list[Claim]:
    glyphs = lesson.pgn.glyphs(place.index)
    if not glyphs or place.uci is None or place.uci == NULL_MOVE:
        return []
    found: list[Claim] = []
    seen: set[int] = set()
    for nag, (_, start, end) in zip(place.glyph_numbers, glyphs, strict=True):
        if nag is None or nag in seen:
            continue
        seen.add(nag)
        here = Here(
            lesson, place, Spot.of(place), words=lesson.text[start:end], start=start, end=end
        )
        for kind in all_kinds():
            if nag in kind.glyphs and kind.read_glyph is not None:
                with suppress(Unread):  # a mark after a null move has no move to judge
                    found.extend(kind.read_glyph(here, nag, kind.glyphs[nag]))
    return found


def read_sentence(here: Here, sentence: Sentence, clauses: list[Clause] | None = None) -> Reading:
    """Reads one sentence at a place. clauses: its plain clauses, when they are known; they are used up."""
    scanned = [
        c
        for kind in all_kinds()
        if kind.scan is not None
        for c in kind.scan(_within(here, sentence, 0, len(sentence.words) - 1), sentence)
    ]
    status, why, claims = _read(here, sentence, clauses)
    return Reading(here.place, sentence, status, why, (*claims, *scanned))


def _read(
    here: Here, sentence: Sentence, clauses: list[Clause] | None
) -> tuple[Status, str, list[Claim]]:
    whole, words = sentence, sentence.words
    if not words:
        return Status.LEFT_ALONE, "no words", []
    line = _norm(words)
    if words[-1].norm == "?":
        said = _asked_at_last(line)
        if not said:
            return Status.LEFT_ALONE, "a question", []
        sentence = replace(sentence, words=words[:said])
        words, line = sentence.words, _norm(sentence.words)
    if all(w.move is not None or w.norm in {",", "and", "then", "-"} for w in words):
        return Status.LEFT_ALONE, "only moves", []
    lead = LEAD.match(line)
    told = TOLD.match(line)
    if told is not None:
        words = words[len(told.group().split()) :]
        sentence = replace(sentence, words=words)
        line = _norm(words)
        lead = LEAD.match(line)
    if (exclaimed := _EXCLAIMED.match(line)) is not None:
        words = words[len(exclaimed.group().split()) :]
        sentence = replace(sentence, words=words)
        line = _norm(words)
        lead = LEAD.match(line)
    if QUOTED.match(line[lead.end() :] if lead else line) and not _TAKEN_BACK.search(line):
        return Status.LEFT_ALONE, "what others think, taste, or a word to the class", []
    if len(words) > SENTENCE:
        return Status.NOT_UNDERSTOOD, f"a sentence of more than {SENTENCE} words", []
    if CORRECTED.search(line):
        corrected = _corrected(line)
        if not corrected:
            return Status.LEFT_ALONE, "a self-correction", []
        third = _third(words[:corrected]) or here.third
        about = third if third is not None else here.subject
        here = replace(here, third=third, subject=about)
        sentence = replace(sentence, words=words[corrected:])
        words, line = sentence.words, _norm(sentence.words)
        if QUOTED.match(line):
            return Status.LEFT_ALONE, "a self-correction", []
    if " all but " in line:
        return Status.NOT_UNDERSTOOD, "'all but' may mean almost, or everything except", []
    if clauses is None or sentence is not whole:
        clauses = plain(sentence)
    understood = understand(here, sentence, clauses)
    cover = _Cover(here, sentence)
    cover.run()
    cover.reasons += understood.reasons
    understood.claims = [
        u
        for u in understood.claims
        if u not in understood.named
        or not any(c.kind == u.kind and _overlap(c, u) for c in cover.claims)
    ]
    if understood.claims:
        claims = [] if cover.condition else cover.claims
        new = [
            c
            for c in claims
            if not any(c.kind == u.kind and _overlap(c, u) for u in understood.claims)
        ]
        both = [*understood.claims, *new]
        return (
            Status.READ,
            "",
            [
                c
                for c in both
                if not any(_overlap(c, o) and o.kind in kind_of(c.kind).gives_way for o in both)
            ],
        )
    if cover.condition:
        return (Status.LEFT_ALONE, cover.condition, [])
    if cover.claims:
        return (
            Status.READ,
            "" if not cover.unread else f"not read: {'; '.join(cover.unread)}",
            cover.claims,
        )
    if cover.reasons:
        return Status.NOT_UNDERSTOOD, "; ".join(dict.fromkeys(cover.reasons)), []
    if _checkable(words, understood.touched):
        return Status.NOT_UNDERSTOOD, "no phrase of any kind of claim fits the whole clause", []
    return Status.LEFT_ALONE, "nothing in it that can be checked", []


def _corrected(line: str) -> int:
    """How many words of a sentence its speaker takes back; 0 when he says nothing instead."""
    end = max(match.end() for match in CORRECTED.finditer(line))
    rest = line[end:]
    opening = _NO_MORE.match(rest)
    while opening is not None and opening.end():
        end += opening.end()
        rest = line[end:]
        opening = _NO_MORE.match(rest)
    return len(line[:end].split()) if len(rest.split()) > 2 else 0


_EXCLAIMED = re.compile(r"^(?: (?:and|but|oh|ouch|wow|,))* what(?= (?:a|an) )")
"""An exclamation, "What a howler!", which says that it is one."""
_NO_MORE = re.compile(
    r"^ (?:[,;:-]|well|no|sorry|wait|rather|actually|(?:this|that|it) (?:is|was|'s) (?:not |quite |all |completely |just )*(?:right|wrong|true|false|nonsense|rubbish|incorrect))(?= |$)"
)
"""What stands before the words that are said instead."""
_TAKEN_BACK = re.compile(
    r"^ (?:\S+ )*?it looks like .* but .*\b(?:it|this|that) is (?:none|not|nothing of the (?:sort|kind))(?= |$)"
)
"""What something looks like and is not."""
_TAG = re.compile(
    r" (?:,|;|:|-)(?: (?:and|but|so|or))? (?:(?:is|are|does|do|did|can|could|would|will|have|has|was|were|should)(?: not)? (?:it|he|she|we|they|you|there|that|this|not)|"
    r"(?:which|whom) [^,;:]*|(?:when|why|how|what|who|where)(?: (?:'s|is|are|on|else|about|do|does|did|can|will|has|have|would|now|next)|$)|right|okay|ok|yes|no|eh|see|remember|got it|agreed|hm)(?: [^,;:]*)?$"
)
"""A question behind a statement: ", is it not?", ", but when will it run?"."""
_TURNED = re.compile(
    r" (?:,|;|:|-)(?: (?:and|but|so|or))? (?:(?:is|are|was|were|does|did|can|could|has|have) (?:the|our|his|a|an|my|your|that|this|white|black) [^,;:]*"
    r"|(?:and|but|so) [^,;]* (?:by )?(?:what|how many|how much)(?: ,)? [^;:]*)$"
)
"""A question of its own behind a statement: ", so was the knight free?", ", and he is behind by what, two pieces?"."""
_ASKS = re.compile(r"^(?: (?:and|but|so|now|well|okay))*(?: ,)? (?:is|are|does|do|did|can|could|would|will|have|has|was|were|should|shall|may|might|must|when|why|how|what|who|where|which|whose|if|or)(?= )")  # fmt: skip


def _asked_at_last(line: str) -> int:
    """How many words of a question are a statement before it; 0 when it asks from the start."""
    line = line.removesuffix(" ?")
    tag = _TAG.search(line) or _TURNED.search(line)
    if tag is None or _ASKS.match(line):
        return 0
    before = line[: tag.start()].split()
    return len(before) if len(before) > 2 else 0


def _overlap(one: Claim, two: Claim) -> bool:
    return one.start < two.end and two.start < one.end


def _checkable(words: tuple[Word, ...], touched: bool) -> bool:
    """Whether a sentence seems to claim something: a word of a claim, and something on the board to say it of."""
    said = {w.norm for w in words}
    if any(w.move is not None for w in words):
        return True
    if not said & ABOUT:
        return False
    return touched or bool(said & TRADE) or any(kind.vocabulary & said for kind in all_kinds())


def _norm(words: Sequence[Word]) -> str:
    return "".join(f" {w.norm}" for w in words)


def _within(here: Here, sentence: Sentence, first: int, last: int) -> Here:
    while last > first and sentence.words[last].norm in PUNCTUATION:
        last -= 1
    start, end = sentence.slice(first, last)
    text = sentence.text[start - sentence.start : end - sentence.start]
    return replace(here, words=text, start=start, end=end)


@dataclass
class _Part:
    """Words first..last-1 of a sentence: read as claims, or not (claims is None)."""

    first: int
    last: int
    claims: list[Claim] | None


class _Cover:
    """Covers a sentence with clauses: at each place where a clause may begin, the longest that can be read.

    What stays unread may change the meaning of what was read beside it; then that is not read either.
    """

    def __init__(self, here: Here, sentence: Sentence) -> None:
        self.here = here
        self.sentence = sentence
        self.parts: list[_Part] = []
        self.reasons: list[str] = []
        self.condition = ""
        self.phrases: dict[tuple[int, int], tuple[Kind, dict[str, Any]] | None] = {}
        said = {w.norm for w in sentence.words}
        self.kinds = [kind for kind in _phrased() if not kind.vocabulary.isdisjoint(said)]
        self.played = any(w.move is not None or MOVE.fullmatch(w.norm) for w in sentence.words)
        self.line = _norm(sentence.words)
        self.offsets = [0, *accumulate(1 + len(w.norm) for w in sentence.words)]
        self.dangling = False
        self.adrift = False

    def norms(self, first: int, last: int) -> str:
        """Words first..last-1, each with one blank before it."""
        return self.line[self.offsets[first] : self.offsets[last]]

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
            for last in sorted((e for e in ends if first < e <= first + CLAUSE), reverse=True):
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
            line = self.norms(part.first, part.last)
            if before is not None and before.claims and self._limits(part, line):
                before.claims = None
                self.reasons.append("the rest of the sentence may change what it says")
            if after is not None and after.claims and SAYS.search(line):
                after.claims = None
                self.reasons.append("it is said of what others think")

    def _limits(self, part: _Part, line: str) -> bool:
        """Whether an unread clause may limit or take back the one before it."""
        words = self.sentence.words
        attached = words[part.first - 1].norm not in PUNCTUATION
        if attached and words[part.first].norm in LIMITS:
            return True
        return bool(LIMITING.search(line) or SAYS.search(line))

    def _skip(self, first: int, last: int) -> None:
        clause = self.sentence.words[first:last]
        line = self.norms(first, last)
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
            topic=_topic(line) or self.here.topic, third=_third(clause) or self.here.third,
        )  # fmt: skip
        self.parts.append(_Part(first, last, None))

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
        if not self.kinds and not self.played:
            return False  # no phrase to fit, no move to play
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
        self.parts.append(_Part(whole, last, claims))
        self.dangling = False
        said = _spoken_of(here, words[first:last], claims)
        self.here = replace(
            here,
            subject=said or here.subject,
            unclear=False,
            after_unread=False,
            topic=_topic(self.norms(first, last)) or here.topic,
            third=_third(words[first:last]) or here.third,
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
        at = replace(_within(here, self.sentence, first, (whole or last) - 1), hedged=hedged)
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

    def _phrase(self, first: int, last: int) -> tuple[Kind, dict[str, Any]] | None:
        """The first phrase of any kind that accounts for words first..last-1, remembered."""
        if not self.kinds:
            return None
        if (first, last) not in self.phrases:
            self.phrases[first, last] = self._look(first, last)
        return self.phrases[first, last]

    def _look(self, first: int, last: int) -> tuple[Kind, dict[str, Any]] | None:
        said = {w.norm for w in self.sentence.words[first:last]}
        kinds = [kind for kind in self.kinds if not kind.vocabulary.isdisjoint(said)]
        if not kinds:
            return None
        line = short = self.norms(first, last)
        while (trail := TRAIL.search(short)) is not None:
            short = short[: trail.start()]
        texts = (line, short) if short and short != line else (line,)
        for kind in kinds:
            for phrase in kind.compiled:
                for text in texts:
                    slots = phrase.match(text)
                    if slots is not None:
                        return kind, slots
        return None


@cache
def _phrased() -> tuple[Kind, ...]:
    """The kinds that read phrases."""
    return tuple(kind for kind in all_kinds() if kind.read is not None and kind.phrases)


_SUBJECT = re.compile(
    rf"^(?: (?:and|but|so|now|here|then|because|while))*({SHARED['side']}) (?!'s)"
)
"""A clause that begins with a side as its subject."""


def _third(words: Sequence[Word]) -> str | None:
    """The side that a clause names last, by its name."""
    return next((w.norm for w in reversed(words) if w.norm in {"white", "black"}), None)


def _spoken_of(here: Here, words: Sequence[Word], claims: Sequence[Claim]) -> str | None:
    """The side that a clause has as its subject: what a clause without one after it speaks of."""
    named = _SUBJECT.match(_norm(words))
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


__all__ = [
    "Kind",
    "LessonReading",
    "Reading",
    "Status",
    "read_comment",
    "read_lesson",
    "read_sentence",
]
