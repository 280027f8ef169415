"""Onward: the position and the subject that a clause leaves to the next."""

from __future__ import annotations

from contextlib import suppress

from .barring import Barring
from .clause import CONDITIONS, Clause
from .course import CAPTURES, PLAYING, there_follows
from .here import Here, Named, Unread, but
from .lexicon import NOUNS, VERBS, members
from .one_move import ordered
from .worded import fitting

_ANSWERED = members("refute", VERBS) | {"meet", "answer"}

_HINDERING = members("prevent", VERBS)

_LINES = frozenset({"line", "variation", "game", "case", "position"})
"""Nouns that compare with another game: "in contrast to the lines with Nc3"."""


class Onward(Barring):
    """Moves on from clause to clause."""

    def _go_on(self, clause: Clause, claims: bool, after: Clause | None) -> None:
        """Moves on: to the position after the move that a clause names, and to whom and what it speaks of."""
        subject = clause.subject
        verb = clause.verb
        start = self.here.spot.moves
        free = not verb.negated and not verb.supposed
        if clause.governor is not None and clause.governor.lemma in _HINDERING:
            free = False
        if self.here.idle is not None and clause.sub in CONDITIONS:
            self.here = but(self.here, idle=None)
        passed = self._passes(clause, after)
        if passed is not None:
            self.here = but(self.here.at(passed), idle=self.here.spot, subject=None)
            return
        if clause.sub in CONDITIONS - {"unless", "before"} or clause.fronted == "by":
            deed = self._done(clause)
            if deed is not None:
                self.supposing = self.supposing or self.here.spot
                self.here = but(self.here.at(deed.after), topic=None)
                self.deed = True
                return
        told = clause.form == "finite" and not clause.sub and "under way" not in clause.adverbs
        if told and not (verb.done or verb.past):
            deed = self._done(clause) if free and not verb.modal else None
            if deed is not None and deed.before.moves == start and deed.uci == self.here.shown_next:
                self.here = but(self.here.at(deed.after), subject=deed.side, topic=None)
                self.last = None
                return  # "the pawn goes to g6, it hits the queen"
        if (
            clause.form in {"base", "finite"}
            and clause.subject is None
            and verb.negated
            and (against := ordered(self.here, clause) or _worded(self.here, clause)) is not None
        ):
            self.detour = self.here  # "don't run back to f6 with the knight, since ..."
            self.here = but(self.here.at(against.after), topic=None, subject=None)
            return
        if (
            clause.form in {"base", "finite"}
            and clause.subject is None
            and verb.negated
            and any(
                n.type in {"move", "square"} or n.head == "move"
                for n in [*clause.objects, *[p.noun for p in clause.places if p.noun]]
            )
        ):
            self.warned = True
            self.adrift = (
                True  # "don't go back to f6": what follows may speak of what comes after it
            )
        if (
            subject is not None
            and subject.type in {"move", "square"}
            and not clause.inherited
            and free
            and not subject.plural
            and (clause.lemma not in {"come", "follow"} or there_follows(clause))
        ):
            self._forward(subject.text)
        if clause.lemma in _ANSWERED and free:
            for noun in clause.objects:
                if noun.type in {"move", "square"} and not noun.plural:
                    self._forward(noun.text)  # "Nxe5 is refuted by Qg5"
        if (
            subject is not None
            and subject.type == "move"
            and not clause.inherited
            and free
            and clause.lemma in _ANSWERED
        ):
            self._forward(subject.text)
        if free and self._plays_on(clause):
            pass
        elif clause.lemma in CAPTURES and free:
            self._capture(clause)
        if clause.lemma in PLAYING and (free or clause.sub in CONDITIONS):
            for noun in clause.objects:
                if noun.type in {"move", "square"} and not noun.plural:
                    self._forward(noun.text)
        for place in clause.places:
            if (
                place.preposition in {"by", "with"}
                and place.noun is not None
                and place.noun.type == "move"
                and free
                and not any(o.head in NOUNS["perpetual"] for o in clause.objects)
            ):
                self._forward(place.noun.text)
        self.open = False
        if self.here.spot.moves == start:
            nouns = [
                *([subject] if subject and not clause.inherited else []),
                *clause.objects,
                *[p.noun for p in clause.places if p.noun],
            ]
            lines = any(n.head in _LINES for n in nouns) and not clause.lemma
            self.open = not lines and any(
                self._elsewhere(m.text) for n in nouns if n.type == "move" for m in n.members
            )
            spoken = (
                clause.unreal
                and after is not None
                and after.joint == "-"
                and after.subject is not None
                and after.subject.first <= clause.first
            )  # "interposing with Be6 was essential": the next clause speaks of it
            self.open = self.open and not spoken
            self.adrift = self.adrift or (self.open and not claims and clause.sub not in CONDITIONS)
        side: str | None = None
        if subject is not None and not clause.inherited:
            with suppress(Unread):
                side = (
                    self.here.agent(subject.text).side
                    if subject.type in {"piece", "move", "square"}
                    else self.here.side(subject.text)
                )
        named = subject.text if subject is not None and subject.text in {"white", "black"} else None
        piece = next(
            (
                n.text
                for n in [
                    *(clause.objects if clause.passive else []),
                    *([subject] if subject else []),
                    *clause.objects,
                    *[p.noun for p in clause.places if p.noun],
                ]
                if n.type == "piece"
            ),
            None,
        )
        topic = piece or self.here.topic
        if subject is not None and subject.head in {"it", "this", "that"} and self.here.topic:
            topic = self.here.topic  # "it attacks the queen, it is on c2 as well"
        elif subject is not None and subject.type == "pronoun" and piece is None:
            topic = self.here.topic
        elif subject is not None and subject.type == "noun" and subject.head == "move":
            topic = None  # "defending the pawn is natural, and it ...": the move
        elif subject is not None and subject.type in {"move", "square"}:
            topic = None  # "e5 hits the knight; it ...": the move
        here = self.here
        self.here = but(
            here, he=_other_man(clause, here.he), subject=side or here.subject, topic=topic, third=named or here.third,
        )  # fmt: skip

    def _plays_on(self, clause: Clause) -> bool:
        """Plays the move that a clause tells of as it comes: "our knight goes to d3", "we castle", "the king has to take her"."""
        verb = clause.verb
        if clause.form != "finite" or clause.sub or (clause.inherited and not clause.lemma):
            return False
        if (
            verb.done
            or verb.past
            or verb.modal not in {"", "must", "will"}
            or clause.governor is not None
        ):
            return False
        deed = self._done(clause)
        if deed is None or deed.before.moves != self.here.spot.moves:
            return False
        shown = self.here.shown_next
        if shown not in (None, deed.uci) and clause.lemma not in CAPTURES and verb.modal != "must":
            return False  # the line shows another move
        self.instead = self.here.spot
        self.here = self.here.at(deed.after)
        return True


def _other_man(clause: Clause, he: str | None) -> str | None:
    """Whom "he" means behind a clause of the author's: "I grant White his centre, and he stands better", "I have a nephew who ..."."""
    if clause.subject is None or clause.subject.text != "i" or he is not None:
        return he
    sides = [o.text for o in clause.objects if o.text in {"white", "black"}]
    if sides:
        return sides[0]
    return "" if any(o.head in NOUNS["person"] for o in clause.objects) else None


def _worded(here: Here, clause: Clause) -> Named | None:
    """The one move that a clause has as its object in words: "running back to f6 with the knight"."""
    noun = clause.objects[0] if len(clause.objects) == 1 else None
    if noun is None or noun.type != "noun" or noun.head != "move":
        return None
    found = fitting(here.spot, noun.text)
    return Named(here.spot, found[0], here.board.turn) if len(found) == 1 else None


__all__ = ["Onward"]
