"""Demands: what a frame asks of a clause before its parts are told apart. A clause answers each once, whatever the number of frames that ask.

A demand that is not met means that the frame cannot fit; that all are met, that it may.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, Protocol

from .clause import Clause
from .element import Element
from .lexicon import VERBS, members
from .noun import Noun
from .rest import Rest
from .seen import Seen

ABOVE = frozenset({"patient", "patient_side", "above"})
"""Slots that the verb above an infinitive fills."""
_WHOLLY = frozenset(
    {
        "entirely",
        "completely",
        "fully",
        "totally",
        "quite",
        "exactly",
        "particularly",
        "especially",
        "altogether",
        "always",
    }
)
"""Adverbs that, denied, leave open how far."""
SUMS = frozenset(
    {
        "result",
        "problem",
        "point",
        "trouble",
        "drawback",
        "price",
        "downside",
        "compensation",
        "reward",
        "consequence",
        "upshot",
        "snag",
        "disadvantage",
        "asset",
        "trump",
    }
)
"""Nouns of which "is" says no more than that something is there."""
_THERE = frozenset({"there", "here"})
_CONTROL = members("force", VERBS)
"""Verbs whose infinitive says what they are about."""


class Demand(Protocol):
    """Something that a clause meets or does not."""

    def met(self, seen: Seen) -> bool: ...


@dataclass(frozen=True)
class Sound:
    """The clause says it of its own verb, and denies the whole of it if any: every frame asks for this."""

    def met(self, seen: Seen) -> bool:
        clause = seen.clause
        if clause.complement and clause.lemma in _CONTROL:
            return False
        return not (
            clause.verb.negated and any(not _WHOLLY.isdisjoint(s.adverbs) for s in clause.states)
        )


@dataclass(frozen=True)
class Real:
    """It is said to happen."""

    def met(self, seen: Seen) -> bool:
        return not seen.clause.unreal


@dataclass(frozen=True)
class Governed:
    """It is the infinitive of one of some verbs."""

    governors: frozenset[str]

    def met(self, seen: Seen) -> bool:
        clause = seen.clause
        return clause.governor is not None and clause.governor.lemma in self.governors


@dataclass(frozen=True)
class Room:
    """It has as many objects, and as many objects, states and adverbs, as elements ask for.

    subject: one is asked for; in a part without a verb it is one of the objects.
    """

    objects: int
    things: int
    subject: bool

    def met(self, seen: Seen) -> bool:
        clause = seen.clause
        objects = len(clause.objects)
        if self.subject and clause.subject is None and not clause.lemma:
            objects -= 1
        return objects >= self.objects and (
            not self.things or objects + len(clause.states) + len(clause.adverbs) >= self.things
        )


@dataclass(frozen=True)
class Placed:
    """Some preposition stands in it."""

    def met(self, seen: Seen) -> bool:
        return bool(seen.clause.places)


@dataclass(frozen=True)
class Beside:
    """One of some prepositions stands in it."""

    prepositions: frozenset[str]

    def met(self, seen: Seen) -> bool:
        for place in seen.clause.places:  # noqa: SIM110 - a plain loop, for it is asked of every clause
            if place.preposition in self.prepositions:
                return True
        return False


@dataclass(frozen=True)
class Passive:
    """It was said in the passive."""

    def met(self, seen: Seen) -> bool:
        return seen.clause.passive


@dataclass(frozen=True)
class Condition:
    """A condition that a frame names. governed: the frame is of an infinitive, which the verb above may deny."""

    name: str
    value: str
    governed: bool

    def met(self, seen: Seen) -> bool:
        clause = seen.clause
        verb = clause.verb
        match self.name:
            case "modal":
                return verb.modal in self.value.split("|")
            case "negated":
                above = clause.governor if self.governed else None
                return verb.negated != (above is not None and above.verb.negated)
            case "active":
                return not clause.passive
            case "alone":
                return not clause.complement
            case "verbless":
                return not clause.lemma
            case "perfect":
                return verb.done
            case "bidden":
                return clause.form == "base" and clause.subject is None
            case "without":
                barred = self.value.replace("_", " ").split("|")
                said = [*clause.adverbs, *(p.preposition for p in clause.places)]
                return not any(word in barred for word in said)
        return True


@dataclass(frozen=True)
class Subject:
    """The subject is what a frame asks for. light: so is "there", and what something is the sum of."""

    element: Element | None
    light: bool
    governed: bool

    def met(self, seen: Seen) -> bool:
        clause = seen.clause
        noun, asked = clause.subject, self.element
        if noun is None or asked is None or asked.test is None:
            return self.find(clause, clause.objects, {}) is not None
        if noun.head in _THERE and not (self.light or self.governed):
            return False
        if asked.test(noun) is not None:
            return True
        return asked.optional and (clause.inherited or noun.type == "pronoun") and not noun.no

    def take(self, clause: Clause, rest: Rest, slots: dict[str, Any]) -> bool:
        """Takes the subject, or in a clause without a verb the first noun that it may be said of."""
        found = self.find(clause, rest.objects, slots)
        if found is not None and found >= 0:
            del rest.objects[found]
        return found is not None

    def find(self, clause: Clause, objects: list[Noun], slots: dict[str, Any]) -> int | None:
        """-1 for the subject, the number of the noun that stands for it, None when nothing fits."""
        noun, asked = clause.subject, self.element
        if noun is None:
            if asked is None:
                return -1
            if not clause.lemma and not asked.optional and asked.slot != "side":
                # "the d-file completely open": no verb, and the first noun is what it is said of
                for number, candidate in enumerate(objects):
                    if asked.fits(candidate, slots):
                        return number
            return -1 if asked.optional else None
        if noun.head in _THERE and not (self.light or self.governed):
            return None
        points = clause.inherited or noun.type == "pronoun"
        if asked is None:
            return -1 if points or (self.light and noun.head in SUMS) else None
        if self.governed and clause.governor is not None and noun is clause.governor.subject:
            points = noun.type == "pronoun"  # "the pin stops White from playing e4"
        if asked.fits(noun, slots) or (asked.optional and points and not noun.no):
            return -1
        return None


@dataclass(frozen=True)
class Holds:
    """Something in the clause fits an element that must be there."""

    element: Element
    _words: frozenset[str] | None = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_words", self.element.within)

    def met(self, seen: Seen) -> bool:
        if self._words is not None and self._words.isdisjoint(seen.words):
            return False
        element, clause = self.element, seen.clause
        if element.test is None or element.prepositions or element.table is not None:
            return element.find(clause, {}) is not None
        for noun in clause.objects:  # noqa: SIM110 - a plain loop, for it is asked of every clause
            if element.test(noun) is not None:
                return True
        return False


@dataclass(frozen=True)
class Patient:
    """The verb above acts on what is asked for: "the rook" in "stops the rook from coming"."""

    element: Element

    def met(self, seen: Seen) -> bool:
        return self.take(seen.clause, {})

    def take(self, clause: Clause, slots: dict[str, Any]) -> bool:
        objects = clause.governor.objects if clause.governor is not None else []
        return len(objects) == 1 and self.element.fits(objects[0], slots)


@dataclass(frozen=True)
class Tells:
    """The clause speaks of what is there, so that a thing may be named in it as known."""

    def met(self, seen: Seen) -> bool:
        clause = seen.clause
        if clause.verb.past or clause.verb.modal in {"would", "could", "might"}:
            return False
        return bool(seen.known)


@dataclass(frozen=True)
class Names:
    """A noun of the clause, wherever it stands, fits an element."""

    element: Element

    def met(self, seen: Seen) -> bool:
        element = self.element
        if element.test is not None:
            for noun in seen.known:  # noqa: SIM110 - a plain loop, for it is asked of every clause
                if element.test(noun) is not None:
                    return True
            return False
        for noun in seen.known:  # noqa: SIM110 - a plain loop, for it is asked of every clause
            if element.fits(noun, {}):
                return True
        return False


__all__ = [
    "ABOVE",
    "SUMS",
    "Beside",
    "Condition",
    "Demand",
    "Governed",
    "Holds",
    "Names",
    "Passive",
    "Patient",
    "Placed",
    "Real",
    "Room",
    "Sound",
    "Subject",
    "Tells",
]
