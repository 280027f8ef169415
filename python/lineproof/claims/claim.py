"""A claim, what it asks, and what a check answers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from typing import Any, Protocol

from lineproof.engine import Answer, Board, Line
from lineproof.lesson import Comment, Place

NULL_MOVE = "0000"
"""A null move of the text ("--") in UCI spelling."""


SHOWN = 10
"""Plies of best play that a finding shows as evidence of a verdict: five moves."""


class Outcome(StrEnum):
    """What a check found: said of the claim."""

    HOLDS = "holds"
    FAILS = "fails"
    UNSETTLED = "unsettled"


@dataclass(frozen=True)
class Spot:
    """A position with its history: a root FEN and the moves (UCI) played from it."""

    root_fen: str
    moves: tuple[str, ...]
    board: Board = field(compare=False)

    @classmethod
    def of(cls, place: Place) -> Spot:
        """The spot of a place. A null move on the way leaves no game behind it, so the history begins anew."""
        moves = tuple(place.moves())
        if NULL_MOVE in moves:
            return cls(place.board.fen, (), place.board)
        return cls(place.root_fen, moves, place.board)

    def play(self, uci: str) -> Spot:
        """The spot after one more move.

        :raises IllegalMoveError: when the move is not legal here.
        """
        return Spot(self.root_fen, (*self.moves, uci), self.board.play(uci))

    def line(self, moves: Sequence[str]) -> Spot:
        """The spot after a line of moves."""
        spot = self
        for uci in moves:
            spot = spot.play(uci)
        return spot

    def passed(self) -> Spot | None:
        """The spot after the side to move passes; None when it is in check. A pass leaves no history behind it."""
        board = self.board.passed()
        return None if board is None else Spot(board.fen, (), board)

    def with_move_for(self, side: str) -> Spot | None:
        """The spot with a side to move, after a pass by the other where one is needed; None when that one is in check."""
        return self if self.board.turn == side else self.passed()

    @cached_property
    def boards(self) -> tuple[Board, ...]:
        """Every position on the way, from the root to this one."""
        found = [Board(self.root_fen)]
        for uci in self.moves:
            found.append(found[-1].play(uci))
        return tuple(found)

    def earlier(self, plies: int) -> Spot:
        """The spot so many plies before.

        :raises IndexError: when there was none.
        """
        if plies > len(self.moves):
            raise IndexError(plies)
        cut = len(self.moves) - plies
        return Spot(self.root_fen, self.moves[:cut], self.boards[cut])

    @cached_property
    def short(self) -> tuple[str, tuple[str, ...]]:
        """The same position with no more history than repetition can reach: FEN after the last irreversible
        move, its move number set to 1, and the moves since. Equal for transposed roads, so one search serves both."""
        fen, since = self.boards[0].fen, 0
        for number, board in enumerate(self.boards):
            if number and board.fen.split()[4] == "0":
                fen, since = board.fen, number
        return " ".join([*fen.split()[:5], "1"]), self.moves[since:]


@dataclass(frozen=True)
class Played:
    """How often a move was played at a position, in the games of a collection. Intervals are of 95 %, in percent.

    collection: its name. ratings: of both players of the games that count, from and below; None when all count.
    beyond: the position lies deeper than the collection keeps any. games: those in which any move was played there.
    times: those with this move. share: the interval of their share. rival: the most played other move, in UCI; None when
    there is none. rival_times: games with it. ahead: the interval of this move's share of the games with it or its rival.
    """

    collection: str
    ratings: tuple[int, int] | None
    beyond: bool
    games: int
    times: int
    share: tuple[float, float]
    rival: str | None
    rival_times: int
    ahead: tuple[float, float]


class GameOver(Exception):  # noqa: N818 - no error: a question that a finished game does not answer
    """A move was asked for where the game is over, such as in a dead position. The text says how it ended."""


class Ask(Protocol):
    """Questions of a check. Who answers, and from what store, a check does not know.

    Every search is fixed by its nodes, one thread, an empty table: the same question has the same answer.
    """

    @property
    def nodes(self) -> int:
        """Nodes a search may spend at this step."""

    def best(self, spot: Spot, *, without: Sequence[str] = ()) -> Line | None:
        """The best line, leaving out some root moves; None when nothing is left to play or the game is over."""

    def move(self, spot: Spot, uci: str) -> Line:
        """One move searched alone, at the same nodes.

        :raises GameOver: when the game is over by the rules, though moves are left.
        """

    def shallow(self, spot: Spot) -> Line | None:
        """What a shallow search (2,000 nodes) likes first."""

    def aside(self, spot: Spot, uci: str) -> Line:
        """One move searched alone at the nodes of a sketch: for what is shown beside an answer, never for the answer.

        :raises GameOver: as `move`.
        """

    def mate(self, spot: Spot, moves: int) -> tuple[bool | None, tuple[str, ...]]:
        """Whether the mover mates in at most `moves`: an exhaustive search, no selective pruning.

        True with the line, False when exhausted, None when the nodes ran out.
        """

    def played(self, spot: Spot, uci: str, ratings: tuple[int, int] | None = None) -> Played | None:
        """How often a move was played, in the games of a collection; None when there is none to ask.

        ratings: of both players, from and below; without them those of the lesson's audience, where it has one.
        """


@dataclass(frozen=True)
class Claim:
    """Something the author says that can be checked.

    kind: the kind's id. words: exactly as written, at start..end (offsets in the lesson's text).
    spot: the position it speaks of. side: whom it speaks of. params: what the kind needs, plain values.
    """

    kind: str
    place: Place
    spot: Spot
    words: str
    start: int
    end: int
    side: str | None = None
    hedged: bool = False
    negated: bool = False
    params: Mapping[str, Any] = field(default_factory=dict)
    sentence: int = -1

    def fingerprint(self) -> str:
        """Place, kind and words in one string that survives edits elsewhere."""
        last = self.place.uci or "start"
        return f"{self.kind}|{self.place.key:016x}|{last}|{' '.join(self.words.split())}"


@dataclass(frozen=True)
class Mark:
    """A mark for the diagram: kind is "square", "move" or "pin"; squares are names; side whose idea it is."""

    kind: str
    squares: tuple[str, ...]
    side: str


@dataclass(frozen=True)
class Judgement:
    """The answer of a check at one effort.

    because: one plain sentence. line: evidence in UCI from `line_from`. numbers: what was counted or measured.
    edge: distance to the nearest value at which the outcome would be another, in points; None for exact facts;
    a value of 3 or less asks for more effort. instead: a true wording beside a claim that fails.
    one_off: unsettled because the claim is one band or one mark off.
    too_few: unsettled because the games are too few.
    second: a second finding, such as whether a fork pays.
    """

    outcome: Outcome
    because: str
    line: tuple[str, ...] = ()
    line_from: Spot | None = None
    numbers: Mapping[str, int | float | str] = field(default_factory=dict)
    edge: float | None = None
    instead: str | None = None
    one_off: bool = False
    second: str | None = None
    marks: tuple[Mark, ...] = ()
    too_few: bool = False


__all__ = [
    "Answer",
    "Ask",
    "Claim",
    "Comment",
    "GameOver",
    "Judgement",
    "Mark",
    "Outcome",
    "Played",
    "Spot",
]
