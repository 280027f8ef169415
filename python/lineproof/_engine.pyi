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
    def attacks(self, at: str, through: Sequence[str] = ()) -> list[str]:
        """Squares that the piece on a square attacks; pieces on `through` are lifted first."""
    @staticmethod
    def between(one: str, other: str) -> list[str]: ...
    def may_castle(self, by: str, wing: str) -> bool:
        """Whether a side has the right to castle on a wing, "king" or "queen"."""
