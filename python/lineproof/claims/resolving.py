"""Resolving: what "it", "them", "one" and "she" mean in a clause."""

from __future__ import annotations

from dataclasses import replace

from .aim import aimed, fill
from .attached import COUNTED
from .clause import Clause
from .lexicon import NOUNS, VERBS, members
from .noun import Noun
from .possessive import named as possessed
from .reference import Reference
from .referring import Referring

_AVERTING = members("avert", VERBS) | {"do"}

_WAYS = frozenset({*NOUNS["diagonal"], *NOUNS["file"]})
_SHE = frozenset({"rook", "bishop", "knight", "pawn"})
"""Pieces that some teachers call "she"."""
_JUDGING = members("judge", VERBS) | members("recommend", VERBS) | {"call", "consider"}


class Resolving(Referring):
    """Puts pieces for pronouns."""

    def _resolve(self, clause: Clause) -> None:
        """Says what "it" and "them" mean, where they are no subject: the piece or pawn spoken of before."""
        self._way(clause)
        if self.aim is not None:
            fill(clause, self.aim)
        self.aim = aimed(clause) or self.aim
        if (
            self.last is not None
            and self.last.head == "king"
            and clause.subject is not None
            and clause.subject.head == "it"
            and not clause.inherited
        ):
            subject = clause.subject
            clause.subject = replace(self.last, first=subject.first, last=subject.last)
        topic = self.here.topic
        if (
            self.last is None
            and topic is not None
            and "king" in topic.split()
            and clause.subject is not None
            and clause.subject.head == "it"
            and not clause.inherited
        ):  # "Where is that king on e6 to hide? It's out in the open."
            square = topic.split()[-1] if " on " in topic else ""
            clause.subject = replace(
                clause.subject, type="piece", head="king", text=topic, square=square
            )
        topic = topic if topic and not Reference.read(topic).plural else None
        if self.last is None and topic and clause.passive:
            clause.objects = [
                o for o in clause.objects if not (o.type == "pronoun" and o.head == "it")
            ]  # "What is wrong with the knight? It's pinned."
        part = clause.form == "part" or (clause.form == "finite" and not clause.inherited)
        if clause.passive and not clause.objects and part and topic:
            head = topic.split()[-3] if " on " in topic else topic.split()[-1]
            square = topic.split()[-1] if " on " in topic else ""
            clause.objects.append(
                Noun("piece", head, topic, clause.first, clause.first, square=square)
            )  # "See that knight? Nailed to the king."
        if clause.subject is not None and clause.subject.head == "she" and not clause.inherited:
            queen = self._queen(clause)
            if queen is not None:
                subject = clause.subject
                clause.subject = replace(queen, first=subject.first, last=subject.last)
        done_to = clause.objects[0] if clause.passive and clause.objects else None
        if done_to is not None and done_to.head == "she":
            queen = self._queen(clause)
            if queen is not None:
                clause.objects[0] = replace(queen, first=done_to.first, last=done_to.last)
        about = clause.lemma in _AVERTING  # "nothing can be done about it": all that was said
        if self.last is not None and not about:
            for number, noun in enumerate(clause.objects):
                if clause.lemma in _JUDGING:
                    continue  # "I call it a mistake": the move
                if noun.type == "pronoun" and noun.head == "it" and self.last is not clause.subject:
                    queen = self._queen(clause) if noun.det == "her" else None
                    meant = queen or self._meant(clause, self.last)
                    clause.objects[number] = replace(meant, first=noun.first, last=noun.last)
            for number, place in enumerate(clause.places):
                if (
                    place.noun is not None
                    and place.noun.type == "pronoun"
                    and place.noun.head == "it"
                ):
                    clause.places[number] = place._replace(
                        noun=replace(self.last, first=place.first, last=place.last)
                    )
        self._refer(clause)
        possessed(clause, self.head)
        doer = clause.subject
        if self.head or (doer is not None and doer.type == "piece" and doer.head):
            for place in clause.places:
                if (
                    place.preposition in {"on", "at"}
                    and place.noun is not None
                    and place.noun.type == "square"
                    and clause.subject is not None
                    and clause.subject.head == "one"
                ):
                    text = f"the {self.head} on {place.noun.square}"
                    clause.subject = replace(
                        clause.subject,
                        type="piece",
                        head=self.head,
                        text=text,
                        square=place.noun.square,
                    )
                    clause.places.remove(place)  # "the one on d4"
                    break
                if (
                    place.preposition in {"on", "at"}
                    and place.noun is not None
                    and place.noun.type == "square"
                    and len(clause.objects) == 1
                    and clause.objects[0].head in {"one", "counterpart"}
                ):
                    own = doer is not None and doer.type == "piece" and not clause.inherited
                    head = doer.head if own and doer is not None else self.head
                    if clause.objects[0].head == "counterpart":
                        head = self.done_to or head
                    text = f"the {head} on {place.noun.square}"
                    clause.objects[0] = replace(
                        clause.objects[0],
                        type="piece",
                        head=head,
                        text=text,
                        square=place.noun.square,
                    )
                    clause.places.remove(place)
                    break
        nouns = [
            *([clause.subject] if clause.subject else []),
            *clause.objects,
            *[p.noun for p in clause.places if p.noun],
        ]
        if self.head == "pawn" and not COUNTED.isdisjoint(clause.adverbs):
            clause.objects = [
                replace(n, type="piece", head="pawn", plural=n.count > 1)
                if n.head.isdigit() and n.count
                else n
                for n in clause.objects
            ]  # "count the pawns and Black is two up"
        if self.head == "pawn" and "back" in clause.adverbs:
            clause.objects = [
                replace(n, type="piece", head="pawn", text="a pawn") if n.head == "one" else n
                for n in clause.objects
            ]  # "two pawns they have eaten, we have had one back"
        self._ones(clause)
        self._speak_of(clause, nouns)
        self.head = next((n.head for n in nouns if n.type == "piece" and n.head), self.head)
        self.lady = next((n for n in nouns if n.head == "queen" and not n.plural), self.lady)
        self.done_to = next(
            (o.head for o in clause.objects if o.type == "piece" and o.head), self.done_to
        )

    def _ones(self, clause: Clause) -> None:
        """Says what "one on f7" is, after "two mates hang in the air"."""
        if self.things and not clause.lemma and clause.places:
            clause.objects = [
                replace(n, head=self.things, type="noun", count=None)
                if n.head in {"one", "1"}
                else n
                for n in clause.objects
            ]
        nouns = [*([clause.subject] if clause.subject else []), *clause.objects]
        many = next(
            (n.head for n in nouns if n.type == "noun" and n.plural and (n.count or 0) > 1), ""
        )
        self.things = many or (self.things if not clause.lemma else "")

    def _way(self, clause: Clause) -> None:
        """Puts the file or diagonal spoken of before for "it": "the diagonal matters: it is shut"."""
        subject = clause.subject
        of_it = subject if not clause.passive else next(iter(clause.objects), None)
        if of_it is not None and of_it.type == "pronoun" and of_it.head == "it":
            if self.way is None or clause.inherited or self.last is not None:
                return
            way = replace(self.way, first=of_it.first, last=of_it.last)
            if clause.passive:
                clause.objects[0] = way
            else:
                clause.subject = way
        elif of_it is not None and not clause.inherited:
            nouns = [of_it, *(p.noun for p in clause.places if p.noun is not None)]
            self.way = next((n for n in nouns if n.type == "file" or n.head in _WAYS), None)

    def _queen(self, clause: Clause) -> Noun | None:
        """What "she" means: the queen spoken of before, or the one that has just moved; None when it may be a player."""
        if self.last is not None:
            if self.last.head == "queen" or self.lady is not None:
                return self.last if self.last.head == "queen" else self.lady
            there = any(p.noun is not None and p.noun.square for p in clause.places)
            bare = self.last.head in _SHE and not self.last.plural and not there
            return self.last if bare else None
        at = self.here.spot.moves[-1][2:4] if self.here.spot.moves else None
        if at is None or (self.here.board.piece_at(at) or "").lower() != "q":
            return None
        return Noun("piece", "queen", f"the queen on {at}", 0, 0, square=at)


__all__ = ["Resolving"]
