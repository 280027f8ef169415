"""What a clause holds, looked up once for all frames that ask."""

from __future__ import annotations

from .clause import Clause
from .naming import known
from .noun import Noun


class Seen:
    """A clause that does not change while frames ask of it.

    words: heads of its nouns, alone and behind each of their adjectives, adjectives, adverbs and prepositions.
    """

    __slots__ = ("_known", "clause", "words")

    def __init__(self, clause: Clause) -> None:
        self.clause = clause
        self._known: list[Noun] | None = None
        self.words = words = {*clause.adverbs, *[state.lemma for state in clause.states]}
        nouns = clause.objects
        if clause.subject is not None:
            nouns = [clause.subject, *nouns]
        if clause.places:
            words.update([place.preposition for place in clause.places])
            nouns = nouns + [place.noun for place in clause.places if place.noun is not None]
        for noun in nouns:
            head = noun.head
            words.add(head)
            for adjective in noun.adjectives:
                words.add(f"{adjective} {head}")

    @property
    def known(self) -> list[Noun]:
        """The nouns that it names as known."""
        if self._known is None:
            self._known = known(self.clause)
        return self._known


__all__ = ["Seen"]
