"""Reading: from a comment to sentences, and from a sentence to claims, or to the reason why there is none.

Precision before recall: a clause is read only when every word of it is accounted for.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace

from lineproof.lesson import Comment, Lesson, Place

from .answers import question_of, stated
from .around import (
    ABOUT,
    CORRECTED,
    LEAD,
    QUOTED,
    TOLD,
    TRADE,
    condition,
)
from .asking import replaced_from, said_first, tag_within
from .claim import NULL_MOVE, Claim, Spot
from .clause import Clause
from .here import Here, Unread, but
from .language import is_english
from .meaning import understand
from .plain import plain
from .registry import all_kinds, kind_of, scans
from .sentence import Sentence, sentences, spelt
from .status import LessonReading, Reading, Status
from .thoughts import thought_of
from .topic import asked_of, topic_of
from .tried import tried
from .understood import Understood
from .word import Word

SENTENCE = 200
"""Words that a sentence may have at most."""


def read_lesson(lesson: Lesson) -> LessonReading:
    """Reads every comment and every glyph of a lesson."""
    found: list[Reading] = []
    glyphs: list[Claim] = []
    for comment in sorted(lesson.comments, key=lambda comment: comment.place.index):
        found += read_comment(lesson, comment, len(found))
    for place in lesson.places:
        glyphs += read_glyphs(lesson, place)
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
    after: Spot | None = None
    thought: Clause | None = None
    spoken = sentences(comment.text, comment.start)
    for number, sentence in enumerate(spoken):
        told = stated(sentence, spoken[number + 1]) if number + 1 < len(spoken) else None
        sentence = told or sentence
        at = but(
            here, sentence=first + number, topic=topic, asked=asked, subject=about, thought=thought
        )
        if after is not None:
            at = but(at.at(after), topic=None, tried=True)
        about = None
        if number + 1 == len(spoken):
            found.append(read_sentence(at, sentence))
            break  # nobody asks what the last one leaves behind
        clauses = plain(sentence)
        topic = topic_of(sentence, clauses)
        asked = question_of(sentence, clauses) if told is None else None
        side = asked_of(sentence, clauses) if told is None else None
        thought = thought_of(sentence, spoken[number + 1]) if told is None else None
        after = tried(here, sentence, clauses) if told is None else None
        found.append(read_sentence(at, sentence, clauses))
        if side is not None:
            with suppress(Unread):
                about = here.side(side.text)
    return found


def read_glyphs(lesson: Lesson, place: Place) -> list[Claim]:
    """The claims of a move's glyphs, none twice."""
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
    scanned = [claim for scan in scans() for claim in scan(here, sentence)]
    status, why, claims = _read(here, sentence, clauses)
    new = [c for c in scanned if not any(_same(c, o) for o in claims)]
    return Reading(here.place, sentence, status, why, (*claims, *new))


def _same(one: Claim, two: Claim) -> bool:
    """Whether two claims judge one move: "8. Qxd4?? is a blunder"."""
    return "move" in one.params and (one.kind, one.spot.moves, one.params["move"]) == (
        two.kind,
        two.spot.moves,
        two.params.get("move"),
    )


def _read(
    here: Here, sentence: Sentence, clauses: list[Clause] | None
) -> tuple[Status, str, list[Claim]]:
    whole, words = sentence, sentence.words
    if not words:
        return Status.LEFT_ALONE, "no words", []
    line = spelt(words)
    granted = _GRANTED.match(line) or _WHY.match(line)
    if granted is not None:
        words = words[len(granted.group().split()) :]
        words = words[:-1] if words and words[-1].norm == "?" else words
        if not words:
            return Status.LEFT_ALONE, "a question", []
        sentence = replace(sentence, words=words)
        line = spelt(words)
    if (tag := tag_within(line)) is not None:
        words = (*words[: tag[0]], *words[tag[1] :])
        words = words[:-1] if words[-1].norm == "?" else words
        sentence = replace(sentence, words=words)
        line = spelt(words)
    if words[-1].norm == "?":
        said = said_first(line)
        if not said:
            return Status.LEFT_ALONE, "a question", []
        sentence = replace(sentence, words=words[:said])
        words, line = sentence.words, spelt(sentence.words)
    if all(w.move is not None or w.norm in {",", "and", "then", "-"} for w in words):
        return Status.LEFT_ALONE, "only moves", []
    lead = LEAD.match(line)
    told = TOLD.match(line)
    if told is not None:
        words = words[len(told.group().split()) :]
        sentence = replace(sentence, words=words)
        line = spelt(words)
        lead = LEAD.match(line)
    if (exclaimed := _EXCLAIMED.match(line)) is not None:
        words = words[len(exclaimed.group().split()) :]
        sentence = replace(sentence, words=words)
        line = spelt(words)
        lead = LEAD.match(line)
    if QUOTED.match(line[lead.end() :] if lead else line) and not _TAKEN_BACK.search(line):
        return Status.LEFT_ALONE, "what others think, taste, or a word to the class", []
    if len(words) > SENTENCE:
        return Status.NOT_UNDERSTOOD, f"a sentence of more than {SENTENCE} words", []
    waits = _WAITS.search(line) if line.endswith(("wait", "hang on")) else None
    if waits is not None and len(list(CORRECTED.finditer(line))) == 1:
        sentence = replace(sentence, words=words[: len(line[: waits.start()].split())])
        words, line = sentence.words, spelt(sentence.words)
    if CORRECTED.search(line):
        corrected = replaced_from(line)
        if not corrected:
            return Status.LEFT_ALONE, "a self-correction", []
        third = _named_last(words[:corrected]) or here.third
        about = third if third is not None else here.subject
        here = but(here, third=third, subject=about)
        sentence = replace(sentence, words=words[corrected:])
        words, line = sentence.words, spelt(sentence.words)
        if QUOTED.match(line):
            return Status.LEFT_ALONE, "a self-correction", []
    if _ALL_BUT.search(line):
        return Status.NOT_UNDERSTOOD, "'all but' may mean almost, or everything except", []
    if clauses is None or sentence is not whole:
        clauses = plain(sentence)
    understood = understand(here, sentence, clauses)
    if understood.claims:
        best = _best(understood.claims)
        return Status.READ, _left(sentence, understood, best), best
    if forbidden := condition(words):
        return Status.LEFT_ALONE, forbidden, []
    if understood.reasons:
        return Status.NOT_UNDERSTOOD, "; ".join(dict.fromkeys(understood.reasons)), []
    if _checkable(words, understood.touched):
        return Status.NOT_UNDERSTOOD, "no known kind of claim fits the whole clause", []
    return Status.LEFT_ALONE, "nothing in it that can be checked", []


_GRANTED = re.compile(
    r"^(?: (?:and|but))* (?:so what if|who cares (?:if|that)|never mind that|it does not matter that|no matter that)(?= )"
)
"""What is granted, for it does not matter: "So what if that a-pawn is passed?"."""
_WHY = re.compile(r"^(?: (?:and|but|so))* why [^?:;]*? ,(?: well ,)? because(?= )(?!.* \?$)")
"""A question that its own sentence answers: "Why not take it, well, because it's guarded"."""


def _left(sentence: Sentence, understood: Understood, claims: list[Claim]) -> str:
    """Which clauses that seem to claim something were not read beside those that were; "" for none."""
    found = []
    for first, last in understood.left:
        start, end = sentence.slice(first, last)
        heard = any(c.start < end and start < c.end for c in claims)
        if not heard and _checkable(sentence.words[first : last + 1], touched=False):
            text = sentence.text[start - sentence.start : end - sentence.start]
            found.append(" ".join(text.split()))
    return f"not read: {'; '.join(found)}" if found else ""


def _best(claims: list[Claim]) -> list[Claim]:
    """The claims less those that another one of the same words says better."""
    return [
        c
        for c in claims
        if not any(
            _overlap(c, o) and o.kind in kind_of(c.kind).gives_way and "beside" not in o.params
            for o in claims
        )
    ]


def _named_last(words: Sequence[Word]) -> str | None:
    """The side that words name last, by its name."""
    return next((w.norm for w in reversed(words) if w.norm in {"white", "black"}), None)


_WAITS = re.compile(r"(?: [,;:-])?(?: (?:but|and|so))?(?: now)? (?:wait|hang on)$")
"""A word to the class at the end, with which nothing is taken back."""
_ALL_BUT = re.compile(
    r" all but(?= (?:the|a|an|one|\d+|his|our|their|her|him|them|us|me|this|that|these|those|white|black|[KQRBNa-h]\S*\d\S*)(?: |$))"
)
"""It may mean almost, or everything except."""
_EXCLAIMED = re.compile(r"^(?: (?:and|but|oh|ouch|wow|,))* what(?= (?:a|an) )")
"""An exclamation, "What a howler!", which says that it is one."""

_TAKEN_BACK = re.compile(
    r"^ (?:\S+ )*?it looks like .* but .*\b(?:it|this|that) is (?:none|not|nothing of the (?:sort|kind))(?= |$)"
)
"""What something looks like and is not."""


def _overlap(one: Claim, two: Claim) -> bool:
    return one.start < two.end and two.start < one.end


def _checkable(words: tuple[Word, ...], touched: bool) -> bool:
    """Whether a sentence seems to claim something: a word of a claim, and something on the board to say it of."""
    said = {w.norm for w in words}
    if any(w.move is not None for w in words):
        return True
    if not said & ABOUT:
        return False
    return touched or bool(said & TRADE)


__all__ = [
    "LessonReading",
    "Reading",
    "Status",
    "read_comment",
    "read_glyphs",
    "read_lesson",
    "read_sentence",
]
