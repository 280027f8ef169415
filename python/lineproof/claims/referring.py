"""Referring: whose and which is meant by the other words of a clause: "he" by his move, "it" after a move, "her own", "its path"."""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import replace

from .acting import FIRST, Acting
from .board import NAMES
from .clause import Clause
from .here import Unread, but
from .lexicon import NOUNS, VERBS, members
from .noun import Noun, on_square

_ATTACKS = members("attack", VERBS) | members("defend", VERBS)
_KEEPING = frozenset({"leave", "have", "keep", "put", "bring", "get", "hide", "tuck", "expose", "shelter"})  # fmt: skip
"""Verbs of what a side does with its own king."""


_HIS = frozenset({"his", "their"})


class Referring(Acting):
    """Says who "he" is, and puts pieces for "it", "its" and "his own"."""

    def _who(self, clause: Clause, before: Clause | None) -> None:
        """Says who "he" is, where nobody is "we": who plays the move that the clause names with him, "with e5 he accepts a hole"."""
        subject = clause.subject
        if not self.here.neutral or subject is None or subject.text != "he" or self.here.he:
            return
        if before is not None and before.fronted == "by" and self.deed:
            self.here = but(self.here, he=self.here.mover)
            return
        move = next(
            (
                p.noun
                for p in clause.places
                if p.preposition in {"with", "by"} and p.noun is not None and _is_move(p.noun)
            ),
            None,
        )
        if move is not None:
            with suppress(Unread):
                self.here = but(self.here, he=self.here.named(move.text).side)

    def _meant(self, clause: Clause, last: Noun) -> Noun:
        """What "it" is as an object: no king where another piece was spoken of before him, "looks through it at the king, and attacks it"."""
        king = last.head == "king" and self.thing is not None and clause.lemma in _ATTACKS
        return self.thing if king and self.thing is not None else last

    def _refer(self, clause: Clause) -> None:
        """Puts pieces for what the clause says of them without their names."""
        self._arrived(clause)
        self._own(clause)
        self._its(clause)

    def _its(self, clause: Clause) -> None:
        """ "The knight is blocking its path": that of the piece spoken of before."""
        last = self.last
        if last is None or clause.subject is None or last.head == clause.subject.head:
            return
        clause.objects = [
            replace(o, adjectives=(*o.adjectives, last.head), square=last.square)
            if o.det == "its" and o.head in NOUNS["way"]
            else o
            for o in clause.objects
        ]

    def _own(self, clause: Clause) -> None:
        """ "The queen shuts her own bishop in", "Black hems in his own bishop": the bishop of the same side."""
        subject = clause.subject
        if subject is None or subject.type not in {"piece", "side", "move", "square"}:
            return
        if not any(o.type == "piece" and o.whose in _HIS for o in clause.objects):
            return
        with suppress(Unread):
            of_side = subject.type == "side"
            side = self.here.side(subject.text) if of_side else self.here.agent(subject.text).side
            whose = f"{side} 's"
            keeps = self.here.neutral and clause.lemma in _KEEPING  # "White has left his king bare"
            clause.objects = [
                replace(o, whose=whose, text=re.sub("^(?:his|their|the) ", f"{whose} ", o.text))
                if o.type == "piece"
                and o.whose in _HIS
                and ("own" in o.adjectives or (of_side and o.head == "king" and keeps))
                else o
                for o in clause.objects
            ]

    def _arrived(self, clause: Clause) -> None:
        """ "After Nf3 the bishop pins it": the piece that the move brings there."""
        if self.last is not None or self.here.topic is not None or not clause.objects:
            return
        said = (p.noun for p in clause.places if p.preposition in FIRST and p.noun is not None)
        move = next((noun for noun in said if _is_move(noun)), None)
        if move is None:
            return
        with suppress(Unread):
            named = self.here.named(move.text)
            at = named.uci[2:4]
            head = NAMES[(named.after.board.piece_at(at) or "p").lower()]
            clause.objects = [
                replace(o, type="piece", head=head, text=f"the {head} on {at}", square=at)
                if o.type == "pronoun" and o.head == "it"
                else o
                for o in clause.objects
            ]

    def _speak_of(self, clause: Clause, nouns: list[Noun]) -> None:
        """Remembers the piece spoken of last: where it stands, and which was no king; a piece that is denied is none."""
        spoken = next((n for n in nouns if n.type == "piece" and not n.plural and not n.no), None)
        at = [
            p.noun
            for p in clause.places
            if p.preposition in {"on", "at"} and p.noun is not None and p.noun.type == "square"
        ]
        if (
            spoken is not None
            and spoken in clause.objects
            and not spoken.square
            and len(at) == 1
            and not at[0].parts
        ):  # "that's a knight for life on d5"
            known = replace(spoken, text=re.sub("^an? ", "the ", spoken.text))
            spoken = replace(on_square(known, at[0].square, at[0].last), square=at[0].square)
        self.last = spoken or self.last
        if self.last is not None and self.last.head != "king":
            self.thing = self.last


def _is_move(noun: Noun) -> bool:
    return noun.type in {"move", "square"} and not noun.parts and not noun.plural


__all__ = ["Referring"]
