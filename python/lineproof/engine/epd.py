"""EPD: positions with what is to be found in them.

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12, section 16.2 (from memory).

>>> (problem,) = read('6k1/5ppp/8/8/8/8/8/R3K3 w - - bm Ra8#; id "back; rank";')
>>> problem.name, problem.best
('back; rank', ('a1a8',))
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from lineproof._engine import (
    AmbiguousMoveError,
    Board,
    FenError,
    IllegalMoveError,
    MoveSyntaxError,
    read_san,
)


class EpdError(ValueError):
    """What is wrong with a record, and what to do. line, column: from 1."""

    def __init__(self, line: int, column: int, text: str) -> None:
        super().__init__(text)
        self.line = line
        self.column = column


@dataclass(frozen=True, slots=True)
class Problem:
    """One record. name: its id, or "line N" without one. best, avoid: moves in UCI spelling, not both empty.

    line: from 1.
    """

    name: str
    fen: str
    best: tuple[str, ...]
    avoid: tuple[str, ...]
    line: int

    def solved_by(self, uci: str) -> bool:
        """Whether a move is one of the best and none of those to avoid."""
        return (not self.best or uci in self.best) and uci not in self.avoid


@dataclass(frozen=True, slots=True)
class _Word:
    text: str
    column: int


@dataclass(frozen=True, slots=True)
class _Operation:
    opcode: _Word
    operands: tuple[_Word, ...]


_WORD = re.compile(r"\S+")
_PART = re.compile(r'"(?P<string>[^"]*)"|(?P<open>")|(?P<end>;)|(?P<word>[^\s;"]+)')
_NUMBER = re.compile(r"[0-9]{1,4}\Z")
_OPCODE = re.compile(r"[A-Za-z][A-Za-z0-9_]{0,14}\Z")


def read(text: str) -> tuple[Problem, ...]:
    """Every record of a text, one a line; blank lines are none. The last semicolon of a record may be missing.

    :raises EpdError: at the first record that cannot be read, or has neither `bm` nor `am`
    """
    lines = re.split(r"\r\n|\r|\n", text.removeprefix("\ufeff"))
    return tuple(_problem(line, number) for number, line in enumerate(lines, 1) if line.strip())


def _problem(line: str, number: int) -> Problem:
    fields = [match for _, match in zip(range(4), _WORD.finditer(line), strict=False)]
    start = fields[0].start() + 1
    if len(fields) < 4:
        raise EpdError(
            number,
            start,
            "this is no position; write pieces, side, castling rights and en passant square",
        )
    operations = _operations(line, fields[3].end(), number)
    clock = [_count(operations, name, least, number) for name, least in (("hmvc", 0), ("fmvn", 1))]
    fen = " ".join([*(field.group() for field in fields), *clock])
    try:
        board = Board(fen)
    except FenError as error:
        raise EpdError(number, start, f"{error}; correct the position") from error
    if "bm" not in operations and "am" not in operations:
        raise EpdError(
            number,
            fields[3].end() + 1,
            "there is nothing to find; add the best move (bm) or a move to avoid (am)",
        )
    names = operations["id"].operands if "id" in operations else ()
    return Problem(
        names[0].text if names else f"line {number}",
        board.fen,
        _moves(board, operations, "bm", number),
        _moves(board, operations, "am", number),
        number,
    )


def _operations(line: str, start: int, number: int) -> dict[str, _Operation]:
    found: dict[str, _Operation] = {}
    for operation in _written(line, start, number):
        opcode = operation.opcode
        if not _OPCODE.match(opcode.text):
            raise EpdError(
                number,
                opcode.column,
                f"“{opcode.text}” is no operation; write one such as bm, am or id",
            )
        if opcode.text in found:
            raise EpdError(
                number, opcode.column, f"{opcode.text} stands here twice; keep one of them"
            )
        found[opcode.text] = operation
    return found


def _written(line: str, start: int, number: int) -> Iterator[_Operation]:
    """Every operation; a semicolon inside a quoted string ends none."""
    words: list[_Word] = []
    for match in _PART.finditer(line, start):
        if match["open"]:
            raise EpdError(
                number, match.start() + 1, 'this text is never closed; write " where it ends'
            )
        if not match["end"]:
            text = match["word"] if match["string"] is None else match["string"]
            words.append(_Word(text, match.start() + 1))
        elif words:
            yield _Operation(words[0], tuple(words[1:]))
            words = []
    if words:
        yield _Operation(words[0], tuple(words[1:]))


def _count(operations: dict[str, _Operation], name: str, least: int, number: int) -> str:
    """The number that goes into the FEN."""
    for said in operations[name].operands[:1] if name in operations else ():
        if not _NUMBER.match(said.text) or int(said.text) < least:
            raise EpdError(
                number, said.column, f"{name} is {said.text}; give a number from {least} to 9999"
            )
        return said.text
    return str(least)


def _moves(
    board: Board, operations: dict[str, _Operation], name: str, number: int
) -> tuple[str, ...]:
    if name not in operations:
        return ()
    operation = operations[name]
    if not operation.operands:
        raise EpdError(
            number,
            operation.opcode.column,
            f"{name} names no move; write one in SAN, or take {name} out",
        )
    return tuple(_move(board, said, number) for said in operation.operands)


def _move(board: Board, said: _Word, number: int) -> str:
    try:
        uci, _ = read_san(board, said.text)
    except AmbiguousMoveError as error:
        raise EpdError(number, said.column, str(error)) from error
    except (IllegalMoveError, MoveSyntaxError) as error:
        raise EpdError(number, said.column, f"{error}; correct the move or the position") from error
    if uci == "0000":
        raise EpdError(number, said.column, "a pass is no move to find; write a move in SAN")
    return uci
