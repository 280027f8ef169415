"""Moves as they are spoken: "knight to f6", "bishop takes f7 check", "pawn takes", "e takes d5", "g eight".

They become the same words as written moves, so that everything after them need not know how a move was said.

>>> from lineproof.claims.sentence import words
>>> [w.norm for w in words("Knight takes e5, knight takes, and then pawn to d four forks two pieces.")]
['Nxe5', ',', 'Nx', ',', 'and', 'then', 'd4', 'forks', '2', 'pieces']
>>> [w.norm for w in words("The knight on f6 and his bishop f1 stay.")][:4]
['the', 'knight', 'on', 'f6']
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .word import Word

SPOKEN = r"(?:Px[a-h][1-8]|[KQRBNPa-h]x(?![a-h]))"
"""Spoken moves that the written notation has no word for: a pawn's capture without its file, a capture without its square."""

_SHAPE = re.compile(
    rf"(?P<number>(?!))?(?P<dots>(?!))?(?P<san>{SPOKEN}|[KQRBN]?[a-h]?x?[a-h][1-8])[+#]?(?P<mark>(?!))?"
)
_LETTERS = {"king": "K", "queen": "Q", "rook": "R", "bishop": "B", "knight": "N", "pawn": "P"}
_FILES, _RANKS = frozenset("abcdefgh"), frozenset("12345678")
_SQUARES = frozenset(file + rank for file in _FILES for rank in _RANKS)
_TAKES = frozenset({"takes", "captures"})
_GOES = frozenset({"to"})
_ON_THE_WAY = frozenset(
    {"back", "home", "goes", "jumps", "comes", "retreats", "steps", "up", "over"}
)
_NOT_AFTER = frozenset(
    [
        "the",
        "a",
        "an",
        "his",
        "her",
        "our",
        "your",
        "my",
        "their",
        "this",
        "that",
        "its",
        "white",
        "black",
        "'s",
        "other",
        "dark",
        "light",
        "squared",
        "no",
        "poor",
        "any",
        "each",
        "every",
        "one",
        "both",
        "another",
        "which",
        "whose",
        "minor",
        "good",
        "bad",
    ]
)
"""Before a piece, these make it a piece and no move."""
_ENDS_MOVE = frozenset(
    {
        "is",
        "was",
        ",",
        ";",
        ":",
        "-",
        ")",
        "and",
        "then",
        "but",
        "or",
        "check",
        "mate",
        "with",
        "when",
        "after",
        "because",
        "since",
        "for",
        "as",
        ".",
        "!",
        "?",
    }
)


def merged(words: list[Word]) -> list[Word]:
    """The words with spoken squares and moves put together."""
    return _moves(_squares(words))


def _squares(words: list[Word]) -> list[Word]:
    """Puts "f seven" together, where it can only be a square."""
    if _RANKS.isdisjoint([word.norm for word in words]):
        return words
    found: list[Word] = []
    for word in words:
        last = found[-1] if found else None
        if (
            last is not None
            and last.norm in _FILES
            and word.norm in _RANKS
            and word.end - word.start > 1  # "seven", not 7
            and word.start - last.end == 1
            and (
                last.norm != "a"
                or (len(found) > 1 and found[-2].norm in {"on", "at", "to", "from", "takes"})
            )
        ):
            found[-1] = last._replace(norm=last.norm + word.norm, end=word.end)
        else:
            found.append(word)
    return found


def _moves(words: list[Word]) -> list[Word]:
    found: list[Word] = []
    at = 0
    while at < len(words):
        word = words[at]
        signed = _signed(words, at) if word.move is not None else None
        if signed is not None:
            found.append(signed)
            at += 2
            continue
        merged = _move(words, at) if word.norm in _LETTERS or word.norm in _FILES else None
        if merged is None:
            found.append(word)
            at += 1
        else:
            move, at = merged
            found.append(move)
    return found


def _signed(words: list[Word], at: int) -> Word | None:
    """A written move with "mate" behind it: "Nd3 mate" is Nd3#."""
    word = words[at]
    if word.move is None or at + 1 == len(words) or words[at + 1].norm not in {"mate", "checkmate"}:
        return None
    if word.norm[-1:] in "+#" or re.fullmatch("[a-h][1-8]", word.norm) or _goes_on(words, at + 1):
        return None
    match = _SHAPE.fullmatch((word.san or "") + "#")
    if match is None:
        return None
    return word._replace(norm=f"{word.norm}#", end=words[at + 1].end, move=match)


def _move(words: list[Word], at: int) -> tuple[Word, int] | None:
    """The move that begins at a word, and where the words go on after it."""
    first = words[at]
    letter = _LETTERS.get(first.norm)
    file = first.norm if first.norm in _FILES else None
    if letter is None and file is None:
        return None
    before = words[at - 1].norm if at else ""
    if before == "'s" and at > 1 and words[at - 2].norm in {"there", "it", "that", "here"}:
        before = "is"  # "there's knight g5 check"
    if before in _NOT_AFTER:
        return None
    norms = [w.norm for w in words[at + 1 : at + 5]] + [""] * 4
    if norms[0] in _TAKES:
        if norms[1] in _SQUARES:
            prefix = file or (letter if letter != "P" else "P") or ""
            return _made(words, at, 3, f"{prefix}x{norms[1]}")
        ends = norms[1] in _ENDS_MOVE or norms[1] == ""
        by = letter or (file if file != "a" else None)
        return _made(words, at, 2, f"{by}x") if by is not None and ends else None
    if letter is None:
        return None
    far = 1 if norms[0] in _ON_THE_WAY else 0
    if norms[far] in _GOES and norms[far + 1] in _SQUARES:
        return _made(words, at, far + 3, _plain(letter, norms[far + 1]))
    if norms[0] in _SQUARES and letter != "P":
        return _made(words, at, 2, _plain(letter, norms[0]))
    return None


def _plain(letter: str, square: str) -> str:
    return square if letter == "P" else letter + square


def _made(words: list[Word], at: int, count: int, san: str) -> tuple[Word, int]:
    end = at + count
    sign = ""
    if end < len(words) and words[end].norm in {"check", "mate"} and not _goes_on(words, end):
        sign = "+" if words[end].norm == "check" else "#"
        end += 1
    match = _SHAPE.fullmatch(san + sign)
    assert match is not None  # put together above
    return words[at]._replace(norm=san + sign, end=words[end - 1].end, move=match, spoken=True), end


_AHEAD = (
    frozenset({"in", "threat", "threats", "on"}),
    frozenset({"in", "threat", "threats", "on", "is", "was", "follows", "cannot", "can", "will"}),
)
"""Words behind "check", and behind "mate", with which it begins something else."""


def _goes_on(words: list[Word], at: int) -> bool:
    """Whether "check" or "mate" begins something else: "mate in two", "mate threat"."""
    return at + 1 < len(words) and words[at + 1].norm in _AHEAD[words[at].norm != "check"]
