"""What attracts a human to a move, and what keeps him from it: facts of the board that strike the eye.

>>> from lineproof.claims import Spot
>>> from lineproof.engine import Board
>>> spot = Spot(Board().fen, (), Board()).line(["e2e4", "d7d5"])
>>> found = traits(spot, {})
>>> found["e4d5"]["takes"] > 0 and found["e4d5"]["recaptures"] == 0
True
"""

from __future__ import annotations

from collections.abc import Mapping

from lineproof.claims.board import HOME_MINORS, VALUES, other, pieces, side_of
from lineproof.claims.claim import Spot
from lineproof.claims.exchange import Bonds, bonds_of, exchange, taken_by, worth
from lineproof.engine import Board

TRAITS = {
    "takes": "what the move takes, a piece counting 1, where the exchange on the square loses nothing",
    "gains": "what the exchange on the square of a capture gains, a piece counting 1",
    "recaptures": "it takes where the opponent has just taken",
    "checks": "it gives check",
    "mates": "it mates",
    "attacks": "the most valuable enemy piece that the moved piece attacks anew, bigger than itself or unprotected; a queen counts 1",
    "escapes": "what the move saves: a piece that could be taken with gain, a queen counting 1",
    "leaves": "the most that the opponent can then take with gain, a queen counting 1",
    "develops": "a knight or bishop leaves its first square",
    "castles": "it castles",
    "centre": "a pawn comes to d4, e4, d5 or e5",
    "rim": "a knight goes to the edge of the board",
    "early queen": "a queen comes out before the eighth move without taking",
    "walks": "the king moves without need where castling is still allowed",
    "again": "the piece that has just moved moves once more without taking",
    "prepared": "the move before has made it possible",
    "retreats": "a piece goes back without need",
    "promotes": "a pawn is promoted",
    "costs": "what a shallow search thinks that it costs, ten points counting 1, at most 5",
}
"""Every trait with its meaning; all are 0 where they do not apply."""
_CENTRE = ("d4", "e4", "d5", "e5")
_EARLY = 8
MOST = 5.0


def traits(spot: Spot, costs: Mapping[str, float]) -> dict[str, dict[str, float]]:
    """The traits of every legal move. costs: points that a shallow search thinks each costs; missing ones cost the most."""
    board = spot.board
    side, enemy = board.turn, other(board.turn)
    in_danger = {at: worth(board, at) for at in _losses(board, side)}
    last = spot.moves[-1] if spot.moves else None
    taken = last is not None and taken_by(spot.earlier(1).board, last) > 0
    own = spot.moves[-2] if len(spot.moves) > 1 else None
    before = set(spot.earlier(2).board.legal_moves()) if own is not None else None
    found = {}
    for uci in board.legal_moves():
        after = board.play(uci)
        start, end = uci[:2], uci[2:4]
        letter = (board.piece_at(start) or "p").lower()
        prize = taken_by(board, uci)
        taken_back = exchange(after, end, enemy) if prize or start in in_danger else 0
        won = prize - taken_back if prize else 0
        safe = prize > 0 and won >= 0
        castles = letter == "k" and abs(ord(start[0]) - ord(end[0])) > 1
        quiet = prize == 0
        back = (int(end[1]) - int(start[1])) * (1 if side == "white" else -1) < 0
        saved = in_danger.get(start, 0) if taken_back < 1 else 0
        found[uci] = {
            "takes": min(prize, 9) / 3 if safe else 0.0,
            "gains": max(won, 0) / 3,
            "recaptures": float(taken and last is not None and end == last[2:4] and prize > 0),
            "checks": float(after.in_check),
            "mates": float(after.is_checkmate),
            "attacks": _attacked(board, after, start, end, letter, enemy) / 9,
            "escapes": saved / 9,
            "leaves": max(_losses(after, side).values(), default=0) / 9,
            "develops": float(HOME_MINORS[side].get(start) == letter),
            "castles": float(castles),
            "centre": float(letter == "p" and end in _CENTRE),
            "rim": float(letter == "n" and end[0] in "ah"),
            "early queen": float(letter == "q" and quiet and board.move_number < _EARLY and saved == 0),
            "walks": float(letter == "k" and not castles and not board.in_check and any(board.may_castle(side, w) for w in ("king", "queen"))),
            "again": float(own is not None and own[2:4] == start and quiet and saved == 0),
            "prepared": float(before is not None and uci not in before and own is not None and own[2:4] != start),
            "retreats": float(back and letter not in "pk" and saved == 0 and quiet),
            "promotes": float(len(uci) == 5),
            "costs": min(costs.get(uci, 10 * MOST) / 10, MOST),
        }  # fmt: skip
    return found


def _losses(board: Board, side: str) -> dict[str, int]:
    """Where the other side can take with gain, and what it gains."""
    enemy = other(side)
    found: dict[str, int] = {}
    bonds: Bonds | None = None
    for at in pieces(board, side):
        if worth(board, at) and board.attackers(enemy, at):
            bonds = bonds or bonds_of(board)
            gain = exchange(board, at, enemy, bonds=bonds)
            if gain >= 1:
                found[at] = gain
    return found


def _attacked(board: Board, after: Board, start: str, end: str, letter: str, enemy: str) -> int:
    """The value of the best piece that a moved piece attacks anew: bigger than itself, or unprotected."""
    seen = set(board.attacks(start))
    best = 0
    for at in after.attacks(end):
        piece = after.piece_at(at)
        if piece is None or side_of(piece) != enemy or at in seen or piece.lower() == "k":
            continue
        value = VALUES[piece.lower()]
        if value > VALUES[letter] or not after.attackers(enemy, at):
            best = max(best, value)
    return best
