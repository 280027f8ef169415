"""What a search answers with: lines of play and their worth."""

from __future__ import annotations

from dataclasses import dataclass


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
