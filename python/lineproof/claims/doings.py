"""Doings: the rough clauses of a sentence with the moves that they say in words put together, before each gets its subject.

"The capture of the pawn on d4" is one noun phrase, and so is "the bishop to d7". In "the capture, it is plain, is a mistake" it is the
capture that is a mistake; so it is in "it is a mistake to capture" and "a mistake, this capture".
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from .apposition import waits
from .chunk import Place
from .lexicon import VERBS, members
from .noun import Noun

if TYPE_CHECKING:
    from .clause import Clause
from .deed import deed, doing, whole
from .judged import (
    OPENS,
    alone,
    beside,
    cannot,
    forbidden,
    is_to,
    judges,
    moves,
    obliged,
    of_a_move,
    right_to,
    stranded,
)
from .worded import NOMINAL

_ADVISING = members("recommend", VERBS) | {"afford"}

_JUDGING = frozenset({"be", "seem", "look", "remain"})


def deeds(clauses: list[Clause]) -> list[Clause]:
    """The clauses, moves in words put together and given to the verbs that judge them."""
    for clause in clauses:
        whole(clause)
    for before, clause in pairwise(clauses):
        _gerund(before, clause)
    _over_asides(clauses)
    _behind(clauses)
    for before, clause in pairwise(clauses):
        stranded(before, clause)
        _same(before, clause)
        cannot(before, clause)
        beside(before, clause)
        obliged(before, clause)
    for clause in clauses:
        forbidden(clause)
    return clauses


def _gerund(before: Clause, clause: Clause) -> None:
    """ "Taking on c4 is compulsory": the -ing is the subject."""
    waits = (
        before.form in {"ing", "to"}
        and before.subject is None
        and not (before.passive or before.sub or before.strays)
    )
    if (
        waits
        and clause.joint == "-"
        and clause.form == "finite"
        and clause.subject is None
        and before.joint in OPENS
    ):
        before.unreal = True
        opener = (
            before.objects[-1]
            if before.objects and before.objects[-1].first < before.verb_at
            else None
        )
        clause.subject = opener or doing(before)  # "the only way to save the game is Nf3"
        clause.see(before)


def _over_asides(clauses: list[Clause]) -> None:
    """ "The capture, it is plain, is a mistake": what opens the sentence is the subject of the verb behind the aside."""
    for number, clause in enumerate(clauses):
        if clause.form != "finite" or clause.joint != "," or clause.sub:
            continue
        inverted = (
            clause.subject is not None
            and clause.subject.first > clause.verb_at
            and not clause.states
        )
        if (clause.subject is not None and not inverted) or clause.verb_at > clause.first >= 0:
            continue
        at = next((n for n in range(number - 1, -1, -1) if _opens(clauses[n])), None)
        if at is None or number - at < 2 or not all(map(_aside, clauses[at + 1 : number])):
            continue
        opener = clauses[at]
        if inverted and clause.subject is not None:
            clause.objects.insert(0, clause.subject)
        waiting = waits(opener)
        if waiting is not None:
            clause.subject = waiting.objects[
                0
            ]  # "by moving the h-pawn White, careless as ever, has"
        elif opener.lemma:
            opener.unreal = True
            clause.subject = doing(opener)
        else:
            clause.subject = opener.objects[0]
            if opener.places:
                clause.places = [*opener.places, *clause.places]
                whole(clause)  # "the exchange on c6, though natural, wins no pawn"
        for aside in clauses[at + 1 : number]:
            it = aside.subject
            if aside.sub in {"though", "although"} and it is not None and it.head == "it":
                assert clause.subject is not None  # it has just been given
                aside.subject = replace(clause.subject, first=it.first, last=it.last)
        if not any(c.sub for c in clauses[at + 1 : number]):
            clause.see(opener)  # an aside that claims something keeps its own words


def _opens(clause: Clause) -> bool:
    """Whether a clause is a noun, or a doing, that waits for its verb."""
    if clause.states or clause.strays:
        return False
    noun = alone(clause)
    if noun is not None and clause.joint == ",":
        return bool(noun.whose) or noun.det == "the"  # "of the checks, White's best, ..."
    if clause.joint not in OPENS:
        return False
    if not clause.lemma:
        return len(clause.objects) == 1 and not clause.verb.negated
    return clause.form in {"ing", "to"} and clause.subject is None and not clause.passive


def _aside(clause: Clause) -> bool:
    """Whether a clause between two commas may be left out."""
    if (
        clause.sub
        or clause.joint.startswith("-")
        or clause.joint.startswith("=")
        or clause.inherited
    ):
        return True
    subject = clause.subject
    return clause.joint == "," and (
        subject is None or subject.text in {"it", "i", "we", "you", "one", "there", "that"}
    )


def _behind(clauses: list[Clause]) -> None:
    """ "It is a mistake to capture", "it's a mistake, this capture", "a mistake, this capture": what "it" is stands behind."""
    for before, clause in pairwise(clauses):
        subject = before.subject
        if (
            before.lemma in _ADVISING
            and clause.form == "to"
            and clause.joint.startswith("=")
            and moves(clause)
        ):
            clause.unreal = True
            before.objects = [doing(clause)]  # "I would not advise Black to take it"
            continue
        if (
            before.lemma in _ADVISING
            and clause.form == "ing"
            and clause.joint in {"=", "=against", "=from"}
            and moves(clause)
        ):
            clause.unreal = True
            what = doing(clause)
            if clause.joint == "=":
                before.objects.append(what)  # "I do not recommend taking it"
            else:
                before.places.append(Place(clause.joint[1:], what, what.first, what.last))
            continue
        if (
            before.lemma == "do better"
            and clause.form == "to"
            and clause.joint.startswith("=")
            and moves(clause)
        ):
            clause.unreal = True
            what = doing(clause)
            before.places.append(Place("with", what, what.first, what.last))
            continue  # "would have done better to take the pawn"
        if right_to(before, clause):
            continue
        is_to(before, clause)
        judged = (
            before.lemma in _JUDGING and (before.objects or before.states) and not before.passive
        )
        if (
            clause.form == "to" and clause.joint.startswith("=") and subject is not None
            and subject.head == "it" and judged and clause.lemma and moves(clause)
        ):  # fmt: skip
            clause.unreal = True
            before.subject = doing(clause)
            continue
        if (
            subject is not None and subject.head == "it" and judged and not before.objects
            and clause.joint in {"-", "that"} and clause.subject is not None and clause.subject.first > before.last
        ):  # fmt: skip
            before.subject = replace(
                subject, head="that it is so"
            )  # "it is possible that Nc3 is better"
        if (
            clause.sub == "which"
            and clause.joint == ", which"
            and clause.lemma == "be"
            and clause.subject is None
            and of_a_move(clause)
        ):
            clause.subject = Noun("pronoun", "which", "which", clause.first, clause.first)
        if clause.joint != ",":
            continue
        noun = alone(clause)
        if (
            noun is None
            and clause.form == "ing"
            and clause.subject is None
            and judges(before)
            and all(o.det not in {"a", "an"} for o in before.objects)
            and moves(clause)
        ):
            clause.unreal, noun = True, doing(clause)  # "the best move, capturing on b5"
        if noun is None or noun.type == "pronoun" or deed(noun) is None:
            moved = alone(before)
            if (
                moved is not None
                and moved.type != "pronoun"
                and deed(moved)
                and judges(clause, joint=",")
            ):
                clause.lemma, clause.form, clause.subject = (
                    "be",
                    "finite",
                    moved,
                )  # "Bxb7, a superb move"
            continue
        if (
            judged
            and subject is not None
            and subject.head in {"it", "this", "that"}
            and noun.det in {"this", "that", ""}
        ):
            before.subject = noun
            before.see(clause)
        elif not before.lemma and judges(before):
            before.lemma, before.form, before.subject = "be", "finite", noun
            before.see(clause)


def _same(before: Clause, clause: Clause) -> None:
    """ "Castling is playable, although I don't recommend it": that move, not the one played last."""
    act = before.subject
    if act is None or act.head not in NOMINAL or deed(act) is None or clause.lemma not in _WEIGHING:
        return
    clause.objects = [
        replace(act, first=o.first, last=o.last) if o.type == "pronoun" and o.head == "it" else o
        for o in clause.objects
    ]


_WEIGHING = members("recommend", VERBS) | members("judge", VERBS) | {"call", "consider", "avoid"}
"""Verbs of what somebody thinks of a move."""

__all__ = ["deeds"]
