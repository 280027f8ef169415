"""Asking the search: best lines, the threat in a position, the cost of every move."""

from __future__ import annotations

from collections.abc import Sequence

from lineproof import _engine
from lineproof._engine import Board, InCheckError, Stop
from lineproof.engine.answer import Answer, Line, MoveCost, is_safe

ENGINE_VERSION = "4"
"""Part of the key of kept results: changes whenever the same request may get another answer."""


def search(
    fen: str,
    moves: Sequence[str] = (),
    *,
    nodes: int | None = None,
    depth: int | None = None,
    seconds: float | None = None,
    lines: int = 1,
    root_moves: Sequence[str] | None = None,
    hash_mb: int | None = None,
    stop: Stop | None = None,
    threads: int = 1,
) -> Answer:
    """The best lines of the position that `moves` (UCI) lead to from `fen`.

    The moves count for repetition. The first limit reached ends the search; the first ply is
    always searched to its end, so a few hundred nodes may be spent on a smaller limit. With
    nodes or depth alone, and one thread, the answer is the same every time, on every machine.

    :param hash_mb: the most memory for the table, in MiB; by default what `nodes` needs, up to 64.
    :param threads: for one question that somebody waits for; several questions are better asked side by side.
    :param root_moves: only these moves (UCI) are considered.
    :raises FenError: when `fen` is no legal position.
    :raises MoveSyntaxError, IllegalMoveError: when one of `moves` cannot be played.
    :raises LimitError: when no limit is given, one is not positive, or a root move is not legal.
    """
    rows, spent, reached, stopped, finished = _engine.search(
        fen,
        moves,
        nodes=nodes,
        depth=depth,
        seconds=seconds,
        lines=lines,
        root_moves=root_moves,
        hash_mb=hash_mb,
        stop=stop,
        threads=threads,
    )
    found = tuple(
        Line(tuple(uci), tuple(san), points, centipawns, mate)
        for uci, san, points, centipawns, mate in rows
    )
    return Answer(found, spent, reached, stopped, finished)


def threat(
    fen: str,
    moves: Sequence[str] = (),
    *,
    nodes: int | None = None,
    depth: int | None = None,
    seconds: float | None = None,
    lines: int = 1,
    hash_mb: int | None = None,
    stop: Stop | None = None,
) -> Answer:
    """What the opponent would play if the mover passed: the search of the position after a pass.

    The game before it does not count for repetition, since no position after a pass stood in it.

    :raises InCheckError: when the mover is in check.
    :raises FenError, MoveSyntaxError, IllegalMoveError, LimitError: as :func:`search`.
    """
    passed = _after(fen, moves).passed()
    if passed is None:
        raise InCheckError("a side in check cannot pass, so there is no threat to look for")
    return search(
        passed.fen,
        nodes=nodes,
        depth=depth,
        seconds=seconds,
        lines=lines,
        hash_mb=hash_mb,
        stop=stop,
    )


def safe_moves(
    fen: str,
    moves: Sequence[str] = (),
    *,
    nodes: int | None = None,
    depth: int | None = None,
    hash_mb: int | None = None,
    stop: Stop | None = None,
) -> tuple[MoveCost, ...]:
    """Every legal move, with its cost against the best and whether it is safe; the best first.

    Each is searched alone. Moves that are not safe are in the answer too: `MoveCost.safe` tells.

    :param nodes: spent on each move, so that all are judged alike.
    :returns: nothing when the game is over; all legal moves otherwise.
    :raises FenError, MoveSyntaxError, IllegalMoveError, LimitError: as :func:`search`.
    """
    board = _after(fen, moves)
    sign = 1 if board.turn == "white" else -1
    found: list[tuple[str, Line]] = []
    for uci in board.legal_moves():
        answer = search(
            fen, moves, nodes=nodes, depth=depth, root_moves=[uci], hash_mb=hash_mb, stop=stop
        )
        if answer.finished:
            return ()
        found.append((uci, answer.lines[0]))
    found.sort(key=lambda each: (-sign * each[1].centipawns, each[0]))
    mine = [line.points if sign > 0 else 100 - line.points for _, line in found]
    return tuple(
        MoveCost(uci, line.san[0], mine[0] - points, line, is_safe(mine[0], points))
        for (uci, line), points in zip(found, mine, strict=True)
    )


def _after(fen: str, moves: Sequence[str]) -> Board:
    board = Board(fen)
    for uci in moves:
        board = board.play(uci)
    return board
