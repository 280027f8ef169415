"""A mate that an outside engine announces counts as one only when our own solver has tried every defence."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lineproof._engine import Board, Stop, mate
from lineproof.engine.answer import Line

from .info import MOST

DEEPEST = 5
"""Moves of the longest announced mate that is tried: a longer one would outlast the nodes of any effort."""


def proved(
    line: Line, board: Board, root_moves: Sequence[str] | None, nodes: int, stop: Stop | None
) -> tuple[Line, int]:
    """The line, and the nodes that were spent on its mate.

    What is not proved within `nodes` loses its mate and keeps its worth as a won game.
    """
    if line.mate is None:
        return line, 0
    mover_mates = (line.mate > 0) == (board.turn == "white")
    limit = abs(line.mate)
    spent = 0
    if limit <= DEEPEST:
        tries = [line.moves[0]] if mover_mates else list(root_moves or board.legal_moves())
        forced, spent = _forced(board, tries, limit, mover_mates, nodes, stop)
        if forced:
            return line, spent
    worth = MOST if line.mate > 0 else -MOST
    return replace(line, mate=None, centipawns=worth), spent


def _forced(
    board: Board, tries: Sequence[str], limit: int, mover_mates: bool, nodes: int, stop: Stop | None
) -> tuple[bool, int]:
    """Whether each of the moves leads to mate within `limit` moves of the side that mates."""
    spent = 0
    for uci in tries:
        after = board.play(uci)
        if mover_mates:
            if after.is_checkmate:
                continue
            replies, left = after.legal_moves(), limit - 1
            positions = [after.play(reply) for reply in replies]
        else:
            positions, left = [after], limit
        if not positions or left == 0:
            return False, spent
        for position in positions:
            if spent >= nodes:
                return False, spent
            found, _, used = mate(position.fen, left, nodes=nodes - spent, stop=stop)
            spent += used
            if not found:
                return False, spent
    return True, spent
