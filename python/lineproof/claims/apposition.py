"""What stands beside a noun or lacks its verb: "d3, a backward pawn", "and Black the c-file", "the hole he has left on d5"."""

from __future__ import annotations

from dataclasses import replace

from .clause import Clause
from .lexicon import NOUNS, members
from .noun import Noun

_OF_A_PLACE = frozenset(
    n
    for name in ("backward pawn", "isolated pawn", "passed pawn", "outpost", "hole")
    for n in members(name, NOUNS)
) | {"backward", "isolated", "passed", "half open", "open", "wide open"}
"""What may stand in apposition to a pawn, a square or a file."""

_OWNED = frozenset(
    n
    for name in (
        "isolated pawn", "doubled pawn", "hanging pawn", "backward pawn", "passed pawn", "bishop pair", "majority", "outpost", "opposite bishop",
    )
    for n in members(name, NOUNS)
) | {"more space", "more room", "better bishop", "good bishop", "bad bishop"}  # fmt: skip
"""What a side has "with" which it plays on."""

WAITING = frozenset({"", "and", "but", "so", ":", "-", ";", "while", "whereas", "because", "since", "that", "as", "for", "although", "though", "yet", "and yet"})  # fmt: skip
"""Joints of a clause whose noun may wait for its verb behind an aside."""


def waits(clause: Clause) -> Clause | None:
    """ "By moving the h-pawn White, careless as ever, has ...": the side behind the -ing and its object waits for the verb."""
    last = clause.objects[-1] if clause.objects else None
    if (
        last is None
        or clause.form != "ing"
        or not clause.fronted
        or last.type != "side"
        or last.text not in {"white", "black", "we", "he", "they", "you"}
        or (len(clause.objects) > 1 and clause.objects[-2].type == "side")
        or (len(clause.objects) == 1 and (not clause.places or last.first < clause.places[-1].last))
        or last.last != clause.last
    ):
        return None
    clause.objects.pop()
    clause.last = last.first - 1
    return Clause(objects=[last], first=last.first, last=last.last)


def last_piece(clause: Clause) -> Noun | None:
    """The piece or square that a part without a verb ends with."""
    nouns = [*clause.objects, *[p.noun for p in clause.places if p.noun is not None]]
    last = max(nouns, key=lambda n: n.last, default=None)
    return last if last is not None and last.type in {"piece", "square"} and not last.no else None


def only_places(clause: Clause) -> bool:
    return bool(clause.places) and not (
        clause.lemma or clause.objects or clause.states or clause.strays or clause.sub
    )


def gapped(before: Clause, clause: Clause) -> None:
    """ "White has the e-file and Black the c-file": the verb of the clause before."""
    if before.lemma == "castle" and not before.verb.negated and not clause.lemma:
        _castles_too(before, clause)
    elif (
        not clause.lemma
        and before.lemma in {"have", "get", "own", "keep", "hold"}
        and not before.verb.negated
        and clause.joint in {"and", ", and", ",", "but", ", but", ";"}
        and len(clause.objects) > 1
        and clause.objects[0].type == "side"
        and clause.objects[0].text in {"white", "black", "we", "he", "they", "you"}
    ):
        clause.lemma, clause.verb, clause.form = before.lemma, before.verb, before.form
        clause.subject = clause.objects.pop(0)


def _castles_too(before: Clause, clause: Clause) -> None:
    """ "White castled queenside, Black kingside"."""
    wing = clause.objects[0] if len(clause.objects) == 1 and not clause.states else None
    if wing is not None and wing.head in {"kingside", "queenside"} and wing.whose:
        who = wing.whose.removesuffix(" 's")
        side = Noun("side", who, who, wing.first, wing.first)
        clause.objects = [side, replace(wing, whose="", text=wing.head)]
    if (
        len(clause.objects) + len(clause.states) == 2
        and clause.objects
        and clause.objects[0].type == "side"
        and clause.joint in {"and", ", and", ",", "but", ", but", ";"}
    ):
        clause.lemma, clause.verb, clause.form = before.lemma, before.verb, before.form
        clause.subject = clause.objects.pop(0)


def contact(before: Clause, clause: Clause) -> None:
    """ "The hole he's left on d5": a relative clause without its pronoun has the noun before it as its object."""
    if (
        clause.joint != "-"
        or clause.form != "finite"
        or clause.lemma
        not in {
            "leave",
            "have",
            "get",
            "give",
            "make",
            "create",
            "own",
            "do",
            "find",
            "see",
            "know",
            "play",
        }
        or clause.objects
        or clause.subject is None
        or clause.subject.type != "side"
        or not before.objects
    ):
        return
    last = before.objects[-1]
    if (
        (last.type == "noun" or last.no)
        and last.last == before.last
        and clause.subject.first == last.last + 1
    ):
        clause.objects.append(last)


def said_beside(before: Clause, clause: Clause) -> None:
    """ "d3, a backward pawn": what is said of the noun just before it."""
    if clause.lemma or clause.joint != "," or clause.places or clause.strays or clause.verb.negated:
        return
    said = [o.head for o in clause.objects] + [s.lemma for s in clause.states]
    if len(said) != 1 or said[0] not in _OF_A_PLACE:
        return
    nouns = [
        *before.objects,
        *[p.noun for p in before.places if p.noun is not None],
        *([before.subject] if before.subject else []),
    ]
    last = max(nouns, key=lambda n: n.last, default=None)
    if last is not None and last.type in {"piece", "square", "file"} and last.last == before.last:
        clause.lemma, clause.form, clause.subject = "be", "finite", last


def accompanied(clause: Clause) -> list[Clause]:
    """ "With an isolated pawn Black must stay active": he has it, and the rest."""
    subject = clause.subject
    first = clause.places[0] if clause.places else None
    if (
        first is None
        or first.preposition != "with"
        or first.noun is None
        or subject is None
        or subject.type != "side"
        or first.first > subject.first
        or first.noun.no
        or not owned(first.noun)
        or clause.verb.modal in {"would", "could", "might", "should"}
    ):
        return [clause]
    own = [first]
    for place in clause.places[1:]:
        if place.first == own[-1].last + 1:
            own.append(place)
    clause.places = [p for p in clause.places if p not in own]
    has = Clause("have", subject, [first.noun], own[1:], form="finite", joint=clause.joint)
    has.sub = clause.sub
    has.first, has.last = first.first, own[-1].last
    clause.first = subject.first
    clause.joint = "-"
    return [has, clause]


def owned(noun: Noun) -> bool:
    """Whether it is something of the position that a side has."""
    said = {noun.head, *(f"{a} {noun.head}" for a in noun.adjectives)}
    return not said.isdisjoint(_OWNED)


__all__ = [
    "WAITING",
    "accompanied",
    "contact",
    "gapped",
    "last_piece",
    "only_places",
    "owned",
    "said_beside",
    "waits",
]
