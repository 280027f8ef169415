"""The Rust engine for Python. Squares are names ("e4"), sides "white" and "black", pieces FEN letters."""

from collections.abc import Sequence
from typing import final

__version__: str

class FenError(ValueError):
    """The text is no FEN of a legal position."""

class MoveSyntaxError(ValueError):
    """The text is no move."""

class IllegalMoveError(ValueError):
    """No such move is legal."""

class AmbiguousMoveError(ValueError):
    """Several pieces can make the move."""

@final
class Board:
    """One legal position, immutable."""

    def __new__(cls, fen: str | None = None) -> Board:
        """The initial position, or that of a FEN.

        :raises FenError: when the text is no FEN of a legal position.
        """
    @property
    def fen(self) -> str: ...
    @property
    def key(self) -> int:
        """64-bit key; equal for the same position (FIDE Laws of Chess 9.2.3)."""
    @property
    def turn(self) -> str: ...
    @property
    def move_number(self) -> int: ...
    @property
    def in_check(self) -> bool: ...
    @property
    def is_checkmate(self) -> bool: ...
    @property
    def is_stalemate(self) -> bool: ...
    def checkers(self) -> list[str]: ...
    def legal_moves(self) -> list[str]:
        """Every legal move in UCI spelling, sorted."""
    def san(self, uci: str) -> str: ...
    def san_line(self, line: Sequence[str]) -> list[str]:
        """A line of UCI moves in SAN."""
    def parse_san(self, san: str) -> str:
        """The move in UCI spelling.

        :raises MoveSyntaxError, IllegalMoveError, AmbiguousMoveError:
        """
    def play(self, uci: str) -> Board: ...
    def passed(self) -> Board | None:
        """The board after the mover passes; None when he is in check."""
    def piece_at(self, at: str) -> str | None: ...
    def pieces(self) -> list[tuple[str, str]]:
        """(square, FEN letter) of every piece, a1 first."""
    def attackers(self, by: str, at: str, through: Sequence[str] = ()) -> list[str]:
        """Squares of a side's pieces that attack a square, pinned or not; pieces on `through` are lifted first."""
    def attacks(self, from_: str) -> list[str]: ...
    @staticmethod
    def between(one: str, other: str) -> list[str]: ...
    def may_castle(self, by: str, wing: str) -> bool:
        """Whether a side has the right to castle on a wing, "king" or "queen"."""

# Search

class LimitError(ValueError):
    """The limits of a search are missing or contradict themselves."""

class InCheckError(ValueError):
    """A side in check cannot pass."""

@final
class Stop:
    """Ends searches from another thread."""

    def __new__(cls) -> Stop: ...
    def set(self) -> None:
        """Ends every search that was given this stop, now and later."""
    def is_set(self) -> bool: ...

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
) -> tuple[list[tuple[list[str], list[str], int, int, int | None]], int, int, bool, str]:
    """(lines, nodes, depth, stopped, finished).

    A line is (moves, san, points, centipawns, mate), the last three for White.

    :raises FenError, MoveSyntaxError, IllegalMoveError, LimitError:
    """

def perft(fen: str, depth: int) -> int:
    """Paths of exactly `depth` plies.

    :raises FenError:
    """

def points(centipawns: int) -> int:
    """Expected score, 0 to 100, of a number of centipawns."""
