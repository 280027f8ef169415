"""What is won: material along best play, until no capture gains a pawn."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import islice

from lineproof.engine import Board
from lineproof.lesson import Place

from .board import counts, material, other
from .claim import Ask, Spot

QUIET = 3
"""Plies running without a capture that gains a pawn: after the last move each side has then been asked once more,
so that a piece which is attacked and cannot move does not count as kept."""

HORIZON = 24
"""Plies of best play that are followed at most before the count is taken as it is."""


@dataclass(frozen=True)
class Count:
    """Material balance in pawns for a side, that of the pieces without the pawns, where it was
    counted, and the moves (UCI) that led there. mated: the side that is mated at the end, or will be by force."""

    balance: int
    pieces: int
    spot: Spot
    moves: tuple[str, ...]
    mated: str | None = None


def counted(spot: Spot, side: str) -> Count:
    """Material on the board as it stands."""
    return Count(material(spot.board, side), _pieces(spot.board, side), spot, ())


def settled(ask: Ask, spot: Spot, side: str) -> Count:
    """Material after best play from `spot`, continued until for `QUIET` plies running no capture gains a pawn.

    Where that does not come about within `HORIZON` plies, the last position counts in which one ply was missing.
    """
    moves: list[str] = []
    quiet = 0
    at = spot
    line: list[str] = []
    mated = spot.board.turn if spot.board.is_checkmate else None
    resting: tuple[Spot, int] | None = None
    while True:
        legal = at.board.legal_moves()
        if not legal:
            break
        quiet = 0 if at.board.in_check or at.board.capture_gains_pawn() else quiet + 1
        if quiet == QUIET:
            break
        if quiet == QUIET - 1:
            resting = at, len(moves)
        if len(moves) >= HORIZON:
            if resting is not None:
                at, plies = resting
                moves = moves[:plies]
            break
        if not line:
            best = ask.best(at)
            if best is not None and best.mate is not None:
                mated = "black" if best.mate > 0 else "white"
            if best is None or mated is not None:
                break
            line = list(best.moves)
        uci = line.pop(0)
        at = at.play(uci)
        moves.append(uci)
    return Count(material(at.board, side), _pieces(at.board, side), at, tuple(moves), mated)


def _pieces(board: Board, side: str) -> int:
    own, enemy = counts(board, side), counts(board, other(side))
    return material(board, side) - (own["p"] - enemy["p"])


def end_of_shown_line(place: Place, spot: Spot) -> Spot:
    """The end of the line that the lesson shows from here: first continuations, to the leaf.

    When the sentence itself played moves away from the place, the line shown is the sentence's own.
    """
    if spot.moves != tuple(place.moves()):
        return spot
    at, here = place, spot
    while at.next is not None and at.next.uci is not None:
        at = at.next
        here = here.play(at.uci or "")
    return here


def before_last_moves_of(spot: Spot, loser: str, moves: int) -> list[Spot]:
    """The positions before the loser's last moves on the way here, the latest first; at most `moves` of them."""
    earlier = (spot.earlier(plies) for plies in range(1, len(spot.moves) + 1))
    return list(islice((before for before in earlier if before.board.turn == loser), moves))
