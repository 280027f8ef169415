"""Whether a comment is English. A comment in another language is counted as not read, and said to be."""

from __future__ import annotations

import re

_ENGLISH = frozenset(
    "the a an and or but of to in on at is are was were be been it its this that these those he she we you they his her our your their "
    "not no now here there with for from by as so if then after before than more most can cannot will would has have had do does did "
    "takes wins loses plays move better white black threatens attacks good bad only best up down".split()
)
_FOREIGN = frozenset(
    "der die das den dem des ein eine einen und oder aber nicht ist sind wird mit auf für von zu im am bei schwarz weiss weiß droht zug besser "
    "le la les un une des du et ou mais est sont avec pour dans sur au aux noir blanc noirs blancs pas ne que qui "
    "el los las una y pero es son con para en por del negras blancas no que se su "
    "il lo gli i e ma è sono con per nel della nero bianco che non "
    "de het een en maar niet zijn wordt met op voor van zwart wit "
    "o os as um uma mas não com para em pretas brancas".split()
) - {"a", "an", "i", "no", "on", "as", "is", "me"}
_LETTERS = re.compile(r"[^\W\d_]+")


def is_english(text: str) -> bool:
    """True for English, for moves alone and for a few words that could be anything.

    >>> is_english("White wins a piece.")
    True
    >>> is_english("Weiß gewinnt eine Figur und steht besser.")
    False
    >>> is_english("Белые выигрывают фигуру.")
    False
    """
    words = [w.lower() for w in _LETTERS.findall(text) if len(w) > 1 or w in "aAyeoàèé"]
    if not words:
        return True
    latin = sum(all(ord(c) < 0x250 for c in w) for w in words)
    if latin * 2 < len(words):
        return False
    english = sum(w in _ENGLISH for w in words)
    foreign = sum(w in _FOREIGN and w not in _ENGLISH for w in words)
    return foreign <= english
