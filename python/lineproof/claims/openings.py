"""Openings by name: the moves that make each, and whether they have been played, in whatever order.

>>> named("an exchange french"), named("the sicilian defence"), named("the knight")
('exchange french', 'sicilian', None)
>>> MOVES["italian"]
'e4 Nf3 Bc4 / e5 Nc6'
"""

from __future__ import annotations

import re
from collections import Counter
from functools import cache

from lineproof.engine import Board

from .claim import Spot

START = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"

MOVES: dict[str, str] = {
    "sicilian": "e4 / c5", "open sicilian": "e4 Nf3 d4 Nd4 / c5 d4", "najdorf": "e4 Nf3 d4 Nd4 Nc3 / c5 d6 d4 Nf6 a6", "dragon": "e4 Nf3 d4 Nd4 Nc3 / c5 d6 d4 Nf6 g6",
    "scheveningen": "e4 Nf3 d4 Nd4 Nc3 / c5 d6 d4 Nf6 e6", "sveshnikov": "e4 Nf3 d4 Nd4 Nc3 / c5 Nc6 d4 Nf6 e5", "accelerated dragon": "e4 Nf3 d4 Nd4 / c5 Nc6 d4 g6", "alapin": "e4 c3 / c5",
    "smith morra": "e4 d4 c3 / c5 d4", "french": "e4 d4 / e6 d5", "exchange french": "e4 d4 d5 / e6 d5 d5", "advance french": "e4 d4 e5 / e6 d5", "winawer": "e4 d4 Nc3 / e6 d5 Bb4",
    "caro kann": "e4 / c6 d5", "panov": "e4 d4 d5 c4 / c6 d5 d5", "exchange caro kann": "e4 d4 d5 / c6 d5 d5", "advance caro kann": "e4 d4 e5 / c6 d5", "scandinavian": "e4 d5 / d5",
    "alekhine": "e4 e5 / Nf6 Nd5", "pirc": "e4 d4 / d6 Nf6 g6", "modern": "e4 d4 / g6 Bg7", "italian": "e4 Nf3 Bc4 / e5 Nc6", "giuoco piano": "e4 Nf3 Bc4 / e5 Nc6 Bc5", "evans": "e4 Nf3 Bc4 b4 / e5 Nc6 Bc5",
    "2 knights": "e4 Nf3 Bc4 / e5 Nc6 Nf6", "4 knights": "e4 Nf3 Nc3 / e5 Nc6 Nf6", "3 knights": "e4 Nf3 Nc3 / e5 Nc6", "scotch": "e4 Nf3 d4 / e5 Nc6", "scotch 4 knights": "e4 Nf3 Nc3 d4 / e5 Nc6 Nf6",
    "ruy lopez": "e4 Nf3 Bb5 / e5 Nc6", "petroff": "e4 Nf3 / e5 Nf6", "philidor": "e4 Nf3 / e5 d6", "ponziani": "e4 Nf3 c3 / e5 Nc6", "vienna": "e4 Nc3 / e5", "vienna gambit": "e4 Nc3 f4 / e5 Nf6",
    "king 's gambit": "e4 f4 / e5", "king 's gambit accepted": "e4 f4 / e5 f4", "bishop 's opening": "e4 Bc4 / e5", "center game": "e4 d4 Qd4 / e5 d4", "danish": "e4 d4 c3 / e5 d4",
    "queen 's gambit": "d4 c4 / d5", "queen 's gambit accepted": "d4 c4 / d5 c4", "queen 's gambit declined": "d4 c4 / d5 e6", "slav": "d4 c4 / d5 c6", "exchange slav": "d4 c4 d5 / d5 c6 d5", "semi slav": "d4 c4 / d5 c6 e6 Nf6",
    "tarrasch": "d4 c4 / d5 e6 c5", "semi tarrasch": "d4 c4 Nf3 / d5 e6 Nf6 c5", "albin": "d4 c4 / d5 e5", "nimzo indian": "d4 c4 Nc3 / Nf6 e6 Bb4", "queen 's indian": "d4 c4 Nf3 / Nf6 e6 b6",
    "bogo indian": "d4 c4 Nf3 / Nf6 e6 Bb4", "king 's indian": "d4 c4 / Nf6 g6 Bg7", "grünfeld": "d4 c4 Nc3 / Nf6 g6 d5", "benoni": "d4 c4 d5 / Nf6 c5", "benko": "d4 c4 d5 / Nf6 c5 b5",
    "dutch": "d4 / f5", "catalan": "d4 c4 g3 / Nf6 e6", "budapest": "d4 c4 / Nf6 e5", "english": "c4 /", "symmetrical english": "c4 / c5", "london": "d4 Bf4 /", "trompowsky": "d4 Bg5 / Nf6", "colle": "d4 Nf3 e3 Bd3 / d5",
    "réti": "Nf3 c4 / d5",
}  # fmt: skip
"""White's and Black's moves that make an opening, captures without their sign (Encyclopaedia of Chess Openings, from memory)."""
_OTHERS = {
    "spanish": "ruy lopez", "centre game": "center game", "french exchange": "exchange french", "french advance": "advance french", "slav exchange": "exchange slav", "modern benoni": "benoni", "volga": "benko", "petrov": "petroff", "russian": "petroff", "grunfeld": "grünfeld", "reti": "réti", "scotch gambit": "scotch", "evans gambit": "evans", "giuoco": "giuoco piano", "panov botvinnik": "panov",
}  # fmt: skip
_KINDS = (
    "defence",
    "defense",
    "game",
    "opening",
    "variation",
    "gambit",
    "counter gambit",
    "attack",
    "system",
)
"""Words that a name may end in."""


@cache
def names() -> dict[str, str]:
    """Every way to say a name, in normalised words, and the opening meant."""
    found: dict[str, str] = {}
    for name in (*MOVES, *_OTHERS):
        opening = _OTHERS.get(name, name)
        for kind in ("", *_KINDS):
            if kind == "" or name.split()[-1] not in (*_KINDS, "accepted", "declined"):
                found.setdefault(f"{name} {kind}".strip(), opening)
    return found


def named(text: str) -> str | None:
    """The opening that a noun phrase names, its article left out."""
    words = re.sub(r"^(?:the|an?|our|his|their|this|that|white 's|black 's) ", "", text).split()
    for first in range(len(words)):
        found = names().get(" ".join(words[first:]))
        if found is not None:
            return found
    return None


def played(spot: Spot, opening: str) -> bool:
    """Whether an opening is on the board: both sides have made its moves by now, in whatever order, or its pawns and pieces stand there."""
    wanted = [Counter(side.split()) for side in f"{MOVES[opening]} ".split("/")]
    made: list[Counter[str]] = [Counter(), Counter()]
    for board, uci in zip(spot.boards, spot.moves, strict=False):
        made[board.turn == "black"][_move(board, uci)] += 1
    if all(not side - done for side, done in zip(wanted, made, strict=True)):
        return True
    pawns, pieces = _stand(opening)
    men = dict(spot.board.pieces())
    return {at for at in men.items() if at[1] in "Pp"} == pawns and pieces <= set(men.items())


def _move(board: Board, uci: str) -> str:
    """A move as in the table: the piece and its square."""
    letter = (board.piece_at(uci[:2]) or "p").upper()
    return uci[2:4] if letter == "P" else letter + uci[2:4]


@cache
def _stand(opening: str) -> tuple[frozenset[tuple[str, str]], frozenset[tuple[str, str]]]:
    """All pawns, and the pieces that its moves have brought out, after the moves of an opening: (square, piece)."""
    board = Board(START)
    queues = dict(zip(("white", "black"), (s.split() for s in f"{MOVES[opening]} ".split("/")), strict=True))  # fmt: skip
    while any(queues.values()):
        queue = queues[board.turn]
        uci = next((u for u in board.legal_moves() if queue and _move(board, u) == queue[0]), None)
        following = board.passed() if uci is None else board.play(uci)
        if uci is not None:
            queue.pop(0)
        assert following is not None  # no opening of the table gives a lasting check
        board = following
    out = {m[-2:] for side in MOVES[opening].split("/") for m in side.split() if len(m) == 3}
    men = frozenset(board.pieces())
    return (
        frozenset(m for m in men if m[1] in "Pp"),
        frozenset(m for m in men if m[0] in out and m[1] not in "Pp"),
    )
