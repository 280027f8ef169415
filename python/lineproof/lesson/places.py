"""Games, places and comments of a lesson: light views of the engine's columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, overload

if TYPE_CHECKING:
    from lineproof._engine import Board
    from lineproof.lesson.lesson import Lesson

# The six traditional marks as glyph numbers (PGN standard, 10), with their one-character forms.
SUFFIX_NAGS = {"!": 1, "?": 2, "!!": 3, "??": 4, "!?": 5, "?!": 6} | {
    "‼": 3,
    "⁇": 4,
    "⁉": 5,
    "⁈": 6,
}

# Verdict signs of the printed encyclopaedias as glyph numbers (PGN standard, 10).
SIGN_NAGS = {
    "=": 10,
    "∞": 13,
    "+=": 14,
    "⩲": 14,
    "=+": 15,
    "⩱": 15,
    "±": 16,
    "+/-": 16,
    "∓": 17,
    "-/+": 17,
} | {
    "+-": 18,
    "-+": 19,
    "□": 7,
}


@dataclass(frozen=True, slots=True)
class Game:
    """One game of the file."""

    index: int
    tags: tuple[tuple[str, str], ...]
    """(name, value) in text order, as written."""
    start: Board
    root: Place
    span: tuple[int, int]
    """Offsets of its first character and one past its last."""
    result: str | None
    """Its termination marker as written; None where it has none."""

    def tag(self, name: str) -> str | None:
        """The value of the first tag of that name."""
        return next((value for known, value in self.tags if known == name), None)


@dataclass(frozen=True, slots=True)
class Comment:
    """A comment and the position that it speaks of."""

    place: Place
    """The place whose position it speaks of; for one that opens a variation, the position there."""
    text: str
    """The inner text exactly as in the file."""
    start: int
    """Offset of the inner text in `Lesson.text`."""
    opening: bool
    """Whether it opens a game or a variation."""
    anchor: Place
    """Where it is written: for one that opens a variation, that variation's first move."""
    to_line_end: bool
    """A semicolon comment, which ends with its line."""

    @property
    def end(self) -> int:
        """One past the inner text."""
        return self.start + len(self.text)


class Place:
    """A position on a spoken line: the start of a game, or what a move leads to."""

    __slots__ = ("index", "lesson")

    def __init__(self, lesson: Lesson, index: int) -> None:
        self.lesson = lesson
        self.index = index

    def __eq__(self, other: object) -> bool:
        return (
            isinstance(other, Place) and self.index == other.index and self.lesson is other.lesson
        )

    def __hash__(self) -> int:
        return hash(self.index)

    def __repr__(self) -> str:
        return f"<Place {self.index}: {self.label}>"

    def _at(self, index: int | None) -> Place | None:
        return None if index is None else Place(self.lesson, index)

    @property
    def game(self) -> Game:
        return self.lesson.games[self.lesson.pgn.game(self.index)]

    @property
    def parent(self) -> Place | None:
        """The place before the move; None for the start of a game."""
        return self._at(self.lesson.pgn.parent(self.index))

    @property
    def children(self) -> tuple[Place, ...]:
        """The continuations: first the one shown first, then the variations in text order."""
        return tuple(Place(self.lesson, child) for child in self.lesson.pgn.children(self.index))

    @property
    def next(self) -> Place | None:
        """The continuation shown first."""
        return self._at(self.lesson.pgn.next(self.index))

    @property
    def is_main(self) -> bool:
        """Whether it is on its game's main line."""
        return self.lesson.pgn.depth(self.index) == 0

    @property
    def depth(self) -> int:
        """How many variations it is inside of."""
        return self.lesson.pgn.depth(self.index)

    @property
    def board(self) -> Board:
        """The board after the move."""
        return self.lesson.board(self.index)

    @property
    def key(self) -> int:
        """Equal for the same position (FIDE Laws of Chess 9.2.3)."""
        return self.lesson.pgn.key(self.index)

    @property
    def uci(self) -> str | None:
        """The move in UCI spelling, "0000" for a null move; None for the start of a game."""
        return self.lesson.pgn.uci(self.index)

    @property
    def san(self) -> str | None:
        """The move in correct SAN, "--" for a null move; None for the start of a game."""
        return self.lesson.pgn.san(self.index)

    @property
    def span(self) -> tuple[int, int] | None:
        """Offsets of the move as written; None for the start of a game."""
        return self.lesson.pgn.written(self.index)

    @property
    def written(self) -> str | None:
        """The move as spelled in the file."""
        span = self.span
        return None if span is None else self.lesson.text[span[0] : span[1]]

    @property
    def ply(self) -> int:
        """Half-moves from the start of the game."""
        return self.lesson.pgn.ply(self.index)

    @property
    def number(self) -> str:
        """The move number as it is printed: "3." or "3..."; empty for the start of a game."""
        if self.ply == 0:
            return ""
        start = self.game.start
        half = self.ply - 1 + (start.turn == "black")
        return f"{start.move_number + half // 2}." + (".." if half % 2 else "")

    @property
    def label(self) -> str:
        """The move as printed, "3. f4" or "3... exf4"; "start" for the start of a game."""
        return f"{self.number} {self.san}" if self.ply else "start"

    @property
    def glyph_numbers(self) -> tuple[int | None, ...]:
        """The NAG of each glyph, signs written as text included, in text order; None for a sign without one."""
        found: list[int | None] = []
        for kind, start, end in self.lesson.pgn.glyphs(self.index):
            text = self.lesson.text[start:end]
            if kind == "nag":
                found.append(int(text[1:]))
            else:
                found.append(SUFFIX_NAGS.get(text, SIGN_NAGS.get(text)))
        return tuple(found)

    @property
    def nags(self) -> tuple[int, ...]:
        """Numbers of its glyphs, from ``$n`` and from ! and ?, in text order."""
        found = []
        for kind, start, end in self.lesson.pgn.glyphs(self.index):
            text = self.lesson.text[start:end]
            if kind == "nag":
                found.append(int(text[1:]))
            elif kind == "suffix":
                found.append(SUFFIX_NAGS[text])
        return tuple(found)

    @property
    def marks(self) -> tuple[str, ...]:
        """Its signs written as text (``=``, ``+-``, ``∞``, ``N``), in text order; not in `nags`."""
        return tuple(
            self.lesson.text[start:end]
            for kind, start, end in self.lesson.pgn.glyphs(self.index)
            if kind == "mark"
        )

    @property
    def comments(self) -> tuple[Comment, ...]:
        """The comments that speak of this position here, in text order."""
        indices = self.lesson.pgn.comments_of(self.index)
        return tuple(self.lesson.comments[index] for index in indices) if indices else ()

    def path(self) -> list[Place]:
        """The places from the start of the game to this one, both included."""
        return [Place(self.lesson, index) for index in self.lesson.pgn.path(self.index)]

    @property
    def root_fen(self) -> str:
        """FEN of the start of its game."""
        return self.game.start.fen

    def moves(self) -> list[str]:
        """The moves from `root_fen` to here, in UCI spelling."""
        pgn = self.lesson.pgn
        return [pgn.uci(index) or "" for index in pgn.path(self.index)[1:]]


class Places(Sequence[Place]):
    """Every place of a lesson, in text order; made when asked for."""

    __slots__ = ("_lesson",)

    def __init__(self, lesson: Lesson) -> None:
        self._lesson = lesson

    def __len__(self) -> int:
        return self._lesson.pgn.places

    @overload
    def __getitem__(self, index: int) -> Place: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[Place]: ...
    def __getitem__(self, index: int | slice) -> Place | Sequence[Place]:
        if isinstance(index, slice):
            return tuple(Place(self._lesson, at) for at in range(len(self))[index])
        return Place(self._lesson, range(len(self))[index])

    def __iter__(self) -> Iterator[Place]:
        return (Place(self._lesson, index) for index in range(len(self)))


class Comments(Sequence[Comment]):
    """Every comment of a lesson, in text order; made when asked for."""

    __slots__ = ("_lesson",)

    def __init__(self, lesson: Lesson) -> None:
        self._lesson = lesson

    def __len__(self) -> int:
        return self._lesson.pgn.comments

    @overload
    def __getitem__(self, index: int) -> Comment: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[Comment]: ...
    def __getitem__(self, index: int | slice) -> Comment | Sequence[Comment]:
        if isinstance(index, slice):
            return tuple(self._make(at) for at in range(len(self))[index])
        return self._make(range(len(self))[index])

    def _make(self, index: int) -> Comment:
        lesson = self._lesson
        place, anchor, start, end, opening, to_line_end = lesson.pgn.comment(index)
        return Comment(
            place=Place(lesson, place),
            text=lesson.text[start:end],
            start=start,
            opening=opening,
            anchor=Place(lesson, anchor),
            to_line_end=to_line_end,
        )
