"""What singles a position out among those that were shown: few pieces on few squares, those first that moved last.

>>> from lineproof.engine import Board
>>> seen = Seen()
>>> board = Board()
>>> for uci in ("e2e4", "e7e5", "f1c4"):
...     seen.add(board)
...     board = board.play(uci)
>>> seen.add(board)
>>> words(seen.marks(board, ["c4"]))
'with the white bishop on c4'
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from lineproof.claims.board import NAMES, side_of
from lineproof.engine import Board

LIKELY = 20
"""Landmarks of which every pair and triple is tried."""
START = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq -"


@dataclass(frozen=True)
class Landmark:
    """What can be seen or said of a position. piece: `what` is a FEN letter, on the square `at`. empty: the square `at` is.
    turn: `what` is the side to move. castling: `what` are the rights as in a FEN. passing: a pawn may be taken in passing on `at`."""

    kind: Literal["piece", "empty", "turn", "castling", "passing"]
    what: str
    at: str = ""

    @property
    def words(self) -> str:
        match self.kind:
            case "piece":
                return f"the {side_of(self.what)} {NAMES[self.what.lower()]} on {self.at}"
            case "empty":
                return f"nothing on {self.at}"
            case "turn":
                return f"{self.what.capitalize()} to move"
            case "castling":
                return _castling(self.what)
            case "passing":
                return f"a pawn to be taken in passing on {self.at}"

    def holds(self, board: Board) -> bool:
        """Whether it is so in a position."""
        fields = board.fen.split()
        match self.kind:
            case "piece":
                return board.piece_at(self.at) == self.what
            case "empty":
                return board.piece_at(self.at) is None
            case "turn":
                return board.turn == self.what
            case "castling":
                return fields[2] == self.what
            case "passing":
                return fields[3] == self.at


def _castling(rights: str) -> str:
    if rights == "-":
        return "no castling left"
    sides = [
        f"{side} still to castle {'on either side' if both == 'KQ' else 'short' if both == 'K' else 'long'}"
        for side, both in (
            ("White", "".join(c for c in rights if c.isupper())),
            ("Black", "".join(c for c in rights if c.islower()).upper()),
        )
        if both
    ]
    return " and ".join(sides)


class Seen:
    """Positions that were shown, and by landmark which of them have it, as bits."""

    def __init__(self) -> None:
        self.numbers: dict[int, int] = {}
        """By key."""
        self._with: dict[Landmark, int] = {}

    def add(self, board: Board) -> None:
        if board.key not in self.numbers:
            bit = 1 << len(self.numbers)
            self.numbers[board.key] = len(self.numbers)
            for mark in _all(board):
                self._with[mark] = self._with.get(mark, 0) | bit

    def marks(self, board: Board, moved: Sequence[str] = ()) -> tuple[Landmark, ...]:
        """The fewest landmarks that only this position has of those shown. moved: squares that pieces came to, the last first."""
        only = 1 << self.numbers[board.key]
        pieces = _pieces(board, moved)
        likely = pieces[:LIKELY]
        few = self._few([self._having(mark) for mark in likely], only)
        if few:
            return tuple(likely[number] for number in few)
        # The position is told by more: one landmark after the other, whichever leaves the fewest others.
        chosen: list[Landmark] = likely[:1]
        left = self._have(chosen)
        candidates = [*pieces, *(m for m in _all(board) if m.kind != "piece"), *self._empty(board)]
        having = {mark: self._having(mark) for mark in candidates}
        while left != only and candidates:
            best = min(candidates, key=lambda m: (left & having[m]).bit_count())
            if left & having[best] == left:
                break
            chosen.append(best)
            left &= having[best]
        return tuple(chosen)

    @staticmethod
    def _few(having: Sequence[int], only: int) -> tuple[int, ...]:
        """The first one, two or three landmarks, by their numbers, that one position alone has; none where more are needed."""
        count = range(len(having))
        for one in count:
            if having[one] == only:
                return (one,)
        pairs = {(a, b): having[a] & having[b] for a, b in combinations(count, 2)}
        for pair, left in pairs.items():
            if left == only:
                return pair
        for (a, b), left in pairs.items():
            for third in range(b + 1, len(having)):
                if left & having[third] == only:
                    return a, b, third
        return ()

    def _have(self, marks: Sequence[Landmark]) -> int:
        found = (1 << len(self.numbers)) - 1
        for mark in marks:
            found &= self._having(mark)
        return found

    def _having(self, mark: Landmark) -> int:
        if mark.kind == "empty":
            taken = 0
            for other, bits in self._with.items():
                if other.kind == "piece" and other.at == mark.at:
                    taken |= bits
            return ((1 << len(self.numbers)) - 1) & ~taken
        return self._with.get(mark, 0)

    def _empty(self, board: Board) -> list[Landmark]:
        """Squares that are empty here and on which something stood elsewhere."""
        squares = {mark.at for mark in self._with if mark.kind == "piece"}
        return [Landmark("empty", "", at) for at in sorted(squares) if board.piece_at(at) is None]


def _all(board: Board) -> list[Landmark]:
    fields = board.fen.split()
    found = [Landmark("piece", letter, at) for at, letter in board.pieces()]
    found += [Landmark("turn", board.turn), Landmark("castling", fields[2])]
    if fields[3] != "-":
        found.append(Landmark("passing", "", fields[3]))
    return found


def _pieces(board: Board, moved: Sequence[str]) -> list[Landmark]:
    """Pieces as landmarks, the most telling first: those that moved last, before those that stand where games begin."""
    at = {square: Landmark("piece", letter, square) for square, letter in board.pieces()}
    first = [at[square] for square in dict.fromkeys(moved) if square in at]
    home = {square for square, letter in Board().pieces() if board.piece_at(square) == letter}
    rest = [mark for square, mark in at.items() if mark not in first]
    out = [mark for mark in rest if mark.at not in home]
    return first + out + [mark for mark in rest if mark.at in home]


def words(marks: Sequence[Landmark], moved: Sequence[str] = ()) -> str:
    """ "with the white bishop on c4 and the black knights still on b8 and g8". moved: squares that pieces came to."""
    said: dict[tuple[str, str, bool], list[Landmark]] = {}
    for mark in marks:
        group: tuple[str, str, bool]
        if mark.kind == "piece":
            home = mark.at not in moved and Board().piece_at(mark.at) == mark.what
            group = ("piece", mark.what, home)
        else:
            group = (mark.words, "", False)
        said.setdefault(group, []).append(mark)
    parts = [_group(some, home) for (_, _, home), some in said.items()]
    return f"with {_listed(parts)}" if parts else ""


def _group(marks: Sequence[Landmark], home: bool) -> str:
    """Pieces of one sort, or one thing else."""
    first = marks[0]
    if first.kind != "piece":
        return first.words
    name = f"{side_of(first.what)} {NAMES[first.what.lower()]}{'s' if len(marks) > 1 else ''}"
    return f"the {name}{' still' if home else ''} on {_listed([mark.at for mark in marks])}"


def _listed(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def is_start(board: Board) -> bool:
    """Whether a game begins so."""
    return " ".join(board.fen.split()[:4]) == START
