"""Games of students as they stand in a PGN file: who played, what was played, how it ended. Nothing of them is kept."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from lineproof._engine import Pgn
from lineproof.claims.claim import Spot
from lineproof.lesson.disk import read_file
from lineproof.lesson.source import Source

POINTS = {"1-0": 1.0, "1/2-1/2": 0.5, "0-1": 0.0}
"""White's."""


class FollowError(ValueError):
    """Games cannot be followed. The text says why and what to do."""


@dataclass(frozen=True)
class Played:
    """A game. line: where it begins in the file. white, black: names, "?" where none is given. ratings: of both, None where not known.

    points: White's, None when the result is not known. spot: its first position; moves: in UCI, up to the first that cannot be read.
    broken: why the rest is not read; "" for a whole game.
    """

    line: int
    white: str
    black: str
    white_rating: int | None
    black_rating: int | None
    points: float | None
    spot: Spot
    moves: tuple[str, ...]
    broken: str

    def name(self, side: str) -> str:
        return self.white if side == "white" else self.black

    def rating(self, side: str) -> int | None:
        return self.white_rating if side == "white" else self.black_rating

    def scored(self, side: str) -> float | None:
        """The points of a side."""
        if self.points is None:
            return None
        return self.points if side == "white" else 1 - self.points


def played(file: Path) -> list[Played]:
    """The games of a PGN file, those without moves left out.

    :raises LessonError: when the file cannot be read, or is no text.
    :raises FollowError: when it holds no game with moves.
    """
    return played_in(Source.decode(read_file(file, str(file)), str(file)))


def played_in(source: Source) -> list[Played]:
    """The games of a text of PGN, those without moves left out.

    :raises FollowError: when it holds no game with moves.
    """
    pgn = Pgn(source.text)
    mistakes = sorted((offset, message) for _, offset, message in pgn.errors())
    found = []
    for root, tags, start, end, _ in pgn.games():
        tag = dict(reversed(tags))
        moves: list[str] = []
        at = pgn.next(root)
        while at is not None:
            uci = pgn.uci(at)
            if uci is None or uci == "0000":
                break
            moves.append(uci)
            at = pgn.next(at)
        if not moves:
            continue
        broken = next((message for offset, message in mistakes if start <= offset < end), "")
        board = pgn.board(root)
        found.append(
            Played(
                source.locate(start)[0], tag.get("White", "?"), tag.get("Black", "?"), _rating(tag.get("WhiteElo")), _rating(tag.get("BlackElo")),
                POINTS.get(tag.get("Result", "*")), Spot(board.fen, (), board), tuple(moves), broken,
            )
        )  # fmt: skip
    if not found:
        raise FollowError(f"{source.name}: it holds no game with moves; give a PGN file of games")
    return found


def _rating(text: str | None) -> int | None:
    return int(text) if text and text.isdecimal() and 100 <= int(text) <= 3999 else None


def of_player(games: list[Played], name: str) -> list[tuple[Played, str]]:
    """The games of one player, each with his side. name: the whole name or a part, in letters of any size.

    :raises FollowError: when nobody, or more than one player, has such a name.
    """
    wanted = name.casefold().strip()
    names = {n for game in games for n in (game.white, game.black) if n != "?"}
    exact = {n for n in names if n.casefold() == wanted}
    found = exact or {n for n in names if wanted and wanted in n.casefold()}
    if not found:
        some = ", ".join(sorted(names)[:8])
        raise FollowError(
            f"nobody in these games is called {name!r}; there are: {some or 'no names at all'}"
        )
    if len(found) > 1:
        raise FollowError(
            f"{name!r} may be several players: {', '.join(sorted(found)[:8])}; write the whole name"
        )
    (one,) = found
    return [(game, side) for game in games for side in ("white", "black") if game.name(side) == one]
