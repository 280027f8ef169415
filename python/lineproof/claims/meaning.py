"""Meaning: from the plain clauses of a sentence to claims, or to the reasons why there are none.

The moves that the sentence plays are played on the way, so each clause is asked about the position that it speaks of.
"""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import replace
from typing import Any

from .aim import aimed
from .announced import announced, leans
from .answers import answered
from .around import LIMITING, SAYS
from .chunk import Place
from .claim import Claim
from .clause import CONDITIONS, Clause
from .first_moves import FirstMoves
from .frame import Frame
from .here import Here, Unread, but
from .idling import idles
from .kind import Kind
from .lexicon import ADVERBS, VERBS, members
from .patterns import MOVE
from .registry import kind_of
from .sentence import Sentence
from .shelf import shelf
from .thoughts import denied
from .tried import said_of_it
from .understood import Understood

_NATURAL = frozenset({"natural", "usual", "normal", "logical", "clear", "obvious", "right", "proper", "customary", "typical", "fitting"})  # fmt: skip

_CONCESSIVE = frozenset({"whatever", "however", "whoever", "whichever", "no matter", "wherever"})
_PERSONS = frozenset({"we", "us", "our", "ours", "you", "your"})

_REASON = frozenset({"since", "because", "as", "for"})

_AGAINST = frozenset({"cannot-afford", "playable", "not-recommended"})
"""Kinds that rule a move out which has not been played."""

_LIMITS = frozenset({"forced", "cannot-castle"})

_AFTERWARDS = frozenset({"wins-material", "regains", "for-free", "by-force", "mate-in", "verdict"})
"""Kinds of what comes of a move."""

_MOVING = frozenset().union(
    *(members(name, VERBS) for name in ("move", "push", "play", "castle", "develop", "capture", "recapture"))
) | {"place", "evade", "settle", "reach", "swing", "put"}  # fmt: skip

_BESIDE = frozenset(
    {"where", "while", "although", "though", "since", "because", "as", "for", "whereas", "now that"}
)

_HARMLESS = frozenset(a for n in ("adverb", "hedge") for a in ADVERBS[n] if " " in a) - {
    "so far",
    "in that line",
}
"""Turns that leave the meaning alone, whatever words are in them: "believe it or not"."""

_UNSAYS = re.compile(
    r" (?:exaggeration|exaggerated|wrong|not really|in theory|on paper|in name|seemingly|supposedly|allegedly|apparently|for a moment|"
    r"at best|in a way|in a sense|until|far from|as long as|so long as)(?= |$)"
)
"""Words with which a whole clause of its own takes back the one before it."""


def understand(here: Here, sentence: Sentence, clauses: list[Clause]) -> Understood:
    """Reads a sentence at a place. clauses: its plain clauses, which are used up."""
    return _Reader(here, sentence).run(clauses)


class _Reader(FirstMoves):
    """Reads the clauses of a sentence."""

    def run(self, clauses: list[Clause]) -> Understood:
        clauses = denied(self.here.thought, clauses)
        if self.here.tried:
            said_of_it(clauses)
        clauses = answered(self.here.asked, _pass_first(_means_first(clauses)))
        neutral = _PERSONS.isdisjoint([w.norm for w in self.sentence.words])
        if neutral != self.here.neutral:
            self.here = but(self.here, neutral=neutral)
        read: list[list[Claim]] = []
        for number, clause in enumerate(clauses):
            before = len(self.found.claims)
            start = self.here.spot
            self._new_start(clause)
            self._come_back(clause)
            self._otherwise(clause)
            if self.ahead is not None and leans(clause):
                self._read_ahead(clause)
                read.append(self.found.claims[before:])
                continue
            self.ahead = None
            if clause.sub in _REASON and self.back is not None:
                self.here = self.here.at(self.back)  # "we can take it, since it is unprotected"
            self.barred = self.barred and clause.inherited
            if clause.sub in _REASON and number:
                self._rule_out(clauses[number - 1], read[number - 1])
            self.back = self.here.spot if clause.verb.modal in {"can", "may"} else None
            if not self._only_moves(clause, clauses, number):
                blocked = self._blocked(clause, clauses, number)
                if blocked:
                    self.found.reasons.append(blocked)
                    if clause.sub in CONDITIONS:
                        self._known_things(clause)
                    self.aim = aimed(clause) or self.aim
                    self._with_check(clause)
                else:
                    self._who(clause, clauses[number - 1] if number else None)
                    self._resolve(clause)
                    self._read(clause)
                claims = len(self.found.claims) > before
                then = clauses[number + 1] if number + 1 < len(clauses) else None
                if then is not None or not claims:  # nobody asks where a sentence has led to
                    self._go_on(clause, claims, then)
            read.append(self.found.claims[before:])
            told = clause.form == "finite" and clause.governor is None and not clause.complement
            if told and not read[-1] and self.here.spot is start and not _tells_a_move(clause):
                self.found.left.append((clause.first, clause.last))
            self.ahead = announced(self.found.claims[before:])
        self._doubt(clauses, read)
        return self.found

    def _rule_out(self, clause: Clause, claims: list[Claim]) -> None:
        """Goes to where the reason speaks: after the move that is ruled out, "he cannot take on d5, because we win a piece"."""
        if not (clause.verb.negated or any(c.kind in _AGAINST for c in claims)):
            return
        moves = {(c.spot, c.params["move"]) for c in claims if c.kind in _AGAINST}
        if len(moves) == 1:
            spot, move = moves.pop()
            if spot.moves == self.here.spot.moves:
                self.here = self.here.at(spot.play(move))
                self.deed = True
        elif all(c.kind in _LIMITS for c in claims) and clause.verb.modal in {
            "can",
            "must",
            "should",
            "may",
        }:
            self.barred = True

    def _otherwise(self, clause: Clause) -> None:
        """ "Otherwise the knight falls": after a pass."""
        at = clause.first
        near = {self.sentence.words[n].norm for n in (at - 1, at) if n >= 0}
        if "otherwise" not in clause.adverbs or "otherwise" not in near or not clause.lemma:
            return
        if self.instead is not None and self.here.spot.moves[:-1] == self.instead.moves:
            self.here = self.here.at(self.instead)  # "the king comes to e6, otherwise ..."
        passed = self.here.spot.passed()
        clause.unreal = passed is None
        if passed is not None and clause.verb.modal == "almost":
            self.here = but(self.here.at(passed), idle=self.here.spot, subject=None)
            clause.adverbs.remove("otherwise")
            clause.verb = clause.verb._replace(modal="")

    def _with_check(self, clause: Clause) -> None:
        """ "If she takes the bishop with check": the move that a condition plays gives check."""
        said = next(
            (
                p
                for p in clause.places
                if p.preposition == "with" and p.noun is not None and p.noun.head == "check"
            ),
            None,
        )
        if (
            said is None
            or said.noun is None
            or clause.sub not in {"if", "when", "once", "after"}
            or said.noun.adjectives
        ):
            return
        deed = self._done(clause)
        if deed is not None:
            self._checks(
                self.here, said.noun, deed, [Place("with", said.noun, clause.first, said.last)]
            )

    def _new_start(self, clause: Clause) -> None:
        """Behind a semicolon a condition that was played before it is over: "if he goes back he is lost; e6 is the only move"."""
        if self.supposing is None or not clause.joint.startswith(";"):
            return
        if clause.sub in CONDITIONS:
            return
        self.here = but(self.here.at(self.supposing), idle=None, subject=None)
        self.supposing, self.deed = None, False

    def _come_back(self, clause: Clause) -> None:
        """Ends what is said of a move that is advised against: it is the reasons, and what they lead to."""
        if self.detour is None or clause.sub in {"since", "because", "for", "as", "' cause"}:
            return
        if clause.joint.split()[-1:] in (["and"], ["="], ["-"]) or clause.joint.startswith("="):
            return
        self.here, self.detour = self.detour, None
        self.adrift = self.warned = True

    def _read_ahead(self, clause: Clause) -> None:
        """Reads a clause that leans on a move announced before it, in the position after that move."""
        assert self.ahead is not None
        claim, spot = self.ahead
        if spot is None:
            self.found.reasons.append("it may be said of a move that is not on the board")
            return
        here, deed, adrift = self.here, self.deed, self.adrift
        self.here = but(here.at(spot), subject=claim.side, topic=None)
        self.deed, self.adrift, clause.unreal = True, False, False
        self._resolve(clause)
        self._read(clause)
        self.here, self.deed, self.adrift = here, deed, adrift

    def _doubt(self, clauses: list[Clause], read: list[list[Claim]]) -> None:
        """Drops what was read where a neighbour that was not read may change what it means."""
        for number, clause in enumerate(clauses):
            if read[number] or clause.first < 0:
                continue
            if clause.sub in _CONCESSIVE:
                continue  # "whatever may be said of it"
            if (
                clause.lemma == "be"
                and clause.subject is not None
                and clause.subject.head == "there"
                and not clause.sub
                and any(o.head == "nothing" for o in clause.objects)
            ):
                continue  # "and there is nothing that White can do"
            if (
                not clause.lemma
                and clause.states
                and [o.head for o in clause.objects] == ["nothing"]
            ):
                continue  # ", nothing flashy"
            if (
                clause.sub == "as"
                and clause.lemma == "be"
                and [s.lemma for s in clause.states if s.lemma in _NATURAL]
            ):
                continue  # ", as is only natural"
            line = "".join(
                f" {w.norm}" for w in self.sentence.words[clause.first : clause.last + 1]
            )
            for adverb in clause.adverbs:
                line = line.replace(f" {adverb}", "") if adverb in _HARMLESS else f"{line} {adverb}"
            then = clauses[number + 1] if number + 1 < len(clauses) else None
            own = (
                clause.lemma
                and clause.form in {"finite", "base"}
                and not clause.inherited
                and clause.joint.startswith((",", ";", ":"))
                and (not clause.sub or clause.sub in _BESIDE)
            )
            if clause.joint.split()[-1:] == ["or"] or clause.joint.endswith("or so"):
                line = f" or{line}"
            before = read[number - 1] if number else []
            after = read[number + 1] if number + 1 < len(read) else []
            said = SAYS.search(line) is not None and not re.match(" (?:i|we|you|let) ", line)
            limits = _UNSAYS if own else LIMITING
            told = said and not (then is not None and own and then.joint in {"-", "that"})
            if before and clause.sub not in CONDITIONS and (limits.search(line) or told):
                self._drop(before, "the rest of the sentence may change what it says")
            if after and said:
                self._drop(after, "it is said of what others think")

    def _drop(self, claims: list[Claim], reason: str) -> None:
        self.found.claims = [c for c in self.found.claims if c not in claims]
        self.found.reasons.append(reason)

    def _read(self, clause: Clause) -> None:
        here = self._before(clause)
        self.checking = None
        if any(
            p.preposition == "with" and p.noun is not None and p.noun.head == "check"
            for p in clause.places
        ):
            self.checking = self._done(clause)
        self.found.touched = True
        done: dict[str, list[Claim]] = {}
        for kind, frame in shelf().fitting(clause):
            if kind.id in done:
                continue
            slots = frame.fill(clause)
            if slots is None or (
                not clause.lemma
                and not slots.keys() - {"verb"}
                and any(c.kind == kind.id for c in self.found.claims)
            ):
                continue  # "..., a fork": it has been said
            try:
                claims = self._claims(here, clause, frame, kind, slots)
            except Unread as reason:
                self.found.reasons.append(f"{kind.id}: {reason}")
                continue
            done[kind.id] = claims
        for kind_id, claims in done.items():
            if kind_of(kind_id).gives_way.isdisjoint(done):
                self.found.claims.extend(claims)

    def _known_things(self, clause: Clause) -> None:
        """Reads what a condition names as known: "if that overworked bishop takes"."""
        for kind, frame in shelf().fitting(clause):
            slots = frame.fill(clause) if frame.anywhere else None
            if slots is not None:
                with suppress(Unread):
                    self.found.claims.extend(self._claims(self.here, clause, frame, kind, slots))

    def _claims(
        self, here: Here, clause: Clause, frame: Frame, kind: Kind, slots: dict[str, Any]
    ) -> list[Claim]:
        assert kind.read is not None
        verb = slots.get("verb", clause.verb)
        named = here.spot is not self.here.spot or any(
            _is_move(slots.get(s)) for s in ("move", "agent", "best", "by")
        )
        named = named or slots.get("deed") not in (None, "it", "this", "that", "which")
        named = named or self.deed or here.idle is not None
        if (
            "span" not in slots
            and verb.supposed
            and not (named and verb.modal in {"would", "could"})
        ):
            raise Unread("said of what is not on the board")
        if clause.form == "ing" and clause.inherited and self.open and not named:
            raise Unread("it may be said of a move that is not on the board")
        if self.warned and clause.sub in {"since", "because", "for", "as"}:
            raise Unread("it may be said of the move that is advised against")
        if self.barred and kind.id in _AFTERWARDS:
            raise Unread("it may be said of the move that is ruled out")
        if self.adrift and not named and "elsewhere" not in slots:
            raise Unread(
                "a move was named before that was not read, so it is not clear which position is meant"
            )
        first, last = slots.pop("span", (clause.first, clause.last))
        if frame.governors and clause.governor is not None:
            first = min(first, clause.governor.first)  # "we threaten to take"
        start, end = self.sentence.slice(first, last)
        words = self.sentence.text[start - self.sentence.start : end - self.sentence.start]
        at = but(here, words=words, start=start, end=end, hedged=clause.hedged or here.hedged)
        if frame.anywhere:  # a denial or a "can" says nothing of the thing named
            claims = kind.read(at, dict(slots))
            self.found.named.extend(claims)
            return claims
        if (
            clause.inherited
            and clause.subject is not None
            and "agent" not in slots
            and "side" not in slots
            and at.subject is None
        ):
            with suppress(Unread):
                at = but(at, subject=at.agent(clause.subject.text).side)
        if kind.id == "check" and self.checking is not None and not verb.negated:
            at = at.at(self.checking.after)  # "our queen captures it with check"
            slots = {"verb": slots["verb"]} if "verb" in slots else {}
        claims = kind.read(at, dict(slots))
        if kind.flips and verb.negated:
            claims = [
                replace(claim, negated=(clause.nobody and "safe" not in slots) or not claim.negated)
                for claim in claims
            ]
        return claims


def _means_first(clauses: list[Clause]) -> list[Clause]:
    """Puts "by taking on c6" before what it brings about."""
    for number in range(len(clauses) - 1):
        if clauses[number + 1].joint == "=by":
            clauses[number], clauses[number + 1] = clauses[number + 1], clauses[number]
    return clauses


def _pass_first(clauses: list[Clause]) -> list[Clause]:
    """Puts "if Black does nothing" before what then happens."""
    for number in range(len(clauses) - 1):
        first, then = clauses[number], clauses[number + 1]
        if (
            then.sub in {"if", "when"}
            and then.joint == then.sub
            and idles(then)[0]
            and not first.sub
        ):
            clauses[number], clauses[number + 1] = then, first
            first.joint, then.joint = ",", first.joint
    return clauses


def _tells_a_move(clause: Clause) -> bool:
    """ "The queen comes out to g4", "we have pushed the pawn": no more than what was played."""
    return (
        clause.lemma.partition(" ")[0] in _MOVING
        and not clause.verb.negated
        and not clause.verb.modal
    )


def _is_move(text: Any) -> bool:
    return isinstance(text, str) and MOVE.fullmatch(text) is not None


__all__ = ["understand"]
