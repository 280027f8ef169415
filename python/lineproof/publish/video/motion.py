"""Which pieces go where in a move, and how far they are.

>>> moves = motion("4k3/8/8/8/8/8/8/4K2R", "5k2/8/8/8/8/8/8/5RK1", "e1g1")
>>> [(one.letter, one.start, one.end) for one in moves.sliding if one.letter in "KR"]
[('K', 'e1', 'g1'), ('R', 'h1', 'f1')]
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lineproof.diagram.placement import read_placement


@dataclass(frozen=True)
class Sliding:
    """A piece on its way. becomes: what it turns into at the end, the same letter but in a promotion."""

    letter: str
    start: str
    end: str
    becomes: str


@dataclass(frozen=True)
class Motion:
    """resting: pieces that stay. taken: what goes away, by its square. sliding: the last one lies on top."""

    resting: Mapping[str, str]
    taken: Mapping[str, str]
    sliding: tuple[Sliding, ...]


def motion(before: str, after: str, uci: str) -> Motion:
    """before, after: FENs, or their first fields. uci: the move between them."""
    old, new = read_placement(before).pieces, read_placement(after).pieces
    resting = {at: piece for at, piece in old.items() if new.get(at) == piece}
    gone = {at: piece for at, piece in old.items() if at not in resting}
    came = {at: piece for at, piece in new.items() if at not in resting}
    mover = gone.pop(uci[:2])
    own = [at for at, piece in came.items() if piece == mover]
    end = own[0] if own else next(iter(came))
    sliding = [Sliding(mover, uci[:2], end, came.pop(end))]
    for at, piece in came.items():  # the rook of a castling
        start = next(square for square, letter in gone.items() if letter == piece)
        del gone[start]
        sliding.append(Sliding(piece, start, at, piece))
    return Motion(resting, gone, tuple(sliding))


def eased(share: float) -> float:
    """From 0 to 1, slow at both ends: 3s² - 2s³ (common practice)."""
    return share * share * (3 - 2 * share)


def shares(frames: int) -> list[float]:
    """How far a change is in each of its frames: none shows it quite as before, the last quite done."""
    return [eased(number / frames) for number in range(1, frames + 1)]
