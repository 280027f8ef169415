"""Idling: clauses that let the side to move do nothing, "if Black does nothing", "left alone", "ignored"."""

from __future__ import annotations

from .clause import Clause
from .lexicon import VERBS, members
from .noun import Noun

_IDLE = members("idle", VERBS)
_UNDER = frozenset({"unless", "if", "when", "should", "once", "in case"})
_FREE = frozenset(
    {"alone", "unhindered", "undisturbed", "unchecked", "unmolested", "unopposed", "in peace"}
)
_REACTING = frozenset(
    {
        "react",
        "reply",
        "respond",
        "answer",
        "defend",
        "pay attention",
        "take care",
        "take precautions",
        "watch out",
        "look out",
        "move",
        "act",
        "notice",
        "see",
    }
)
_CAREFUL = frozenset(
    {"careful", "alert", "awake", "attentive", "vigilant", "cautious", "watchful", "wide awake"}
)
_MISSING = frozenset({"ignore", "overlook", "miss", "disregard"})
_QUIET = frozenset({"waiting", "quiet", "useless", "nothing", "random", "null"})
_SELVES = frozenset({"himself", "itself", "themselves", "he", "it", "we", "they"})


def idles(clause: Clause) -> tuple[bool, Noun | None]:
    """Whether a clause, whatever it stands under, says that nothing is done, and who does nothing where it is said."""
    who = clause.subject
    if clause.lemma in {"leave", "give", "allow", "have", "get", "grant"}:
        return _left(clause), None
    idle = clause.lemma in _IDLE or (clause.lemma == "do" and clause.nobody)
    idle = idle or any(s.lemma in {"asleep", "careless"} for s in clause.states)
    if clause.nobody and who is not None and who.no:
        nothing = clause.lemma in {"happen", "do"} or any(s.lemma == "done" for s in clause.states)
        return nothing, None  # "if nothing is done"
    denied = clause.verb.negated != (clause.sub == "unless")
    something = clause.lemma == "do" and any(o.head == "something" for o in clause.objects)
    if denied and (clause.lemma in _REACTING or something):
        return True, who
    awake = {s.lemma for s in clause.states} | set(clause.adverbs)
    if denied and not _CAREFUL.isdisjoint(awake):
        return True, who
    if clause.sub == "unless":
        return False, None
    if clause.verb.negated and not clause.nobody:
        return False, None
    if clause.lemma in _MISSING:
        return True, who if not clause.passive else None
    if clause.lemma in {"play", "make"}:
        idle = any(o.head == "move" and _QUIET & set(o.adjectives) for o in clause.objects)
        idle = idle or (clause.lemma == "play" and "slowly" in clause.adverbs)
    if clause.lemma in {"waste", "lose"}:
        idle = any(o.head in {"time", "move", "tempo"} for o in clause.objects)
    return idle, who


def _left(clause: Clause) -> bool:
    """ "Left alone", "given time", "given a free hand", "left in peace", "left to himself"."""
    said = [o for o in clause.objects if o.type == "noun"]
    if clause.verb.negated:
        return False
    if any("hand" in o.head or o.head == "time" for o in said):
        return True
    if any(
        o.head == "move" and {"free", "another", "extra"} & {*o.adjectives, o.det} for o in said
    ):
        return True
    if any(s.lemma in _FREE for s in clause.states) or not _FREE.isdisjoint(clause.adverbs):
        return True
    return clause.lemma == "leave" and any(
        p.noun is not None
        and (
            (p.preposition == "in" and p.noun.head == "peace")
            or (p.preposition == "to" and p.noun.head in _SELVES)
        )
        for p in clause.places
    )


def conditional(clause: Clause) -> bool:
    """Whether it stands under "if" or the like, or is a participle in front: "left alone, White ..."."""
    if clause.sub in _UNDER:
        return True
    return (
        clause.form == "part"
        and not clause.sub
        and clause.joint in {"", "and", "but", ",", "-"}
        and (clause.lemma in {"leave", "give", "grant", "allow"} | _MISSING)
    )


__all__ = ["conditional", "idles"]
