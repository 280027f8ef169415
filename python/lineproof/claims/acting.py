"""What a clause does on the board, when it stands under a condition or says by what means: the move that it means, or a pass."""

from __future__ import annotations

from contextlib import suppress

from .board import side_of
from .claim import Spot
from .clause import Clause
from .comparing import ONCE_MORE
from .course import CAPTURES, Course
from .here import Named, Unread
from .idling import conditional, idles
from .lexicon import ADJECTIVES, VERBS, members
from .noun import Noun

FIRST = frozenset({"after", "upon", "following", "in reply to", "in answer to"})

_GOING = members("move", VERBS) | members("jump", VERBS) | {"go", "step", "capture on", "land on", "land", "come", "get", "run"}  # fmt: skip

_BRINGING = frozenset(
    {"put", "place", "bring", "play", "drop", "move", "take", "swing", "retreat", "send", "post"}
)
"""Verbs with which a side sets a piece on a square."""

_EXCHANGES = members("exchange", VERBS)

_UNDISTURBED = members("undisturbed", ADJECTIVES)

_INSTEAD = frozenset({"first", "before", "instead", "in"})
"""First words of adverbs that say something of a move: "in between", "before recapturing"."""


class Acting(Course):
    """Finds the moves that clauses mean."""

    def _done(self, clause: Clause) -> Named | None:
        """The move that a clause says in words: "the bishop takes on f7", "he takes the queen"; None when it is not just one."""
        subject, verb = clause.subject, clause.verb
        if subject is not None and subject.head == "it" and self.last is not None:
            subject = self.last  # "should it capture"
        if (
            clause.passive
            or verb.negated
            or subject is None
            or subject.type not in {"piece", "side"}
        ):
            return None
        if clause.lemma == "castle":
            return self._castles(clause, subject)
        takes = clause.lemma in CAPTURES or clause.lemma in _EXCHANGES
        brought = _brought(clause) if subject.type == "side" and not takes else None
        if not takes and clause.lemma not in _GOING and brought is None:
            return None
        places = [
            p.noun.square
            for p in clause.places
            if p.noun is not None
            and p.preposition in {"to", "on", "into", "onto", "on to"}
            and p.noun.square
        ]
        prey = next((o for o in clause.objects if o.type in {"piece", "square"}), None)
        if brought is not None:
            prey = None
        taken = takes and any(o.head == "it" for o in clause.objects)
        spots = [self.here.spot]
        if self.here.spot.moves:
            spots.insert(0, self.here.spot.earlier(1))
        free = self.here.spot.passed()
        if free is not None:
            spots.append(free)
        for number, spot in enumerate(spots):
            here = self.here.at(spot)
            last = (
                self.here.spot.moves[-1]
                if number == 0 and len(spots) > 1 and spot is not self.here.spot
                else None
            )
            with suppress(Unread):
                side = spot.board.turn
                anyone = subject.text == "he" and self.here.neutral and clause.inherited
                if subject.type == "side" and not anyone and here.side(subject.text) != side:
                    continue
                by = here.find(subject.text, side) if subject.type == "piece" else None
                man = next(
                    (
                        p.noun.text
                        for p in clause.places
                        if p.preposition == "with" and p.noun is not None and p.noun.type == "piece"
                    ),
                    None,
                )
                man = brought.text if brought is not None else man
                if man is not None and by is None:
                    by = here.find(man, side)  # "if he takes f2 with the king"
                piece = prey is not None and prey.type == "piece"
                to = set(here.find(prey.text)) if prey is not None and piece else set()
                to |= {prey.square} if prey is not None and prey.type == "square" else set(places)
                if taken and prey is None:
                    spoken = self.last.text if self.last is not None else ""
                    theirs = set(here.find(spoken)) if spoken else set()
                    theirs = {
                        at for at in theirs if side_of(here.board.piece_at(at) or "K") != side
                    }
                    to |= theirs or ({spot.moves[-1][2:4]} if spot.moves else set())
                found = [
                    uci
                    for uci in spot.board.legal_moves()
                    if uci[2:4] in to
                    and (by is None or uci[:2] in by)
                    and (not takes or "x" in spot.board.san(uci))
                ]
                if last is not None:
                    found = [uci for uci in found if uci == last]
                if len(found) == 1:
                    return Named(spot, found[0], side)
        return None

    def _castles(self, clause: Clause, subject: Noun) -> Named | None:
        """The one way to castle of the side to move: "we castle", "he castles long"."""
        spot = self.here.spot
        with suppress(Unread):
            if subject.type == "side" and self.here.side(subject.text) == spot.board.turn:
                said = {*clause.adverbs, *(s.lemma for s in clause.states)}
                far = not said.isdisjoint({"long", "queenside"})
                ways = [m for m in spot.board.legal_moves() if spot.board.san(m).startswith("O-O")]
                if far or not said.isdisjoint({"short", "kingside"}):
                    ways = [m for m in ways if spot.board.san(m).startswith("O-O-O") is far]
                if len(ways) == 1:
                    return Named(spot, ways[0], spot.board.turn)
        return None

    def _passes(self, clause: Clause, after: Clause | None) -> Spot | None:
        """The position after a pass, where a clause lets the side to move do nothing: "if Black does nothing", "let White pass, and"."""
        side = self.here.board.turn
        told = self.lets or clause.form == "base"
        told = told and after is not None and after.joint.endswith(("and", "-"))
        self.lets = clause.lemma == "let" and clause.form == "base"
        undisturbed = clause.lemma == "leave" and clause.form == "part" and clause.passive
        if undisturbed and any(s.lemma in _UNDISTURBED for s in clause.states):
            left = clause.objects[0] if len(clause.objects) == 1 else None
            with suppress(Unread):
                if left is None or self.here.side(left.text) != side:
                    return self.here.spot.passed()
            return None
        if not (conditional(clause) or told):
            return None
        idle, who = idles(clause)
        if not idle:
            return None
        if who is not None and who.type == "side":
            with suppress(Unread):
                if self.here.side(who.text) != side:
                    return None
        return self.here.spot.passed()

    def _only_moves(self, clause: Clause, clauses: list[Clause], number: int) -> bool:
        """Plays a part of the sentence that is nothing but moves; False when it says something of them."""
        upon = clause.places[0] if len(clause.places) == 1 and not clause.lemma else None
        if (
            upon is not None
            and upon.noun is not None
            and not (clause.objects or clause.states)
            and upon.preposition in FIRST
            and upon.noun.type == "move"
            and not upon.noun.parts
        ):
            self._play(upon.noun.text)  # "upon Be2, whereby ..."
            return True
        if (
            not clause.lemma
            and len(clause.objects) == 1
            and clause.objects[0].head == "pawn"
            and clause.objects[0].square
            and not clause.places
        ):
            near = [clauses[n] for n in (number - 1, number + 1) if 0 <= n < len(clauses)]
            if any(not c.lemma and c.objects and c.objects[0].type == "move" for c in near):
                self._play(clause.objects[0].square)  # "queen h5, pawn g6, queen takes e5"
                return True
        if not clause.lemma and not clause.objects and not clause.states and clause.places:
            led = [p.noun for p in clause.places if p.preposition in FIRST | {"on", "upon"}]
            if len(led) == len(clause.places) and all(
                n is not None and n.type == "move" for n in led
            ):
                for noun in led:
                    for move in noun.members if noun is not None else ():
                        self._play(move.text)
                return True  # "On bishop g5, a check by two pieces, ..."
        if (
            clause.lemma
            or not clause.objects
            or any(o.type not in {"move", "square"} for o in clause.objects)
        ):
            return False
        if "next" in clause.adverbs and not number:
            return False  # "b4 next": by the side that has just moved
        texts = [move.text for noun in clause.objects for move in noun.members]
        try:
            end = self.here.play(" ".join(texts))  # "Nxd5 Nxd5": each its own
        except Unread:
            for text in texts:
                self._play(text)
        else:
            self.here = self.here.at(end)
            clause.objects = clause.objects[-1:]
            self.adrift = self.adrift and not self.warned
        told = any(a.split()[0] in _INSTEAD or a in ONCE_MORE for a in clause.adverbs)
        check = clause.objects[-1].text.endswith(("+", "#"))
        return not (clause.places or clause.states or told or check)


def _brought(clause: Clause) -> Noun | None:
    """The piece that a side puts on a square: "White brings the knight to c3", "we put the queen on d8"."""
    if clause.lemma not in _BRINGING or len(clause.objects) != 1:
        return None
    man = clause.objects[0]
    return man if man.type == "piece" and not (man.plural or man.parts or man.no) else None


__all__ = ["FIRST", "Acting"]
