"""Board facts that several kinds ask for: exact, from the rules alone."""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.engine import Board

VALUES = {"p": 1, "n": 3, "b": 3, "r": 5, "q": 9, "k": 0}
"""Piece values in pawns (common practice)."""

NAMES = {"p": "pawn", "n": "knight", "b": "bishop", "r": "rook", "q": "queen", "k": "king"}
LETTERS = {name: letter for letter, name in NAMES.items()}
HOME_MINORS = {
    "white": {"b1": "n", "g1": "n", "c1": "b", "f1": "b"},
    "black": {"b8": "n", "g8": "n", "c8": "b", "f8": "b"},
}


def other(side: str) -> str:
    """The opponent of a side."""
    return "black" if side == "white" else "white"


def title(side: str) -> str:
    """ "White" or "Black"."""
    return side.capitalize()


def upper(text: str) -> str:
    """The text with a capital letter in front."""
    return text[:1].upper() + text[1:]


def side_of(letter: str) -> str:
    return "white" if letter.isupper() else "black"


def material(board: Board, side: str) -> int:
    """Material balance in pawns for `side`: his pieces less the other's."""
    total = sum(VALUES[p.lower()] * (1 if p.isupper() else -1) for _, p in board.pieces())
    return total if side == "white" else -total


def counts(board: Board, side: str) -> dict[str, int]:
    """Number of each piece of a side, by letter."""
    found = dict.fromkeys("kqrbnp", 0)
    for _, piece in board.pieces():
        if side_of(piece) == side:
            found[piece.lower()] += 1
    return found


def pieces(board: Board, side: str, letter: str | None = None) -> list[str]:
    """Squares of a side's pieces, of one kind if given."""
    white = side == "white"
    return [
        at
        for at, p in board.pieces()
        if p.isupper() is white and (letter is None or p.lower() == letter)
    ]


def name(board: Board, at: str) -> str:
    """ "the knight on f6"."""
    letter = board.piece_at(at)
    return f"the {NAMES[letter.lower()]} on {at}" if letter else at


def names(board: Board, squares: list[str]) -> str:
    """ "the king on e8 and the rook on a8"."""
    spelled = [name(board, at) for at in squares]
    if not spelled:
        return "nothing"
    return spelled[0] if len(spelled) == 1 else f"{', '.join(spelled[:-1])} and {spelled[-1]}"


def defenders(board: Board, at: str) -> tuple[list[str], list[str]]:
    """Defenders of the piece on `at`: those that stand behind nothing, and those lined up behind them.

    A defender pinned to its king still counts here; whether it may recapture is the search's question.
    """
    letter = board.piece_at(at)
    if letter is None:
        return [], []
    return layers(board, side_of(letter), at)


def attackers(board: Board, at: str) -> tuple[list[str], list[str]]:
    """Attackers of the piece on `at`: direct ones, and those lined up behind."""
    letter = board.piece_at(at)
    if letter is None:
        return [], []
    return layers(board, other(side_of(letter)), at)


def layers(board: Board, side: str, at: str) -> tuple[list[str], list[str]]:
    """What a side has on a square, empty or not: pieces that stand behind nothing, and those lined up behind them."""
    direct = [s for s in board.attackers(side, at) if s != at]
    seen = list(direct)
    behind: list[str] = []
    while True:
        # only a slider of the same line stands behind: lift what is known and look again
        new = [s for s in board.attackers(side, at, seen) if s not in seen and s != at]
        if not new:
            return direct, behind
        behind.extend(new)
        seen.extend(new)


@dataclass(frozen=True)
class Pinned:
    """A pin: `pinner` looks through `piece` at `behind`; absolute when that is the king."""

    pinner: str
    piece: str
    behind: str
    absolute: bool


def bound(board: Board, side: str) -> tuple[tuple[str, str, str], ...]:
    """The absolute pins against `side` alone, as (pinner, piece, king): what `pins` finds of them, sooner."""
    royal, sliders = ("K", "brq") if side == "white" else ("k", "BRQ")
    standing = dict(board.pieces())
    king = next((at for at, letter in standing.items() if letter == royal), None)
    if king is None:
        return ()
    found = []
    for pinner, letter in standing.items():
        if letter not in sliders:
            continue
        between = [at for at in board.between(pinner, king) if at in standing]
        if (
            len(between) == 1
            and side_of(standing[between[0]]) == side
            and king in board.attacks(pinner, between)
        ):
            found.append((pinner, between[0], king))
    return tuple(found)


def pins(board: Board, side: str) -> list[Pinned]:
    """Pins against `side`: exactly one of his pieces stands between an enemy line piece and his king (absolute),
    or, of his, an unprotected piece or one bigger than both the piece and the pinner (relative)."""
    found: list[Pinned] = []
    enemy = other(side)
    own = {at: p.lower() for at, p in board.pieces() if side_of(p) == side}
    for pinner, letter in board.pieces():
        if side_of(letter) != enemy or letter.lower() not in "brq":
            continue
        for piece in board.attacks(pinner):
            if piece not in own or own[piece] == "k":
                continue
            seen = board.attacks(pinner)
            for behind in board.attacks(pinner, [piece]):
                if behind in seen or behind not in own:
                    continue
                absolute = own[behind] == "k"
                bigger = VALUES[own[behind]] > max(VALUES[own[piece]], VALUES[letter.lower()])
                loose = own[behind] != "p" and not any(
                    d != piece for d in board.attackers(side, behind, [piece])
                )
                if absolute or bigger or loose:
                    found.append(Pinned(pinner, piece, behind, absolute))
    return found
