"""Showing: the shortest part of a line that convinces, and what falls in it.

>>> from lineproof.engine import Board
>>> board = Board("r3k3/2N5/8/8/8/8/8/4K3 b - - 0 1")
>>> spot = Spot(board.fen, (), board)
>>> shortest(spot, ("e8d7", "c7a8", "d7c6", "a8b6", "c6b6"))
('e8d7', 'c7a8')
>>> falls(spot, ("e8d7", "c7a8"), "white")
'the rook on a8'
>>> numbered(spot, ("e8d7", "c7a8"))
'1... Kd7 2. Nxa8'
"""

from __future__ import annotations

from collections.abc import Sequence

from lineproof.engine import Board

from .board import NAMES, VALUES, material, name, other, side_of
from .claim import SHOWN, Spot


def shortest(
    spot: Spot, moves: Sequence[str], *, before: int | None = None, most: int | None = None
) -> tuple[str, ...]:
    """The line up to the first moment from which on most of what it wins, three quarters, stands on the board, no capture taking it back.

    A line that mates is shown whole; one that changes no material, for `SHOWN` plies.
    before: White's balance in pawns to which the end is compared, where it is not that of the position. most: plies looked at.
    """
    line = tuple(moves if most is None else moves[:most])
    boards = [spot.board]
    for uci in line:
        boards.append(boards[-1].play(uci))
    if boards[-1].is_checkmate:
        return line
    balances = [material(board, "white") for board in boards]
    resting = [n for n, board in enumerate(boards) if _rests(board)]
    start = balances[0] if before is None else before
    if not resting or balances[resting[-1]] == start:
        return line[:SHOWN]
    gain = balances[resting[-1]] - start
    enough = min(abs(gain), max(1, -(-abs(gain) * 3 // 4)))
    cut = len(line)
    for n in reversed(resting):
        if (balances[n] - start) * (1 if gain > 0 else -1) < enough:
            break
        cut = n
    # with nothing to show but what stands there, the best defence and the answer to it
    return line[: max(cut, 2)]


def _rests(board: Board) -> bool:
    return not board.in_check and not board.capture_gains_pawn()


def falls(spot: Spot, moves: Sequence[str], side: str) -> str:
    """What `side` wins in a line, in words: "the rook on a8", "the queen on d8 for the knight on f3"; "" where it wins nothing.

    Pieces of one value that both sides lose cancel out.
    """
    board = spot.board
    won: list[tuple[int, str]] = []
    lost: list[tuple[int, str]] = []
    for uci in moves:
        (won if board.turn == side else lost).extend(_taken(board, uci))
        board = board.play(uci)
    for each in list(lost):
        same = next((w for w in won if w[0] == each[0]), None)
        if same is not None:
            won.remove(same)
            lost.remove(each)
    if sum(v for v, _ in won) <= sum(v for v, _ in lost):
        return ""
    given = f" for {_listed([(v, _any(what)) for v, what in lost])}" if lost else ""
    return f"{_listed(won)}{given}"


def _taken(board: Board, uci: str) -> list[tuple[int, str]]:
    """What a move takes, each with its value: a piece, and a new one in place of the pawn that promotes."""
    to = uci[2:4]
    found: list[tuple[int, str]] = []
    letter = board.piece_at(to)
    if letter is not None and side_of(letter) != board.turn:
        found.append((VALUES[letter.lower()], name(board, to)))
    elif letter is None and (board.piece_at(uci[:2]) or "").lower() == "p" and uci[0] != to[0]:
        found.append((1, f"the pawn on {to[0]}{uci[1]}"))
    if len(uci) == 5:
        found.append((VALUES[uci[4]] - 1, f"a new {NAMES[uci[4]]}"))
    return found


def _any(what: str) -> str:
    """ "the bishop" of "the bishop on f8", "a pawn" of "the pawn on d4"."""
    bare = what.split(" on ")[0]
    return bare.replace("the pawn", "a pawn")


def _listed(pieces: Sequence[tuple[int, str]]) -> str:
    said = [what for _, what in sorted(pieces, key=lambda piece: -piece[0])]
    pawns = [what for what in said if what.startswith(("the pawn", "a pawn"))]
    if len(pawns) > 1:
        said = [w for w in said if w not in pawns] + [
            f"{_NUMBERS.get(len(pawns), len(pawns))} pawns"
        ]
    for what in [w for w in dict.fromkeys(said) if said.count(w) > 1]:
        many = f"{_NUMBERS.get(said.count(what), said.count(what))} {what.removeprefix('the ')}s"
        said[said.index(what)] = many
        said = [w for w in said if w != what]  # "two bishops"
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}"


_NUMBERS = {2: "two", 3: "three", 4: "four"}


def numbered(spot: Spot, moves: Sequence[str]) -> str:
    """A line in SAN with its move numbers."""
    number, white = spot.board.move_number, spot.board.turn == "white"
    words: list[str] = []
    for san in spot.board.san_line(list(moves)):
        if white:
            words.append(f"{number}.")
        elif not words:
            words.append(f"{number}...")
        words.append(san)
        number += not white
        white = not white
    return " ".join(words)


def comes_to(spot: Spot, moves: Sequence[str], side: str) -> str:
    """What a line comes to for `side`, as a clause: "it ends in mate", "the rook on h1 falls"; "" where nothing is won."""
    end = spot.line(moves).board
    if end.is_checkmate and end.turn == other(side):
        return "it ends in mate"
    what = falls(spot, moves, side)
    if " for " in what:
        return f"{side.capitalize()} wins {what}"
    many = " and " in what or what.endswith("pawns")
    return what and f"{what} {'fall' if many else 'falls'}"
