"""Openness: how open or closed a position or its centre is, in numbers.

Open: of the four centre pawns (White's and Black's on the d- and e-files) one at least has gone and no two pawns of the c- to f-files stand
face to face, or the d- or e-file is open and at most one such pair does. Closed: neither the d- nor the e-file is open, and at least two such
pairs do, one of them on the d- or e-file. Most positions are neither (common practice; the numbers
are ours).
"""

from __future__ import annotations

from lineproof.engine import Board

from .structure import is_open, pawns, rams

CENTRAL = "cdef"
LOCKED = 2
"""Pairs of pawns in each other's way that close a position."""


def open_centre_files(board: Board) -> list[str]:
    """Which of the d- and e-file are open."""
    return [f for f in "de" if is_open(board, f)]


def is_open_position(board: Board) -> bool:
    locked = rams(board, CENTRAL)
    gone = any(not pawns(board, side, f) for side in ("white", "black") for f in "de")
    return (gone and not locked) or (bool(open_centre_files(board)) and len(locked) < LOCKED)


def is_closed_position(board: Board) -> bool:
    locked = rams(board, CENTRAL)
    middle = any(pair[0][0] in "de" for pair in locked)
    return len(locked) >= LOCKED and middle and not open_centre_files(board)


def described(board: Board) -> str:
    """What decides, as a sentence."""
    files, locked = open_centre_files(board), rams(board, CENTRAL)
    gone = [
        f"{s.capitalize()}'s {f}-pawn"
        for s in ("white", "black")
        for f in "de"
        if not pawns(board, s, f)
    ]
    first = (
        f"The {' and '.join(f + '-' for f in files)}file{'s are' if len(files) > 1 else ' is'} open"
        if files
        else f"{gone[0]} is gone from its file"
        if gone
        else "Both sides have a d- and an e-pawn"
    )
    pairs = ", ".join(f"{a} and {b}" for a, b in locked)
    way = f"pawns stand face to face: {pairs}" if locked else "no central pawns stand face to face"
    return f"{first}, and {way}."
