"""Openings by name, known by their positions, so that it does not matter in what order the moves came.

>>> str(opening(["e2e4", "e7e5", "b1c3"]))
'Vienna Game (C25 to C29)'

Names and code ranges are the main ones of the printed Encyclopaedia of Chess Openings (from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from lineproof._engine import Board, read_san

TABLE = "openings.txt"


@dataclass(frozen=True)
class Opening:
    """A name, and the codes from first to last, such as "C25" and "C29"."""

    name: str
    first: str
    last: str

    def __str__(self) -> str:
        codes = self.first if self.first == self.last else f"{self.first} to {self.last}"
        return f"{self.name} ({codes})"


def opening(moves: Iterable[str]) -> Opening | None:
    """That of the last position with a name, on moves in UCI spelling from the initial position."""
    names = by_key()
    board = Board()
    found = None
    for move in moves:
        board = board.play(move)
        found = names.get(board.key, found)
    return found


@cache
def by_key() -> dict[int, Opening]:
    """Each named position by its key."""
    found = {}
    for line in table():
        codes, name, moves = (part.strip() for part in line.split("|"))
        first, _, last = codes.partition("-")
        board = Board()
        for san in moves.split():
            board = board.play(read_san(board, san)[0])
        found[board.key] = Opening(name, first, last or first)
    return found


def table() -> list[str]:
    """Lines of the table: codes, name, moves."""
    text = files(__package__).joinpath(TABLE).read_text(encoding="utf-8")
    return [line for line in text.splitlines() if line and not line.startswith("#")]
