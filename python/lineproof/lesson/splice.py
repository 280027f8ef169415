"""Splices: (start, end, new text) that put text into a lesson, or take it out, and glue nothing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from lineproof.lesson.errors import EditError, LessonError
from lineproof.lesson.places import Place
from lineproof.lesson.walk import BLANK, COMMENTS, GLYPHS, MOVES, TO_LINE_END, Text, Tokens

if TYPE_CHECKING:
    from lineproof.lesson.lesson import Lesson

Splice = tuple[int, int, str]

WIDTH = 80
"""Longest line of the export format (PGN standard, 4.3); longer ones are broken before new text."""


def number_after(place: Place, half: int) -> tuple[int, bool]:
    """(move number, whether Black moves) of the move `half` half-moves after a place."""
    start = place.game.start
    count = place.ply + half + (start.turn == "black")
    return start.move_number + count // 2, count % 2 == 1


def black_number(place: Place) -> str:
    """The number of the move after a place when Black is to make it; else nothing."""
    number, black = number_after(place, 0)
    return f"{number}..." if black else ""


def insertion(tokens: Tokens, last: int, text: str, *, after: Place | None = None) -> Splice:
    """A splice that puts text after a token.

    With `after`, a move of Black's that follows without a number gets one, as in the export format.
    """
    lesson = tokens.lesson
    at = tokens.end(last)
    following = tokens.skip(last + 1)
    if after is not None and tokens.kind(following) in MOVES:
        number = black_number(after)
        text += f" {number}" if number else ""
    _, column = lesson.locate(at)
    width = column - 1
    breaks = width <= WIDTH < width + 1 + len(text)
    before = lesson.source.line_end if tokens.kind(last) in TO_LINE_END or breaks else " "
    rest = lesson.text[at : at + 1]
    return at, at, before + text + ("" if parts(rest) else " ")


def at_root(tokens: Tokens, place: Place, text: str) -> Splice:
    """A splice that puts text before a game's first move, after its tags and opening comments."""
    lesson = tokens.lesson
    start, end = place.game.span
    index = first = lesson.pgn.token_at(start)
    last = -1
    while tokens.kind(index) in (*BLANK, *COMMENTS, *GLYPHS, "tag", "escape"):
        if tokens.kind(index) == "tag" and index > first and tokens.start(index) >= end:
            break  # the next game
        if tokens.kind(index) not in BLANK:
            last = index
        index += 1
    line_end = lesson.source.line_end
    if tokens.kind(index) in ("end", "tag") or (last >= 0 and tokens.kind(last) != "tag"):
        at = tokens.end(last)
        if tokens.kind(last) == "tag":
            before = line_end * 2
        else:
            before = line_end if tokens.kind(last) in TO_LINE_END else " "
        return at, at, before + text + ("" if parts(lesson.text[at : at + 1]) else " ")
    at = tokens.start(index)
    if last < 0:  # the game begins with its moves: part it from the game before
        before = "" if parts(lesson.text[at - 1 : at]) else line_end
    else:
        gap = lesson.text[tokens.end(last) : at]
        before = "" if "\n" in gap or "\r" in gap else line_end * 2
    return at, at, f"{before}{text} "


def removal(tokens: Tokens, first: int, last: int) -> Splice:
    """A splice that takes tokens out with the white space before them, and glues nothing."""
    previous = tokens.last_before(first)
    end = tokens.end(last)
    if previous < 0 or tokens.kind(previous) in (*TO_LINE_END, "tag"):
        # The white space before is needed: that after goes, so that no blank line comes about.
        following = tokens.skip(last + 1)
        if tokens.kind(following) not in ("escape", "tag", "end"):
            end = tokens.start(following)
        return tokens.start(first), end, ""
    start = tokens.end(previous)
    if tokens.kind(previous) == "open" and tokens.kind(last + 1) == "space":
        end = tokens.end(last + 1)
        return start, end, ""
    rest = tokens.lesson.text[end : end + 1]
    return start, end, "" if parts(rest) else " "


def fenced(tokens: Tokens, text: Text, following: int) -> str:
    """The text, parted from the token that follows it."""
    if text.to_line_end:
        rest = tokens.lesson.text[tokens.start(following) : tokens.start(following) + 1]
        return text.text if rest in ("\n", "\r", "") else text.ready(glue=True)
    kind = tokens.kind(following)
    return text.text + ("" if kind in (*BLANK, "close", "end") else " ")


def parts(rest: str) -> bool:
    """Whether what follows is parted from any token before it."""
    return rest == "" or rest.isspace() or rest == ")"


def splice(lesson: Lesson, splices: Sequence[Splice]) -> Lesson:
    """The lesson with these splices, which do not overlap.

    :raises EditError: when the text could not be read any more.
    :raises EncodingError: when the file's encoding lacks a character.
    """
    pieces = []
    at = 0
    for start, end, text in sorted(splices):
        lesson.source.refuse_lacking(text, start)
        pieces += [lesson.text[at:start], text]
        at = end
    try:
        return lesson.with_text("".join([*pieces, lesson.text[at:]]))
    except LessonError as error:
        raise EditError(
            f"the edit would leave text that cannot be read: {error.message}",
            path=lesson.name,
            line=error.line,
            column=error.column,
            hint="edit the file in a text editor there, and open it again",
        ) from error
