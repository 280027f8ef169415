"""The text alternative of a diagram: what stands where and what is pointed at, in plain English.

    >>> alternative("4k3/8/8/8/8/8/4P3/4K3 w - - 0 1")
    'White to move. White: king e1, pawn e2. Black: king e8.'

The order is fixed: side to move, White's pieces from king to pawn, Black's, then the marks by kind,
White's before Black's, each kind by square. The same diagram always reads the same.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from .marks import JustPlayed, Mark, MarkedSquare, Pin, ShownMove, Side
from .pieces import PIECES
from .placement import Placement, read_placement
from .squares import path_between

_SIDES: Final[tuple[Side, Side]] = ("white", "black")


def alternative(fen: str, marks: Sequence[Mark] = ()) -> str:
    """Sentences for a screen reader.

    :raises DiagramError: if the FEN's placement or side to move is wrong
    """
    placement = read_placement(fen)
    sentences = [_to_move(placement), *(_army(placement, side) for side in _SIDES)]
    played = sorted((mark for mark in marks if isinstance(mark, JustPlayed)), key=_ends)
    sentences += [_sentence("Just played", [_moved(placement, move) for move in played])]
    for side in _SIDES:
        sentences += _ideas(placement, marks, side)
    return " ".join(sentence for sentence in sentences if sentence)


def _to_move(placement: Placement) -> str:
    return f"{placement.to_move.capitalize()} to move." if placement.to_move else ""


def _army(placement: Placement, side: Side) -> str:
    groups = []
    for kind, drawing in PIECES.items():
        letter = kind.upper() if side == "white" else kind
        squares = sorted(at for at, piece in placement.pieces.items() if piece == letter)
        if squares:
            groups.append(f"{drawing.name}{'s' * (len(squares) > 1)} {_listed(squares)}")
    return f"{side.capitalize()}: {', '.join(groups) or 'no pieces'}."


def _ideas(placement: Placement, marks: Sequence[Mark], side: Side) -> list[str]:
    squares = sorted(m.square for m in marks if isinstance(m, MarkedSquare) and m.side == side)
    moves = sorted((m for m in marks if isinstance(m, ShownMove) and m.side == side), key=_ends)
    pins = sorted((m for m in marks if isinstance(m, Pin) and m.side == side), key=_ends)
    whose = f"for {side.capitalize()}"
    return [
        _sentence(f"Marked {whose}", [_on(placement, square) for square in squares]),
        _sentence(f"Shown {whose}", [_shown(placement, move) for move in moves]),
        _sentence(f"Pinned {whose}", [_pinned(placement, pin) for pin in pins]),
    ]


def _sentence(head: str, parts: Sequence[str]) -> str:
    return f"{head}: {'; '.join(parts)}." if parts else ""


def _shown(placement: Placement, move: ShownMove) -> str:
    name = _name(placement.pieces, move.start)
    return f"{name + ' ' if name else ''}{move.start} to {move.end}"


def _moved(placement: Placement, move: JustPlayed) -> str:
    name = _name(placement.pieces, move.end)
    return f"{name + ' ' if name else ''}{move.start} to {move.end}"


def _pinned(placement: Placement, pin: Pin) -> str:
    """Names the pinned piece where exactly one stands on the line, else only the line."""
    between = path_between(pin.start, pin.end) or ()
    shields = [square for square in between if square in placement.pieces]
    ends = f"{_on(placement, pin.start)} to {_on(placement, pin.end)}"
    if len(shields) != 1:
        return f"the line from {ends}"
    return f"{_on(placement, shields[0])}, on the line from {ends}"


def _on(placement: Placement, square: str) -> str:
    name = _name(placement.pieces, square)
    return f"the {name} on {square}" if name else f"the empty square {square}"


def _name(pieces: Mapping[str, str], square: str) -> str | None:
    letter = pieces.get(square, "").lower()
    return next((drawing.name for kind, drawing in PIECES.items() if kind == letter), None)


def _ends(mark: ShownMove | Pin | JustPlayed) -> tuple[str, str]:
    return mark.start, mark.end


def _listed(words: Sequence[str]) -> str:
    return " and ".join(part for part in (", ".join(words[:-1]), words[-1]) if part)
