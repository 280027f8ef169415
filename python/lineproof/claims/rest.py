"""The rest of a clause: what no element of a frame has taken, and whether it leaves the meaning alone."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from .chunk import Adjective, Place
from .clause import Clause
from .lexicon import NOUNS, VERBS, members
from .noun import Noun

_WHERE = frozenset(
    ["on", "at", "in", "from", "along", "down", "up", "over", "behind", "in front of", "near", "beside", "across", "through", "towards", "around", "against", "of", "despite", "in spite of", "like", "about", "after",
     "next to", "inside", "within", "under", "between", "among", "into", "throughout", "upon", "because of", "thanks to", "in view of", "on top of", "in return for", "out of", "courtesy of", "during", "namely", "as in", "unlike"]
)  # fmt: skip
"""Prepositions of adjuncts that say where, when or why, and leave the meaning alone."""
_PARTICLES = frozenset(
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
_REASONS = frozenset(
    {"because of", "thanks to", "in view of", "on account of", "due to", "owing to", "courtesy of"}
)
_COUNTING = frozenset({"up", "down", "ahead", "behind", "back"})
_PURPOSES = frozenset(
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
        "centre",
        "activity",
        "space",
        "play",
        "lead",
        "pressure",
        "open file",
    }
)
"""What something may be done for without its meaning another thing."""
_ADVERBIAL = frozenset({"time", "day", "evening", "way", "moment", "minute", "week", "move", "one", "himself", "itself", "end", "all", "both"})  # fmt: skip
"""Nouns that may stand beside a verb without being its object: "this time"."""
_EASE = frozenset({"trouble", "difficulty", "problem", "effort", "fuss", "doubt", "question", "ado", "hesitation", "ease", "exception", "conscience", "risk", "bother", "mercy", "pity", "warning", "delay"})  # fmt: skip
"""Nouns that, behind "without" or "with", say how something is done, and no more."""
_PAWNS = members("doubled pawn", NOUNS) | members("isolated pawn", NOUNS)
_HAVING = members("have", VERBS)
_ELSEWHERE = frozenset(
    {"theory", "paper", "sense", "fact that", "beginner", "book", "opponent", "everybody", "clock", "dark"}
)  # fmt: skip
"""Nouns of what is not on this board."""


_GAMES = frozenset({"game", "line", "variation", "opening", "position", "structure", "case"})


class Parts(Protocol):
    """What a clause has beside its subject and its verb: the clause itself, or its rest."""

    objects: list[Noun]
    places: list[Place]
    states: list[Adjective]
    adverbs: list[str]


@dataclass(slots=True)
class Rest:
    """What of a clause no element has taken yet."""

    objects: list[Noun]
    places: list[Place]
    states: list[Adjective]
    adverbs: list[str]

    @classmethod
    def of(cls, clause: Clause) -> Rest:
        """All of a clause but its subject."""
        return cls(
            clause.objects.copy(), clause.places.copy(), clause.states.copy(), clause.adverbs.copy()
        )

    def harmless(self, clause: Clause) -> bool:
        """Whether the rest leaves the meaning alone."""
        if clause.strays or self.states:
            return False
        moves = {
            p.noun.last + 1 for p in clause.places if p.noun is not None and p.noun.head == "move"
        }
        if any(n.head not in _ADVERBIAL and not (n.head.isdigit() and n.first in moves) for n in self.objects):  # "on move four"  # fmt: skip
            return False
        if any(not _adjunct(p, clause) for p in self.places):
            return False
        return (_PARTICLES if clause.lemma == "be" else _COUNTING).isdisjoint(self.adverbs)


def _adjunct(place: Place, clause: Clause) -> bool:
    """Whether a place that no element has taken leaves the meaning alone."""
    noun = place.noun
    above = clause.governor.places if clause.governor is not None else []
    if place in above and noun is not None and noun.type in {"move", "square", "piece"}:
        return False  # "the point of a4 is": whose point it is
    if place.preposition in _REASONS and noun is not None and noun.type == "move":
        return False  # it may be a reply
    if place.preposition == "in" and noun is not None and noun.plural and noun.head in _GAMES:
        return False  # "there are hanging pawns in many games"
    if place.preposition == "since" and noun is not None:
        return noun.head in {"beginning", "start", "opening", "outset"}
    if place.preposition in _WHERE:
        return noun is None or noun.head not in _ELSEWHERE
    if noun is None:
        return False
    if place.preposition == "without" and noun.type == "piece" and noun.head == "queen":
        return True  # "without the queens"
    if place.preposition in {"without", "with"} and noun.head in _EASE:
        return True  # "without any trouble", "with ease"
    if place.preposition == "for":
        given = noun.type == "piece" or noun.head in {"exchange", "material", *_PAWNS}
        thing = (
            clause.lemma in _HAVING and bool(clause.objects) and clause.objects[0].type == "noun"
        )
        return noun.head in _PURPOSES or (given and (thing or place.first < _verb_at(clause)))
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


__all__ = ["Parts", "Rest"]
