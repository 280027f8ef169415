"""A token: a word, or a turn of several, with what it may be."""

from __future__ import annotations

from typing import NamedTuple


class Token(NamedTuple):
    """A word or a turn of several. tags: what it may be. first, last: its words in the sentence, last one included.

    lemma: by tag. file: it is a file, for a hyphen ties it to a pawn or a file.
    """

    norm: str
    tags: frozenset[str]
    first: int
    last: int
    verbs: tuple[tuple[str, str], ...] = ()
    noun: str = ""
    plural: bool = False

    def is_(self, *tags: str) -> bool:
        return not self.tags.isdisjoint(tags)


__all__ = ["Token"]
