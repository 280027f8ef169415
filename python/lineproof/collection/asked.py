"""A position as it is asked for: moves from the initial position, or a FEN.

>>> asked("1. e4 e5 2. Nc3").san
('e4', 'e5', 'Nc3')
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from lineproof._engine import (
    AmbiguousMoveError,
    Board,
    FenError,
    IllegalMoveError,
    MoveSyntaxError,
    read_san,
)
from lineproof.collection.errors import NotAPositionError

_NUMBER = re.compile(r"^\d+\.*|^\.+")
_LATER = re.compile(r"(?!1\.)\d+\.|1?\.{2,}")
"""A move number that is not that of the first move."""


@dataclass(frozen=True)
class Asked:
    """boards: one more than moves; only the last one counts when the position was given as FEN."""

    boards: tuple[Board, ...]
    san: tuple[str, ...]
    uci: tuple[str, ...]

    @property
    def board(self) -> Board:
        return self.boards[-1]


def asked(text: str) -> Asked:
    """Reads moves or a FEN; nothing means the initial position.

    :raises NotAPositionError: when the text is neither; it names the word.
    """
    if "/" in text:
        try:
            return Asked((Board(text),), (), ())
        except FenError as error:
            raise NotAPositionError(f"{text}: {error}; correct the FEN, or give moves") from error
    boards: list[Board] = [Board()]
    san: list[str] = []
    uci: list[str] = []
    for word in text.split():
        if not san and _LATER.match(word):
            raise NotAPositionError(
                f"{text}: the moves must begin with the first move of the game; give them all, or a FEN"
            )
        bare = _NUMBER.sub("", word)
        if not bare or bare in ("*", "1-0", "0-1"):
            continue
        try:
            move, spelled = read_san(boards[-1], bare)
        except (MoveSyntaxError, IllegalMoveError, AmbiguousMoveError) as error:
            raise NotAPositionError(f"{text}: {error}; correct it, or give a FEN") from error
        if move == "0000":
            raise NotAPositionError(f"{text}: a pass is no move of a game; leave it out")
        boards.append(boards[-1].play(move))
        san.append(spelled)
        uci.append(move)
    return Asked(tuple(boards), tuple(san), tuple(uci))
