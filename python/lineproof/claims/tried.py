"""Tried: the move that a question tries, of which the next sentence then speaks: "Taking on d5? It loses a piece."."""

from __future__ import annotations

from contextlib import suppress

from .acting import Acting
from .claim import Spot
from .clause import Clause
from .course import DEEDS
from .deed import doing
from .here import Here, Unread
from .lexicon import VERBS, members
from .noun import Noun
from .sentence import Sentence
from .worded import fitting

_DOING = DEEDS | {w.split()[0] for w in members("capture", VERBS)}
_REFUTING = members("refute", VERBS)
_ASKING = frozenset({"who", "which", "where", "when", "how", "whose"})


def tried(here: Here, sentence: Sentence, clauses: list[Clause]) -> Spot | None:
    """The position after the move that a question tries and does not ask for; None when it tries none that can be played here."""
    words = sentence.words
    if not words or words[-1].norm != "?" or not clauses:
        return None
    if any(w.norm in _ASKING for w in words[:2]):
        return None
    found = _move(here, sentence, clauses[-1])
    return found if found is not None and found.moves != here.spot.moves else None


def _move(here: Here, sentence: Sentence, clause: Clause) -> Spot | None:
    with suppress(Unread):
        if not clause.lemma:
            moves = [o for o in clause.objects if o.type in {"move", "square"}]
            named = here.named(moves[0].text) if len(moves) == len(clause.objects) == 1 else None
        elif clause.form == "ing" and clause.lemma.split()[0] in _DOING:
            before = [here.spot, *([here.spot.earlier(1)] if here.spot.moves else [])]
            for spot in before:  # "grabbing the bishop?", of the side that has just moved its king
                ways = fitting(spot, doing(clause).text)
                if len(ways) == 1:
                    return spot.play(ways[0])
            return None
        elif clause.sub == "if" and clause.form == "finite":
            named = Acting(here, sentence)._done(clause)
        else:
            named = None
        if named is not None and named.before.moves == here.spot.moves:
            return named.after
    return None


def said_of_it(clauses: list[Clause]) -> None:
    """Gives an answer without a subject the move as its subject: "Loses the game.", "Terrible."."""
    first = clauses[0] if clauses else None
    if first is not None:
        _refuted(first, clauses)
    if first is None or first.subject is not None or first.sub or first.places:
        return
    if not first.lemma and first.states and not first.objects:
        first.lemma, first.form = "be", "finite"
    if first.lemma and first.form == "finite" and not first.passive:
        first.subject = Noun("pronoun", "that", "that", first.first, first.first)


def _refuted(first: Clause, clauses: list[Clause]) -> None:
    """ "Refuted by exf2", "Refuted, pawn takes f2": that it is, and by which move."""
    if first.lemma not in _REFUTING or first.form != "part" or first.objects or first.sub:
        return
    then = clauses[1] if len(clauses) > 1 and first.subject is None else None
    if then is not None and _only_a_move(then):
        first.subject = then.objects[0]
        first.see(then)
        clauses.remove(then)
    if first.subject is not None and first.subject.type == "move":
        first.objects.append(Noun("pronoun", "that", "that", first.first, first.first))
        first.form = "finite"


def _only_a_move(clause: Clause) -> bool:
    bare = not (clause.lemma or clause.sub or clause.places or clause.states)
    return bare and [o.type for o in clause.objects] == ["move"] and clause.joint in {",", ":", "-"}


__all__ = ["said_of_it", "tried"]
