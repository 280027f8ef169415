"""Marks that are written behind a move within a sentence: "6... h6? leaves g6 weak", "5. Nxc6 Qf6! regains the piece"."""

from __future__ import annotations

import re
from contextlib import suppress

from .claim import Spot
from .here import Here, Named, Unread, meant
from .sentence import Sentence
from .word import Word

_SQUARE = re.compile("[a-h][1-8]")


def marked(here: Here, sentence: Sentence) -> list[tuple[Named, str, Word]]:
    """The moves of a sentence that carry a mark and can be played, each with its mark and its word."""
    words = sentence.words
    if not any(w.move is not None and w.move["mark"] for w in words):
        return []
    only = all(w.move is not None for w in words)
    found: list[tuple[Named, str, Word]] = []
    spot: Spot | None = None
    for number, word in enumerate(words):
        if word.move is None or word.spoken:
            continue
        mark = word.move["mark"] or ""
        if not mark and _SQUARE.fullmatch(word.norm) and not _beside(words, number):
            continue  # "the pawn on d4"
        named = _following(here, spot, word)
        if named is None:
            continue
        spot = named.after
        last = number == len(words) - 1 or words[number + 1].norm == "?"
        if last and (mark == "?" or (mark == "!" and not only)):
            continue  # it ends the sentence
        if mark:
            found.append((named, mark, word))
    return found


def _beside(words: tuple[Word, ...], at: int) -> bool:
    """Whether a move stands just before or behind."""
    return any(words[n].move is not None for n in (at - 1, at + 1) if 0 <= n < len(words))


def _following(here: Here, spot: Spot | None, word: Word) -> Named | None:
    """The move of a word: one that follows those named before it, else one of the line here or instead of the last."""
    assert word.move is not None  # asked of moves only
    if spot is not None and word.move["number"] in (None, str(spot.board.move_number)):
        with suppress(ValueError):
            return Named(spot, meant(spot, word.move["san"]), spot.board.turn)
    following = here.shown_next
    starts = [here.spot]
    if following is not None and "." in word.norm:
        starts.append(here.spot.play(following))
    for start in starts:
        try:
            return here.at(start).named(word.norm)
        except Unread:
            continue
    return None


__all__ = ["marked"]
