"""What a search answers with: lines of play and their worth.

>>> is_safe(100, 85), is_safe(90, 84)
(True, False)
"""

from __future__ import annotations

from dataclasses import dataclass

SAFE_COST = 5
"""Most points that a safe move loses against the best."""
WON = 90
"""Points of the mover above which he may spend more without harm."""
STILL_WON = 85
"""Points of the mover that a safe move leaves him then, at least."""


@dataclass(frozen=True, slots=True)
class Line:
    """A line of play and what it is worth, always for White."""

    moves: tuple[str, ...]
    """UCI spelling, at least one move."""
    san: tuple[str, ...]
    """The same moves in SAN, with check and mate signs."""
    points: int
    """Expected score for White, 0 to 100."""
    centipawns: int
    """Advantage of White; at a mate in n, 30,000 less n, with the sign of the side that mates."""
    mate: int | None
    """Moves to mate: positive when White mates, negative when Black does, None without a mate."""


@dataclass(frozen=True, slots=True)
class Answer:
    """The best lines of a position."""

    lines: tuple[Line, ...]
    """Best first for the mover; empty when the game is over."""
    nodes: int
    """Moves played in the tree."""
    depth: int
    """Iterations searched to their end."""
    stopped: bool
    """Whether a stop or the clock ended the search; such an answer is not repeatable."""
    finished: str
    """How the game has ended: "checkmate", "stalemate", "draw by ...", or "" when it goes on."""


@dataclass(frozen=True, slots=True)
class MoveCost:
    """A legal move, and what it costs against the best."""

    uci: str
    san: str
    cost: int
    """Points that the mover loses against the best move, 0 to 100."""
    line: Line
    """The move and best play after it."""
    safe: bool
    """Whether it costs at most `SAFE_COST` points; or where the best move leaves the mover above
    `WON`, whether this one still leaves him `STILL_WON` or more. Points are the mover's."""


def is_safe(best: int, points: int) -> bool:
    """Whether a move is safe, by the mover's points after the best move and after this one."""
    return best - points <= SAFE_COST or (best > WON and points >= STILL_WON)
