"""EPD: positions with what is to be found in them.

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12, section 16.2 (from memory).

>>> (problem,) = read('6k1/5ppp/8/8/8/8/8/R3K3 w - - bm Ra8#; id "back; rank";')
>>> problem.name, problem.best
('back; rank', ('a1a8',))
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
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
class _Operand:
    text: str
    column: int


_WORD = re.compile(r"\S+")
_OPERAND = re.compile(r'"(?P<string>[^"]*)"|(?P<open>")|(?P<end>;)|(?P<word>[^\s;"]+)')
_OPCODE = re.compile(r"[A-Za-z][A-Za-z0-9_]{0,14}\Z")


def read(text: str) -> tuple[Problem, ...]:
    """Every record of a text, one a line; blank lines are none. The last semicolon of a record may be missing.

    :raises EpdError: at the first record that cannot be read, or has neither `bm` nor `am`
    """
    lines = text.removeprefix("\ufeff").splitlines()
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
    names = operations.get("id", [])
    return Problem(
        names[0].text if names else f"line {number}",
        board.fen,
        _moves(board, operations, "bm", number),
        _moves(board, operations, "am", number),
        number,
    )


def _operations(line: str, start: int, number: int) -> dict[str, list[_Operand]]:
    found: dict[str, list[_Operand]] = {}
    for opcode, operands in _records(line, start, number):
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
        found[opcode.text] = operands
    return found


def _records(line: str, start: int, number: int) -> Iterator[tuple[_Operand, list[_Operand]]]:
    """(opcode, operands) of every operation; a semicolon inside a quoted string ends none."""
    words: list[_Operand] = []
    for match in _OPERAND.finditer(line, start):
        if match["open"]:
            raise EpdError(
                number, match.start() + 1, 'this text is never closed; write " where it ends'
            )
        if not match["end"]:
            text = match["word"] if match["string"] is None else match["string"]
            words.append(_Operand(text, match.start() + 1))
        elif words:
            yield words[0], words[1:]
            words = []
    if words:
        yield words[0], words[1:]


def _count(operations: dict[str, list[_Operand]], name: str, least: int, number: int) -> str:
    """The number that goes into the FEN."""
    for operand in operations.get(name, [])[:1]:
        if not operand.text.isascii() or not operand.text.isdecimal() or int(operand.text) < least:
            raise EpdError(
                number, operand.column, f"{name} is {operand.text}; give a number from {least} on"
            )
        return operand.text
    return str(least)


def _moves(
    board: Board, operations: dict[str, list[_Operand]], name: str, number: int
) -> tuple[str, ...]:
    if name not in operations:
        return ()
    operands: Sequence[_Operand] = operations[name]
    if not operands:
        raise EpdError(number, 1, f"{name} names no move; write one in SAN, or take {name} out")
    return tuple(_move(board, operand, number) for operand in operands)


def _move(board: Board, operand: _Operand, number: int) -> str:
    try:
        uci, _ = read_san(board, operand.text)
    except AmbiguousMoveError as error:
        raise EpdError(number, operand.column, f"{error}; say which piece moves") from error
    except (IllegalMoveError, MoveSyntaxError) as error:
        raise EpdError(
            number, operand.column, f"{error}; correct the move or the position"
        ) from error
    if uci == "0000":
        raise EpdError(number, operand.column, "a pass is no move to find; write a move in SAN")
    return uci
