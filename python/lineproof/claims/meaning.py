"""Meaning: from the plain clauses of a sentence to claims, or to the reasons why there are none.

The moves that the sentence plays are played on the way, so each clause is asked about the position that it speaks of.
"""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import dataclass, field, replace
from typing import Any

from lineproof.engine import Board

from .aim import aimed, fill
from .announced import announced, leans
from .attached import COUNTED
from .board import NAMES, side_of
from .chunk import Place
from .claim import Claim, Spot
from .clause import LIMITING, SAYS
from .deeds import named_thing, ordered
from .frame import Frame
from .here import Here, Named, Unread
from .idling import conditional, idles
from .kind import Kind
from .lexicon import ADJECTIVES, ADVERBS, NOUNS, VERBS, members
from .noun import Noun, on_square
from .phrase import MOVE
from .plain import CONDITIONS, Clause
from .possessive import named as possessed
from .registry import kind_of
from .reply import answered
from .sentence import Sentence
from .shelf import shelf

_AFTER = frozenset(
    {
        "after",
        "following",
        "with",
        "by",
        "in reply to",
        "on",
        "in answer to",
        "thanks to",
        "because of",
        "in view of",
        "on account of",
        "owing to",
        "due to",
    }
)
_ANSWERED = members("refute", VERBS) | {"meet", "answer"}
_FIRST = frozenset({"after", "upon", "following", "in reply to", "in answer to"})
_CAPTURES = members("capture", VERBS)
_EXCHANGES = members("exchange", VERBS)
_AVERTING = members("avert", VERBS) | {"do"}
_DEEDS = frozenset(
    w.split()[0]
    for name in ("play", "move", "capture", "push", "develop", "retreat", "sacrifice")
    for w in members(name, VERBS)
) - {"make", "put", "run"}
"""Verbs of what is done on the board: "to" behind them says what it does."""
_PLAYING = frozenset(["play", "go", "choose", "continue with", "answer with", "reply with", "respond with", "opt for", "go for", "try", "throw in", "insert", "follow with", "meet"])  # fmt: skip
_SAYS = frozenset(["convince", "persuade", "think", "believe", "guess", "reckon", "suppose", "argue", "maintain", "claim", "say", "call", "hear", "pretend", "hope", "wish", "fear", "doubt", "imagine", "expect", "look", "look like", "seem", "like", "want", "wonder", "suspect", "dream", "tell", "swear", "appear"])  # fmt: skip
_WILLING = frozenset(["threaten", "want", "wish", "hope", "plan", "try", "intend", "prepare", "like", "love", "refuse", "fail", "forget", "decline", "long", "prefer", "need", "dare", "avoid", "allow", "permit", "enable", "let", "help", "invite", "tempt", "encourage", "start", "stop", "prevent", "hesitate", "use", "seem", "appear", "think", "dream", "consider", "suggest", "attempt", "serve", "suffice", "expect", "play"])  # fmt: skip
"""Verbs whose infinitive or -ing is not said to happen."""


_HINDERING = members("prevent", VERBS)
_JUDGING = members("judge", VERBS) | members("recommend", VERBS) | {"call", "consider"}
_ARISING = members("arise", VERBS) | {"reach", "occur"}
_NATURAL = frozenset({"natural", "usual", "normal", "logical", "clear", "obvious", "right", "proper", "customary", "typical", "fitting"})  # fmt: skip
_IN_PLAY = frozenset({"in", "on the board", "played", "out of the way"})
_PERSONS = frozenset({"we", "us", "our", "ours", "you", "your"})
_GOING = members("move", VERBS) | {"go", "step", "capture on", "land on", "land"}


_ATTACKS = members("attack", VERBS) | members("defend", VERBS)
_TODAY = frozenset({"today", "now", "this time", "this evening", "tonight"})
_LINES = frozenset({"line", "variation", "game", "case", "position"})
"""Nouns that compare with another game: "in contrast to the lines with Nc3"."""
_REASON = frozenset({"since", "because", "as", "for"})
_BREAK = frozenset(",;:")
_WHILE = frozenset({"as long as", "so long as"})
_STAYS = members("be", VERBS) | {"stay", "remain", "hold", "keep"} | members("defend", VERBS)
_UNDISTURBED = members("undisturbed", ADJECTIVES)
_INSTEAD = frozenset({"first", "before", "instead", "in"})
"""First words of adverbs that say something of a move: "in between", "before recapturing"."""
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


@dataclass
class Understood:
    """What became of a sentence: the claims, and the reasons for what was not read. touched: a clause of it was read.
    named: the claims of a thing that is only named as known."""

    claims: list[Claim] = field(default_factory=list)
    reasons: list[str] = field(default_factory=list)
    touched: bool = False
    named: list[Claim] = field(default_factory=list)


def understand(here: Here, sentence: Sentence, clauses: list[Clause]) -> Understood:
    """Reads a sentence at a place. clauses: its plain clauses, which are used up."""
    return _Reader(here, sentence).run(clauses)


def topic_of(sentence: Sentence, clauses: list[Clause]) -> str | None:
    """The piece that a sentence leaves behind as what "it" means in the next: "See that knight of ours on c3?", "The rook is the problem."."""
    if sentence.words and sentence.words[-1].norm == "?":
        clauses = [c for c in clauses if not c.inherited] or clauses  # "Where is it to hide?"
    if not clauses or any(
        n.type == "move" for c in clauses for n in [*c.objects, *([c.subject] if c.subject else [])]
    ):
        return None
    clause = clauses[-1]
    if sentence.words[-1].norm == "?":
        asked = [
            n
            for n in [
                *([clause.subject] if clause.subject else []),
                *clause.objects,
                *[p.noun for p in clause.places if p.noun],
            ]
            if n.type == "piece" and not n.plural and not n.parts
        ]
        return asked[-1].text if asked else None  # "What is wrong with the knight?"
    shown = clauses[0].lemma in {"see", "look at", "take", "watch"} or not clause.lemma
    nouns = [clause.subject] if clause.subject is not None else clause.objects if shown else []
    piece = nouns[0] if len(nouns) == 1 else None
    if piece is None or piece.type != "piece" or piece.plural or piece.parts or clause.inherited:
        return None
    return piece.text


def asked_of(sentence: Sentence, clauses: list[Clause]) -> Noun | None:
    """The side that a question asks about, of which the answer then speaks: "What have we got?", "How is he doing?"."""
    if not sentence.words or sentence.words[-1].norm != "?":
        return None
    if not clauses or clauses[-1].lemma not in {"have", "do", "be", "get", "stand", "fare"}:
        return None
    subject = clauses[-1].subject
    return subject if subject is not None and subject.type == "side" else None


class _Reader:
    def __init__(self, here: Here, sentence: Sentence) -> None:
        self.here = here
        self.sentence = sentence
        self.found = Understood()
        self.adrift = False
        self.last: Noun | None = None
        self.thing: Noun | None = None
        self.head = ""
        self.open = False
        self.deed = False
        self.lets = False
        self.warned = False
        self.detour: Here | None = None
        self.things = ""
        self.lady: Noun | None = None
        self.quoted = False
        self.unfinished = False
        self.checking: Named | None = None
        self.done_to = ""
        self.back: Spot | None = None
        self.aim: tuple[str, str] | None = None
        self.ahead: tuple[Claim, Spot | None] | None = None

    def run(self, clauses: list[Clause]) -> Understood:
        clauses = answered(self.here.asked, _pass_first(_means_first(clauses)))
        said = {w.norm for w in self.sentence.words}
        self.here = replace(self.here, neutral=said.isdisjoint(_PERSONS))
        read: list[list[Claim]] = []
        for number, clause in enumerate(clauses):
            before = len(self.found.claims)
            self._come_back(clause)
            self._otherwise(clause)
            if self.ahead is not None and leans(clause):
                self._read_ahead(clause)
                read.append(self.found.claims[before:])
                continue
            self.ahead = None
            if clause.sub in _REASON and self.back is not None:
                self.here = self.here.at(self.back)  # "we can take it, since it is unprotected"
            self.back = self.here.spot if clause.verb.modal in {"can", "may"} else None
            if not self._only_moves(clause, clauses, number):
                blocked = self._blocked(clause, clauses, number)
                if blocked:
                    self.found.reasons.append(blocked)
                    self.aim = aimed(clause) or self.aim
                else:
                    self._who(clause, clauses[number - 1] if number else None)
                    self._resolve(clause)
                    self._read(clause)
                then = clauses[number + 1] if number + 1 < len(clauses) else None
                self._go_on(clause, len(self.found.claims) > before, then)
            read.append(self.found.claims[before:])
            self.ahead = announced(self.found.claims[before:])
        self._doubt(clauses, read)
        return self.found

    def _otherwise(self, clause: Clause) -> None:
        """ "Otherwise the knight falls": after a pass."""
        at = clause.first
        near = {self.sentence.words[n].norm for n in (at - 1, at) if n >= 0}
        if "otherwise" not in clause.adverbs or "otherwise" not in near or not clause.lemma:
            return
        passed = self.here.spot.passed()
        if passed is not None and clause.verb.modal == "almost":
            self.here = replace(self.here.at(passed), idle=self.here.spot, subject=None)
            clause.adverbs.remove("otherwise")
            clause.verb = replace(clause.verb, modal="")

    def _who(self, clause: Clause, before: Clause | None) -> None:
        """Says who "he" is, where nobody is "we": who plays the move that the clause names with him, "with e5 he accepts a hole"."""
        subject = clause.subject
        if not self.here.neutral or subject is None or subject.text != "he" or self.here.he:
            return
        if before is not None and before.fronted == "by" and self.deed:
            self.here = replace(self.here, he=self.here.mover)
            return
        move = next((p.noun for p in clause.places if p.preposition in {"with", "by"} and p.noun is not None and p.noun.type in {"move", "square"} and not p.noun.plural), None)  # fmt: skip
        if move is not None:
            with suppress(Unread):
                self.here = replace(self.here, he=self.here.named(move.text).side)

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
        self.here = replace(here.at(spot), subject=claim.side, topic=None, unclear=False)
        self.deed, self.adrift, clause.unreal = True, False, False
        self._resolve(clause)
        self._read(clause)
        self.here, self.deed, self.adrift = here, deed, adrift

    def _doubt(self, clauses: list[Clause], read: list[list[Claim]]) -> None:
        """Drops what was read where a neighbour that was not read may change what it means."""
        for number, clause in enumerate(clauses):
            if read[number] or clause.first < 0:
                continue
            if (
                clause.lemma == "be"
                and clause.subject is not None
                and clause.subject.head == "there"
                and not clause.sub
                and any(o.head == "nothing" for o in clause.objects)
            ):
                continue  # "and there is nothing that White can do"
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

    def _resolve(self, clause: Clause) -> None:
        """Says what "it" and "them" mean, where they are no subject: the piece or pawn spoken of before."""
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
            queen = self._queen()
            if queen is not None:
                subject = clause.subject
                clause.subject = replace(queen, first=subject.first, last=subject.last)
        about = clause.lemma in _AVERTING  # "nothing can be done about it": all that was said
        if self.last is not None and not about:
            for number, noun in enumerate(clause.objects):
                if clause.lemma in _JUDGING:
                    continue  # "I call it a mistake": the move
                if noun.type == "pronoun" and noun.head == "it" and self.last is not clause.subject:
                    meant = self.last
                    if meant.head == "king" and self.thing is not None and clause.lemma in _ATTACKS:
                        meant = self.thing  # "looks through it at the king, and White attacks it"
                    clause.objects[number] = replace(meant, first=noun.first, last=noun.last)
            for number, place in enumerate(clause.places):
                if (
                    place.noun is not None
                    and place.noun.type == "pronoun"
                    and place.noun.head == "it"
                ):
                    clause.places[number] = replace(
                        place, noun=replace(self.last, first=place.first, last=place.last)
                    )
        self._arrived(clause)
        self._own(clause)
        self._its(clause)
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
        spoken = next((n for n in nouns if n.type == "piece" and not n.plural and not n.no), None)
        self.last = spoken or self.last
        if self.last is not None and self.last.head != "king":
            self.thing = self.last
        at = [p.noun for p in clause.places if p.preposition in {"on", "at"} and p.noun is not None and p.noun.type == "square"]  # fmt: skip
        if self.last in clause.objects and self.last is not None and not self.last.square and len(at) == 1 and not at[0].parts:  # fmt: skip
            self.last = on_square(replace(self.last, text=re.sub("^an? ", "the ", self.last.text)), at[0].square, at[0].last)  # "that's a knight for life on d5"  # fmt: skip
            self.last = replace(self.last, square=at[0].square)
        self.head = next((n.head for n in nouns if n.type == "piece" and n.head), self.head)
        self.lady = next((n for n in nouns if n.head == "queen" and not n.plural), self.lady)
        self.done_to = next(
            (o.head for o in clause.objects if o.type == "piece" and o.head), self.done_to
        )

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
        with suppress(Unread):
            side = self.here.side(subject.text) if subject.type == "side" else self.here.agent(subject.text).side  # fmt: skip
            clause.objects = [
                replace(
                    o, whose=f"{side} 's", text=re.sub("^(?:his|their|the) ", f"{side} 's ", o.text)
                )
                if o.type == "piece" and "own" in o.adjectives and o.whose in {"his", "their"}
                else o
                for o in clause.objects
            ]

    def _arrived(self, clause: Clause) -> None:
        """ "After Nf3 the bishop pins it": the piece that the move brings there."""
        if self.last is not None or self.here.topic is not None:
            return
        move = next((p.noun for p in clause.places if p.preposition in _FIRST and p.noun is not None and p.noun.type in {"move", "square"} and not p.noun.parts), None)  # fmt: skip
        if move is None or not any(o.type == "pronoun" and o.head == "it" for o in clause.objects):
            return
        with suppress(Unread):
            named = self.here.named(move.text)
            letter = (named.after.board.piece_at(named.uci[2:4]) or "p").lower()
            at = named.uci[2:4]
            clause.objects = [
                replace(
                    o,
                    type="piece",
                    head=NAMES[letter],
                    text=f"the {NAMES[letter]} on {at}",
                    square=at,
                )
                if o.type == "pronoun" and o.head == "it"
                else o
                for o in clause.objects
            ]

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

    def _queen(self) -> Noun | None:
        """What "she" means: the queen spoken of before, or the one that has just moved; None when it may be a player."""
        if self.last is not None:
            return self.last if self.last.head == "queen" else self.lady
        at = self.here.spot.moves[-1][2:4] if self.here.spot.moves else None
        if at is None or (self.here.board.piece_at(at) or "").lower() != "q":
            return None
        return Noun("piece", "queen", f"the queen on {at}", 0, 0, square=at)

    # what keeps a clause from being read

    def _blocked(self, clause: Clause, clauses: list[Clause], number: int) -> str:
        if (
            clause.joint.split()[-1:] == ["or"]
            and clause.lemma
            and clause.form == "finite"
            and number
        ):
            return "it is said of what happens otherwise"
        follows = clause.sub == "so that" and clause.verb.modal in {"can", "may"}
        if clause.sub in CONDITIONS and clause.joint != ", so that" and not follows:
            return "a condition that is not on the board"
        if (
            clause.sub in {"what", "why", "where", "how", "whatever"}
            and clause.joint == clause.sub
            and clause.sub != "how"
        ):
            return "a question"
        if (
            clause.form == "base"
            and clause.subject is None
            and clause.lemma.split()[:1] in (["look"], ["see"], ["watch"])
        ):
            return "a word to the class"
        for near in (number - 1, number + 1):
            other = clauses[near] if 0 <= near < len(clauses) else None
            if other is None or other.sub not in CONDITIONS:
                continue
            if other.sub in {"as if", "as though"} or _aside(other):
                continue  # it likens, or speaks to the class
            if other.sub == "when" and other.verb.done and clause.verb.done and near > number:
                continue  # "Black gave up castling when he took on f7"
            if other.sub == "when" and other.verb.done and not _TODAY.isdisjoint(clause.adverbs):
                continue  # "last time, when we castled short, ... today we ..."
            shared = clause.joint in {"and", "or"} and (clause.inherited or clause.form == "base")
            if (
                near < number
                and shared
                and clause.lemma
                and not self.deed
                and self.here.idle is None
            ):
                return "it rests on a condition that is not on the board"
            if near > number and other.sub == "unless":
                return "it rests on a condition that is not on the board"
            own = (near < number and clause.joint in {",", "", ", then", "then", "-", ", -"}) or (
                near > number and not _BREAK & set(other.joint) and other.sub not in {"once"}
            )
            if other.sub in _WHILE and self._holds(other):
                continue
            if near > number and other.sub in {"when", "if"} and _comes_about(clause):
                continue  # "it also arises when White plays Bc4 first"
            if near < number and (self.deed or self.here.idle is not None):
                continue
            if own and not self._played(other):
                return "it rests on a condition that is not on the board"
        if (
            clause.governor is not None
            and clause.form != "finite"
            and not clause.fronted
            and clause.governor.lemma.split()[0] in _WILLING
        ):
            clause.unreal = True
        if clause.fronted == "to" and clause.form == "ing" and clause.governor is not None:
            clause.unreal = True  # "comes near to attacking two pawns"
        if (
            clause.form == "to"
            and clause.governor is not None
            and clause.governor.sub in CONDITIONS
        ):
            return "a condition that is not on the board"
        if (
            clause.form == "to"
            and clause.governor is not None
            and clause.governor.lemma.split()[0] not in _DEEDS
        ):
            clause.unreal = True
        before = clauses[number - 1] if number else None
        if (
            clause.inherited
            and clause.joint in {"and", "but"}
            and number
            and clauses[number - 1].passive
            and sum(o.type in {"noun", "side"} for o in clauses[number - 1].objects) > 1
        ):
            return "the clause before it was not taken apart"
        if self.quoted and clause.sub in _REASON:
            return "it is said of what others think"
        if self.quoted and clause.inherited and clause.joint in {"and", "or", "but", "and so"}:
            return "it is said of what others think"
        if self.quoted and self.unfinished:
            self.unfinished = not clause.lemma
            return "it is said of what others think"  # "he may suppose that White, by two captures, wins a pawn"
        self.quoted = False
        if (
            before is not None
            and before.lemma.split()[:1]
            and before.lemma.split()[0] in _SAYS
            and not (before.lemma == "look at" or before.form == "base")
            and clause.joint in {"-", "that", "how", "as if", "-that"}
        ) and (before.subject is None or before.subject.text not in {"i"}):
            self.quoted, self.unfinished = True, not clause.lemma
            return "it is said of what others think"
        return ""

    def _played(self, clause: Clause) -> bool:
        """Whether a condition is no more than a move that can be played here, or that has just been made."""
        if self._made(clause):
            return True
        move = next((o for o in clause.objects if o.type in {"move", "square"}), None) or (
            clause.subject
            if clause.subject is not None and clause.subject.type in {"move", "square"}
            else None
        )
        if clause.lemma == "be" and not clause.objects and _IN_PLAY.isdisjoint(clause.adverbs):
            return False
        if move is None or (clause.lemma and clause.lemma not in _PLAYING | {"be"}):
            return False
        with suppress(Unread):
            self.here.named(move.text)
            return True
        return False

    def _holds(self, clause: Clause) -> bool:
        """Whether "as long as the queen remains on e7" tells of what stands there now."""
        subject, verb = clause.subject, clause.verb
        if subject is None or verb.negated or verb.modal or verb.past or clause.lemma not in _STAYS:
            return False
        if subject.type not in {"piece", "square"} or subject.plural:
            return False
        found = self.here.find(subject.text)
        places = [p.noun.square for p in clause.places if p.noun is not None and p.noun.square]
        return bool(found) and (not places or bool(set(places) & set(found)))

    def _made(self, clause: Clause) -> bool:
        """Whether "once the bishop has recaptured" tells of the last move, or of the next one shown, which is then played."""
        piece = clause.subject
        if not clause.verb.done or piece is None or piece.type != "piece" or clause.verb.negated:
            return False
        if clause.lemma.split()[0] not in _DEEDS | {"step", "recapture", "come", "arrive"}:
            return False
        takes = clause.lemma in _CAPTURES or clause.lemma in members("recapture", VERBS)
        at = next(
            (
                n.square
                for n in [*clause.objects, *(p.noun for p in clause.places if p.noun)]
                if n.square
            ),
            "",
        )

        def fits(board: Board, uci: str) -> bool:
            letter = NAMES.get((board.piece_at(uci[:2]) or "").lower())
            return (
                letter == piece.head
                and takes <= ("x" in board.san(uci))
                and at in ("", uci[2:4])
                and piece.file in ("", uci[0])
            )

        spot = self.here.spot
        if spot.moves and fits(spot.boards[-2], spot.moves[-1]):
            return True
        if piece.file and any(map(fits, spot.boards, spot.moves)):
            return True  # "once the g-pawn has stepped forward", some moves ago
        following = self.here.shown_next
        if following is not None and fits(spot.board, following):
            self.here = self.here.at(spot.play(following))
            return True
        return False

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
        takes = clause.lemma in _CAPTURES or clause.lemma in _EXCHANGES
        if not takes and clause.lemma not in _GOING:
            return None
        places = [
            p.noun.square
            for p in clause.places
            if p.noun is not None
            and p.preposition in {"to", "on", "into", "onto", "on to"}
            and p.noun.square
        ]
        prey = next((o for o in clause.objects if o.type in {"piece", "square"}), None)
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

    # moves

    def _only_moves(self, clause: Clause, clauses: list[Clause], number: int) -> bool:
        """Plays a part of the sentence that is nothing but moves; False when it says something of them."""
        upon = clause.places[0] if len(clause.places) == 1 and not clause.lemma else None
        if (
            upon is not None
            and upon.noun is not None
            and not (clause.objects or clause.states)
            and upon.preposition in _FIRST
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
            led = [p.noun for p in clause.places if p.preposition in _FIRST | {"on", "upon"}]
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
        for noun in clause.objects:
            for move in noun.members:
                self._play(move.text)
        told = any(a.split()[0] in _INSTEAD for a in clause.adverbs)
        check = clause.objects[-1].text.endswith(("+", "#"))
        return not (clause.places or clause.states or told or check)

    def _play(self, text: str) -> None:
        try:
            self.here = self.here.at(self.here.named(text).after)
            self.adrift = self.adrift and not self.warned  # "don't take back, d5 first"
        except Unread as reason:
            if text[:1] not in "abcdefgh":
                self.adrift = True
                self.found.reasons.append(str(reason))

    def _go_on(self, clause: Clause, claims: bool, after: Clause | None) -> None:
        """Moves on: to the position after the move that a clause names, and to whom and what it speaks of."""
        subject = clause.subject
        verb = clause.verb
        start = self.here.spot.moves
        free = not verb.negated and not verb.supposed
        if clause.governor is not None and clause.governor.lemma in _HINDERING:
            free = False
        self.here = replace(
            self.here, idle=self.here.idle if clause.sub not in CONDITIONS else None
        )
        passed = self._passes(clause, after)
        if passed is not None:
            self.here = replace(self.here.at(passed), idle=self.here.spot, subject=None)
            return
        if clause.sub in CONDITIONS - {"unless", "before"} or clause.fronted == "by":
            deed = self._done(clause)
            if deed is not None:
                self.here = replace(self.here.at(deed.after), topic=None)
                self.deed = True
                return
        if (
            clause.form in {"base", "finite"}
            and clause.subject is None
            and verb.negated
            and (against := ordered(self.here, clause)) is not None
        ):
            self.detour = self.here  # "don't run back to f6 with the knight, since ..."
            self.here = replace(self.here.at(against.after), topic=None, subject=None)
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
            and (clause.lemma not in {"come", "follow"} or _there_follows(clause))
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
        if clause.lemma in _CAPTURES and free:
            self._capture(clause)
        if clause.lemma in _PLAYING and (free or clause.sub in CONDITIONS):
            for noun in clause.objects:
                if noun.type in {"move", "square"} and not noun.plural:
                    self._forward(noun.text)
        for place in clause.places:
            if (
                place.preposition in {"by", "with"}
                and place.noun is not None
                and place.noun.type == "move"
                and free
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
        self.here = replace(
            self.here, subject=side or self.here.subject, unclear=False, after_unread=False, topic=topic, third=named or self.here.third,
        )  # fmt: skip

    def _elsewhere(self, text: str) -> bool:
        """Whether a move that is named is not the last one played."""
        try:
            return self.here.named(text).after.moves != self.here.spot.moves
        except Unread:
            return self.here.standing(text) is None

    def _capture(self, clause: Clause) -> None:
        """Plays a capture said in words, where only one is meant: "taking on c6"."""
        at = next(
            (
                n.square
                for n in [
                    *clause.objects,
                    *[p.noun for p in clause.places if p.noun and p.preposition == "on"],
                ]
                if n.square
            ),
            None,
        )
        board = self.here.board
        last = self.here.spot.moves[-1][2:4] if self.here.spot.moves else None
        prey = next((n for n in clause.objects if n.type == "piece" and not n.plural), None)
        to = {at} if at is not None else set()
        if at is None and prey is not None and not clause.verb.done:
            standing = NAMES.get((board.piece_at(last or "a1") or "").lower())
            with suppress(Unread):  # "he grabs her": what has just moved, or what was spoken of
                to = {last} if last and standing == prey.head else set(self.here.find(prey.text))
        told = clause.subject is None or clause.inherited or clause.subject.type == "noun"
        if not to:
            return
        letter = (
            clause.subject.head
            if clause.subject is not None and clause.subject.type == "piece"
            else None
        )
        found = [
            uci
            for uci in board.legal_moves()
            if uci[2:4] in to
            and "x" in board.san(uci)
            and letter in (None, NAMES.get((board.piece_at(uci[:2]) or "").lower()))
        ]
        shown = self.here.shown_next
        if len(found) == 1 or (shown in found and not (told and last in to)):
            self.here = self.here.at(self.here.spot.play(shown if shown in found else found[0]))

    def _forward(self, text: str) -> None:
        """Plays a move that comes next; one that was named instead of the last is left."""
        with suppress(Unread):
            named = self.here.named(text)
            if named.before.moves == self.here.spot.moves:
                self.here = self.here.at(named.after)

    # claims

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
                at = replace(here, words=words, start=start, end=end)
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

    def _before(self, clause: Clause) -> Here:
        """The position that a clause speaks of: after the moves that it names first."""
        here = self.here
        self._things(clause)
        here = self._of_passive(clause, here)
        like = _likened(clause)
        for place in list(clause.places):
            noun = place.noun
            if noun is not None and noun.type == "noun" and place.preposition in _FIRST:
                found = named_thing(here, noun, clause.places)
                if found is not None:
                    self._checks(here, noun, *found)
                    here = here.at(found[0].after)
                    clause.places = [
                        p for p in clause.places if p is not place and p not in found[1]
                    ]
                    continue
            if noun is None or noun.type not in {"move", "square"}:
                continue
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
                if place.preposition in _FIRST | {"on"} and all(
                    p.type == "move" or p is noun.parts[0] for p in noun.parts
                ):
                    with suppress(Unread):
                        here = here.at(here.play(noun.text))
                        clause.places.remove(place)
                continue
            going = any(a.endswith("ing") for a in noun.adjectives)
            if place.preposition in _FIRST or (
                place.preposition == "by" and (going or noun.type == "move")
            ):
                with suppress(Unread):
                    named = here.named(noun.text)
                    here = here.at(named.after)
                    clause.places.remove(place)
        return here

    def _claims(
        self, here: Here, clause: Clause, frame: Frame, kind: Kind, slots: dict[str, Any]
    ) -> list[Claim]:
        assert kind.read is not None
        verb = slots.get("verb", clause.verb)
        named = here.spot is not self.here.spot or any(
            _is_move(slots.get(s)) for s in ("move", "agent", "best", "by")
        )
        named = named or slots.get("deed") not in (None, "it", "this", "that", "which")
        named = named or self.deed
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
        if self.adrift and not named and "elsewhere" not in slots:
            raise Unread(
                "a move was named before that was not read, so it is not clear which position is meant"
            )
        first, last = slots.pop("span", (clause.first, clause.last))
        if frame.governors and clause.governor is not None:
            first = min(first, clause.governor.first)  # "we threaten to take"
        start, end = self.sentence.slice(first, last)
        words = self.sentence.text[start - self.sentence.start : end - self.sentence.start]
        at = replace(here, words=words, start=start, end=end, hedged=clause.hedged or here.hedged)
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
                at = replace(at, subject=at.agent(clause.subject.text).side)
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


def _aside(clause: Clause) -> bool:
    """ "Before you ask", "if I may say so", "in case you wonder": of the talk, not of the board."""
    return (
        clause.subject is not None
        and clause.subject.text in {"you", "i", "anybody", "anyone", "somebody", "someone"}
        and clause.lemma.split()[:1] != []
        and clause.lemma.split()[0] in _TALKING
    )


_TALKING = frozenset({"ask", "shout", "say", "object", "complain", "wonder", "protest", "scream", "laugh", "interrupt", "tell", "forget", "worry", "panic", "point", "look", "think", "count", "know", "doubt", "believe"})  # fmt: skip
"""Verbs of what is done in the class."""


def _likened(clause: Clause) -> int | None:
    """Where a clause says of something that it is the same as what follows."""
    nouns = [*([clause.subject] if clause.subject else []), *clause.objects]
    found = [n.last for n in nouns if {"same", "identical"} & set(n.adjectives) or n.head == "same"]
    found += [s.last for s in clause.states if s.lemma == "identical"]
    return min(found, default=None)


def _comes_about(clause: Clause) -> bool:
    """Whether a clause says that a position comes about, so that "when" says by which road."""
    nouns = [*([clause.subject] if clause.subject else []), *clause.objects]
    same = any(
        n.head == "position" and {"same", "identical", "very"} & set(n.adjectives) for n in nouns
    )
    if same and clause.lemma in {"get", "have", "reach", "be", "arise", "give", "see"}:
        return True
    return clause.lemma in _ARISING and any(n.head in {"position", "it", "this"} for n in nouns)


def _there_follows(clause: Clause) -> bool:
    """ "There follows Nd3, which is mate": the next move."""
    return clause.lemma == "follow" and "there" in clause.adverbs


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


def _is_move(text: Any) -> bool:
    return isinstance(text, str) and MOVE.fullmatch(text) is not None


__all__ = ["Understood", "asked_of", "topic_of", "understand"]
