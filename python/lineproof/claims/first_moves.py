"""First moves: the position that a clause speaks of, after the moves that it names first."""

from __future__ import annotations

from contextlib import suppress

from .acting import FIRST
from .chunk import Place
from .clause import Clause
from .here import Here, Named, Unread, but
from .lexicon import VERBS, members
from .noun import Noun
from .one_move import named_thing
from .onward import Onward
from .registry import kind_of

_ROADS = members("lead to", VERBS) | members("transpose", VERBS) | members("transposing", VERBS)


class FirstMoves(Onward):
    """Plays what a clause names first."""

    def _of_passive(self, clause: Clause, here: Here) -> Here:
        """The position after what a passive speaks of: "a knight check on f6 would be given by two pieces"."""
        if not clause.passive or not clause.objects:
            return here
        found = named_thing(here, clause.objects[0], clause.places)
        if found is None:
            return here
        clause.places = [p for p in clause.places if p not in found[1]]
        return here.at(found[0].after)

    def _checks(self, here: Here, noun: Noun, move: Named, places: list[Place]) -> None:
        """Reads what a noun says of its move: "a queen check on d5"."""
        if noun.head != "check":
            return
        last = max([noun.last, *(p.last for p in places)])
        start, end = self.sentence.slice(noun.first, last)
        words = self.sentence.text[start - self.sentence.start : end - self.sentence.start]
        kind = kind_of("check")
        san = move.before.board.san(move.uci).rstrip("+#")
        if kind.read is not None:
            with suppress(Unread):
                at = but(here, words=words, start=start, end=end)
                self.found.claims.extend(kind.read(at, {"move": san}))

    def _things(self, clause: Clause) -> None:
        """Puts the move for what is said as a thing: "a check on a4 would win the pawn back"."""
        subject = clause.subject
        if subject is None or clause.inherited or subject.first < clause.first:
            return
        found = named_thing(self.here, subject, clause.places)
        if found is None:
            return
        move, places = found
        self._checks(self.here, subject, move, places)
        san = move.before.board.san(move.uci)
        last = max([subject.last, *(p.last for p in places)])
        clause.subject = Noun("move", san, san, subject.first, last)
        clause.places = [p for p in clause.places if p not in places]

    def _sequence(self, clause: Clause) -> None:
        """Plays all but the last of the moves that a clause says something of: "6. Nxd5 Nxd5 7. Bxd8 loses a piece"."""
        subject = clause.subject
        if subject is None or subject.type != "move" or clause.inherited:
            return
        if clause.lemma in _ROADS or _likened(clause) is not None:
            return  # "3. Nc3 Nf6 leads to the same position": a road, told as a whole
        *first, last = subject.text.split(" then ")
        if not first or len(first) + 1 != len(subject.parts):
            return
        following = self.here.shown_next
        starts = [self.here.spot]
        if following is not None and "." in first[0]:
            starts.append(
                self.here.spot.play(following)
            )  # "9. Nxd4", of the reply to the next move shown
        for start in starts:
            try:
                before = self.here.at(start).play(" ".join(first))
            except Unread:
                continue
            self.supposing = self.supposing or self.here.spot
            self.here = self.here.at(before)
            clause.subject = Noun("move", last, last, subject.first, subject.last)
            return

    def _before(self, clause: Clause) -> Here:
        """The position that a clause speaks of: after the moves that it names first."""
        self._sequence(clause)
        here = self.here
        self._things(clause)
        here = self._of_passive(clause, here)
        like = _likened(clause)
        for place in list(clause.places):
            noun = place.noun
            if noun is not None and noun.type == "noun" and place.preposition in FIRST:
                found = named_thing(here, noun, clause.places)
                made = found or named_thing(here, noun, clause.places, past=True)
                if made is not None:
                    self._checks(here, noun, *made)
                if found is None and made is not None:
                    clause.places = [
                        p for p in clause.places if p is not place and p not in made[1]
                    ]
                if found is not None:
                    here = here.at(found[0].after)
                    clause.places = [
                        p for p in clause.places if p is not place and p not in found[1]
                    ]
                    continue
            if noun is None or noun.type not in {"move", "square"}:
                continue
            if place.preposition == "after" and "only" in clause.adverbs and _of_move(clause):
                continue  # "d3 only works after Bc4"
            if like is not None and place.first > like:
                continue  # "the same position as after 3... Nc6"
            if (
                place.preposition == "with"
                and clause.verb.modal in {"would", "could", "will", "can"}
                and place.last < clause.last
                and clause.subject is not None
                and place.first < clause.subject.first
            ):
                with suppress(Unread):  # "with c4 White would transpose"
                    here = here.at(here.named(noun.text).after)
                    clause.places.remove(place)
                continue
            if noun.plural:
                if place.preposition in FIRST | {"on"} and all(
                    p.type == "move" or p is noun.parts[0] for p in noun.parts
                ):
                    with suppress(Unread):
                        here = here.at(here.play(noun.text))
                        clause.places.remove(place)
                continue
            going = any(a.endswith("ing") for a in noun.adjectives)
            if place.preposition in FIRST or (
                place.preposition == "by" and (going or noun.type == "move")
            ):
                try:
                    here = here.at(here.named(noun.text).after)
                    clause.places.remove(place)
                except Unread as reason:
                    self.found.reasons.append(str(reason))
        return here


def _of_move(clause: Clause) -> bool:
    """Whether a clause says something of a move."""
    return clause.subject is not None and clause.subject.type in {"move", "square"}


def _likened(clause: Clause) -> int | None:
    """Where a clause says of something that it is the same as what follows."""
    nouns = [*([clause.subject] if clause.subject else []), *clause.objects]
    found = [n.last for n in nouns if {"same", "identical"} & set(n.adjectives) or n.head == "same"]
    found += [s.last for s in clause.states if s.lemma == "identical"]
    return min(found, default=None)


__all__ = ["FirstMoves"]
