"""Elements: what a frame asks of a clause, one thing at a time."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from .chunk import Adjective, Place
from .noun import Noun
from .rest import Parts, Rest
from .slot import InTable, Test

_CHANGED = frozenset({"too", "so", "half", "partly", "that", "enough", "as", "less", "least"})
"""Adverbs with which an adjective is another."""
TELLING = frozenset(
    [
        "half open", "semi open", "open", "closed", "blocked", "isolated", "doubled", "backward", "passed", "discovered", "double", "perpetual", "mating", "last", "next", "another",
        "possible", "impossible", "false", "apparent", "former", "extra", "potential", "future", "weak", "bad", "good", "better", "worse", "hanging", "protected", "unprotected", "same",
        "other", "wrong", "equal", "least", "fewer", "less", "more", "most", "enough", "little", "winning", "lost", "so-called", "supposed", "alleged", "theoretical", "second", "third",
        "opposite", "healthy", "crippled", "connected", "distant", "outside", "full", "ample", "adequate", "sufficient", "insufficient", "some", "decisive", "fatal", "clear", "two", "sound",
        "relative", "absolute", "kingside", "queenside", "only", "legal",
    ]
)  # fmt: skip
"""Adjectives that make another thing of a noun: a frame must ask for them."""
KNOWN = frozenset({"the", "this", "that", "these", "those"})


class Words(NamedTuple):
    """A noun or adjective by its words in the lexicon, with the adjectives that must stand before it. asked: all of those."""

    heads: frozenset[str]
    adjectives: tuple[frozenset[str], ...] = ()
    asked: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Element:
    """One thing that a frame asks for: a slot or a word, perhaps behind a preposition.

    test: what the slot looks at in a noun phrase. table: what it makes of adjectives and adverbs.
    """

    slot: str = ""
    words: tuple[Words, ...] = ()
    prepositions: frozenset[str] = frozenset()
    optional: bool = False
    adverb: bool = False
    test: Test | None = None
    table: InTable | None = None

    @property
    def within(self) -> frozenset[str] | None:
        """Words of which a clause must have one, as a noun's head, an adjective or an adverb; None where a slot looks for more."""
        if self.test is not None or self.table is not None or self.slot == "where":
            return None
        return frozenset().union(*(words.heads for words in self.words))

    def take(self, rest: Rest, slots: dict[str, Any]) -> bool:
        """Takes the first thing that fits out of the rest of a clause, and notes what it is."""
        found = self.find(rest, slots)
        if found is None:
            return False
        among, number = found
        del among[number]
        return True

    def find(self, rest: Parts, slots: dict[str, Any]) -> tuple[list[Any], int] | None:
        """The first thing that fits: the list that it is in and its number there; None when there is none."""
        if self.adverb:
            for number, word in enumerate(rest.adverbs):
                if any(word in words.heads for words in self.words):
                    return rest.adverbs, number
            return None
        if self.prepositions:
            for number, place in enumerate(rest.places):
                if (
                    place.noun is not None
                    and place.preposition in self.prepositions
                    and self.fits(place.noun, slots)
                ):
                    return rest.places, number
            return None
        if self.slot == "where":
            for number, place in enumerate(rest.places):
                where = _where(place)
                if where is not None:
                    slots["where"] = where
                    return rest.places, number
            return None
        for number, noun in enumerate(rest.objects):
            if self.fits(noun, slots):
                return rest.objects, number
        for number, state in enumerate(rest.states):
            if self._is(state, slots):
                return rest.states, number
        if self.table is not None:
            for number, word in enumerate(rest.adverbs):
                if word in self.table.values and (
                    word != "even" or not (rest.objects or rest.places)
                ):  # "even with the knight"
                    slots[self.slot] = self.table.values[word]
                    return rest.adverbs, number
        return None

    def fits(self, noun: Noun, slots: dict[str, Any]) -> bool:
        """Whether a noun phrase is what is asked for; then it is noted."""
        if self.test is not None:
            found = self.test(noun)
            if found is None or self.slot in slots:
                return False
            slots[self.slot] = found
            return True
        head, adjectives = noun.head, noun.adjectives
        for heads, before, asked in self.words:
            taken = {a for a in adjectives if f"{a} {head}" in heads} if adjectives else _NONE
            if head not in heads and not taken:
                continue
            had = set(adjectives) - taken
            if not all(had & a for a in before):
                continue
            if noun.det in KNOWN:
                had.discard("little")  # "the sly little check"
            if not (had & TELLING) - asked:
                _note(noun, slots)
                return True
        return False

    def _is(self, state: Adjective, slots: dict[str, Any]) -> bool:
        if self.table is not None:
            adverbs = list(state.adverbs)
            while True:
                words = " ".join((*adverbs, state.lemma))
                if words in self.table.values:
                    slots[self.slot] = self.table.values[words]
                    return True
                if not adverbs or adverbs[0] in _CHANGED:
                    return False
                del adverbs[0]  # "simply too slow" is too slow
        return any(not w.adjectives and state.lemma in w.heads for w in self.words)


_NONE: frozenset[str] = frozenset()


def _note(noun: Noun, slots: dict[str, Any]) -> None:
    """Notes what a noun says beside its word: whose, how many, on which file."""
    if noun.whose:
        slots.setdefault("whose", noun.whose)
    if noun.det == "not 1":
        slots.setdefault("count", 1)  # "it is not one check, it is two"
    if noun.count is not None:
        slots.setdefault("count", noun.count)
        slots.setdefault("n", str(noun.count))
    if noun.file:
        slots.setdefault("files", noun.file)
        slots.setdefault("file", noun.file)


def _where(place: Place) -> str | None:
    """A place on the board: "on c5", "on the d file", "on the kingside"."""
    noun = place.noun
    if noun is None or place.preposition not in {"on", "at", "in", "along", "down"}:
        return None
    if noun.type == "square":
        return f"on {noun.text}"
    if noun.type == "file":
        return f"on the {' and '.join(noun.file)} file{'s' if len(noun.file) > 1 else ''}"
    return (
        f"on the {noun.head}"
        if noun.head in {"kingside", "queenside", "centre", "middle"}
        else None
    )


__all__ = ["KNOWN", "Element", "Words"]
