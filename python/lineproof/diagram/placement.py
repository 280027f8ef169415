"""What stands where: the first two fields of a FEN.

    >>> read_placement("4k3/8/8/8/8/8/8/4K3 w - - 0 1").pieces["e1"]
    'K'

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12, 16.1.3.1 and
16.1.3.2 (from memory). A diagram may show a part of a position, so kings are not asked for.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from .errors import DiagramError
from .marks import Side
from .squares import square_at

LETTERS: Final = "KQRBNPkqrbnp"
"""The FEN letters of the pieces, White's first."""

_SIDES: Final[Mapping[str, Side]] = MappingProxyType({"w": "white", "b": "black"})


@dataclass(frozen=True)
class Placement:
    """`pieces`: FEN letter by square name; `to_move` is None where the FEN does not say."""

    pieces: Mapping[str, str]
    to_move: Side | None


def read_placement(fen: str) -> Placement:
    """Read a FEN, or only its first field; the fields after the side to move are not looked at.

    :raises DiagramError: naming the rank and what is wrong in it
    """
    fields = fen.split()
    if not fields:
        raise DiagramError("the FEN is empty: write the placement, eight ranks from 8 to 1")
    ranks = fields[0].split("/")
    if len(ranks) != 8:
        raise DiagramError(f"the placement {_short(fields[0])} has {len(ranks)} ranks, not 8")
    if len(fields) > 1 and fields[1] not in _SIDES:
        raise DiagramError(f"the side to move is {_short(fields[1])}: write w or b")
    pieces: dict[str, str] = {}
    for rank, text in zip(range(7, -1, -1), ranks, strict=True):
        pieces.update(_read_rank(rank, text))
    to_move = _SIDES[fields[1]] if len(fields) > 1 else None
    return Placement(pieces=MappingProxyType(pieces), to_move=to_move)


def _read_rank(rank: int, text: str) -> dict[str, str]:
    found: dict[str, str] = {}
    file = 0
    after_digit = False
    for letter in text:
        is_digit = letter in "12345678"
        if not is_digit and letter not in LETTERS:
            raise DiagramError(
                f"rank {rank + 1} has {letter!r}: write a piece ({LETTERS}) or a digit 1-8"
            )
        if is_digit and after_digit:
            raise DiagramError(f"rank {rank + 1} is {_short(text)}: add up the digits side by side")
        if not is_digit and file < 8:
            found[square_at(file, rank)] = letter
        file += int(letter) if is_digit else 1
        after_digit = is_digit
    if file != 8:
        raise DiagramError(f"rank {rank + 1} is {_short(text)}: it has {file} squares, not 8")
    return found


def _short(text: str) -> str:
    return repr(text if len(text) <= 80 else text[:77] + "...")
