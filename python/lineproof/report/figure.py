"""The diagram beside a finding: where its evidence begins, with the marks of its check."""

from __future__ import annotations

from collections.abc import Iterator
from typing import cast

from lineproof.claims import Spot
from lineproof.diagram import (
    DiagramError,
    JustPlayed,
    Mark,
    MarkedSquare,
    Pin,
    ShownMove,
    Side,
)
from lineproof.proof import Finding


def marks_of(finding: Finding) -> tuple[Mark, ...]:
    """The marks of the check; where it has none, the move just played and the first move of the evidence."""
    found = [mark for given in finding.judgement.marks for mark in _drawn(given)]
    if not found:
        spot = finding.line_from
        if spot.moves and _is_move(spot.moves[-1]):
            found.append(JustPlayed(spot.moves[-1][:2], spot.moves[-1][2:4]))
        if finding.judgement.line:
            first = finding.judgement.line[0]
            found.append(ShownMove(first[:2], first[2:4], cast(Side, spot.board.turn)))
    return tuple(found)


def _drawn(mark: object) -> Iterator[Mark]:
    from lineproof.claims import Mark as Claimed

    assert isinstance(mark, Claimed)
    side = cast(Side, mark.side)
    try:
        match mark.kind:
            case "square":
                drawn: list[Mark] = [MarkedSquare(square, side) for square in mark.squares]
            case "move":
                drawn = [ShownMove(mark.squares[0], mark.squares[-1], side)]
            case "pin":
                drawn = [Pin(mark.squares[0], mark.squares[-1], side)]
            case _:
                drawn = []
    except DiagramError:
        # a mark that cannot be drawn leaves the finding without it, not the author without his report
        return
    yield from drawn


def _is_move(uci: str) -> bool:
    return uci[:2] != uci[2:4]


def caption(finding: Finding) -> str:
    """ "After 5... Bg4. White to move." """
    spot = finding.line_from
    mover = f"{spot.board.turn.capitalize()} to move."
    place = finding.claim.place
    if spot.board.fen == place.board.fen:
        return f"{'The start' if place.label == 'start' else f'After {place.label}'}. {mover}"
    last = _last_move(spot)
    return f"After {last}. {mover}" if last else mover


def _last_move(spot: Spot) -> str:
    if not spot.moves or not _is_move(spot.moves[-1]):
        return ""
    before = Spot(spot.root_fen, (), type(spot.board)(spot.root_fen)).line(spot.moves[:-1]).board
    dots = "." if before.turn == "white" else "..."
    return f"{before.move_number}{dots} {before.san(spot.moves[-1])}"
