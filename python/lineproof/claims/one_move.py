"""One move: the only legal one that a noun or an order means, "a queen check on d5", "do not run back to f6 with the knight"."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from lineproof.engine import Board

from .board import NAMES
from .chunk import Place
from .clause import Clause
from .here import Here, Named
from .noun import Noun

_GOAL = re.compile(r" (?:on|to|at) ([a-h][1-8])$")
Fits = Callable[[Board, str], bool]


def _captures(board: Board, uci: str) -> bool:
    return "x" in board.san(uci)


def _pushes(board: Board, uci: str) -> bool:
    return (board.piece_at(uci[:2]) or "").lower() == "p" and not _captures(board, uci)


def _checks(board: Board, uci: str) -> bool:
    return board.play(uci).in_check


_DEEDS: dict[str, Fits] = {
    "check": _checks,
    **dict.fromkeys(("capture", "exchange", "trade", "swap", "recapture"), _captures),
    **dict.fromkeys(("push", "advance", "thrust"), _pushes),
    **dict.fromkeys(("jump", "leap", "sortie", "retreat", "excursion"), lambda _b, _u: True),
}
_TO = frozenset({"on", "to", "at", "into", "onto"})


def named_thing(
    here: Here, noun: Noun, places: Sequence[Place], *, past: bool = False
) -> tuple[Named, list[Place]] | None:
    """The one move that can be played here and that a noun with the places behind it means, and those places.

    None when there is none or several, and for the move that has just been played; past: that one is asked for instead.
    """
    test = _DEEDS.get(noun.head)
    if test is None or noun.type != "noun" or noun.plural or noun.no:
        return None
    mine = [
        p
        for p in places
        if p.noun is not None
        and p.first > noun.last
        and (
            (p.preposition in _TO and p.noun.type in {"square", "file"})
            or (p.preposition == "with" and p.noun.type == "piece")
        )
    ]
    square = noun.square or next((p.noun.square for p in mine if p.noun and p.noun.square), "")
    if not square and (told := _GOAL.search(noun.text)) is not None:
        square = told[1]  # "the check on b4" as one noun phrase
    file = next((p.noun.file for p in mine if p.noun and p.noun.type == "file"), "")
    piece = next((a for a in noun.adjectives if a in NAMES.values()), "")
    piece = piece or next((p.noun.head for p in mine if p.noun and p.preposition == "with"), "")
    if not (square or file):
        return None
    found = [
        uci
        for uci in here.board.legal_moves()
        if _goes(here.board, uci, square, file, piece) and test(here.board, uci)
    ]
    last = here.spot.moves[-1] if here.spot.moves else None
    if last is not None:
        before = here.spot.earlier(1).board
        if _goes(before, last, square, file, piece) and test(before, last):
            return (here.last(), mine) if past else None  # it has been played
    if past:
        return None
    if piece and noun.head == "check":
        found = [u for u in here.board.legal_moves() if _goes(here.board, u, square, file, piece)]
    if len(found) > 1 and test is _captures and not piece:
        found = [u for u in found if (here.board.piece_at(u[:2]) or "").lower() == "p"]
    if len(found) != 1:
        return None
    return Named(here.spot, found[0], here.board.turn), mine


def _goes(board: Board, uci: str, square: str, file: str, piece: str) -> bool:
    letter = NAMES.get((board.piece_at(uci[:2]) or "").lower())
    return square in ("", uci[2:4]) and (not file or uci[2] in file) and piece in ("", letter)


def ordered(here: Here, clause: Clause) -> Named | None:
    """The one move that an order means: "run back to f6 with the knight", "take on d4"; None when it is not just one."""
    nouns = [*clause.objects, *(p.noun for p in clause.places if p.noun is not None)]
    move = next((n for n in nouns if n.type == "move" and not n.plural), None)
    if move is not None:
        return None
    square = next((n.square for n in nouns if n.type == "square" and n.square), "")
    piece = next((n.head for n in nouns if n.type == "piece" and not n.plural), "")
    if not square or not piece:
        return None
    found = [uci for uci in here.board.legal_moves() if _goes(here.board, uci, square, "", piece)]
    return Named(here.spot, found[0], here.board.turn) if len(found) == 1 else None


__all__ = ["named_thing", "ordered"]
