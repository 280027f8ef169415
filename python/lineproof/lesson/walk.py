"""Walks over the tokens of a lesson, and text put together from pieces of it: for edits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar

from lineproof.lesson.places import Place

if TYPE_CHECKING:
    from lineproof.lesson.lesson import Lesson

T = TypeVar("T")

BLANK = ("space", "newline")
MOVES = ("move", "null move")
GLYPHS = ("suffix", "nag", "mark")
COMMENTS = ("comment", "line comment")
# Tokens that their line's end ends: nothing may follow them on the line.
TO_LINE_END = ("line comment", "escape")


@dataclass(frozen=True)
class Span:
    """Tokens from `first` to before `last`: a glyph, a comment, or a whole variation."""

    first: int
    last: int
    variation: bool


class Tokens:
    """The tokens of a lesson, with the walks that edits need."""

    def __init__(self, lesson: Lesson) -> None:
        self.lesson = lesson
        self.pgn = lesson.pgn
        self.count = lesson.pgn.tokens

    def kind(self, index: int) -> str:
        return self.pgn.token(index)[0] if 0 <= index < self.count else "end"

    def start(self, index: int) -> int:
        return self.pgn.token(index)[1] if index < self.count else len(self.lesson.text)

    def end(self, index: int) -> int:
        return self.pgn.token(index)[2]

    def text(self, first: int, last: int) -> str:
        """The text of the tokens from `first` to before `last`."""
        return self.lesson.text[self.start(first) : self.start(last)] if first < last else ""

    def shifted(self, index: int, shift: int) -> str:
        """The text of a token, a move number raised."""
        text = self.text(index, index + 1)
        digits = text.rstrip(".…")
        if self.kind(index) != "number" or not digits.isdecimal():
            return text
        return f"{int(digits) + shift}{text[len(digits) :]}"

    def move(self, place: Place) -> int:
        return sure(self.pgn.move_token(place.index))

    def skip(self, index: int) -> int:
        """The first token from here on that is no white space."""
        while self.kind(index) in BLANK:
            index += 1
        return index

    def last_before(self, index: int) -> int:
        """The last token before this one that is no white space."""
        index -= 1
        while index >= 0 and self.kind(index) in BLANK:
            index -= 1
        return index

    def numbered(self, move: int) -> int:
        """The first token of the move number before a move, or the move."""
        first = move
        index = move - 1
        while self.kind(index) in (*BLANK, "escape", "number"):
            if self.kind(index) == "number":
                first = index
            index -= 1
        return first

    def opening(self, index: int) -> int:
        """The ``(`` of the variation that a token is in."""
        depth = 0
        index -= 1
        while depth or self.kind(index) != "open":
            depth += {"close": 1, "open": -1}.get(self.kind(index), 0)
            index -= 1
        return index

    def closing(self, opened: int) -> int:
        """The ``)`` of a ``(``."""
        depth = 1
        index = opened
        while depth:
            index += 1
            depth += {"open": 1, "close": -1}.get(self.kind(index), 0)
        return index

    def replaced(self, opened: int) -> int:
        """The move that the variation at a ``(`` replaces."""
        depth = 0
        index = opened - 1
        while depth or self.kind(index) not in MOVES:
            depth += {"close": 1, "open": -1}.get(self.kind(index), 0)
            index -= 1
        return index

    def _walk(self, move: int) -> Iterator[tuple[int, str]]:
        """The tokens after a move on its own level, a variation as its ``(``, to the line's end."""
        index = move + 1
        while True:
            kind = self.kind(index)
            if kind in ("close", "end", "tag"):
                return
            yield index, kind
            index = self.closing(index) + 1 if kind == "open" else index + 1

    def _ends(self, index: int, kind: str, inside: bool) -> bool:
        if kind != "result":
            return False
        return not inside or self.kind(self.skip(index + 1)) == "close"

    def line_end(self, move: int, inside: bool) -> int:
        """The token that ends a move's line: ``)``, the result, the next game, the text's end."""
        index = move
        for index, kind in self._walk(move):
            if self._ends(index, kind, inside):
                return index
        if self.kind(index) == "open":
            return self.closing(index) + 1
        return index + 1

    def trail_end(self, move: int) -> int:
        """The first token after a move that is of the next move, its number, or the line's end."""
        index = move
        for index, kind in self._walk(move):
            if kind in MOVES:
                return self.numbered(index)
            if kind == "result":
                return index
        if self.kind(index) == "open":
            return self.closing(index) + 1
        return index + 1

    def trail(self, move: int) -> list[Span]:
        """What follows a move before the next one: glyphs, comments and variations."""
        found = []
        end = self.trail_end(move)
        for index, kind in self._walk(move):
            if index >= end:
                break
            if kind == "open":
                found.append(Span(index, self.closing(index) + 1, True))
            elif kind in (*GLYPHS, *COMMENTS, "escape"):
                found.append(Span(index, index + 1, False))
        return found


def trimmed(tokens: Tokens, first: int, last: int) -> tuple[int, int]:
    """The range without white space at its ends."""
    first = tokens.skip(first)
    return first, max(first, tokens.last_before(last) + 1)


class Text:
    """A text put together from pieces of the old one."""

    def __init__(self, tokens: Tokens) -> None:
        self._tokens = tokens
        self.text = ""
        self.to_line_end = False

    def ready(self, glue: bool = False) -> str:
        """The text, ready for another piece: parted from it by a space or a line end."""
        if self.to_line_end:
            self.text += self._tokens.lesson.source.line_end
        elif self.text and not glue and not self.text[-1].isspace():
            self.text += " "
        self.to_line_end = False
        return self.text

    def literal(self, text: str, *, glue: bool = False) -> None:
        self.ready(glue)
        self.text += text

    def piece(self, first: int, last: int, *, glue: bool = False, shift: int = 0) -> None:
        """Adds the tokens from `first` to before `last`, their move numbers raised by `shift`."""
        if first >= last:
            return
        tokens = self._tokens
        if tokens.kind(first) == "escape" and not self.to_line_end:
            self.text += tokens.lesson.source.line_end
            self.to_line_end = False
        else:
            self.ready(glue)
        if shift:
            self.text += "".join(tokens.shifted(index, shift) for index in range(first, last))
        else:
            self.text += tokens.text(first, last)
        self.to_line_end = tokens.kind(last - 1) in TO_LINE_END


def sure(value: T | None) -> T:
    if value is None:
        raise AssertionError("the lesson does not hold what it must")
    return value
