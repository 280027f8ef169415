"""Tracks: where each piece came from, and how many moves it has spent."""

from __future__ import annotations

from dataclasses import dataclass

from .board import HOME_MINORS, VALUES, attackers, defenders, side_of
from .claim import Spot

FIRST = {
    "white": {"a1": "r", "h1": "r", "d1": "q", "e1": "k"} | HOME_MINORS["white"],
    "black": {"a8": "r", "h8": "r", "d8": "q", "e8": "k"} | HOME_MINORS["black"],
}
"""First squares of the pieces, pawns apart."""
_KNIGHT = ((1, 2), (2, 1), (2, -1), (1, -2), (-1, -2), (-2, -1), (-2, 1), (-1, 2))


@dataclass(frozen=True)
class Step:
    """One move of a piece: its number in the history (0 for the first), where to, and whether it captured or was the only legal move."""

    ply: int
    at: str
    free: bool


@dataclass(frozen=True)
class Track:
    """The way of one piece. origin: where it stood as the history began. letter: as a FEN letter in lower case."""

    side: str
    letter: str
    origin: str
    steps: tuple[Step, ...] = ()

    @property
    def at(self) -> str:
        return self.steps[-1].at if self.steps else self.origin


def tracks(spot: Spot) -> list[Track]:
    """The ways of all pieces that are still on the board. A promoted pawn keeps its letter."""
    start = spot.boards[0]
    found = {at: Track(side_of(p), p.lower(), at) for at, p in start.pieces()}
    for ply, uci in enumerate(spot.moves):
        board = spot.boards[ply]
        origin, to = uci[:2], uci[2:4]
        san = board.san(uci)
        moved = found.pop(origin)
        if moved.letter == "p" and "x" in san and to not in found:
            found.pop(to[0] + origin[1], None)  # taken in passing
        forced = "x" in san or len(board.legal_moves()) == 1
        found[to] = Track(
            moved.side, moved.letter, moved.origin, (*moved.steps, Step(ply, to, forced))
        )
        if san.startswith("O-O"):
            rank = origin[1]
            rook, beside = ("h", "f") if to[0] == "g" else ("a", "d")
            castled = found.pop(rook + rank)
            found[beside + rank] = Track(
                castled.side,
                castled.letter,
                castled.origin,
                (*castled.steps, Step(ply, beside + rank, True)),
            )
    return list(found.values())


def needed(letter: str, origin: str, to: str) -> int:
    """Moves that a piece needs from one square to another on an empty board; a pawn's double step counts one."""
    files, ranks = abs(ord(origin[0]) - ord(to[0])), abs(int(origin[1]) - int(to[1]))
    if origin == to:
        return 0
    match letter:
        case "n":
            return _leaps(origin, to)
        case "b":
            return 1 if files == ranks else 2
        case "r":
            return 1 if 0 in (files, ranks) else 2
        case "q":
            return 1 if files == ranks or 0 in (files, ranks) else 2
        case "p":
            return max(ranks - 1, 1) if origin[1] in "27" else ranks
        case _:
            return max(files, ranks)


def _leaps(origin: str, to: str) -> int:
    seen, count = {origin}, 0
    while to not in seen:
        count += 1
        seen |= {
            chr(ord(s[0]) + f) + str(int(s[1]) + r)
            for s in seen
            for f, r in _KNIGHT
            if "a" <= chr(ord(s[0]) + f) <= "h" and 1 <= int(s[1]) + r <= 8
        }
    return count


@dataclass(frozen=True)
class Loss:
    """Moves that a piece has lost. at: where it stands. driven: how often a developing move drove it on."""

    at: str
    letter: str
    spent: int
    needed: int
    driven: int

    @property
    def moves(self) -> int:
        return max(self.spent - self.needed, self.driven, 0)


def losses(spot: Spot, side: str) -> list[Loss]:
    """Moves that each piece of a side has lost on the way here.

    Captures and forced moves are left apart: they count neither as spent nor as needed.
    """
    found = []
    for track in tracks(spot):
        if track.side != side or not track.steps:
            continue
        spent, way = _spent(track)
        loss = Loss(track.at, track.letter, spent, way, _driven(spot, track))
        if loss.moves:
            found.append(loss)
    return found


def _spent(track: Track) -> tuple[int, int]:
    """Moves spent and moves needed, summed over the stretches between captures and forced moves."""
    spent = way = 0
    start, stretch, at = track.origin, 0, track.origin
    for step in (*track.steps, None):
        if step is None or step.free:
            spent += stretch
            way += min(needed(track.letter, start, at), stretch)
            stretch = 0
            if step is not None:
                start = at = step.at
        else:
            stretch += 1
            at = step.at
    return spent, way


def _driven(spot: Spot, track: Track) -> int:
    """How often the piece moved on at once because a developing move had attacked it."""
    count, at = 0, track.origin
    for step in track.steps:
        ply = step.ply
        if not step.free and ply >= 2 and at != track.origin:
            board = spot.boards[ply]
            threat = spot.moves[ply - 1]
            new = threat[2:4] in attackers(board, at)[0] and develops(spot, ply - 1)
            count += new and hit(
                board.piece_at(threat[2:4]) or "p", track.letter, defenders(board, at)[0]
            )
        at = step.at
    return count


def hit(by: str, letter: str, protectors: list[str]) -> bool:
    """Whether an attack by a piece makes another move on: the other is worth more, or is not protected."""
    return letter == "k" or VALUES[letter] > VALUES[by.lower()] or not protectors


def develops(spot: Spot, ply: int) -> bool:
    """Whether a move of the history develops: a minor piece leaves its first square, a pawn leaves the second rank and frees a bishop
    that still stands at home, or a side castles."""
    board, uci = spot.boards[ply], spot.moves[ply]
    letter = board.piece_at(uci[:2]) or "K"
    homes = HOME_MINORS[side_of(letter)]
    if homes.get(uci[:2]) == letter.lower() or board.san(uci).startswith("O-O"):
        return True
    if letter.lower() != "p" or uci[1] not in "27":
        return False
    rank = "1" if letter.isupper() else "8"
    freed = {"b": "c", "d": "c", "e": "f", "g": "f"}.get(uci[0])
    bishop = board.piece_at(f"{freed}{rank}") if freed else None
    return bishop is not None and bishop.lower() == "b"
