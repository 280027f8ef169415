"""Here: the place that a sentence speaks of, and what its words can refer to there."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from lineproof.engine import AmbiguousMoveError, Board, IllegalMoveError, MoveSyntaxError
from lineproof.lesson import Lesson, Place

from .board import LETTERS, other, side_of
from .claim import Claim, Spot
from .clause import Clause
from .reference import Reference
from .sentence import SAN
from .spoken import SPOKEN
from .worded import Worded, fitting

_PARTS = re.compile(rf"(?:(?P<number>\d+)\.)?(?P<dots>\.\.\.?)?(?P<san>(?:{SPOKEN}|{SAN})[+#]?)$")

_TAKING = frozenset(
    [
        "capture",
        "taking",
        "capturing",
        "recapture",
        "recapturing",
        "grabbing",
        "grab",
        "exchange",
        "snatching",
        "swallowing",
        "accepting",
        "eating",
    ]
)
_PUSHING = frozenset(["push", "pushing", "advance", "advancing", "break"])


_DOING = frozenset(
    [
        "move",
        "capture",
        "check",
        "push",
        "advance",
        "retreat",
        "sortie",
        "jump",
        "leap",
        "recapture",
        "sacrifice",
        "grab",
        "development",
        "exchange",
        "pushing",
        "advancing",
        "taking",
        "capturing",
        "recapturing",
        "castling",
        "checking",
        "grabbing",
        "snatching",
        "swallowing",
        "accepting",
        "eating",
        "playing",
        "putting",
        "moving",
        "developing",
        "bringing",
        "defending",
        "protecting",
        "declining",
        "attacking",
        "promotion",
        "promoting",
    ]
)
_OBJECT = frozenset({"defending", "protecting", "declining", "attacking"})
"""Doings whose object is not what moves."""
_LOOKING = _OBJECT - {"declining"}


_FIRST = dict.fromkeys("KQRBNkqrbn", "18") | {"P": "2", "p": "7"}
"""The ranks on which a piece stands before it is in play."""


class Unread(Exception):  # noqa: N818 - no error: the reader's way to leave a clause alone
    """A clause that must not be read, with the reason."""


_POINTING = frozenset(["it", "this", "that", "which", "who", "they", "them", "he", "she", "him", "her", "one", "these", "those", "both", "ones"])  # fmt: skip


def absent(text: str | None, where: str = "on the board") -> Unread:
    """The reason why a piece is not found: there is none, or the word that points to it points nowhere."""
    if text is None or text in _POINTING:
        return Unread(f"it is not clear what {text or 'it'!r} means")
    return Unread(f"there is no {text.removeprefix('the ')} {where}")


def meant(spot: Spot, san: str, shown: str | None = None) -> str:
    """The legal move (UCI) that a written or spoken move means at a spot. "Knight takes" takes what has just moved, if it can.

    shown: the move that the lesson plays there; it is meant where several could be.

    :raises IllegalMoveError: when there is none.
    :raises AmbiguousMoveError: when there are several.
    :raises MoveSyntaxError: when it is no move.
    """
    board = spot.board
    spoken = re.fullmatch(rf"({SPOKEN})[+#]?", san)
    if spoken is None:
        return board.parse_san(san)
    letter, _, square = spoken[1].partition("x")
    captures = [
        uci for uci in board.legal_moves() if _by(board, uci, letter) and "x" in board.san(uci)
    ]
    if square:
        found = [uci for uci in captures if uci[2:4] == square]
    else:
        last = spot.moves[-1][2:4] if spot.moves else None
        found = [uci for uci in captures if uci[2:4] == last] or captures
    if not found:
        raise IllegalMoveError(san)
    if len(found) > 1 and shown not in found:
        raise AmbiguousMoveError(san)
    return found[0] if len(found) == 1 or shown is None else shown


def _by(board: Board, uci: str, letter: str) -> bool:
    """Whether such a piece moves, or a pawn of that file: "N", "h"."""
    moved = (board.piece_at(uci[:2]) or "").upper()
    return moved == letter or (moved == "P" and uci[0] == letter)


_PIECE_MOVE = re.compile("([KQRBN])([a-h]?[1-8]?)x?([a-h][1-8])")


def _wrote(written: str, said: str, uci: str) -> bool:
    """Whether a move as it is written is the one that is said, with more or less of where it came from: "Nd7" for "Nbd7"."""
    if written == said:
        return True
    one, two = _PIECE_MOVE.fullmatch(written), _PIECE_MOVE.fullmatch(said)
    if one is None or two is None or (one[1], one[3]) != (two[1], two[3]):
        return False
    return all(sign in uci[:2] for sign in two[2])


@dataclass(frozen=True)
class Agent:
    """Who or what does something in a clause.

    side: whose doing it is. spot: the position it speaks of, after the agent's move when the agent is one. square: where the piece stands
    that acts, None when a side as a whole does. move: the move, when the agent is one.
    """

    side: str
    spot: Spot
    square: str | None = None
    move: Named | None = None


@dataclass(frozen=True)
class Named:
    """A move named in a sentence: the spot before it, its UCI spelling, the side that plays it."""

    before: Spot
    uci: str
    side: str

    @property
    def after(self) -> Spot:
        return self.before.play(self.uci)


@dataclass(frozen=True)
class Here:
    """Where a clause is read.

    place: the place that the comment speaks of. spot: the position after the moves that the sentence itself plays.
    subject: the side the clause before spoke of. topic: the piece the clause before began with. third: the side named last in the sentence. words, start, end: the clause as written. idle: the position in which the sentence lets a side pass, which it has just
    done. he: whom "he" means, where a move of his tells; "" for somebody who does not play. neutral: whether the sentence names the sides and never says "we" or "you". asked: the question that it answers; thought: what it may deny; tried: whether a question before has tried the last move.
    """

    lesson: Lesson
    place: Place
    spot: Spot
    words: str = ""
    start: int = 0
    end: int = 0
    sentence: int = -1
    subject: str | None = None
    topic: str | None = None
    third: str | None = None
    he: str | None = None
    hedged: bool = False
    opening: bool = False
    idle: Spot | None = None
    neutral: bool = False
    asked: Clause | None = None
    thought: Clause | None = None
    tried: bool = False

    @property
    def board(self) -> Board:
        return self.spot.board

    @property
    def said(self) -> str:
        """The clause in lower case, line breaks as blanks."""
        return " ".join(self.words.lower().split())

    @property
    def denied(self) -> bool:
        """Whether the clause says "not"."""
        return re.search(r"\bnot\b|n['’]t\b", self.said) is not None

    @property
    def taught(self) -> str:
        """The side taught.

        :raises Unread: when the lesson does not say.
        """
        side = self.lesson.settings.side
        if side is None:
            raise Unread(
                "the lesson does not say which side it teaches, so it is not clear who is meant"
            )
        return side

    @property
    def mover(self) -> str:
        """The side that made the last move."""
        return other(self.board.turn)

    def side(self, text: str | None) -> str:
        """Whom a side word means; without one, the side that the clause before spoke of, else the last mover.

        :raises Unread: when it is not clear.
        """
        match text:
            case None:
                return self.implied()
            case "white" | "white 's" | "the first player":
                return "white"
            case "black" | "black 's" | "the second player":
                return "black"
            case "we" | "us" | "you" | "i" | "our" | "your" | "my":
                return self.taught
            case "he" | "she" | "they" | "him" | "his" | "her" | "their":
                if self.he == "":
                    raise Unread(f"{text!r} is somebody who does not play here")
                if self.he is not None:
                    return self.he
                if self.third == self.taught:
                    raise Unread(f"{text!r} can mean either side here")
                return other(self.taught)
            case _ if "opponent" in text:
                return other(self.taught)
        raise Unread(f"{text!r}: not clear who is meant")

    def implied(self) -> str:
        """Whom a clause without a subject speaks of: the side that the clause before spoke of, else the last mover."""
        return self.subject or self.mover

    def owner(self, reference: Reference) -> str | None:
        """Whose piece a reference names, None when it does not say."""
        match reference.whose:
            case "ours":
                return self.taught
            case "theirs" if self.he:
                return self.he
            case "theirs" if self.third == self.taught and self.neutral:
                return self.taught  # "White is a pawn down, yet his king has castled"
            case "theirs":
                return other(self.taught)
            case whose:
                return whose

    def agent(self, text: str | None, letters: str = "kqrbnp") -> Agent:
        """Who or what an {agent} slot means; without one, and for "this" or "it", the side spoken of, or the move just played.

        text: the words of the slot, or None. letters: the pieces that can do such a thing, as FEN letters.

        :raises Unread: when it is not clear, or names a piece that is not there.
        """
        if text in (None, "this", "that", "it", "which", "who") and self.topic and text is not None:
            text = self.topic  # "the knight on e5 is strong; it forks ..."
        if text is None or text in {"this", "that", "it", "which", "who"}:
            if text is None and self.subject is not None:
                return Agent(self.subject, self.spot, self._acting(self.subject))
            last = self.last()
            return Agent(last.side, self.spot, last.uci[2:4], last)
        if _PARTS.match(text):
            try:
                named = self.named(text)
            except Unread:
                square = self.standing(text)
                if square is None:
                    raise
                return Agent(side_of(self.board.piece_at(square) or "K"), self.spot, square)
            return Agent(named.side, named.after, named.uci[2:4], named)
        reference = Reference.read(text)
        if reference.letter is not None or reference.square is not None:
            if any(word in _DOING for word in text.split()):
                return self._doing(text)
            return self._piece(text, reference, letters)
        if text.split()[0] in _DOING or text.split()[-1] in _DOING:
            return self._doing(text)
        side = self.side(text)
        return Agent(side, self.spot, self._acting(side))

    def _doing(self, text: str) -> Agent:
        """A move in words: the one just played, or else the only one here that is as they say."""
        try:
            last = self.described(text)
        except Unread:
            said = Worded.read(text)
            telling = said is not None and (said.to or said.takes or said.castles or said.start)
            found = fitting(self.spot, text) if telling else []
            if len(found) != 1:
                raise
            move = Named(self.spot, found[0], self.board.turn)
            return Agent(move.side, move.after, move.uci[2:4], move)
        return Agent(last.side, self.spot, last.uci[2:4], last)

    def _acting(self, side: str) -> str | None:
        """The square of the piece that a side has just moved."""
        return self.spot.moves[-1][2:4] if self.spot.moves and self.mover == side else None

    def _piece(self, text: str, reference: Reference, letters: str) -> Agent:
        found = [
            at
            for at in reference.squares(self.board, self.owner(reference))
            if (self.board.piece_at(at) or "").lower() in letters
        ]
        found = self.salient(found)
        if not found:
            raise absent(text)
        if len(found) > 1:
            raise Unread(f"it is not clear which piece {text!r} means")
        return Agent(side_of(self.board.piece_at(found[0]) or ""), self.spot, found[0])

    def salient(self, found: list[str]) -> list[str]:
        """Of several pieces the one that words mean which do not say which: the one that has just moved, else the only one in play."""
        if len(found) < 2:
            return found
        last = self.spot.moves[-1][2:4] if self.spot.moves else None
        if last in found:
            return [last]
        return self.in_play(found)

    def in_play(self, found: list[str]) -> list[str]:
        """Of several pieces the only one that has left its first rank, for a pawn its first square; all where it is not just one."""
        out = [at for at in found if at[1] not in _FIRST[self.board.piece_at(at) or "K"]]
        return out if len(out) == 1 else found

    def find(self, text: str, side: str | None = None, board: Board | None = None) -> list[str]:
        """Squares of the pieces that words such as "the knight on f6" can mean."""
        reference = Reference.read(text)
        return reference.squares(board or self.board, self.owner(reference) or side)

    def named(self, text: str) -> Named:
        """The move that a SAN in the sentence means: the one just played, one legal here, or an alternative to the last.

        :raises Unread: when it is none of these.
        """
        parts = _PARTS.match(text)
        if parts is None:
            raise Unread(f"{text} is not a move")
        san = parts["san"]
        side = None
        if parts["number"]:
            side = "black" if parts["dots"] else "white"
        elif parts["dots"]:
            side = "black"
        for spot, last in self._candidates():
            if side is not None and spot.board.turn != side:
                continue
            if parts["number"] and int(parts["number"]) != spot.board.move_number:
                continue
            try:
                uci = meant(spot, san, self._shown_at(spot))
            except (IllegalMoveError, AmbiguousMoveError, MoveSyntaxError):
                continue
            if last is None or last == uci:
                return Named(spot, uci, spot.board.turn)
        if parts["number"] and side is not None:
            earlier = self._numbered(san, int(parts["number"]), side)
            if earlier is not None:
                return earlier
        raise Unread(f"{text} can be played neither here nor a move before")

    def standing(self, text: str) -> str | None:
        """Where the piece stands that has made a move some moves ago: b5 for "Bb5"; None when it has left, or has never made it.

        A pawn's move may be no more than its square: "e4 is weak".
        """
        parts = _PARTS.match(text)
        if parts is None or parts["number"]:
            return None
        san = parts["san"].rstrip("+#")
        spot = self.spot
        for number in range(len(spot.moves) - 1, -1, -1):
            uci = spot.moves[number]
            if any(uci[2:4] in (later[:2], later[2:4]) for later in spot.moves[number + 1 :]):
                continue
            if _wrote(spot.boards[number].san(uci).rstrip("+#"), san, uci):
                return uci[2:4]
        return None

    def made(self, text: str) -> Named:
        """The move that a SAN means, also one that was played some moves ago in this line: "with Nc3 White won a tempo".

        :raises Unread: when it is neither.
        """
        try:
            return self.named(text)
        except Unread:
            san = text.split(".")[-1].rstrip("+#")
            spot = self.spot
            for number in range(len(spot.moves) - 1, -1, -1):
                uci = spot.moves[number]
                if _wrote(spot.boards[number].san(uci).rstrip("+#"), san, uci):
                    before = spot.earlier(len(spot.moves) - number)
                    return Named(before, uci, before.board.turn)
            raise

    def _numbered(self, san: str, number: int, side: str) -> Named | None:
        """A move that its number places earlier in the line: the one played there, or one instead of it."""
        for back in range(2, len(self.spot.moves) + 1):
            spot = self.spot.earlier(back)
            if (spot.board.move_number, spot.board.turn) == (number, side):
                try:
                    return Named(spot, meant(spot, san), side)
                except (IllegalMoveError, AmbiguousMoveError, MoveSyntaxError):
                    return None
        return None

    def _candidates(self) -> list[tuple[Spot, str | None]]:
        """Spots at which a named move may be played: before the last move if it is that move, here, before the last move."""
        if not self.spot.moves:
            return [(self.spot, None)]
        before = self.spot.earlier(1)
        return [(before, self.spot.moves[-1]), (self.spot, None), (before, None)]

    @property
    def shown_next(self) -> str | None:
        """The move (UCI) that the lesson shows next; None when nothing follows, or the sentence itself has left the line."""
        following = self.place.next
        if following is None or self.spot.moves != tuple(self.place.moves()):
            return None
        return following.uci if following.uci in self.board.legal_moves() else None

    def _shown_at(self, spot: Spot) -> str | None:
        """The move (UCI) that the lesson plays at a spot on its line from here; None off the line."""
        here = tuple(self.place.moves())
        if spot.moves[: len(here)] != here:
            return None
        at = self.place
        for uci in spot.moves[len(here) :]:
            if at.next is None or at.next.uci != uci:
                return None
            at = at.next
        return at.next.uci if at.next is not None else None

    def last(self) -> Named:
        """The move just played.

        :raises Unread: when none has been.
        """
        if not self.spot.moves:
            raise Unread("no move has been played yet")
        before = self.spot.earlier(1)
        return Named(before, self.spot.moves[-1], before.board.turn)

    def described(self, text: str) -> Named:
        """The move just played, when words such as "the knight move", "this capture" or "pushing on" describe it.

        :raises Unread: when they do not.
        """
        last = self.last()
        board = last.before.board
        letter = (board.piece_at(last.uci[:2]) or "").lower()
        captures = board.san(last.uci).count("x") > 0
        after = last.after.board
        words = re.sub(r"\b(?:king|queen) 's ", "", text).split()
        said = set(words)
        taken = (board.piece_at(last.uci[2:4]) or "").lower()
        takes = bool(said & _TAKING)
        fits = True
        for index, word in enumerate(words):
            piece = LETTERS.get(word.removesuffix("s"))
            if piece is not None and not said & _OBJECT:
                if said & {"promotion", "promoting", "underpromotion"} and len(last.uci) == 5:
                    fits = fits and piece in {"p", last.uci[4]}
                    continue
                by = "with" in words[max(0, index - 2) : index]
                fits = fits and piece == (letter if by or not takes else taken)
        if takes:
            fits = fits and captures
        if said & _PUSHING:
            fits = fits and letter == "p" and not captures
        if said & {"promotion", "promoting"}:
            fits = fits and len(last.uci) == 5
        if "castling" in said:
            fits = fits and board.san(last.uci).startswith("O-O")
        if said & {"check", "checking"}:
            fits = fits and after.in_check
        squares = [w for w in words if re.fullmatch("[a-h][1-8]", w)]
        files = [w for w in words if re.fullmatch("[a-h]", w) and w != "a"]
        if said & _LOOKING:
            own = bool(said & {"defending", "protecting"})
            seen = [
                at
                for at in after.attacks(last.uci[2:4])
                if (man := after.piece_at(at)) and (side_of(man) == last.side) == own
            ]
            fits = fits and all(square in seen for square in squares)
            fits = fits and all(any(at[0] == name for at in seen) for name in files)
        else:
            fits = fits and all(square == last.uci[2:4] for square in squares)
            fits = fits and all(name in (last.uci[0], last.uci[2]) for name in files)
        if said & {"playing", "putting"} and not squares:
            fits = False
        if not fits:
            raise Unread(f"{text!r} does not describe the move just played")
        return last

    def play(self, text: str) -> Spot:
        """The spot after a sequence of moves in words, the first of which may be the move just played.

        :raises Unread: when a move of it cannot be played.
        """
        sans = [t for t in text.split() if _PARTS.match(t)]
        first = self.named(sans[0])
        spot = first.after
        for text_ in sans[1:]:
            parts = _PARTS.match(text_)
            try:
                spot = spot.play(meant(spot, parts["san"] if parts else text_))
            except ValueError as error:
                raise Unread(f"{text_} does not follow") from error
        return spot

    def claim(
        self,
        kind: str,
        side: str | None = None,
        *,
        spot: Spot | None = None,
        negated: bool = False,
        **params: Any,
    ) -> Claim:
        """A claim of this clause."""
        return Claim(
            kind=kind, place=self.place, spot=spot or self.spot, words=self.words, start=self.start, end=self.end,
            side=side, hedged=self.hedged, negated=negated, params=params, sentence=self.sentence,
        )  # fmt: skip

    def at(self, spot: Spot) -> Here:
        return but(self, spot=spot)


if TYPE_CHECKING:
    from dataclasses import replace as but
else:

    def but(here: Here, **said: Any) -> Here:
        """The same place with some of it said otherwise: `replace`, several times as fast, for it is asked for at every clause."""
        found = object.__new__(Here)
        found.__dict__.update(here.__dict__, **said)
        return found


__all__ = ["Agent", "Here", "Named", "Unread", "but", "meant"]
