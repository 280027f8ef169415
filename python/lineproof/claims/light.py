"""Light verbs: a verb that says little and a noun that says what is done, put as the one verb that says both.

"Has the queen in its sights", "is under attack from the bishop", "is going nowhere".

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> for said in ("The knight has the queen in its sights.", "The queen is under attack from the knight.", "The knight keeps f7 under fire."):
...     (clause,) = plain(sentences(said, 0)[0])
...     print(clause.subject.text, clause.lemma, clause.objects[0].text)
the knight attack the queen
the knight attack the queen
the knight attack f7
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from .chunk import Place
from .lexicon import VERBS, members
from .noun import Noun
from .verbs import Verb

if TYPE_CHECKING:
    from .clause import Clause

_HOLDING = members("have", VERBS) | {"keep", "hold", "put", "set", "place", "bring", "get", "catch", "take"}  # fmt: skip
_STANDING = members("be", VERBS) | {"come", "fall", "get"}
_ATTACKED = {"fire", "attack", "siege", "assault", "bombardment", "gun", "hammer", "microscope"}
_TURNS: dict[str, tuple[frozenset[str], frozenset[str]]] = {
    "attack": (
        frozenset({"in", "within", "under"}),
        frozenset({"sight", "crosshair", "crosshairs", "firing line", "line of fire", *_ATTACKED}),
    ),
    "defend": (
        frozenset({"under", "in"}),
        frozenset({"protection", "guard", "lock and key", "care", "wing", "its wing"}),
    ),
}
"""By verb, the prepositions and nouns that say it of the object of a verb of having: "keeps e5 under guard"."""
_TRAINED = frozenset({"train on", "aim at", "point at", "direct at", "direct against", "focus on", "concentrate on", "target at"})  # fmt: skip
_PREY = frozenset({"piece", "square", "pronoun"})
_NOWHERE = frozenset({"nowhere", "nowhere fast"})
_FROM = frozenset({"from", "by", "of", "through"})


def light(clause: Clause) -> None:
    """Puts the verb that is meant for a light verb with its noun, in a clause that is in the order of the active."""
    _trained(clause)
    _held(clause)
    _stands(clause)
    _goes_nowhere(clause)
    _carried(clause)


_WHENCE = frozenset({"from", "into", "out of"})


def _carried(clause: Clause) -> None:
    """ "White takes a majority with him into the ending": he has it."""
    if clause.lemma not in {"take", "carry", "bring"} or len(clause.objects) != 1 or clause.passive:
        return
    subject, asset = clause.subject, clause.objects[0]
    if subject is None or subject.type != "side" or asset.type != "noun" or asset.no:
        return
    own = next((p for p in clause.places if p.preposition == "with" and _self(p.noun)), None)
    if own is None:
        return
    clause.lemma = "have"
    clause.places.remove(own)
    kept: list[Place] = []
    last = -1
    for place in clause.places:
        whence = place.preposition in _WHENCE or place.first == last + 1
        if whence:
            last = place.last  # "from the exchange on d5"
        else:
            kept.append(place)
    clause.places = kept


def _self(noun: Noun | None) -> bool:
    """Whether it is a pronoun for a side: "with him"."""
    return noun is not None and noun.text in {"him", "her", "us", "them", "me", "you", "it"}


def _trained(clause: Clause) -> None:
    """ "Queen and bishop are trained on d5": they attack it."""
    if not clause.passive or clause.lemma not in _TRAINED or len(clause.objects) != 1:
        return
    if clause.subject is None or any(p.preposition == "by" for p in clause.places):
        return
    clause.lemma, clause.passive, clause.form = "attack", False, "finite"


def _verb_of(place: Place) -> str | None:
    noun = place.noun
    if noun is None or noun.type != "noun" or noun.no:
        return None
    return next((v for v, (p, heads) in _TURNS.items() if place.preposition in p and noun.head in heads), None)  # fmt: skip


def _held(clause: Clause) -> None:
    """ "Has the queen in its sights", "puts f7 under fire"."""
    if clause.lemma not in _HOLDING or clause.passive or clause.subject is None:
        return
    if len(clause.objects) != 1 or clause.objects[0].type not in _PREY or clause.objects[0].no:
        return
    found = next(((p, v) for p in clause.places if (v := _verb_of(p)) is not None), None)
    if found is None or (found[0].noun is not None and _telling(found[0].noun)):
        return
    clause.places.remove(found[0])
    clause.lemma = found[1]


def _stands(clause: Clause) -> None:
    """ "Is under attack from the bishop": the bishop attacks it."""
    subject = clause.subject
    if clause.lemma not in _STANDING or clause.passive or clause.objects or subject is None:
        return
    if subject.type not in _PREY or subject.no or clause.verb.modal not in {"", "almost"}:
        return
    under = next((p for p in clause.places if p.preposition == "under" and p.noun is not None and p.noun.head in _ATTACKED), None)  # fmt: skip
    if under is None or under.noun is None or _telling(under.noun):
        return
    clause.places.remove(under)
    by = next((p for p in clause.places if p.preposition in _FROM and p.first > under.first), None)
    if by is not None:
        clause.places[clause.places.index(by)] = by._replace(preposition="by")
    clause.lemma, clause.passive = "attack", True


def _telling(noun: Noun) -> bool:
    return bool({"discovered", "double", "mating"} & set(noun.adjectives)) or bool(noun.count)


def _goes_nowhere(clause: Clause) -> None:
    """ "Isn't going anywhere", "goes nowhere": cannot move."""
    subject = clause.subject
    if clause.lemma != "go" or subject is None or subject.type not in {"piece", "pronoun"}:
        return
    if clause.verb.modal not in {"", "will", "can"} or clause.verb.past or clause.objects:
        return
    said = [s.lemma for s in clause.states]
    anywhere = said == ["anywhere"] and clause.verb.negated
    nowhere = not said and "nowhere" in clause.adverbs and clause.verb.negated
    if not (anywhere or nowhere):
        return
    clause.states = []
    clause.adverbs = [a for a in clause.adverbs if a not in {"nowhere", "under way"}]
    clause.lemma, clause.verb = "move", Verb(True, "can")


__all__ = ["light"]
