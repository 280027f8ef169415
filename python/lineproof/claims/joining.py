"""Joining: the rough clauses of a sentence put together where they are one, and straight."""

from __future__ import annotations

from .apposition import (
    WAITING,
    accompanied,
    contact,
    gapped,
    last_piece,
    only_places,
    said_beside,
    waits,
)
from .attached import COUNTED, attach, contrast, not_while
from .clause import Clause
from .cleft import all_one_has, cleft, only_one, what_first
from .deed import doing
from .dislocation import compared, dislocated, elided
from .echo import belongs, echoed, taken_up
from .gapping import again, also_by, by_which, by_whom, itself, never_seen_one, on_wing
from .letting import left_so
from .lexicon import VERBS, members
from .light import light
from .ordering import either, perpetual
from .partitive import partitive
from .parts import fold, none_such
from .raising import raised
from .standing import where_stands
from .straight import (
    active,
    aims,
    deny_nobody,
    goes,
    i_should,
    let_do,
    not_the_case,
    relative,
    shown,
    subjects,
    thats_us,
    twin,
    would_like,
)

_BARRED = frozenset({"impossible", "illegal", "out of the question", "ruled out", "hard", "harder", "difficult"})  # fmt: skip

COPULAS = members("be", VERBS) | {"have"}
"""Verbs whose complement may wait behind an aside."""


def joined(clauses: list[Clause]) -> list[Clause]:
    """Gives each clause its subject, and puts clefts, relatives and the passive straight."""
    found: list[Clause] = []
    dangling: Clause | None = None
    for clause in clauses:
        before = found[-1] if found else None
        waiting = waits(clause)
        if waiting is not None:
            dangling = waiting
        if dangling is not None and clause.turned and clause.joint == ",":
            clause.objects.insert(0, clause.subject)  # type: ignore[arg-type]
            clause.subject = None  # "the square, there being no pawn to contest it, is a weakness"
        if (
            clause.lemma
            and clause.subject is None
            and clause.form == "finite"
            and dangling is not None
            and clause.sub not in {"which", "who", "that", "what"}
        ):
            # "Black, I'd have you know, stands better": the noun that waits is the subject
            clause.subject = dangling.objects[-1]
            if not (before is not None and before is not dangling and before.sub):
                clause.see(dangling)  # an aside that claims something keeps its own words
            if before is not None and before is not dangling and only_places(before):
                clause.places = before.places + clause.places  # "that White, by two captures, wins"
                found.remove(before)
            if dangling.joint.endswith("that"):
                clause.joint = dangling.joint
            clause.places = dangling.places + clause.places
            clause.adverbs = dangling.adverbs + clause.adverbs
            clause.hedged = clause.hedged or dangling.hedged
            clause.joint, clause.sub = dangling.joint, dangling.sub or clause.sub
            found = [c for c in found if c is not dangling]
            dangling, before = None, (found[-1] if found else None)
        if before is not None:
            not_while(before, clause)
        by_which(clause)
        itself(clause)
        partitive(clause)
        if before is not None and (
            cleft(before, clause) or what_first(before, clause) or only_one(before, clause)
        ):
            continue
        if all_one_has(found, clause):
            found = found[
                : -2 if found[-1].subject and found[-1].subject.head in {"that", "this"} else -1
            ]
            before, dangling = (found[-1] if found else None), None
        if before is not None and (compared(before, clause) or perpetual(before, clause)):
            continue
        if before is not None and on_wing(before, clause):
            found.pop()
            before = found[-1] if found else None
        if before is not None and (dislocated(before, clause) or either(before, clause)):
            found.pop()
            before = found[-1] if found else None
        if before is not None and (
            also_by(before, clause) or by_whom(before, clause) or fold(before, clause)
        ):
            before.see(clause)
            if before.lemma:
                dangling = None
            continue
        if (
            clause.form in {"ing", "part"}
            and clause.subject is None
            and clause.joint == ","
            and before is not None
            and not before.lemma
            and (noun := last_piece(before)) is not None
        ):
            clause.subject, clause.inherited = noun, True  # "the knight on f7, forking two"
        if before is not None:
            gapped(before, clause)
            again(before, clause)
            elided(before, clause)
            taken_up(before, clause)
            echoed(before, clause)
            contact(before, clause)
            said_beside(before, clause)
        if (
            before is not None
            and before.sub == "what"
            and before.lemma
            and clause.lemma == "be"
            and clause.joint == "-"
            and clause.subject is None
            and (clause.objects or clause.places)
        ):
            before.objects += clause.objects  # "what White threatens is Nxf7"
            before.places += clause.places
            before.sub, before.joint = "", before.joint.removesuffix("what").strip()
            if clause.verb.negated:
                before.deny()
            before.see(clause)
            continue
        if (
            before is not None
            and not clause.lemma
            and clause.joint == ","
            and before.lemma in COPULAS
            and before.form == "finite"
            and not (before.objects or before.states or before.places)
            and _COMPLETE.isdisjoint(before.adverbs)
        ):
            before.objects, before.states, before.places = (
                clause.objects,
                clause.states,
                clause.places,
            )
            before.adverbs += clause.adverbs
            before.strays += clause.strays
            before.see(clause)  # "White has, I think, a slight edge"
            continue
        if (
            before is not None
            and clause.joint == "-"
            and clause.form == "finite"
            and clause.subject is None
            and before.form in {"ing", "to"}
            and not before.strays
            and before.joint in {"", ":", ",", "that", "so", "and", "because", "since"}
        ):
            if before.form == "ing" and before.subject is not None and not before.inherited:
                clause.subject, clause.inherited = before.subject, True  # "the man guarding it is"
            else:
                before.unreal = True  # "taking on c4 is compulsory": the -ing is the subject
                clause.subject = doing(before)
                clause.see(before)
        if (
            before is not None
            and clause.lemma == "be"
            and clause.joint == "-"
            and clause.subject is not None
            and clause.subject.type == "pronoun"
            and before.form == "part"
            and not (clause.objects or clause.states or clause.places)
        ):
            before.see(clause)  # "pinned it's not"
            if clause.verb.negated:
                before.deny()
            continue
        if clause.sub in {"which", "who", "that"} and clause.lemma:
            relative(before, clause)
        if before is not None:
            let_do(before, clause)
            aims(before, clause)
        if (
            clause.governor is None
            and clause.form in {"to", "base", "ing", "part"}
            and clause.joint.startswith("=")
            and before is not None
        ):
            clause.governor = before
            if clause.form == "to" and before.lemma == "be" and not before.objects:
                of = [p for p in before.places if p.preposition in {"of", "behind"}]
                clause.places = of + clause.places  # "the point of a4 is to stop b5"
            before.complement = before.complement or clause.form in {"to", "base"}
            if (
                clause.form == "part"
                and before.lemma in {"leave", "keep", "find", "get", "have"}
                and before.objects
                and before.objects[-1].type in {"piece", "square", "file"}
                and clause.subject is None
            ):
                clause.subject = before.objects[-1]  # "has left his king exposed"
            if clause.form == "part" and left_so(before, clause):
                continue
            if before.lemma == "make" and any(s.lemma in _BARRED for s in before.states):
                before.lemma = "prevent"  # "makes it impossible for White to capture"
        found.append(clause)
        if (
            not clause.lemma
            and clause.objects
            and not clause.states
            and (
                clause.joint in WAITING
                or clause.joint.lstrip(", ") in WAITING
                or (clause.joint == "that" and clause.objects[-1].type == "side")
            )
            and COUNTED.isdisjoint(clause.adverbs)
            and (clause.joint != "," or dangling is None or clause.objects[-1].type == "side")
        ):
            dangling = clause
        elif clause.lemma and clause.form == "finite" and not clause.sub and clause.joint != "-":
            dangling = None
    found = [part for clause in found for part in accompanied(clause)]
    attach(found)
    found = not_the_case(found)
    found = never_seen_one(found)
    subjects(found)
    found += [twin(clause) for clause in found if clause.twin is not None]
    found = raised(found)
    for number, clause in enumerate(found):
        goes(clause)
        i_should(clause)
        would_like(clause)
        contrast(found[number - 1] if number else None, clause)
        thats_us(clause)
        belongs(clause)
        none_such(clause)
        where_stands(clause)
        light(clause)
        shown(clause)
        active(clause)
        deny_nobody(clause)
    return found


_COMPLETE = frozenset({"off", "away", "gone", "up", "down", "back", "over"})
"""Adverbs with which "is" says all: "the queens are off, good riddance"."""


__all__ = ["COPULAS", "joined"]
