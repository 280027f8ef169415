"""Questions that the next sentence answers.

Most become one statement with the answer, before it is taken apart: "Who guards it? Nobody.", "Is the knight pinned? It isn't.". In
others the answer takes from the question what it leaves out: "What do we have? The half-open c-file." says that we have it.
"""

from __future__ import annotations

import re
from dataclasses import replace

from .board import LETTERS
from .clause import Clause
from .frame import LIGHT
from .sentence import Sentence
from .word import Word

_ASKED = frozenset({"who", "what"})
_NOBODY = frozenset({"nobody", "nothing", "noone"})
_AUX = frozenset({"is", "are", "does", "do", "can", "has", "have"})
_POINTERS = frozenset({"it", "he", "she", "they", "we", "that", "you", "white", "black"})
_SQUARE = re.compile("[a-h][1-8]")
_NO = (
    "no", "nope", "nah", "never", "not", "not really", "not quite", "not yet", "not a bit", "not in the least", "not by a long way", "far from it",
    "by no means", "of course not", "certainly not", "definitely not", "no way", "on no account", "not any more", "anything but", "no longer",
)  # fmt: skip
_YES = (
    "yes", "yeah", "yep", "sure", "certainly", "of course", "absolutely", "definitely", "indeed", "clearly", "very much so", "without doubt", "without a doubt",
    "no doubt", "no doubt about it", "obviously", "naturally", "exactly", "indeed", "quite so", "sure thing", "by all means", "completely", "totally",
)  # fmt: skip
_SIDES = frozenset({"white", "black", "we", "he", "they", "you", "us", "him", "them"})
_CASES = {"us": "we", "him": "he", "them": "they"}
_MOVE_ASKED = frozenset(
    {
        "move",
        "reply",
        "answer",
        "else",
        "then",
        "instead",
        "retreat",
        "capture",
        "recapture",
        "on",
        "earth",
    }
)
_BEING = frozenset(
    {
        "is",
        "was",
        "would",
        "could",
        "might",
        "works",
        "worked",
        "holds",
        "wins",
        "saves",
        "loses",
        "refutes",
        "'s",
    }
)
_SUBJECTS = frozenset({"white", "black", "he", "we", "you", "they", "it", "i", "that", "this"})
_STOPS = frozenset({",", ";", ":", "-", "!"})
_OPENS = frozenset({",", "so", "and", "but", "now", "well", ":", "-"})
_PLANS = frozenset({"plan", "idea", "threat", "point", "aim", "purpose"})
_FILLING = frozenset({",", ".", "!", "at", "all", "really", "course", "of", "quite"})


def stated(question: Sentence, answer: Sentence) -> Sentence | None:
    """The question as the statement that its answer makes of it; None where the answer makes none."""
    words = list(question.words)
    if not words or words[-1].norm != "?":
        return None
    del words[-1]
    said = [w.norm for w in answer.words if w.norm not in _FILLING]
    if not said:
        return None
    if len(said) <= 8:
        if said[0] in _NOBODY and set(said[1:]) <= _AUX:
            return _with_subject(question, words, said[0])
        if said[0] in _SIDES and set(said[1:]) <= _AUX:
            return _with_side(question, words, answer)
        if answer.words[0].move is not None:
            asked = _with_move(question, list(words), answer)
            if asked is not None:
                return asked
        asked = (
            _with_object(question, words, answer)
            or _why(question, words, answer)
            or _named_as(question, words, answer)
        )
        if asked is not None:
            return asked
    negated = _polarity([w.norm for w in answer.words])
    return None if negated is None else _polar(question, words, negated)


def _polarity(norms: list[str]) -> bool | None:
    """Whether an answer denies what was asked; None where it neither does nor affirms it."""
    first = norms[: next((n for n, w in enumerate(norms) if w in _STOPS), len(norms))]
    rest = norms[len(first) + 1 :]
    said = " ".join(w for w in first if w not in _FILLING - {"of", "course", "really", "quite"})
    if said in _NO or said in _YES:
        more = _polarity(rest) if rest[:1] and rest[0] in _POINTERS and len(rest) <= 4 else None
        return said in _NO if more is None else more
    if said.split()[:1] and said.split()[0] in {"no", "yes"} and len(said.split()) > 1:
        first = first[1:]
    if (
        first[:1]
        and first[0] in _POINTERS
        and len(first) > 1
        and set(first[1:]) <= _AUX | {"not", *_FILLING}
    ):
        return "not" in first
    return None


def _with_side(question: Sentence, words: list[Word], answer: Sentence) -> Sentence | None:
    """ "Who stands better? White does."."""
    asked = [n for n, w in enumerate(words) if w.norm == "who"]
    if (
        len(asked) != 1
        or (asked[0] and words[asked[0] - 1].norm not in _OPENS)
        or asked[0] + 2 > len(words)
    ):
        return None
    verb = words[asked[0] + 1].norm
    if not (verb in _AUX | {"'s"} or verb.endswith("s")):
        return None
    shift = answer.start - question.start
    side = answer.words[0]
    name = _CASES.get(side.norm, side.norm)
    first = words[asked[0]]
    words[asked[0]] = first._replace(norm=name)
    if verb == "'s":
        words[asked[0] + 1] = words[asked[0] + 1]._replace(norm="is")
    words[-1] = words[-1]._replace(end=side.end + shift)
    text = question.text.ljust(shift) + answer.text
    return replace(question, words=tuple(words), text=text)


def _why(question: Sentence, words: list[Word], answer: Sentence) -> Sentence | None:
    """ "Why a4? To stop b5.": a4 is played to stop b5."""
    norms = [w.norm for w in words]
    if norms[:1] != ["why"] or len(words) != 2 or words[1].move is None:
        return None
    reply = [w for w in answer.words if w.norm not in {".", "!"}]
    if not reply or reply[0].norm != "to":
        return None
    shift = answer.start - question.start
    reply = [w._replace(start=w.start + shift, end=w.end + shift) for w in reply]
    text = question.text.ljust(shift) + answer.text
    said = [words[1], words[1]._replace(norm="is", move=None), words[1]._replace(norm="played", move=None), *reply]  # fmt: skip
    return replace(question, words=tuple(said), text=text)


def _named_as(question: Sentence, words: list[Word], answer: Sentence) -> Sentence | None:
    """ "And the plan? f5.", "The threat? Nxf7.": the plan is f5."""
    norms = [w.norm for w in words]
    asked = norms[1:] if norms[:1] == ["and"] else norms
    if len(asked) != 2 or asked[0] not in {"the", "our", "his"} or asked[1] not in _PLANS:
        return None
    reply = [w for w in answer.words if w.norm not in {".", "!"}]
    if not reply or reply[0].move is None:
        return None
    shift = answer.start - question.start
    reply = [w._replace(start=w.start + shift, end=w.end + shift) for w in reply]
    text = question.text.ljust(shift) + answer.text
    said = [*words[-2:], words[-1]._replace(norm="is"), *reply]
    return replace(question, words=tuple(said), text=text)


def _with_object(question: Sentence, words: list[Word], answer: Sentence) -> Sentence | None:
    """ "What does the knight attack? Queen and rook.", "How many defenders has f7? One."."""
    norms = [w.norm for w in words]
    at = next(
        (n for n, w in enumerate(norms) if w == "what" and (n == 0 or norms[n - 1] in _OPENS)), -1
    )
    counted: list[Word] = []
    if norms[:2] == ["how", "many"] and len(norms) > 3:
        at, counted = 1, [words[2]]
    aux = at + 1 + len(counted)
    going = aux < len(words) and norms[aux] in {"is", "are", "'s"} and norms[-1].endswith("ing")
    if at < 0 or aux >= len(words) or not (norms[aux] in {"does", "do"} or going):
        return None
    end = _subject(words, aux + 1)
    if not end or end >= len(words):
        return None
    shift = answer.start - question.start
    reply = [
        w._replace(start=w.start + shift, end=w.end + shift)
        for w in answer.words
        if w.norm not in {".", "!"}
    ]
    if not reply or (counted and not reply[-1].norm.isdigit()):
        return None
    if not counted and any(w.norm in _AUX for w in reply):
        return None
    first = 0 if counted else at
    text = question.text.ljust(shift) + answer.text
    said = [*words[:first], *words[aux + 1 : end], words[aux], *words[end:], *reply, *counted]
    said[first] = said[first]._replace(start=words[first].start)
    said[-1] = said[-1]._replace(end=reply[-1].end)
    return replace(question, words=tuple(said), text=text)


def _with_move(question: Sentence, words: list[Word], answer: Sentence) -> Sentence | None:
    """ "What would have been better? Qe7.", "What is the threat? Mate on f7." """
    at = next(
        (
            n
            for n, w in enumerate(words)
            if w.norm in {"what", "which"} and (n == 0 or words[n - 1].norm in _OPENS)
        ),
        -1,
    )
    if at < 0:
        return None
    end = at + 1
    while end < len(words) and words[end].norm in _MOVE_ASKED:
        end += 1
    then = words[end + 1].norm if end + 1 < len(words) else ""
    if end >= len(words) or words[end].norm not in _BEING or then in _SUBJECTS:
        return None
    shift = answer.start - question.start
    move = answer.words[0]
    spoken = move._replace(start=words[at].start, end=words[end - 1].end)
    words[at:end] = [spoken]
    words[-1] = words[-1]._replace(end=move.end + shift)
    text = question.text.ljust(shift) + answer.text
    return replace(question, words=tuple(words), text=text)


def _with_subject(question: Sentence, words: list[Word], subject: str) -> Sentence | None:
    asked = [n for n, w in enumerate(words) if w.norm in _ASKED]
    if not asked or (asked[-1] and words[asked[-1] - 1].norm not in _OPENS):
        return None
    if asked[-1] + 1 < len(words) and words[asked[-1] + 1].norm not in _AUX | {"'s"}:
        verb = words[asked[-1] + 1].norm
        if not verb.endswith("s"):
            return None
    words[asked[-1]] = words[asked[-1]]._replace(norm=subject)
    return replace(question, words=tuple(words))


def _polar(question: Sentence, words: list[Word], negated: bool) -> Sentence | None:
    """ "Is the knight on c6 pinned": the verb goes behind its subject."""
    first = [
        n for n, w in enumerate(words) if w.norm in _AUX and (n == 0 or words[n - 1].norm in _OPENS)
    ]
    if len(first) != 1 or any(w.norm in {"not", "never"} for w in words[first[0] :]):
        return None
    aux = words.pop(first[0])
    end = _subject(words, first[0])
    if not end:
        return None
    words[end:end] = [aux, *([aux._replace(norm="not")] if negated else [])]
    return replace(question, words=tuple(words))


def _subject(words: list[Word], at: int) -> int:
    """Where a piece or a square with its words before and "on e5" behind it ends; 0 when none begins here."""
    for end in range(at, min(at + 4, len(words))):
        norm = words[end].norm
        if norm in LETTERS:
            on = [w.norm for w in words[end + 1 : end + 3]]
            return (
                end + 3
                if on[:1] == ["on"] and len(on) == 2 and _SQUARE.fullmatch(on[1])
                else end + 1
            )
        if end == at and (
            _SQUARE.fullmatch(norm) or norm in {"it", "that", "he", "we", "you", "white", "black"}
        ):
            return end + 1
    return 0


_ASKING = frozenset({"what", "who", "which"})
_GETTING = LIGHT | {"get", "win", "gain", "have", "own", "enjoy", "hold", "keep"}


def question_of(sentence: Sentence, clauses: list[Clause]) -> Clause | None:
    """The clause of a question that a bare noun, or "White does", may answer: "What did we get for it?", "Who has more space?"."""
    words = sentence.words
    if len(words) < 3 or words[-1].norm != "?":
        return None
    asking = next((c for c in clauses if c.sub in _ASKING and c.lemma), None)
    if asking is None or asking.lemma not in _GETTING or asking.verb.negated:
        return None
    return asking


def answered(question: Clause | None, clauses: list[Clause]) -> list[Clause]:
    """The clauses of an answer, the first of which takes from the question what it leaves out."""
    if question is None or not clauses:
        return clauses
    first = clauses[0]
    who = question.sub == "who" and question.objects
    if who and first.strays in (["does"], ["do"], ["did"]) and len(first.objects) == 1:
        first.lemma, first.form, first.strays = "do", "finite", []
        first.subject = first.objects.pop()  # "White does"
    if (
        who
        and first.lemma in {"have", "do", "be"}
        and first.subject is not None
        and first.subject.type == "side"
        and not (first.objects or first.states or first.places)
    ):
        first.lemma, first.objects = question.lemma, list(question.objects)
        first.places = list(question.places)
        return clauses
    what = question.sub == "what" and question.subject is not None and not question.objects
    if (
        what
        and question.subject is not None
        and question.subject.type == "side"
        and not first.lemma
        and first.objects
        and not first.states
        and first.objects[0].type in {"noun", "file", "piece"}
        and not first.verb.negated
    ):
        first.lemma, first.form = "have", "finite"
        first.subject = replace(question.subject, first=first.first, last=first.first)
    return clauses


__all__ = ["answered", "question_of", "stated"]
