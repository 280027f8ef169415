"""Sentences and their words, each with its exact span.

>>> [s.text for s in sentences("Here 3. f4 is 1.5 pawns. Is it good? Yes!", 0)]
['Here 3. f4 is 1.5 pawns.', 'Is it good?', 'Yes!']
>>> [w.norm for w in sentences("We can't take: 5... Nxe4 loses.", 0)[0].words]
['we', 'can', 'not', 'take', ':', '5...Nxe4', 'loses']
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from .contractions import norm_of, opened_s, spelled
from .spoken import merged
from .word import Word

SAN = r"(?:[KQRBN][a-h]?[1-8]?x?[a-h][1-8]|[a-h](?:x[a-h])?[1-8](?:=?[QRBN])?|[O0]-[O0](?:-[O0])?)"
"""A move in SAN or in the lax spellings of the PGN standard (8.2.3 and 8.2.3.8)."""

_MOVE = re.compile(
    rf"(?:(?P<number>\d{{1,3}})\s?\.\s?(?P<dots>\.\.|…)?\s?|(?:\.\.\.|…)\s?)?(?P<san>{SAN}[+#]?)(?P<mark>[!?]{{1,2}})?(?![A-Za-z0-9])"
)

_LONG = re.compile(
    r"(?P<piece>[KQRBN]?)(?P<file>[a-h])(?P<rank>[1-8])(?P<how>[-–x×])(?P<to>[a-h][1-8])(?![A-Za-z0-9])"
)
"""A move with the square that it comes from: "d2-d4", "Ng1-f3", "e4xd5"."""

_BEHIND: dict[str, frozenset[str]] = {
    **dict.fromkeys("KQRBN", frozenset("abcdefgh12345678x")),
    **dict.fromkeys("abcdefgh", frozenset("12345678x")),
    "O": frozenset("-"),
}
"""What may stand behind the letter that a move begins with."""

_WORD = re.compile(r"\d+(?:\.\d+)?|[^\W\d_]+(?:['’][^\W\d_]+)?|['’]s\b|[,;:()—–-]|\S")

_END = re.compile(r"(?<![.!?…])[.!?…]++[)\"'”’]*+(?=\s|$)")
"""Where a sentence may end; possessive, so that a row of marks is tried once."""

_NEAR = 80
"""Characters before and after a mark that decide whether it ends a sentence."""

_ABBREVIATIONS = frozenset(
    {"e.g", "i.e", "etc", "vs", "cf", "no", "mr", "mrs", "dr", "st", "approx"}
)


@dataclass(frozen=True)
class Sentence:
    """A sentence as written. `start` is the offset of `text` in the lesson's text."""

    text: str
    start: int
    words: tuple[Word, ...]

    @property
    def end(self) -> int:
        return self.start + len(self.text)

    def slice(self, first: int, last: int) -> tuple[int, int]:
        """The span of words first..last (inclusive), as offsets in the lesson's text."""
        return self.start + self.words[first].start, self.start + self.words[last].end


def sentences(text: str, start: int) -> tuple[Sentence, ...]:
    """Cuts a comment into sentences.

    A move number, a decimal, an abbreviation and the mark behind a move do not end one.

    text: the comment as in the file. start: its offset in the lesson's text.
    """
    cuts: list[int] = []
    for match in _END.finditer(text):
        if _ends(text, match):
            cuts.append(match.end())
    if not cuts or cuts[-1] < len(text.rstrip()):
        cuts.append(len(text))
    found: list[Sentence] = []
    begin = 0
    for cut in cuts:
        piece = text[begin:cut]
        inner = piece.strip()
        if any(c.isalnum() for c in inner):
            at = begin + piece.index(inner)
            found.append(Sentence(inner, start + at, words(inner)))
        begin = cut
    return tuple(found)


def _ends(text: str, match: re.Match[str]) -> bool:
    start, end = match.span()
    before = text[max(0, start - _NEAR) : start]
    after = text[end : end + _NEAR].lstrip()
    token = "" if not before or before[-1].isspace() else before.split()[-1].lstrip("(\"'“‘")
    mark = match.group()
    if not after:
        return not text[end:].strip() or len(text[end:]) > _NEAR
    if mark.startswith((".", "…")):
        if token.isdigit() and _MOVE.match(after):
            return False
        if not token or token.lower().rstrip(".") in _ABBREVIATIONS:
            return False
        if mark.startswith(("...", "…")):
            return not (after[0].islower() or _MOVE.match(after))
    elif re.fullmatch(rf"(?:\d+\.(?:\.\.)?|\.\.\.|…)?{SAN}[+#]?", token) and (
        _MOVE.match(after) or after[0].islower()
    ):
        return False
    return not after[0].islower() or bool(re.match(r"[a-h][1-8x]", after))


_NO_WORDS = frozenset({".", "!", "…", '"', "“", "”", "‘"})


def words(text: str) -> tuple[Word, ...]:
    """The words of a sentence. A final full stop is no word; a question mark is."""
    found: list[Word] = []
    at, size = 0, len(text)
    while at < size:
        char = text[at]
        if char == " " or char.isspace():
            at += 1
            continue
        if _may_be_move(text, at, char):
            long = _LONG.match(text, at)
            short = _shortened(long) if long is not None else ""
            if long is not None and short:
                move = _MOVE.match(short)
                assert move is not None  # it is written as a move
                found.append(Word(short, at, long.end(), move))
                at = long.end()
                continue
            move = _MOVE.match(text, at)
            if move is not None:
                norm = re.sub(r"\s+", "", move.group()).replace("…", "...").rstrip("!?")
                found.append(Word(norm, at, move.end(), move))
                at = move.end()
                if move["mark"] == "?" and not text[at:].strip():
                    found.append(Word("?", at - 1, at))  # "Why not Nf3?" asks
                continue
        if char in "'’" and text[at + 1 : at + 6].lower() == "cause" and _begins(text, at):
            found.append(Word("because", at, at + 6))
            at += 6
            continue
        if char in "-–" and 0 < at < size - 1 and text[at - 1].isalnum() and text[at + 1].isalnum():
            at += 1  # "the e5-pawn" is two words
            continue
        match = _WORD.match(text, at)
        assert match is not None  # _WORD takes any character but a blank
        said, end = match.group(), match.end()
        single = norm_of(said)
        if single is None:
            found.extend(spelled(said, at, end))
        else:
            found.append(Word(single, at, end))
        at = end
    found = merged(opened_s(found, text))
    while found and found[-1].norm in {".", "!", "…"}:
        found.pop()
    return tuple([w for w in found if w.norm not in _NO_WORDS])


def _may_be_move(text: str, at: int, char: str) -> bool:
    """Whether a move may begin there, by its first two characters and the one before."""
    behind = _BEHIND.get(char)
    if behind is not None and text[at + 1 : at + 2] not in behind:
        return False
    return (behind is not None or char.isdigit() or char in ".…") and _begins(text, at)


def _begins(text: str, at: int) -> bool:
    """Whether no word goes on there."""
    return at == 0 or not (text[at - 1].isalnum() or text[at - 1] == "_")


def _shortened(long: re.Match[str]) -> str:
    """A long move as SAN writes it; "" for what is none, such as the diagonal "e1-h4"."""
    takes, to = long["how"] in "x×", long["to"]
    if long["piece"]:
        return f"{long['piece']}{'x' if takes else ''}{to}"
    if takes:
        return f"{long['file']}x{to}"
    pushes = long["file"] == to[0] and abs(int(long["rank"]) - int(to[1])) in {1, 2}
    return to if pushes else ""


def spelt(words: Sequence[Word]) -> str:
    """The words, each with one blank before it."""
    return "".join([f" {w.norm}" for w in words])


__all__ = ["SAN", "Sentence", "sentences", "spelt", "words"]
