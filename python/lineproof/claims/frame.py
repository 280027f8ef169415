"""Frames: the small language in which a kind of claim writes down what a plain clause must say.

    "[{agent}] <pin> {target} [(to|against) {behind}]"

`<pin>` is the verb, any of its synonyms in the lexicon, in any form, active or passive; `<=>` is "is", "stands", "remains" ...; `<~>` is
whatever says no more than that there is something: "there is", "this is", "makes", "has", "with", or no verb at all. `<be:pin>` is the
passive alone, `<threaten to win>` an infinitive under its verb, `<*>` any verb: the thing is named as known, wherever it stands. Before it stands the
subject, behind it objects, states and places in any order. A word stands for its line in the lexicon, with whatever article and colour;
`open file` asks for the adjective too, and words are joined by `_` where the lexicon has them as one (`bishop_pair`). `{name}` is a slot, `(a|b)` a choice,
`[...]` may be missing, `+word` is an adverb that must be there. Behind `;` stand slots with a fixed value (`; free=yes`) and conditions: `modal=can|may`,
`negated=yes` (the frame takes the denial up), `without=in` (no such place or adverb), `lone=yes` (no other object, not even "this time"), `bidden=yes` (an imperative), `perfect=yes` ("has played"), `active=yes`, `verbless=yes` (the clause has no verb), `alone=yes` (no infinitive
follows).

What the clause says beside it may be an adjunct that leaves the meaning alone; anything else, and the frame does not fit.

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> frame = Frame.compile("[{agent}] <pin> {target} [(to|against) {behind}]")
>>> frame.match(plain(sentences("Our poor knight was nailed down to the king by a bishop.", 0)[0])[0])
{'agent': 'a bishop', 'target': 'our knight', 'behind': 'the king', 'verb': Verb(negated=False, modal='', done=True, past=True)}
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

from .chunk import Adjective, Place
from .doings import deed
from .lexicon import ADJECTIVES, NOUNS, VERBS, members
from .noun import Noun
from .plain import Clause
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
WHERE = frozenset(
    ["on", "at", "in", "from", "along", "down", "up", "over", "behind", "in front of", "near", "beside", "across", "through", "towards", "around", "against", "of", "despite", "in spite of", "like", "about", "after",
     "next to", "inside", "within", "under", "between", "among", "into", "throughout", "upon", "because of", "thanks to", "in view of", "on top of", "in return for", "out of", "courtesy of", "during", "namely"]
)  # fmt: skip
"""Prepositions of adjuncts that say where, when or why, and leave the meaning alone."""
PARTICLES = frozenset(
    {
        "for nothing",
        "for free",
        "off",
        "up",
        "down",
        "over",
        "out",
        "away",
        "on",
        "ahead",
        "behind",
        "in",
        "back",
        "gone",
        "through",
    }
)
_CHANGED = frozenset({"too", "so", "half", "partly", "that", "enough", "as", "less", "least"})
"""Adverbs with which an adjective is another."""
_REASONS = frozenset(
    {"because of", "thanks to", "in view of", "on account of", "due to", "owing to", "courtesy of"}
)
_COUNTING = frozenset({"up", "down", "ahead", "behind", "back"})
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
REASONS = frozenset(
    {
        "attack",
        "initiative",
        "moment",
        "time",
        "part",
        "rest",
        "compensation",
        "tempo",
        "development",
        "return",
        "that",
        "it",
        "now",
        "reason",
        "thirty moves",
        "move",
        "trouble",
    }
)
"""What something may be done for without its meaning another thing."""
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
EASE = frozenset({"trouble", "difficulty", "problem", "effort", "fuss", "doubt", "question", "ado", "hesitation", "ease", "exception", "conscience", "risk", "bother", "mercy", "pity", "warning", "delay"})  # fmt: skip
"""Nouns that, behind "without" or "with", say how something is done, and no more."""
ADVERBIAL = frozenset(
    {
        "time",
        "day",
        "evening",
        "way",
        "moment",
        "minute",
        "week",
        "move",
        "one",
        "himself",
        "itself",
        "end",
        "all",
        "both",
    }
)
"""Nouns that may stand beside a verb without being its object: "this time"."""
_DOING = (
    *NOUNS["move"], *NOUNS["sacrifice"], *NOUNS["exchange"], "check", "castling", "promotion", "grab"
)  # fmt: skip


_DENIAL = frozenset({"nobody", "none"})
"""Slots that are filled by a denial: "nobody", "no escape square"."""


_SEEMING = frozenset({"look", "seem", "appear", "feel", "sound"})
_STRIVING = (["fight"], ["compete"], ["struggle"], ["look"], ["care"])
_PAWNS = members("doubled pawn", NOUNS) | members("isolated pawn", NOUNS)
_HAVING = members("have", VERBS)
_SUMS = frozenset(
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
_CONTROL = members("force", VERBS)
"""Verbs whose infinitive says what they are about."""


_KNOWN = frozenset({"the", "this", "that", "these", "those"})
_ENDS = (
    members("win", VERBS)
    | members("lose", VERBS)
    | members("capture", VERBS)
    | members("exchange", VERBS)
    | members("cost", VERBS)
    | members("come off", VERBS)
)
"""Verbs after which a thing is there no more."""
_UNREAL = frozenset(
    {
        "want",
        "avoid",
        "prevent",
        "create",
        "become",
        "need",
        "prepare",
        "dream",
        "open",
        "say",
        "call",
        "tell",
        "discuss",
        "await",
        "imagine",
    }
)
"""Verbs that speak of what is not there, or not yet."""


_ABOVE = frozenset({"patient", "patient_side", "above"})
"""Slots that the verb above an infinitive fills."""
_ELSEWHERE = _ABOVE | {"where"}
"""Slots that no object, state or adverb of the clause fills."""


class FrameError(ValueError):
    """A frame that is written wrongly."""


Test = Callable[[Noun], Any]


def _text(*types: str) -> Test:
    return lambda noun: noun.text if noun.type in types else None


def _agent(noun: Noun) -> str | None:
    if noun.head in {"there", "here"} or noun.no or "same" in noun.adjectives:
        return None
    if noun.type in {"side", "piece", "move", "square", "pronoun"}:
        return noun.text
    if noun.head in NOUNS["pattern"] and noun.det in {"this", "that"}:
        return "this"  # "this pattern is called a skewer"
    return noun.text if noun.head in _DOING else None


def _target(noun: Noun) -> str | None:
    if "wrong" in noun.adjectives:
        return None
    if noun.type in {"piece", "square"} or (
        noun.type == "pronoun"
        and noun.head in {"it", "this", "that", "which", "who", "both", "ones"}
    ):
        return noun.text
    return None


def _targets(noun: Noun) -> str | None:
    return noun.text if len(noun.parts) > 1 and noun.type in {"piece", "square"} else None


def _amount(noun: Noun) -> str | None:
    if noun.head == "extra pawn":
        noun = replace(noun, type="piece", head="pawn")
    if noun.det in {"1 of", "one of"}:
        noun = replace(noun, plural=False, count=None)  # "one of his pawns"
    if noun.type == "piece" and noun.head not in {"king", ""}:
        number = f"{noun.count} " if noun.count is not None else ""
        lead = noun.whose or ("" if number else "a")
        return f"{lead} {number}{noun.head}{'s' if noun.plural else ''}{f' on {noun.square}' if noun.square else ''}".strip()
    if noun.head in {"exchange", "material", "piece"} and noun.type == "noun":
        return (
            noun.text
            if noun.head != "piece"
            else f"{noun.whose or 'a'} {f'{noun.count} ' if noun.count else ''}piece{'s' if noun.plural else ''}".replace(
                "a 2", "2"
            ).replace("a 3", "3")
        )
    return None


def _file(noun: Noun) -> str | None:
    return noun.file if noun.type == "file" else None


def _number(noun: Noun) -> str | None:
    return str(noun.count) if noun.count is not None else None


def _move(noun: Noun) -> str | None:
    return noun.text if noun.type in {"move", "square"} and not noun.plural else None


def _side(noun: Noun) -> str | None:
    return noun.text if noun.type == "side" else None


def _whose(noun: Noun) -> str | None:
    return noun.whose or None


SLOTS: dict[str, Test] = {
    "deed": deed, "other_deed": deed, "agent": _agent, "patient": _target, "side": _side, "whose": _whose, "guarded": _targets, "whose_piece": lambda n: n.head if n.type == "piece" and n.whose else None, "target": _target, "object": _target, "second": _target, "behind": _target, "pinner": _target,
    "defender": _text("piece"), "piece": _text("piece"), "targets": _targets, "square": lambda n: n.square if n.type == "square" and not n.parts else None,
    "anything": lambda n: n.text, "m": _number, "than": _agent, "played": lambda n: _agent(n) if n.type in {"move", "square", "pronoun"} or n.head in _DOING else None, "nobody": lambda n: n.text if n.no and n.head != "nowhere" and (n.type == "pronoun" or n.head in {"piece", "unit", "man"} or n.type == "piece") else None,
    "king": lambda n: n.text if n.type == "piece" and n.head == "king" and not n.parts else None, "none": lambda n: n.head if n.no and n.type == "noun" else None, "squares": _text("square"), "file": _file, "files": _file, "n": _number, "move": _move, "by": _move, "best": _move, "amount": _amount, "given": _amount,
    "fallen": _amount, "price": _amount, "described": lambda n: n.text if n.head in _DOING else None, "wing": lambda n: n.head if n.head in {"kingside", "queenside", "centre"} else None,
}  # fmt: skip
"""Slots that every kind may use, with the noun phrases that fit them."""


@dataclass(frozen=True)
class Element:
    """One thing that a frame asks for: a slot or a word, perhaps behind a preposition."""

    slot: str = ""
    words: tuple[tuple[frozenset[str], ...], ...] = ()
    prepositions: frozenset[str] = frozenset()
    optional: bool = False
    adverb: bool = False


@dataclass(frozen=True)
class Frame:
    """A compiled frame. verbs: the lemmas that fit; light: any that only says that there is something."""

    source: str
    verbs: frozenset[str]
    light: bool
    subject: Element | None
    rest: tuple[Element, ...]
    fixed: Mapping[str, str] = field(default_factory=dict)
    tables: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    own: Mapping[str, Test] = field(default_factory=dict)
    governors: frozenset[str] = frozenset()
    passive: bool = False
    conditions: Mapping[str, str] = field(default_factory=dict)
    anywhere: bool = False

    @classmethod
    def compile(
        cls,
        source: str,
        tables: Mapping[str, Mapping[str, Any]] | None = None,
        own: Mapping[str, Test] | None = None,
    ) -> Frame:
        """Compiles a frame. tables: slots of the kind's own, from words to values.

        :raises FrameError: for one that is written wrongly.
        """
        body, _, fixed = source.partition(";")
        values = dict(part.split("=") for part in fixed.split())
        conditions: dict[str, str] = {
            name: values.pop(name)
            for name in (
                "modal",
                "negated",
                "without",
                "active",
                "verbless",
                "alone",
                "lone",
                "bidden",
                "perfect",
            )
            if name in values
        }
        parts = re.findall(r"\[[^\]]*\]|<[^>]*>|\([^)]*\)|[^\s\[\]<>]+", body)
        verbs: frozenset[str] = frozenset()
        light, subject, rest = False, None, []
        governors: frozenset[str] = frozenset()
        passive = seen = anywhere = False
        queue: list[tuple[str, bool]] = []
        for part in parts:
            if part.startswith("["):
                queue.extend((inner, True) for inner in [part[1:-1]])
            else:
                queue.append((part, False))
        at = 0
        while at < len(queue):
            text, optional = queue[at]
            at += 1
            if text.startswith("<"):
                seen = True
                name = text[1:-1].replace("_", " ")
                if name.startswith("be:"):
                    passive, name = True, name[3:]
                if " to " in name:
                    first, _, name = name.partition(" to ")
                    governors = frozenset().union(*(members(v, VERBS) for v in first.split("/")))
                if name == "*":
                    anywhere = light = True
                elif name == "~":
                    light, verbs = True, LIGHT
                elif name == "=":
                    verbs = COPULA
                else:
                    verbs = frozenset().union(*(members(v, VERBS) for v in name.split("/")))
                continue
            words = text.split() if optional else [text]
            if not optional and _is_preposition(text):
                if at >= len(queue):
                    raise FrameError(f"nothing follows {text!r} in {source!r}")
                words = [text, queue[at][0]]
                at += 1
                while (
                    not words[-1].startswith("{")
                    and at < len(queue)
                    and not queue[at][1]
                    and _adjective(words[-1])
                    and not queue[at][0].startswith(("{", "<", "(", "+"))
                ):
                    words.append(queue[at][0])
                    at += 1
            elif not optional and not text.startswith(("{", "(", "+")):
                while (
                    at < len(queue)
                    and not queue[at][1]
                    and not queue[at][0].startswith(("{", "<", "(", "+"))
                    and not _is_preposition(queue[at][0])
                ):
                    words.append(queue[at][0])
                    at += 1
            element = _element(words, optional, source, tables or {}, own or {})
            if not seen and subject is None and not element.prepositions:
                subject = element
            else:
                rest.append(element)
        if not seen:
            raise FrameError(f"no verb in {source!r}")
        if passive and subject is not None:
            rest.insert(0, subject)  # what is said of comes behind the verb in the active voice
            subject = None
        return cls(
            source,
            verbs,
            light,
            subject,
            tuple(rest),
            values,
            tables or {},
            own or {},
            governors,
            passive,
            conditions,
            anywhere,
        )

    @property
    def triggers(self) -> frozenset[str]:
        """Words of which a clause must have one, or the frame cannot fit; "*" when any clause may."""
        if not self.light and self.verbs != COPULA:
            return self.verbs
        found = [
            frozenset().union(*(alternative[-1] for alternative in e.words))
            for e in self.rest
            if e.words and not e.optional
        ]
        if self.subject is not None and self.subject.words:
            found.append(
                frozenset().union(*(alternative[-1] for alternative in self.subject.words))
            )
        if found:
            return min(found, key=len)
        tables = [
            frozenset(w for words in self.tables[e.slot] for w in (words, words.split()[-1]))
            for e in self.rest
            if e.slot in self.tables and e.slot not in self.own and not e.optional
        ]
        return tables[0] if tables else frozenset({"*"})

    @cached_property
    def _verbless(self) -> bool:
        """Whether it fits a clause without a verb."""
        return self.light or self.verbs == COPULA

    @cached_property
    def _needs(self) -> tuple[frozenset[str], ...]:
        """Of the prepositions of each of these one must be there."""
        return tuple(e.prepositions for e in self.rest if e.prepositions and not e.optional)

    @cached_property
    def _ordered(self) -> tuple[Element, ...]:
        """What is asked for behind the verb, what can be mistaken least first."""
        order = sorted(self.rest, key=lambda e: (e.optional, not e.prepositions, bool(e.slot)))
        return tuple(order)

    def takes(self, lemma: str) -> bool:
        """Whether it fits a clause with such a verb; "" for none."""
        return self.anywhere or (lemma in self.verbs if lemma else self._verbless)

    @cached_property
    def _wants(self) -> int:
        """How many objects, states and adverbs it takes up at least."""
        return sum(not (e.optional or e.prepositions or e.slot in _ELSEWHERE) for e in self.rest)

    def has_room(self, prepositions: frozenset[str], things: int) -> bool:
        """Whether a clause with such prepositions, and so many objects, states and adverbs, may hold all that it asks for."""
        if self.anywhere:
            return True
        if things < self._wants:
            return False
        return all(not needed.isdisjoint(prepositions) for needed in self._needs)

    def match(self, clause: Clause) -> dict[str, Any] | None:
        """The slots of a clause that the frame fits, or None."""
        if self.anywhere:
            return self._named(clause)
        if self.governors and (
            clause.governor is None or clause.governor.lemma not in self.governors
        ):
            return None
        if clause.unreal and not self.governors:
            return None
        if self.passive and not clause.passive:
            return None
        if clause.complement and clause.lemma in _CONTROL:
            return None
        if not self.takes(clause.lemma):
            return None
        if not self._allowed(clause):
            return None
        if clause.verb.negated and any(not _WHOLLY.isdisjoint(s.adverbs) for s in clause.states):
            return None
        slots: dict[str, Any] = {}
        if clause.subject is not None and clause.subject.head in {"there", *_SUMS}:
            slots["impersonal"] = True
            if clause.subject.whose:
                slots["whose"] = clause.subject.whose
        if clause.lemma in _SEEMING:
            slots["seems"] = True
        left = _Left(
            list(clause.objects), list(clause.places), list(clause.states), list(clause.adverbs)
        )
        if not self._subject(clause, left, slots):
            return None
        for element in self._ordered:
            if element.slot in _ABOVE:
                if not self._patient(element, clause, slots) and not element.optional:
                    return None
                continue
            if not self._find(element, left, slots) and not element.optional:
                return None
        if not left.harmless(clause, bool(slots)) or (
            "lone" in self.conditions and (left.objects or clause.complement)
        ):
            return None
        slots.update(self.fixed)
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
        if clause.lemma or verb != Verb():
            slots["verb"] = verb
        return slots

    def _named(self, clause: Clause) -> dict[str, Any] | None:
        """The thing wherever a clause names it as known ("the half-open file"), whatever the clause says of it."""
        if clause.unreal or clause.verb.past or clause.verb.modal in {"would", "could", "might"}:
            return None
        ends = clause.lemma in _ENDS
        if clause.lemma and clause.lemma.split()[0] in _UNREAL:
            return None
        first, *others = self.rest
        nouns = [
            *([clause.subject] if clause.subject and not clause.inherited else []),
            *clause.objects,
        ]
        places = {id(p.noun): p for p in clause.places if p.noun is not None}
        for noun in (*nouns, *(p.noun for p in clause.places if p.noun is not None)):
            known = noun.det in _KNOWN or bool(noun.whose)
            slots: dict[str, Any] = {}
            if noun.first < clause.first or (ends and id(noun) not in places):
                continue  # the noun before a relative clause, or what is there no more
            if (
                clause.subject is not None
                and clause.subject.type == "side"
                and (p := places.get(id(noun))) is not None
                and p.preposition == "with"
            ):
                slots["side"] = clause.subject.text  # "with the bishop pair we are better"
            if noun.no or not known or not self._fit(first, noun, slots):
                continue
            if first.slot and noun.whose:
                slots.setdefault("whose", noun.whose)
            if any(
                p.preposition == "of"
                and p.first == noun.last + 1
                and p.noun is not None
                and p.noun.type == "noun"
                for p in clause.places
            ):
                continue  # "the majority of my pupils"
            before = places.get(id(noun))
            if before is not None and before.preposition in {
                "without",
                *(() if clause.lemma.split()[:1] in _STRIVING else ("for",)),
                "like",
                "against",
                "from",
                "but",
                "as",
            }:
                continue
            last = noun.last
            for other in others:
                behind = [p for p in clause.places if p.first == last + 1]
                left = _Left([], list(behind), [], [])
                if behind and self._find(other, left, slots):
                    last = behind[0].last
                elif not other.optional:
                    break
            else:
                return {**slots, **self.fixed, "known": True, "span": (noun.first, last)}
        return None

    def _patient(self, element: Element, clause: Clause, slots: dict[str, Any]) -> bool:
        """Whom the verb above an infinitive or -ing acts on: "the rook" in "stops the rook from coming"."""
        objects = clause.governor.objects if clause.governor is not None else []
        return len(objects) == 1 and self._fit(element, objects[0], slots)

    def _allowed(self, clause: Clause) -> bool:
        """Whether the conditions hold: a modal, a denial (which the frame then takes up), prepositions that must not be there."""
        for name, value in self.conditions.items():
            if name == "modal" and clause.verb.modal not in value.split("|"):
                return False
            above = clause.governor.verb.negated if self.governors and clause.governor else False
            if name == "negated" and clause.verb.negated == above:
                return False
            if name == "active" and clause.passive:
                return False
            if name == "alone" and clause.complement:
                return False
            if name == "verbless" and clause.lemma:
                return False
            if name == "perfect" and not clause.verb.done:
                return False
            if name == "bidden" and (clause.form != "base" or clause.subject is not None):
                return False
            barred = value.replace("_", " ").split("|")
            if name == "without" and any(p.preposition in barred for p in clause.places):
                return False
            if name == "without" and any(a in barred for a in clause.adverbs):
                return False
        return True

    def _subject(self, clause: Clause, left: _Left, slots: dict[str, Any]) -> bool:
        noun, asked = clause.subject, self.subject
        if (
            noun is not None
            and noun.head in {"there", "here"}
            and not (self.light or self.governors)
        ):
            return False
        if asked is None:
            return (
                noun is None
                or clause.inherited
                or noun.type == "pronoun"
                or (self.light and noun.head in _SUMS)
            )
        if noun is None:
            if not clause.lemma and not asked.optional and left.objects and asked.slot != "side":
                # "the d-file completely open": no verb, and the first noun is what it is said of
                for number, candidate in enumerate(left.objects):
                    if self._fit(asked, candidate, slots):
                        del left.objects[number]
                        return True
            return asked.optional
        if self._fit(asked, noun, slots):
            return True
        return asked.optional and (clause.inherited or noun.type == "pronoun") and not noun.no

    def _find(self, element: Element, left: _Left, slots: dict[str, Any]) -> bool:
        if element.adverb:
            for alternative in element.words:
                for word in alternative[-1]:
                    if word in left.adverbs:
                        left.adverbs.remove(word)
                        return True
            return False
        if element.slot == "where":
            for number, place in enumerate(left.places):
                where = _where(place)
                if where is not None:
                    slots["where"] = where
                    del left.places[number]
                    return True
            return False
        if element.prepositions:
            for number, place in enumerate(left.places):
                if (
                    place.noun is not None
                    and place.preposition in element.prepositions
                    and self._fit(element, place.noun, slots)
                ):
                    del left.places[number]
                    return True
            return False
        for number, noun in enumerate(left.objects):
            if self._fit(element, noun, slots):
                del left.objects[number]
                return True
        for number, state in enumerate(left.states):
            if self._is(element, state, slots):
                del left.states[number]
                return True
        if element.slot in self.tables:
            for number, word in enumerate(left.adverbs):
                if word in self.tables[element.slot] and word != "even":  # "even with the knight"
                    slots[element.slot] = self.tables[element.slot][word]
                    del left.adverbs[number]
                    return True
        return False

    def _fit(self, element: Element, noun: Noun, slots: dict[str, Any]) -> bool:
        if element.slot:
            found = _slot(element.slot, noun, self.tables, self.own)
            if found is None or element.slot in slots:
                return False
            slots[element.slot] = found
            return True
        for alternative in element.words:
            *adjectives, heads = alternative
            taken = {a for a in noun.adjectives if f"{a} {noun.head}" in heads}
            if noun.head not in heads and not taken:
                continue
            had = set(noun.adjectives) - taken
            if all(had & a for a in adjectives):
                asked = frozenset().union(*adjectives) if adjectives else frozenset()
                if noun.det in _KNOWN:
                    had -= {"little"}  # "the sly little check"
                if not (had & TELLING) - asked:
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
                    return True
        return False

    def _is(self, element: Element, state: Adjective, slots: dict[str, Any]) -> bool:
        if element.slot in self.tables:
            said = " ".join((*state.adverbs, state.lemma))
            for words in (said, *([] if _CHANGED & set(state.adverbs) else [state.lemma])):
                if words in self.tables[element.slot]:
                    slots[element.slot] = self.tables[element.slot][words]
                    return True
            return False
        return any(len(a) == 1 and state.lemma in a[-1] for a in element.words)


@dataclass
class _Left:
    """What of a clause no element has taken yet."""

    objects: list[Noun]
    places: list[Place]
    states: list[Adjective]
    adverbs: list[str]

    def harmless(self, clause: Clause, some: bool) -> bool:  # noqa: ARG002
        """Whether the rest leaves the meaning alone."""
        if clause.strays:
            return False
        if any(n.head not in ADVERBIAL for n in self.objects):
            return False
        if any(not _adjunct(p, clause) for p in self.places):
            return False
        if not (PARTICLES if clause.lemma == "be" else _COUNTING).isdisjoint(self.adverbs):
            return False
        return not self.states


def _adjunct(place: Place, clause: Clause) -> bool:
    """Whether a place that no element has taken leaves the meaning alone."""
    noun = place.noun
    if place.preposition in _REASONS and noun is not None and noun.type == "move":
        return False  # it may be a reply
    if place.preposition in WHERE:
        return noun is None or noun.head not in {
            "theory",
            "paper",
            "sense",
            "fact that",
            "beginner",
            "book",
            "opponent",
            "everybody",
            "clock",
            "dark",
        }
    if noun is None:
        return False
    if place.preposition == "without" and noun.type == "piece" and noun.head == "queen":
        return True  # "without the queens"
    if place.preposition in {"without", "with"} and noun.head in EASE:
        return True  # "without any trouble", "with ease"
    if place.preposition == "for":
        given = noun.type == "piece" or noun.head in {"exchange", "material", *_PAWNS}
        thing = (
            clause.lemma in _HAVING and bool(clause.objects) and clause.objects[0].type == "noun"
        )
        return noun.head in REASONS or (given and (thing or place.first < _verb_at(clause)))
    if place.preposition in {"with", "by"}:
        return place.first < _verb_at(clause) or noun.type not in {
            "piece",
            "square",
            "move",
            "side",
        }
    return False


def _verb_at(clause: Clause) -> int:
    """Where the first of subject and objects stands."""
    return min(
        (n.first for n in [*([clause.subject] if clause.subject else []), *clause.objects]),
        default=clause.last,
    )


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


def _slot(
    name: str, noun: Noun, tables: Mapping[str, Mapping[str, Any]], own: Mapping[str, Test]
) -> Any:
    if name in own:
        return own[name](noun)
    if name in tables:
        table = tables[name]
        for words in _phrasings(noun):
            if words in table:
                return table[words]
        return None
    return SLOTS[name](noun)


def _phrasings(noun: Noun) -> Iterator[str]:
    yield noun.text
    amount = _amount(noun)
    if amount is not None:
        yield amount
    bare = re.sub(r"^(?:the|a|an|this|our|his|their|white 's|black 's) ", "", noun.text)
    yield bare
    yield noun.head


def _is_preposition(text: str) -> bool:
    return all(p in _PREPOSITIONS for p in text.strip("()").replace("_", " ").split("|"))


_PREPOSITIONS = frozenset(
    ["of", "in", "on", "at", "by", "with", "from", "to", "into", "onto", "for", "against", "through", "over", "under", "behind", "before", "after", "between", "among", "along", "down", "up", "as", "without", "like", "towards", "than", "about", "off", "upon", "versus", "vs", "via"]
) | {"on to", "out of", "away from", "in front of", "because of", "next to", "ahead of", "apart from", "short of", "other than", "aside from", "except", "except for", "but", "besides", "save for", "in return for", "at the cost of", "at the expense of", "in exchange for", "on account of", "owing to", "in view of", "thanks to", "due to", "instead of", "rather than", "such as", "namely"}  # fmt: skip


def _adjective(word: str) -> bool:
    return word in _ADJECTIVE_WORDS


_ADJECTIVE_WORDS = frozenset(
    [
        "open",
        "half_open",
        "isolated",
        "doubled",
        "extra",
        "good",
        "bad",
        "opposite",
        "same",
        "better",
        "mating",
        "only",
        "undeveloped",
        "quicker",
        "faster",
        "superior",
        "more",
    ]
)


def _element(
    words: list[str],
    optional: bool,
    source: str,
    tables: Mapping[str, Any],
    own: Mapping[str, Test],
) -> Element:
    prepositions: frozenset[str] = frozenset()
    if len(words) > 1 and _is_preposition(words[0]):
        prepositions, words = (
            frozenset(words[0].strip("()").replace("_", " ").split("|")),
            words[1:],
        )
    text = " ".join(words)
    if "{" in text[1:]:
        raise FrameError(f"no preposition is {words[0]!r}, in {source!r}")
    if text.startswith("{"):
        name = text[1:-1]
        if name != "where" and name not in SLOTS and name not in tables and name not in own:
            raise FrameError(f"no slot {name!r} is known, in {source!r}")
        return Element(slot=name, prepositions=prepositions, optional=optional)
    adverb = text.startswith("+")
    alternatives = text.lstrip("+").strip("()").split("|")
    return Element(
        words=tuple(tuple(_word(w.replace("_", " ")) for w in a.split()) for a in alternatives),
        prepositions=prepositions, optional=optional, adverb=adverb,
    )  # fmt: skip


def _word(word: str) -> frozenset[str]:
    return members(word, NOUNS) | members(word, ADJECTIVES)


__all__ = ["COPULA", "LIGHT", "SLOTS", "Element", "Frame", "FrameError"]
