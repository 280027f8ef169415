"""Raising: what is said of doing something put as its being done or not: "it is impossible for White to castle" is "White cannot castle".

>>> from lineproof.claims.plain import plain
>>> from lineproof.claims.sentence import sentences
>>> for said in ("It is too early for White to castle.", "Is there no way to castle for Black? Black has no chance to castle.", "Black is unable to castle."):
...     clause = plain(sentences(said, 0)[-1])[-1]
...     print(clause.subject.text, clause.lemma, clause.verb.negated, clause.verb.modal)
white castle True can
black castle True can
black castle True can
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .chunk import Adjective, Place
from .lexicon import VERBS, members
from .noun import Noun
from .verbs import Verb

if TYPE_CHECKING:
    from .clause import Clause

_BARRED = frozenset({"impossible", "illegal", "out of the question", "ruled out", "too early", "too soon", "too late", "unable", "forbidden", "not possible", "not ready", "powerless", "not free"})  # fmt: skip
_OPEN = frozenset({"possible", "able", "free", "legal", "still possible", "at liberty", "always possible"})  # fmt: skip
_CHANCE = frozenset({"way", "chance", "opportunity", "possibility", "means", "option", "place", "nowhere"})  # fmt: skip
_RIGHTS = frozenset({"right", "privilege", "licence", "permission", "right of way"})
_SEEMS = frozenset({"seem", "appear", "happen", "turn out"})
_TAKING = members("capture", VERBS) | {"take", "take on"}
_ONLY = frozenset({"only", "merely", "just", "at first", "at first sight"})
_RAISED = frozenset({"castle", "hide", "defend", "protect", "develop", "move"})
"""What is said of a position by saying whether it can be done."""


def raised(clauses: list[Clause]) -> list[Clause]:
    """The clauses, with "be impossible to" and "have no time to" made into "cannot"."""
    found: list[Clause] = []
    for clause in clauses:
        above = clause.governor
        if above is not None and found and found[-1] is above:
            if _right(above, clause) or _left_to_be_taken(above, clause):
                continue
            if _to_move_with(above, clause):
                found[-1] = clause
                continue
        if above is not None and found and found[-1] is above and _seems(above, clause):
            clause.verb = Verb(
                clause.verb.negated != above.verb.negated, "", clause.verb.done, above.verb.past
            )
            clause.subject, clause.inherited = above.subject, above.inherited
            clause.governor, clause.form = None, "finite"
            clause.hedged = clause.hedged or above.lemma in _SEEMS
            clause.joint, clause.sub = above.joint, above.sub
            clause.adverbs = above.adverbs + clause.adverbs
            clause.see(above)
            found[-1] = clause
            continue
        if (
            above is None
            or clause.form != "to"
            or clause.lemma not in _RAISED
            or not found
            or found[-1] is not above
            or above.sub
        ):
            found.append(clause)
            continue
        barred = _barred(above)
        who = _who(above)
        if barred is None or who is None:
            found.append(clause)
            continue
        clause.subject, clause.inherited, clause.governor = who, False, None
        clause.verb = Verb(barred != clause.verb.negated, "can", False, above.verb.past)
        clause.form = "finite"
        clause.joint, clause.sub = above.joint, above.sub
        clause.adverbs = above.adverbs + clause.adverbs
        clause.hedged = clause.hedged or above.hedged
        clause.see(above)
        found[-1] = clause
    return found


def _seems(above: Clause, clause: Clause) -> bool:
    """Whether a clause only softens the one under it: "seems to have more space", "is there to protect e5"."""
    there = above.lemma == "be" and "there" in above.adverbs and above.subject is not None
    if there and above.subject is not None and above.subject.type in {"piece", "square"}:
        return clause.form == "to" and not (above.verb.modal or above.verb.past or above.objects or above.states)  # fmt: skip
    return (
        above.lemma in _SEEMS
        and clause.form == "to"
        and above.form == "finite"
        and not (above.verb.modal or above.verb.past or above.objects or above.states)
        and _ONLY.isdisjoint(above.adverbs)
    )


def _right(above: Clause, clause: Clause) -> bool:
    """ "Loses the right to castle" is "loses castling"."""
    nouns = above.objects or ([above.subject] if above.subject is not None else [])
    if clause.lemma != "castle" or clause.form != "to" or not nouns:
        return False
    last = nouns[-1]
    if last.head not in _RIGHTS or last.last + 1 != clause.first:
        return False
    whose = f"{last.whose} " if last.whose else ""
    new = replace(last, head="castling", text=f"{whose}castling", adjectives=(), last=clause.last)
    if above.objects:
        above.objects[-1] = new
    else:
        above.subject = new
    above.adverbs += [a for a in clause.adverbs if a not in above.adverbs]
    above.states += clause.states
    above.places += clause.places
    above.see(clause)
    above.complement = False
    return True


def _left_to_be_taken(above: Clause, clause: Clause) -> bool:
    """ "Leaves the queen to be taken on d1" is "leaves the queen on offer on d1"."""
    if above.lemma != "leave" or not above.objects or above.states:
        return False
    if clause.form != "to" or not clause.passive or clause.lemma not in _TAKING:
        return False
    above.states.append(Adjective("on offer", (), clause.first, clause.last))
    squares = [o for o in clause.objects if o.type == "square"]
    above.places += [Place("on", o, o.first - 1, o.last) for o in squares] + clause.places
    above.adverbs += clause.adverbs
    above.complement = False
    above.see(clause)
    return True


def _to_move_with(above: Clause, clause: Clause) -> bool:
    """ "It is White to move with a mate in two": White has it."""
    it = above.subject is not None and above.subject.head in {"it", "that"}
    if not it or above.lemma != "be" or [o.type for o in above.objects] != ["side"]:
        return False
    if above.verb != Verb() or clause.form != "to" or clause.lemma not in {"move", "play"}:
        return False
    place = clause.places[0] if clause.places else None
    if place is None or place.preposition != "with" or place.noun is None or clause.objects:
        return False
    clause.subject, clause.inherited, clause.governor = above.objects[0], False, None
    clause.lemma, clause.form, clause.objects = "have", "finite", [place.noun]
    del clause.places[0]
    clause.joint, clause.sub = above.joint, above.sub
    clause.adverbs = above.adverbs + clause.adverbs
    clause.hedged = clause.hedged or above.hedged
    clause.see(above)
    return True


def _barred(above: Clause) -> bool | None:
    """Whether a clause says that what follows cannot be done; None when it says nothing of that."""
    if above.lemma == "be" and len(above.states) == 1:
        state = above.states[0]
        said = " ".join((*state.adverbs, state.lemma))
        if said in _BARRED or state.lemma in _BARRED:
            return not above.verb.negated
        if said in _OPEN or state.lemma in _OPEN:
            return above.verb.negated
        return None
    if above.lemma == "leave" and above.subject is not None and above.subject.head == "nothing":
        return True  # "there is nothing left for the king to hide behind"
    if above.lemma in {"be", "have", "get", "find", "leave"} and above.objects:
        noun = above.objects[-1]
        if (noun.head in _CHANCE and noun.type == "noun") or (
            noun.head in {"nothing", "nowhere"} and not noun.square
        ):
            return True if noun.no or above.verb.negated else None
    return None


def _who(above: Clause) -> Noun | None:
    """Whom it is said of: "for White", or the subject."""
    for place in above.places:
        if (
            place.preposition == "for"
            and place.noun is not None
            and place.noun.type in {"side", "piece"}
        ):
            return place.noun
    subject = above.subject
    if subject is None or subject.head in {"it", "there", "this", "that"}:
        return None
    return subject if subject.type in {"side", "piece"} and not above.places else None


__all__ = ["raised"]
