"""Moves and squares as a teacher says them.

>>> from lineproof.engine import Board
>>> move_words(Board(), "g1f3")
'knight to f three'
>>> move_words(Board("rnbqkb1r/pppp1ppp/8/4p3/4n3/2N5/PPPP1PPP/R1BQKBNR w KQkq - 0 4"), "c3e4")
'knight takes e four'
"""

from __future__ import annotations

import re

from lineproof.claims.board import NAMES
from lineproof.engine import Board

NULL_MOVE = "0000"
_DIGITS = ("", "one", "two", "three", "four", "five", "six", "seven", "eight")
_MADE = {"n": "a knight", "b": "a bishop", "r": "a rook", "q": "a queen"}
_SQUARE = re.compile(r"[a-h][1-8]")
_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")


def square_words(square: str) -> str:
    """ "e four" """
    return f"{square[0]} {_DIGITS[int(square[1])]}"


def move_words(board: Board, uci: str) -> str:
    """A move of a position in words: "d takes e five, check", "castles", "b eight, making a queen"."""
    if uci == NULL_MOVE:
        return f"suppose {board.turn.capitalize()} passes"
    san = board.san(uci)
    end = {"+": ", check", "#": ", mate"}.get(san[-1], "")
    if san.startswith("O-O-O"):
        return f"castles long{end}"
    if san.startswith("O-O"):
        return f"castles{end}"
    letter = (board.piece_at(uci[:2]) or "p").lower()
    to = square_words(uci[2:4])
    takes = "x" in san
    if letter == "p":
        said = f"{uci[0]} takes {to}" if takes else to
        if takes and board.piece_at(uci[2:4]) is None:
            said += " in passing"
        if len(uci) > 4:
            said += f", making {_MADE[uci[4]]}"
    else:
        name = NAMES[letter]
        bare = san.rstrip("+#").replace("x", "")
        if len(bare) > 3:  # another one could go there too
            name += f" from {square_words(uci[:2])}"
        said = f"{name} takes {to}" if takes else f"{name} to {to}"
    return said + end


def words_in(text: str) -> int:
    """How many words it takes to say a text: a square is two, "e four"."""
    return sum(2 if _SQUARE.fullmatch(word) else 1 for word in _WORD.findall(text))
