"""Patterns: a side, a piece that is referred to, a move, in the plain words of `Noun.text`, as regular expressions."""

from __future__ import annotations

import re

from .sentence import SAN
from .spoken import SPOKEN

SQUARE = r"[a-h][1-8]"
_MOVE = rf"(?:\d{{1,3}}\.(?:\.\.)?|\.\.\.)?(?:{SPOKEN}|{SAN})[+#]?"
MOVE = re.compile(_MOVE)
"""A move as a word of its own."""
_PIECE = r"(?:kings?|queens?|rooks?|bishops?|knights?|pawns?)"
_WHOSE = r"(?: the| a| an| his| her| our| your| their| my| its| this| that| both| black 's| white 's| both of his| black| white)"
_ADJECTIVE = r"(?: other| last| poor| whole| dark squared| light squared| king 's| queen 's)?"
_REFERENCE = (
    # "a" is an article unless an article stands before it ("the a pawn"): one reading only, or lists would take for ever
    rf"(?:{_WHOSE}{_ADJECTIVE}(?: (?:{SQUARE}|[a-h]))?|(?: (?:{SQUARE}|[b-h]))?)"
    rf"(?: (?:{_PIECE})(?: (?:on|at) {SQUARE})?| {SQUARE})"
)
_SEPARATOR = r"(?: ,)?(?: and| as well as| ,)(?: also)?(?: at)?"

DESCRIBED = (
    rf" (?:(?:the|this|that|his|our|her|your)(?: (?:natural|quiet|greedy|bold|simple|little|same|obvious))?(?: {_PIECE})?"
    r"(?: (?:discovered|double|in between))? (?:move|capture|check|push|advance|retreat|sortie|jump|leap|recapture|sacrifice|grab|development|exchange)"
    r"|(?:pushing|advancing|taking|capturing|recapturing|castling|checking|grabbing|snatching|swallowing|accepting|eating|playing|putting)"
    rf"(?: (?:on|back|there|at once|here|first|away|like this|this way|with|the|a|his|our|her|your|white 's|black 's|[a-h]|{SQUARE}|{_PIECE}))*)"
)
SIDE = r" (?:white|black|we|you|i|he|she|they|us|him|the opponent|our opponent|your opponent|the second player|the first player)"
WHOSE = r" (?:white 's|black 's|our|your|my|his|her|their|the opponent 's)"


def targets(text: str) -> list[str]:
    """The references of a list: "the king and the rook on a8" gives two."""
    return [
        m.group().strip()
        for m in re.finditer(_REFERENCE, " " + re.sub(r"^both ", "", text))
        if m.group().strip()
    ]


__all__ = ["DESCRIBED", "MOVE", "SIDE", "SQUARE", "WHOSE", "targets"]
