"""Structure: what the pawns say, exactly and without search.

>>> from lineproof.engine import Board
>>> board = Board("4k3/2p2ppp/2p5/3p4/8/4P3/PPP2PPP/4K3 w - - 0 1")
>>> doubled(board, "black"), isolated(board, "white"), isolated(board, "black")
({'c': ['c6', 'c7']}, [], [])

A square is seen from a side when its rank is counted from that side: e5 is on Black's fourth rank.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from lineproof.engine import Board

from .board import other, pieces, side_of

FILES = "abcdefgh"
WINGS = {
    "kingside": ("efgh", "fgh"),
    "queenside": ("abcd", "abc"),
    "centre": ("de", "cdef"),
}
"""The files of a wing, in the two ways in which handbooks count them (common practice)."""


def rank(side: str, at: str) -> int:
    """The rank of a square seen from a side: 1 to 8."""
    return int(at[1]) if side == "white" else 9 - int(at[1])


def ahead(side: str, at: str, steps: int = 1) -> str | None:
    """The square so many steps ahead of a pawn of the side, None beyond the board."""
    number = int(at[1]) + (steps if side == "white" else -steps)
    return f"{at[0]}{number}" if 1 <= number <= 8 else None


def beside(file: str) -> str:
    """The neighbouring files: "d" and "f" of "e", "b" of "a"."""
    at = FILES.index(file)
    return FILES[max(0, at - 1) : at] + FILES[at + 1 : at + 2]


def pawns(board: Board, side: str, files: Iterable[str] = FILES) -> list[str]:
    """Squares of a side's pawns, of some files."""
    wanted = set(files)
    return [at for at in pieces(board, side, "p") if at[0] in wanted]


def doubled(board: Board, side: str) -> dict[str, list[str]]:
    """The files on which a side has two pawns or more, with their squares ("Doubled Pawn", Chess Programming Wiki, from memory)."""
    by_file = {file: pawns(board, side, file) for file in FILES}
    return {file: found for file, found in by_file.items() if len(found) > 1}


def isolated(board: Board, side: str) -> list[str]:
    """Pawns without a pawn of their side on a neighbouring file ("Isolated Pawn", Chess Programming Wiki, from memory)."""
    return [at for at in pawns(board, side) if not pawns(board, side, beside(at[0]))]


def backward(board: Board, side: str) -> list[str]:
    """Backward pawns, see [`backwardness`][lineproof.claims.structure.backwardness]."""
    return [at for at in pawns(board, side) if backwardness(board, side, at)[0]]


def backwardness(board: Board, side: str, at: str) -> tuple[bool, str]:
    """Whether a pawn is backward, and what decides it, as the end of a sentence about it.

    No own pawn on a neighbouring file is level with it or behind it, one is further on, and it cannot step forward safely: the next square
    is attacked by an enemy pawn, holds an enemy piece, or is attacked by more enemy men than own pieces protect it
    ("Backward Pawn", Chess Programming Wiki, from memory; what makes the step unsafe: our own words).
    """
    near = pawns(board, side, beside(at[0]))
    if not near:
        return False, "has no neighbours at all: it is isolated"
    helpers = [p for p in near if rank(side, p) <= rank(side, at)]
    if helpers:
        return False, f"has the pawn on {helpers[0]} level with it or behind it"
    stop = ahead(side, at)
    if stop is None:
        return False, "has no square before it"
    enemy = other(side)
    standing = board.piece_at(stop)
    against = board.attackers(enemy, stop)
    guards = [p for p in against if (board.piece_at(p) or "").lower() == "p"]
    lagging = "has no own pawn level with it or behind it beside it"
    if guards:
        return True, f"{lagging}, and the pawn on {guards[0]} holds {stop}"
    if standing is not None and side_of(standing) == enemy and standing.lower() != "p":
        return True, f"{lagging}, and a piece stands on {stop} before it"
    if len(against) > len([p for p in board.attackers(side, stop) if p != at]):
        return True, f"{lagging}, and {stop} before it is attacked more often than protected"
    return False, f"can step to {stop} safely"


def is_passed(board: Board, side: str, at: str) -> bool:
    """Whether no enemy pawn is ahead of a pawn on its own file or a neighbouring one ("Passed Pawn", Chess Programming Wiki, from memory)."""
    way = pawns(board, other(side), at[0] + beside(at[0]))
    return not any(rank(side, p) > rank(side, at) for p in way)


def passed(board: Board, side: str) -> list[str]:
    """A side's passed pawns."""
    return [at for at in pawns(board, side) if is_passed(board, side, at)]


def hanging(board: Board, side: str) -> list[tuple[str, str]]:
    """Hanging pawns: two own pawns abreast on their fourth rank or further, each alone on its file, with no own pawn on the files beside
    the two and no enemy pawn on their files (Nimzowitsch, My System, from memory)."""
    found = []
    for one, two in pairwise(FILES):
        left, right = pawns(board, side, one), pawns(board, side, two)
        if len(left) != 1 or len(right) != 1 or left[0][1] != right[0][1]:
            continue
        neighbours = (set(beside(one)) | set(beside(two))) - {one, two}
        if rank(side, left[0]) < 4 or pawns(board, side, neighbours):
            continue
        if not pawns(board, other(side), (one, two)):
            found.append((left[0], right[0]))
    return found


def is_open(board: Board, file: str) -> bool:
    """Whether no pawn stands on a file ("Open File", Chess Programming Wiki, from memory)."""
    return not any(pawns(board, side, file) for side in ("white", "black"))


def is_half_open(board: Board, side: str, file: str) -> bool:
    """Whether a file has an enemy pawn and none of the side ("Half-open File", Chess Programming Wiki, from memory)."""
    return not pawns(board, side, file) and bool(pawns(board, other(side), file))


def guards(board: Board, side: str, at: str) -> list[str]:
    """Pawns of a side that attack a square, or could after going straight on; what stands in their way is not asked."""
    near = pawns(board, side, beside(at[0]))
    return [p for p in near if rank(side, p) < rank(side, at)]


def rams(board: Board, files: Iterable[str] = FILES) -> list[tuple[str, str]]:
    """Pairs of pawns, White's first, that stand in each other's way (Kmoch, Pawn Power in Chess, from memory)."""
    found = []
    for at in pawns(board, "white", files):
        stop = ahead("white", at)
        if stop is not None and board.piece_at(stop) == "p":
            found.append((at, stop))
    return found


def colour(at: str) -> str:
    """ "light" or "dark"."""
    return "dark" if (FILES.index(at[0]) + int(at[1])) % 2 else "light"


def mirrored(at: str) -> str:
    """The square that reversed colours put in its place: e4 for e5."""
    return f"{at[0]}{9 - int(at[1])}"
