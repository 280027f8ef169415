"""Chunks: what a sentence is cut into, each with its words."""

from __future__ import annotations

from typing import NamedTuple

from .noun import Noun
from .verbs import Verb


class Group(NamedTuple):
    """A verb group. lemma: with its particles ("pick up"). form: "finite", "ing", "part", "to" or "base"; passive: "is pinned".

    verb: what the form says beside it. adverbs: inside the group.
    """

    lemma: str
    form: str
    passive: bool
    verb: Verb
    adverbs: tuple[str, ...]
    first: int
    last: int


class Place(NamedTuple):
    """A preposition with its noun phrase, or with an -ing group (noun is None, and the group follows)."""

    preposition: str
    noun: Noun | None
    first: int
    last: int


class Adjective(NamedTuple):
    """An adjective that stands alone. known: the lexicon has it."""

    lemma: str
    adverbs: tuple[str, ...]
    first: int
    last: int
    known: bool = True


class Adverb(NamedTuple):
    """An adverb or turn. sort: "adverb", "hedge", "deny", "limit"."""

    norm: str
    sort: str
    first: int
    last: int


class Joint(NamedTuple):
    """What joins clauses. sort: "cc", "sub", "relative", "wh", "that", "punct"."""

    norm: str
    sort: str
    first: int
    last: int


class Stray(NamedTuple):
    """A word that fits nowhere."""

    norm: str
    first: int
    last: int


Chunk = Group | Noun | Place | Adjective | Adverb | Joint | Stray

__all__ = ["Adjective", "Adverb", "Chunk", "Group", "Joint", "Place", "Stray"]
