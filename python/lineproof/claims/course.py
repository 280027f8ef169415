"""The course of a sentence: the position that its next clause speaks of, and the moves that its clauses play on the way."""

from __future__ import annotations

from contextlib import suppress

from lineproof.engine import Board

from .board import NAMES
from .claim import Claim, Spot
from .clause import Clause
from .here import Here, Named, Unread
from .lexicon import VERBS, members
from .noun import Noun
from .sentence import Sentence
from .understood import Understood

CAPTURES = members("capture", VERBS)

DEEDS = frozenset(
    w.split()[0]
    for name in ("play", "move", "capture", "push", "develop", "retreat", "sacrifice")
    for w in members(name, VERBS)
) - {"make", "put", "run"}
"""Verbs of what is done on the board: "to" behind them says what it does."""

PLAYING = frozenset(["play", "go", "choose", "continue with", "answer with", "reply with", "respond with", "opt for", "go for", "try", "throw in", "insert", "follow with", "meet"])  # fmt: skip

_IN_PLAY = frozenset({"in", "on the board", "played", "out of the way"})

_STAYS = members("be", VERBS) | {"stay", "remain", "hold", "keep"} | members("defend", VERBS)


class Course:
    """Where the reading of a sentence stands.

    here: the position, and whom and what the last clause spoke of. found: what was read. last: the piece spoken of last; thing: the last that is no king; head: its kind;
    lady: the last queen; things: the last pieces together; done_to: the piece that something was done to. adrift: a move was named whose
    position is not on the board; open: the last clause named one. deed: the sentence has played a move. lets: "let" waits for its verb.
    warned: a move was advised against; barred: one was ruled out that is not known; detour: where the reading was before it. quoted, unfinished: what others say goes on. checking:
    the move that a clause plays "with check". way: the file or diagonal spoken of last. back: the position before what only can be played; instead: before the move that was last told as it comes. aim: the square counted last. ahead:
    what was announced, with the position after it.
    """

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
        self.barred = False
        self.detour: Here | None = None
        self.things = ""
        self.lady: Noun | None = None
        self.quoted = False
        self.unfinished = False
        self.checking: Named | None = None
        self.done_to = ""
        self.back: Spot | None = None
        self.instead: Spot | None = None
        self.way: Noun | None = None
        self.supposing: Spot | None = None
        self.aim: tuple[str, str] | None = None
        self.ahead: tuple[Claim, Spot | None] | None = None

    def _forward(self, text: str) -> None:
        """Plays a move that comes next; one that was named instead of the last is left."""
        with suppress(Unread):
            named = self.here.named(text)
            if named.before.moves == self.here.spot.moves:
                self.here = self.here.at(named.after)

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
        taken = bool(last) and "x" in self.here.spot.earlier(1).board.san(self.here.spot.moves[-1])
        if not to or (told and taken and to == {last} and clause.form == "ing"):
            return  # "taking on e4 loses nothing", once it has been done
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

    def _play(self, text: str) -> None:
        try:
            self.here = self.here.at(self.here.named(text).after)
            self.adrift = self.adrift and not self.warned  # "don't take back, d5 first"
        except Unread as reason:
            if text[:1] not in "abcdefgh":
                self.adrift = True
                self.found.reasons.append(str(reason))

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
        if move is None or (clause.lemma and clause.lemma not in PLAYING | {"be"}):
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
        if clause.lemma.split()[0] not in DEEDS | {"step", "recapture", "come", "arrive"}:
            return False
        takes = clause.lemma in CAPTURES or clause.lemma in members("recapture", VERBS)
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


def there_follows(clause: Clause) -> bool:
    """ "There follows Nd3, which is mate": the next move."""
    return clause.lemma == "follow" and "there" in clause.adverbs


__all__ = ["CAPTURES", "DEEDS", "PLAYING", "Course", "there_follows"]
