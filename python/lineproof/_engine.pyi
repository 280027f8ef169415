"""The Rust engine for Python. Squares are names ("e4"), sides "white" and "black", pieces FEN letters."""

from collections.abc import Callable, Sequence
from os import PathLike
from pathlib import Path
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
    def capture_gains_pawn(self) -> bool:
        """Whether the mover has a capture or promotion that wins a pawn or more in the exchange it begins."""
    def may_castle(self, by: str, wing: str) -> bool:
        """Whether a side has the right to castle on a wing, "king" or "queen"."""

# PGN: tokens and places

@final
class Pgn:
    """A PGN text as read: tokens, games, places in columns. Offsets are string offsets.

    Reading frees the interpreter lock. An index out of range raises IndexError everywhere.
    """

    def __new__(cls, text: str) -> Pgn:
        """Reads a text; never fails, see `errors`."""
    @property
    def tokens(self) -> int:
        """How many tokens; together they cover the text."""
    def token(self, index: int) -> tuple[str, int, int]:
        """(kind, start, end)."""
    def token_at(self, offset: int) -> int:
        """The index of the token that holds an offset."""
    def errors(self) -> list[tuple[str, int, str]]:
        """(name, offset, message), by offset."""
    def games(self) -> list[tuple[int, list[tuple[str, str]], int, int, int | None]]:
        """(root place, tags, start, end, offset of the result)."""
    @property
    def places(self) -> int:
        """How many places: the start of each game and what each move leads to, in text order."""
    def parent(self, place: int) -> int | None: ...
    def next(self, place: int) -> int | None: ...
    def children(self, place: int) -> list[int]: ...
    def path(self, place: int) -> list[int]:
        """The places from the start of the game to this one, both included."""
    def game(self, place: int) -> int: ...
    def ply(self, place: int) -> int:
        """Half-moves from the start of the game."""
    def depth(self, place: int) -> int:
        """How many variations the place is inside of."""
    def key(self, place: int) -> int: ...
    def uci(self, place: int) -> str | None: ...
    def san(self, place: int) -> str | None: ...
    def board(self, place: int) -> Board: ...
    def written(self, place: int) -> tuple[int, int] | None:
        """(start, end) of the move as written."""
    def place_at(self, offset: int) -> int | None:
        """The last place whose move, or whose game, begins at or before an offset."""
    def move_token(self, place: int) -> int | None: ...
    def glyphs(self, place: int) -> list[tuple[str, int, int]]:
        """(kind, start, end) of "nag", "suffix" and "mark" tokens."""
    def comments_of(self, place: int) -> list[int]: ...
    @property
    def comments(self) -> int:
        """How many comments."""
    def comment(self, index: int) -> tuple[int, int, int, int, bool, bool]:
        """(place, anchor, start and end of the inner text, opening, whether its line ends it)."""
    def with_key(self, key: int) -> list[int]: ...
    def keys(self) -> list[int]: ...
    def leaves(self) -> list[int]: ...

def read_san(board: Board, text: str) -> tuple[str, str]:
    """(UCI, SAN) of a move as real files spell it; a null move is ("0000", "--").

    :raises MoveSyntaxError, IllegalMoveError, AmbiguousMoveError:
    """

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
    threads: int = 1,
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

def chances(centipawns: int) -> tuple[int, int, int]:
    """(win, draw, loss) in a hundred, of the side for which a number of centipawns is reckoned."""

def mate(
    fen: str, moves: int, *, nodes: int, stop: Stop | None = None
) -> tuple[bool | None, list[str], int]:
    """Whether the mover mates within `moves` of his moves, by trying every move.

    :returns: (True, the line in UCI, nodes), (False, [], nodes) when every move was tried, (None, [], nodes)
        when the nodes ran out.
    :raises FenError: when the text is no FEN of a legal position.
    """

# Other programs

def uci() -> None:
    """Speaks UCI on standard input and output until `quit` or the end of the input.

    :raises OSError: when they cannot be read or written.
    """

class MatchSettingError(ValueError):
    """A match cannot be played: a setting is wrong, or a program cannot be started or set up."""

@final
class MatchSummary:
    """What a match has come to, for the first program."""

    pairs: list[int]
    """Pairs of 0, 1/2, 1, 3/2 and 2 points."""
    games: list[int]
    """Lost, drawn and won."""
    elo: float | None
    """Infinite when all was won or lost; None without a pair."""
    elo_interval: tuple[float, float] | None
    """Of 95 %; None when pairs all ended alike."""
    ratio: tuple[float, float, float] | None
    """The test's log-likelihood ratio, and its bounds."""
    accepted: str | None
    """"lower" or "higher"; None when it is open, or there is no test."""
    endings: list[tuple[str, int]]
    failures: list[list[tuple[str, int]]]
    """Games lost by a failure, of the first program and of the other."""
    plies: int
    seconds: float
    report: str
    """All of it, in words."""

def play_match(words: Sequence[str], say: Callable[[str], object]) -> MatchSummary:
    """Plays a match as the words of a command line say; `say` is given a line now and then.

    :raises MatchSettingError: when it cannot be played.
    """

# Collections of games

class DamagedError(ValueError):
    """A file of a collection is not as it was written."""

class StoppedError(ValueError):
    """The work was stopped; what it wrote is of no use."""

def import_games(
    files: Sequence[tuple[int, str | PathLike[str] | None]],
    folder: str | PathLike[str],
    name: str,
    *,
    taken: Sequence[tuple[str | PathLike[str], dict[int, int]]] = (),
    seen: Sequence[str | PathLike[str]] = (),
    only: Sequence[int | None] = (),
    shared: Sequence[tuple[int, str | PathLike[str]]] = (),
    threads: int = 1,
    stop: Stop | None = None,
    tell: Callable[[int, int], object] | None = None,
) -> tuple[
    list[tuple[int, int, int, list[tuple[int, int, str]], int, int, int, int, str | None]],
    list[tuple[Path, int, dict[int, int], int, int]],
    list[tuple[int, Path, int]],
]:
    """Reads PGN files, packed or not, into new segments of a folder, whose names begin with `name`.

    taken: after the files, segments of other collections, each with the numbers that its sources have here.

    files: the number of the source, and the file, or None for standard input. seen: `seen.bin` of each segment that
    is there. only: the source of each of these, where all its games are of one. shared: the files of the third part of
    earlier answers. tell: called now and then with packed bytes read and games added.

    :returns: of each file (added, doubles, broken, (line, column, reason) of the first of these, empty, by other
        rules, from a set-up position, bytes, why it could not be read to its end); of each new segment (folder, games,
        games of each source, bits of its files' names, bytes); of each source a file of hashes of games that stand
        under another, and how many.
    :raises OSError: when the system refuses to write.
    :raises DamagedError, StoppedError:
    """

def rebuild_segment(
    segments: Sequence[str | PathLike[str]],
    folder: str | PathLike[str],
    *,
    without: int | None = None,
    shared: Sequence[tuple[int, str | PathLike[str]]] = (),
    threads: int = 1,
    stop: Stop | None = None,
) -> tuple[Path, int, dict[int, int], int, int]:
    """Writes one segment with the games of others; without those of a source that no other source holds.

    :returns: (folder, games, games of each source, bits, bytes); without a game there is no folder.
    :raises OSError, DamagedError, StoppedError:
    """

@final
class SegmentGames:
    """The games of a segment."""

    def __new__(cls, folder: str | PathLike[str]) -> SegmentGames:
        """:raises OSError, DamagedError:"""
    def game(self, number: int) -> tuple[list[str], str, int, int, int, int, list[str]]:
        """((Event, Site, Date, Round, White, Black), result, White's rating, Black's, year, source, moves in UCI).

        A rating or year that is not known is 0.

        :raises OSError, DamagedError:
        """
    def visits(
        self, key: int, numbers: Sequence[int]
    ) -> list[tuple[int, list[str], str | None, str, int, int, int, int]]:
        """Those of some games that reach a position within the plies that are kept, at the first time:
        (game, moves before, next move, result, White's rating, Black's, year, plies).

        :raises OSError, DamagedError:
        """

def invent_games(
    path: str | PathLike[str],
    games: int,
    *,
    seed: int = 1,
    first: int = 0,
    plies: int = 80,
    shared: bool = False,
    clocks: bool = False,
) -> None:
    """Writes invented games as PGN: random-legal, or of shared prefixes.

    :raises OSError:
    """
