"""Squares that a sentence points at, to be marked while it is said."""

from __future__ import annotations

import re

from lineproof.claims.board import NAMES
from lineproof.claims.sentence import Sentence
from lineproof.engine import Board

_ON = frozenset({"on", "at"})
_PIECES = frozenset({"pawn", "knight", "bishop", "rook", "queen", "king", "square"})
_SQUARE = re.compile(r"[a-h][1-8]")


def named_squares(sentence: Sentence, board: Board) -> tuple[str, ...]:
    """Squares that a sentence points at: "on e4", "the e5-pawn"; not "not on g6", nor where the piece that is named stands no more."""
    found = []
    norms = ["", "", "", *(word.norm for word in sentence.words), ""]
    for number, norm in enumerate(norms):
        if not _SQUARE.fullmatch(norm):
            continue
        before, after = norms[number - 1], norms[number + 1]
        if after in _PIECES:
            there = after == "square" or _is(board, norm, after)
        elif before in _ON and norms[number - 2] != "not":
            named = norms[number - 2]
            there = named not in _PIECES or _is(board, norm, named)
        else:
            there = False
        if there:
            found.append(norm)
    return tuple(dict.fromkeys(found))


def _is(board: Board, square: str, name: str) -> bool:
    """Whether a piece of this name stands on a square."""
    return NAMES.get((board.piece_at(square) or "").lower()) == name
