"""Deeds: the rough clauses of a sentence with the moves that they say in words put together, before each gets its subject.

"The capture of the pawn on d4" is one noun phrase, and so is "the bishop to d7". In "the capture, it is plain, is a mistake" it is the
capture that is a mistake; so it is in "it is a mistake to capture" and "a mistake, this capture".
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .noun import Noun
from .verbs import forms
from .worded import DOING, GENERAL, NOMINAL, TAKING, Worded

if TYPE_CHECKING:
    from .plain import Clause

_WITH_IT = frozenset({"on", "to", "of", "with", "at", "by", "from", "into"})
_MEN = frozenset({"piece", "square", "move"})
_OTHER = frozenset({"same", "other", "another", "only", "sole", "single", "better", "best", "next", "previous", "last", "such", "stronger", "strongest"})
_JUDGING = frozenset({"be", "seem", "look", "remain"})
_OPENS = frozenset({"", "and", "but", "so", ":", ";", "-", ", but", ", and", "that", "because", "for", "since", "as", "or"})


def deeds(clauses: list[Clause]) -> list[Clause]:
    """The clauses, moves in words put together and given to the verbs that judge them."""
    for clause in clauses:
        _whole(clause)
    _over_asides(clauses)
    _behind(clauses)
    return clauses


def deed(noun: Noun) -> str | None:
    """The words of a noun phrase that means a move, written out or not; None for any other."""
    if noun.no or noun.plural or noun.parts or not _OTHER.isdisjoint(noun.adjectives):
        return None
    if noun.type in {"move", "square"}:
        return noun.text
    if noun.type == "pronoun":
        return noun.text if noun.head in {"it", "this", "that", "which"} else None
    if noun.type != "noun" or noun.head not in NOMINAL:
        return None
    if noun.head in GENERAL and not noun.text.endswith("ing"):
        said = Worded.read(noun.text)
        if said is None or not (said.to or said.by) and noun.det not in {"this", "that"}:
            return None
    return noun.text


def doing(clause: Clause) -> Noun:
    """A move in words, from a clause: "taking on c4"."""
    parts = [f"{p.preposition} {p.noun.text}" for p in clause.places if p.noun is not None]
    ing = clause.lemma if clause.lemma.endswith("ing") else forms(clause.lemma)[4]
    text = " ".join([ing, *(o.text for o in clause.objects), *parts])
    return Noun("noun", "move", text, clause.first, clause.last)


def _whole(clause: Clause) -> None:
    """Puts what belongs to a noun of a move with it: "the capture" "of the pawn" "on d4"."""
    if clause.subject is not None:
        clause.subject = _joined(clause, clause.subject)
    clause.objects = [_joined(clause, noun) for noun in clause.objects]
    for place in list(clause.places):
        if place.noun is not None and place in clause.places:
            noun = _joined(clause, place.noun)
            at = clause.places.index(place)
            clause.places[at] = replace(place, noun=noun, last=max(place.last, noun.last))
    if not clause.lemma and len(clause.objects) == 1 and clause.places:
        piece, place = clause.objects[0], clause.places[0]
        goes = place.preposition == "to" and place.noun is not None and place.noun.type == "square"
        if goes and piece.type == "piece" and not piece.plural and place.first == piece.last + 1:
            assert place.noun is not None
            text = f"{piece.text} to {place.noun.text}"
            clause.objects[0] = replace(piece, type="noun", head="move", text=text, square="", last=place.last)  # fmt: skip
            del clause.places[0]


def _joined(clause: Clause, noun: Noun) -> Noun:
    going = next((a for a in noun.adjectives if a.endswith("ing") and a in DOING), "")
    if going and noun.type in {"square", "piece"} and not noun.det:
        noun = replace(noun, type="noun", head="move", text=f"{going} {noun.text}", adjectives=())
    elif noun.type != "noun" or noun.head not in NOMINAL:
        return noun
    while True:
        place = next((p for p in clause.places if p.first == noun.last + 1), None)
        if (
            place is None
            or place.preposition not in _WITH_IT
            or place.noun is None
            or place.noun.type not in _MEN
            or place.noun.parts
            or (place.preposition == "by" and clause.passive)
            or (place.preposition in {"with", "by"} and noun.head not in TAKING | {"move", "advance"} and place.noun.type != "piece")
        ):
            return noun
        noun = replace(noun, text=f"{noun.text} {place.preposition} {place.noun.text}", last=place.last)  # fmt: skip
        clause.places.remove(place)


def _over_asides(clauses: list[Clause]) -> None:
    """ "The capture, it is plain, is a mistake": what opens the sentence is the subject of the verb behind the aside."""
    for number, clause in enumerate(clauses):
        if clause.form != "finite" or clause.joint != "," or clause.sub:
            continue
        inverted = (
            clause.subject is not None and clause.subject.first > clause.verb_at and not clause.states
        )
        if (clause.subject is not None and not inverted) or clause.verb_at > clause.first >= 0:
            continue
        at = next((n for n in range(number - 1, -1, -1) if _opens(clauses[n])), None)
        if at is None or number - at < 2 or not all(map(_aside, clauses[at + 1 : number])):
            continue
        opener = clauses[at]
        if inverted and clause.subject is not None:
            clause.objects.insert(0, clause.subject)
        if opener.lemma:
            opener.unreal = True
            clause.subject = doing(opener)
        else:
            clause.subject = opener.objects[0]
        clause.see(opener)


def _opens(clause: Clause) -> bool:
    """Whether a clause is a noun, or a doing, that waits for its verb."""
    if clause.joint not in _OPENS or clause.states or clause.strays:
        return False
    if not clause.lemma:
        return len(clause.objects) == 1 and not clause.verb.negated
    return clause.form in {"ing", "to"} and clause.subject is None and not clause.passive


def _aside(clause: Clause) -> bool:
    """Whether a clause between two commas may be left out."""
    if clause.sub or clause.joint.startswith("-") or clause.joint.startswith("=") or clause.inherited:
        return True
    subject = clause.subject
    return clause.joint == "," and (subject is None or subject.text in {"it", "i", "we", "you", "one", "there", "that"})


def _behind(clauses: list[Clause]) -> None:
    """ "It is a mistake to capture", "it's a mistake, this capture", "a mistake, this capture": what "it" is stands behind."""
    for before, clause in zip(clauses, clauses[1:], strict=False):
        subject = before.subject
        pointer = subject is not None and subject.head in {"it", "this", "that"}
        judged = before.lemma in _JUDGING and (before.objects or before.states) and not before.passive
        if (
            clause.form == "to" and clause.joint.startswith("=") and subject is not None
            and subject.head == "it" and judged and clause.lemma and _moves(clause)
        ):  # fmt: skip
            clause.unreal = True
            before.subject = doing(clause)
            continue
        if clause.lemma or clause.states or clause.places or clause.joint != "," or len(clause.objects) != 1:
            continue
        noun = clause.objects[0]
        if noun.type == "pronoun" or deed(noun) is None:
            continue
        if pointer and judged and noun.det in {"this", "that", ""}:
            before.subject = noun
            before.see(clause)
        elif not before.lemma and _judges(before) and noun.type != "square":
            before.lemma, before.form, before.subject = "be", "finite", noun
            before.see(clause)


def _judges(clause: Clause) -> bool:
    """Whether a part without a verb says what something is: "somewhat dubious", "already a serious error"."""
    said = [*clause.objects, *clause.states]
    nouns = all(o.type == "noun" and o.head not in NOMINAL for o in clause.objects)
    return clause.joint in _OPENS and len(said) == 1 and nouns and not clause.verb.negated and not clause.places


def _moves(clause: Clause) -> bool:
    """Whether an infinitive plays a move."""
    men = [*clause.objects, *(p.noun for p in clause.places if p.noun is not None)]
    ing = forms(clause.lemma.split()[0])[4]
    return ing in DOING and any(n.type in _MEN for n in men) or clause.lemma == "castle"


__all__ = ["deed", "deeds", "doing"]
