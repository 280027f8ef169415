"""Frames: the small language in which a kind of claim writes down what a plain clause must say.

    "[{agent}] <pin> {target} [(to|against) {behind}]"

`<pin>` is the verb, any of its synonyms in the lexicon, in any form, active or passive; `<=>` is "is", "stands", "remains" ...; `<~>` is
whatever says no more than that there is something: "there is", "this is", "makes", "has", "with", or no verb at all. `<be:pin>` is the
passive alone, `<threaten to win>` an infinitive under its verb, `<*>` any verb: the thing is named as known, wherever it stands. Before it stands the
subject, behind it objects, states and places in any order. A word stands for its line in the lexicon, with whatever article and colour;
`open file` asks for the adjective too, and words are joined by `_` where the lexicon has them as one (`bishop_pair`). `{name}` is a slot, `(a|b)` a choice,
`[...]` may be missing, `+word` is an adverb that must be there. Behind `;` stand slots with a fixed value (`; free=yes`), behind `if` conditions: `modal=can|may`,
`negated` (the frame takes the denial up), `without=in` (no such place or adverb), `lone` (no other object, not even "this time"),
`bidden` (an imperative), `perfect` ("has played"), `active`, `verbless` (the clause has no verb), `alone` (no infinitive follows).

What the clause says beside it may be an adjunct that leaves the meaning alone; anything else, and the frame does not fit.

>>> from lineproof.claims.framing import compiled
>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> frame = compiled("[{agent}] <pin> {target} [(to|against) {behind}]")
>>> frame.match(plain(sentences("Our poor knight was nailed down to the king by a bishop.", 0)[0])[0])
{'agent': 'a bishop', 'target': 'our knight', 'behind': 'the king', 'verb': Verb(negated=False, modal='', done=True, past=True)}
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from .clause import Clause
from .demand import (
    ABOVE,
    SUMS,
    Beside,
    Condition,
    Demand,
    Governed,
    Holds,
    Names,
    Passive,
    Patient,
    Placed,
    Real,
    Room,
    Sound,
    Subject,
    Tells,
)  # fmt: skip
from .element import Element
from .lexicon import VERBS, members
from .naming import named_in
from .rest import Rest
from .seen import Seen
from .slot import InTable
from .verbs import Verb

LIGHT = (
    members("have", VERBS)
    | members("make", VERBS)
    | members("give", VERBS)
    | members("be", VERBS)
    | {"put", "set", "find", "come", "go", "follow"}
)
"""Verbs that say no more of a thing than that it is there."""
COPULA = members("be", VERBS)
CONDITIONS = ("modal", "negated", "without", "active", "verbless", "alone", "lone", "bidden", "perfect")  # fmt: skip
_DENIAL = frozenset({"nobody", "none"})
"""Slots that are filled by a denial: "nobody", "no escape square"."""
_ELSEWHERE = ABOVE | {"where"}
"""Slots that no object, state or adverb of the clause fills."""
_IMPERSONAL = SUMS | {"there"}
_SEEMING = frozenset({"look", "seem", "appear", "feel", "sound"})


@dataclass(frozen=True)
class Frame:
    """A compiled frame. verbs: the lemmas that fit; light: any that only says that there is something."""

    source: str
    verbs: frozenset[str]
    light: bool
    subject: Element | None
    rest: tuple[Element, ...]
    fixed: Mapping[str, str] = field(default_factory=dict)
    governors: frozenset[str] = frozenset()
    passive: bool = False
    conditions: Mapping[str, str] = field(default_factory=dict)
    anywhere: bool = False

    @property
    def triggers(self) -> frozenset[str]:
        """Words of which a clause must have one, or the frame cannot fit; "*" when any clause may."""
        if not self.light and self.verbs != COPULA:
            return self.verbs
        asked = [e for e in self.rest if not e.optional]
        found = [_heads(e) for e in asked if e.words]
        if self.subject is not None and self.subject.words:
            found.append(_heads(self.subject))
        if found:
            return min(found, key=len)
        for element in asked:
            if isinstance(element.test, InTable):
                values = element.test.values
                return frozenset(w for words in values for w in (words, words.split()[-1]))
        return frozenset({"*"})

    def takes(self, lemma: str) -> bool:
        """Whether it fits a clause with such a verb; "" for none."""
        if self.anywhere:
            return True
        return lemma in self.verbs if lemma else self.light or self.verbs == COPULA

    @cached_property
    def demands(self) -> tuple[Demand, ...]:
        """What a clause with a verb that it takes must meet, those first that many frames share."""
        asked = [e for e in self.rest if not e.optional]
        if self.anywhere:
            return (Tells(), Names(self.rest[0]))
        found: list[Demand] = [Sound(), Governed(self.governors) if self.governors else Real()]
        near = [Beside(e.prepositions) for e in asked if e.prepositions]
        found += [Placed(), *near] if near else []
        free = [e for e in asked if not (e.prepositions or e.slot in _ELSEWHERE)]
        objects = sum(e.test is not None and e.table is None for e in free)
        stands = self.subject is not None and not self.subject.optional
        found.append(Room(objects, len(free), stands))
        if self.passive:
            found.append(Passive())
        found.append(self._subject)
        found += [Condition(*c, bool(self.governors)) for c in self.conditions.items()]
        found += [Patient(e) for e in asked if e.slot in ABOVE]
        found += [Holds(e) for e in asked if e.prepositions]
        found += [Holds(e) for e in asked if not e.prepositions and e.slot not in ABOVE]
        return tuple(found)

    @cached_property
    def _subject(self) -> Subject:
        return Subject(self.subject, self.light, bool(self.governors))

    @cached_property
    def _ordered(self) -> tuple[Element, ...]:
        """What is asked for behind the verb, what can be mistaken least first."""
        order = sorted(self.rest, key=lambda e: (e.optional, not e.prepositions, bool(e.slot)))
        return tuple(order)

    def match(self, clause: Clause) -> dict[str, Any] | None:
        """The slots of a clause that the frame fits, or None."""
        seen = Seen(clause)
        if not self.takes(clause.lemma) or not all(d.met(seen) for d in self.demands):
            return None
        return self.fill(clause)

    def fill(self, clause: Clause) -> dict[str, Any] | None:
        """The same for a clause with a verb that it takes and that meets its demands."""
        if self.anywhere:
            return self._named(clause)
        slots: dict[str, Any] = {}
        if clause.subject is not None and clause.subject.head in _IMPERSONAL:
            slots["impersonal"] = True
            if clause.subject.whose:
                slots["whose"] = clause.subject.whose
        if clause.lemma in _SEEMING:
            slots["seems"] = True
        rest = Rest.of(clause)
        if not self._subject.take(clause, rest, slots):
            return None
        for element in self._ordered:
            if element.slot in ABOVE:
                taken = Patient(element).take(clause, slots)
            else:
                taken = element.take(rest, slots)
            if not taken and not element.optional:
                return None
        if not rest.harmless(clause) or (
            "lone" in self.conditions and (rest.objects or clause.complement)
        ):
            return None
        slots.update(self.fixed)
        verb = self._verb(clause, slots)
        if clause.lemma or verb != Verb():
            slots["verb"] = verb
        return slots

    def _verb(self, clause: Clause, slots: dict[str, Any]) -> Verb:
        """What is said beside the verb, less what a slot or the frame has said."""
        verb = clause.verb
        if not _DENIAL.isdisjoint(slots) or "negated" in self.conditions:
            verb = Verb(not verb.negated, verb.modal, verb.done, verb.past)  # the slot has said it
        if "modal" in self.conditions:
            verb = Verb(verb.negated, "", verb.done, verb.past)
        if self.governors and clause.governor is not None:
            first = clause.governor.verb
            verb = Verb(
                first.negated != verb.negated, first.modal or verb.modal, first.done, first.past
            )
        return verb

    def _named(self, clause: Clause) -> dict[str, Any] | None:
        """The thing wherever a clause names it as known ("the half-open file"), whatever the clause says of it."""
        named = named_in(clause, self.rest[0], self.rest[1:])
        return None if named is None else {**named, **self.fixed, "known": True}


def _heads(element: Element) -> frozenset[str]:
    return frozenset().union(*(words.heads for words in element.words))


__all__ = ["CONDITIONS", "COPULA", "LIGHT", "Frame"]
