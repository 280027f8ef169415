"""Edits as the page asks for them, by `lineproof.lesson.edit`: each gives the new lesson and the place that it was about."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from lineproof.engine import Board
from lineproof.lesson import Comment, Lesson, Place, edit
from lineproof.lesson.errors import EditError

from .naming import Names
from .wire import (
    AddComment,
    AddLine,
    BringForward,
    ChangeWords,
    Cut,
    Join,
    Promote,
    RemoveComment,
    SetMarks,
)

Said = Literal["extended", "branched", "known", ""]
TextOp = (
    AddLine
    | Cut
    | Promote
    | BringForward
    | Join
    | ChangeWords
    | RemoveComment
    | AddComment
    | SetMarks
)
"""Edits of the lines and their words, in distinction to those of the settings and of the history."""

UCI = re.compile(r"[a-h][1-8][a-h][1-8][qrbn]?")
LINE_END = re.compile(r"\r\n|\r|\n")


@dataclass(frozen=True)
class Done:
    """What an edit made: said, of moves that were added, whether they extend a line, branch off, or were there already."""

    lesson: Lesson
    at: Place
    said: Said = ""


def edited(lesson: Lesson, names: Names, op: TextOp) -> Done:
    """The lesson after an edit.

    :raises EditError: when it cannot be made.
    """
    match op:
        case AddLine():
            return _add_line(names.place(op.place), op.moves)
        case Cut():
            return Done(*edit.cut(names.place(op.place)))
        case Promote():
            return Done(*edit.promote(names.place(op.place)))
        case BringForward():
            return Done(*edit.bring_forward(names.place(op.place)))
        case Join():
            return Done(*edit.join(names.place(op.place), names.place(op.other)))
        case ChangeWords():
            return Done(*edit.change_words(comment_of(lesson, op.comment), _lines(lesson, op.text)))
        case RemoveComment():
            return Done(*edit.remove_comment(comment_of(lesson, op.comment)))
        case AddComment():
            return Done(*edit.add_comment(names.place(op.place), _lines(lesson, op.text)))
        case SetMarks():
            return Done(*edit.set_marks(names.place(op.place), op.nags))


def _add_line(place: Place, moves: list[str]) -> Done:
    at, new = place, place
    sans, board = [], place.board
    said: Said = "known"
    for move in moves:
        san = _san(board, move)
        sans.append(san)
        known = None if said != "known" else _child(new, san)
        if known is None and said == "known":
            said = "branched" if new.children else "extended"
        new = known or new
        board = known.board if known else _played(board, san)
    lesson, at = edit.add_line(place, sans)
    return Done(lesson, at, said)


def _san(board: Board, move: str) -> str:
    """A move in UCI as SAN; another text as it is."""
    if UCI.fullmatch(move) and move in board.legal_moves():
        return board.san(move)
    return move


def _child(place: Place, san: str) -> Place | None:
    return next((c for c in place.children if c.uci == _uci(place.board, san)), None)


def _uci(board: Board, san: str) -> str | None:
    from lineproof._engine import read_san

    try:
        return read_san(board, san)[0]
    except ValueError:
        return None


def _played(board: Board, san: str) -> Board:
    """The board after a move; the same where it cannot be played, which the edit then says."""
    uci = _uci(board, san)
    if uci is None:
        return board
    return (board.passed() or board) if uci == "0000" else board.play(uci)


def comment_of(lesson: Lesson, index: int) -> Comment:
    """:raises EditError: when there is none."""
    if index >= len(lesson.comments):
        raise EditError("the lesson has no such comment", path=lesson.name, hint="look at it again")
    return lesson.comments[index]


def _lines(lesson: Lesson, text: str) -> str:
    """The text with the line ends of the file: a browser writes line feeds only."""
    return LINE_END.sub(lesson.source.line_end, text)
