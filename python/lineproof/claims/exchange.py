"""Exchanges on one square: what a capture gains, and where a piece can go without loss.

>>> from lineproof.engine import Board
>>> exchange(Board("4k3/8/2n5/4p3/8/5N2/8/4K3 w - - 0 1"), "e5", "white")  # protected: knight for pawn does not pay
0
>>> exchange(Board("4k3/8/8/4p3/8/5N2/8/4K3 w - - 0 1"), "e5", "white")
1
"""

from __future__ import annotations

from collections.abc import Collection, Mapping

from lineproof.engine import Board

from .board import VALUES, bound, other, pieces, side_of

Bonds = Mapping[str, tuple[tuple[str, str, str], ...]]
"""The absolute pins against each side, as `bound` gives them."""
_KING = 100
"""What a king is worth as a capturer: he takes last."""


def worth(board: Board, at: str) -> int:
    """Value in pawns of what stands on a square; 0 for a king or nothing."""
    letter = board.piece_at(at)
    return 0 if letter is None else VALUES[letter.lower()]


def exchange(
    board: Board,
    at: str,
    by: str,
    *,
    idle: Collection[str] = (),
    lifted: Collection[str] = (),
    prize: int | None = None,
    bonds: Bonds | None = None,
) -> int:
    """What `by` gains in pawns by capturing on a square: each side takes with its cheapest piece and stops when that pays better.

    Nobody is asked whose move it is. A piece pinned to its king takes only along the pin. Promotions count as captures by a pawn.
    idle: pieces that take no part. lifted: pieces thought away. prize: value of what stands there, when it is not on the board.
    bonds: of the board, where they are known already.
    """
    if not board.attackers(by, at, list(lifted)):
        return 0
    tied = bonds or bonds_of(board)
    held = {side: _held(board, tied[side], at) | set(idle) for side in ("white", "black")}
    return _take(board, at, by, worth(board, at) if prize is None else prize, list(lifted), held)


def bonds_of(board: Board) -> Bonds:
    return {side: bound(board, side) for side in ("white", "black")}


def _held(board: Board, bonds: tuple[tuple[str, str, str], ...], at: str) -> set[str]:
    """Pieces pinned to their king that may not take on the square."""
    return {
        piece
        for pinner, piece, king in bonds
        if at != pinner and at not in board.between(pinner, king)
    }


def _take(
    board: Board, at: str, by: str, prize: int, lifted: list[str], held: dict[str, set[str]]
) -> int:
    men = [
        s
        for s in board.attackers(by, at, lifted)
        if s not in lifted and s not in held[by] and s != at
    ]
    if not men:
        return 0
    first = min(men, key=lambda s: worth(board, s) or _KING)
    gone = [*lifted, first]
    if worth(board, first) == 0 and any(
        s not in gone and s != at for s in board.attackers(other(by), at, gone)
    ):
        return 0  # a king may not take what is protected
    return max(0, prize - _take(board, at, other(by), worth(board, first), gone, held))


def gained(board: Board, uci: str) -> int:
    """What a capture gains in pawns in the exchange that it begins, with the piece that takes; 0 for no capture."""
    prize = taken_by(board, uci)
    if not prize:
        return 0
    return prize - exchange(board.play(uci), uci[2:4], other(board.turn))


def losing(board: Board, side: str) -> list[str]:
    """A side's pieces and pawns that the enemy can take with a gain of a pawn or more in the exchange on their square."""
    return [
        at
        for at in pieces(board, side)
        if worth(board, at) and exchange(board, at, other(side)) >= 1
    ]


def safe_squares(board: Board, at: str, *, pinned: bool = True) -> list[str]:
    """Squares to which the piece on `at` (no pawn, no king) can go and lose less than a pawn there, whosever move it is.

    pinned: whether a pin to the king keeps it on its line.
    """
    letter = board.piece_at(at)
    if letter is None:
        return []
    side = side_of(letter)
    own = set(pieces(board, side))
    tied = bound(board, side)
    found: list[str] = []
    for to in board.attacks(at):
        if to in own or (pinned and at in _held(board, tied, to)):
            continue
        loss = exchange(board, to, other(side), lifted=(at,), prize=VALUES[letter.lower()])
        if loss - worth(board, to) < 1:
            found.append(to)
    return found


def taken_by(board: Board, uci: str) -> int:
    """Value in pawns of what a move takes, and of what it promotes to."""
    moved = (board.piece_at(uci[:2]) or "p").lower()
    standing = board.piece_at(uci[2:4])
    value = VALUES[standing.lower()] if standing else 0
    if standing is None and moved == "p" and uci[0] != uci[2]:
        value = 1  # in passing
    if len(uci) == 5:
        value += VALUES[uci[4]] - 1
    return value
