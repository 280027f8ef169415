"""A named collection: add files to it, ask it about positions."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, TypeVar

from lineproof._engine import Board, DamagedError, Stop
from lineproof.collection import adding
from lineproof.collection import manifest as manifests
from lineproof.collection.adding import STANDARD_INPUT, Added, Progress
from lineproof.collection.asked import Asked, asked
from lineproof.collection.counting import figures_of
from lineproof.collection.errors import (
    BrokenCollectionError,
    CollectionError,
    NoSuchCollectionError,
)
from lineproof.collection.figures import Audience, Figures, Order
from lineproof.collection.manifest import Manifest, Source
from lineproof.collection.model_games import ModelGame, best
from lineproof.collection.passing import Passing, passing
from lineproof.collection.segments import Segments, Visit
from lineproof.lesson.where import where

if TYPE_CHECKING:
    from lineproof.collection.reach import Reach
    from lineproof.lesson import Lesson

DEFAULT = "games"
"""The collection that is meant when none is named."""
PLIES = 40
"""Positions are kept so far into each game."""
MODELS = 4
"""Model games that are given, unless more are wanted."""
_NAME = re.compile(r"[\w][\w .-]{0,59}")
_T = TypeVar("_T")


class Collection:
    """Games of one name, in a folder. Answers are of the state in which it was when asked."""

    def __init__(self, name: str, folder: Path) -> None:
        self.name = name
        self.folder = folder
        self._opened: tuple[Manifest, Segments] | None = None

    @staticmethod
    def open(name: str = DEFAULT, folder: str | os.PathLike[str] | None = None) -> Collection:
        """A collection by name; it need not exist yet. folder: of all collections, by default the user's.

        :raises CollectionError: when no collection can have such a name.
        """
        if not _NAME.fullmatch(name) or name.endswith((".", " ")):
            raise CollectionError(
                f"{name!r} is no name for a collection; use up to 60 letters, digits, dashes and blanks"
            )
        base = where()["collections"] if folder is None else Path(folder)
        return Collection(name, base / name)

    def __enter__(self) -> Collection:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def close(self) -> None:
        """Lets go of its files."""
        if self._opened is not None:
            self._opened[1].close()
            self._opened = None

    # changing it

    def add(
        self,
        files: Iterable[str | os.PathLike[str] | None],
        *,
        source: str | None = None,
        threads: int | None = None,
        stop: Stop | None = None,
        progress: Progress | None = None,
    ) -> Added:
        """Adds the games of PGN files, packed by gzip, bzip2, zstd or not at all; None is standard input.

        All games are added or, when it fails or is stopped, none. A game that is there already counts once. source: the
        name under which the games are listed and forgotten, by default the path of each file. threads: by default one
        for each core.

        :raises CollectionLockedError: when another process is writing the collection.
        :raises OSError: when the system refuses.
        :raises StoppedError: when `stop` was set.
        """
        paths = [None if file is None else Path(file) for file in files]
        names = [source or _source(path) for path in paths]
        return adding.add(self.folder, paths, names, threads=threads, stop=stop, progress=progress)

    def join(
        self,
        folders: Iterable[str | os.PathLike[str]],
        *,
        threads: int | None = None,
        stop: Stop | None = None,
        progress: Progress | None = None,
    ) -> Added:
        """Takes in the games of collections that were built apart, by their folders, which stay as they are.

        All games are taken in or, when it fails or is stopped, none. What is there already counts once; sources of the
        same name become one, and are forgotten as before.

        :raises CollectionError: when a folder is no collection, or is this one.
        :raises CollectionLockedError, OSError, StoppedError: as `add`.
        :raises BrokenCollectionError: when a file is damaged.
        """
        from lineproof.collection.joining import join

        paths = [Path(folder) for folder in folders]
        return join(self.folder, paths, threads=threads, stop=stop, progress=progress)

    def forget(self, source: str, *, stop: Stop | None = None) -> int:
        """Takes away the games that only a source holds, by its name or path; gives how many.

        :raises NoSuchSourceError:
        """
        manifest = self._manifest()
        path = _source(Path(source))
        name = path if manifest.source(source) is None and manifest.source(path) else source
        return adding.forget(self.folder, name, stop=stop)

    # asking it

    @property
    def exists(self) -> bool:
        return manifests.read(self.folder) is not None

    @property
    def games(self) -> int:
        return self._manifest().games

    @property
    def bytes(self) -> int:
        """On disk."""
        return self._manifest().bytes

    @property
    def state(self) -> str:
        """Changes whenever its games do."""
        manifest = self._manifest()
        return f"{manifest.serial}: {manifest.games}"

    def sources(self) -> tuple[Source, ...]:
        """Where its games came from, in the order in which that was added."""
        return self._manifest().sources

    def games_of(self, source: Source) -> int:
        """Games that stand under a source; a game that several hold stands under the first."""
        return self._manifest().games_of(source.number)

    def look(
        self, position: str | Board | Asked, *, audience: int | Audience | None = None
    ) -> Figures:
        """What its games say of a position: moves from the initial one, a FEN, or a board.

        audience: a rating; only games whose players are both within 200 points of it count. Or ratings from and below,
        multiples of 50.

        :raises NotAPositionError:
        :raises NoSuchCollectionError:
        :raises BrokenCollectionError:
        """
        board = _board(position)
        band = Audience.of(audience) if isinstance(audience, int) else audience
        return self._ask(lambda segments: figures_of(segments, board, band))

    def orders(self, position: str | Board | Asked) -> tuple[Order, ...]:
        """The move orders that lead to a position, the most played first; of a position of many games the 32 most
        played of each segment.

        :raises NotAPositionError, NoSuchCollectionError, BrokenCollectionError:
        """
        board = _board(position)

        def ask(segments: Segments) -> tuple[Order, ...]:
            counts: dict[tuple[str, ...], int] = {}
            found = [*segments.examples(board.key)[1], *((v, 1) for v in segments.rare(board.key))]
            for visit, games in found:
                counts[visit.before] = counts.get(visit.before, 0) + games
            ranked = sorted(counts.items(), key=lambda item: (-item[1], item[0]))
            return tuple(Order(tuple(Board().san_line(moves)), games) for moves, games in ranked)

        return self._ask(ask)

    def model_games(
        self,
        position: str | Board | Asked,
        *,
        above: int | None = None,
        most: int = MODELS,
    ) -> tuple[ModelGame, ...]:
        """Decisive games through a position: of the strongest players, and the shortest.

        Given as moves, the games are those that follow the moves the longest, at least to the last position that is
        kept of each game. above: both players are rated at least so.

        :raises NotAPositionError, NoSuchCollectionError, BrokenCollectionError:
        """
        boards = position.boards if isinstance(position, Asked) else (_board(position),)
        if isinstance(position, str):
            boards = asked(position).boards

        def ask(segments: Segments) -> tuple[ModelGame, ...]:
            for board in reversed(boards):
                visits = [*segments.examples(board.key)[0], *segments.rare(board.key)]
                chosen = best(visits, above, most)
                if chosen:
                    return tuple(self._model(segments, visit) for visit in chosen)
            return ()

        return self._ask(ask)

    def passing(self, position: str | Board | Asked, *, most: int) -> tuple[Passing, ...]:
        """The games through a position and how each went on, about `most` of them where there are more.

        :raises NotAPositionError, NoSuchCollectionError, BrokenCollectionError:
        """
        board = _board(position)
        return self._ask(lambda segments: passing(segments, board, most))

    def reach(self, lesson: Lesson, *, audience: int | None = None) -> Reach:
        """The share of the audience's games that reach each position of a lesson; see `reach.Reach`.

        audience: by default the lesson's.
        :raises CollectionError: when the lesson does not say which side is taught.
        """
        from lineproof.collection.reach import reach

        return reach(self, lesson, audience)

    def _model(self, segments: Segments, visit: Visit) -> ModelGame:
        names, result, white, black, year, source, moves = segments.games(visit.segment).game(
            visit.game
        )
        san = Board().san_line(moves)
        at = len(visit.before)
        known = {one.number: one.name for one in self._manifest().sources}
        event, site, date, round_, player, opponent = names
        return ModelGame(
            event=event,
            site=site,
            date=date,
            round=round_,
            white=player,
            black=opponent,
            result=result,
            white_rating=white or None,
            black_rating=black or None,
            year=year or None,
            source=known.get(source, ""),
            before=tuple(san[:at]),
            after=tuple(san[at:]),
        )

    def _manifest(self) -> Manifest:
        manifest = manifests.read(self.folder)
        if manifest is None:
            raise NoSuchCollectionError(
                f"there is no collection {self.name}; make it with"
                f" `lineproof collect add FILE --collection {self.name}`"
            )
        return manifest

    def _ask(self, question: Callable[[Segments], _T]) -> _T:
        """Asks the state at hand. Where a writer has just taken its files away, the next state is asked."""
        failure: Exception | None = None
        for _ in range(5):
            manifest = self._manifest()
            if self._opened is None or self._opened[0] != manifest:
                self.close()
                segments = Segments(self.folder / manifests.SEGMENTS, manifest.segments)
                self._opened = (manifest, segments)
            try:
                return question(self._opened[1])
            except DamagedError as error:
                raise BrokenCollectionError(
                    f"{error}; forget the source that its games are from, and add it again"
                ) from error
            except Exception as error:
                if not _is_gone(error):
                    raise
                failure = error
                self.close()
        raise BrokenCollectionError(
            f"{self.folder}: a file of the collection is missing or damaged ({failure});"
            " forget the source that its games are from, and add it again"
        ) from failure


def _is_gone(error: Exception) -> bool:
    """Whether a file could not be read, as DuckDB or the system says it. DuckDB has no one error for a damaged file."""
    import duckdb

    return isinstance(error, OSError | duckdb.Error)


def _source(path: Path | None) -> str:
    return STANDARD_INPUT if path is None else os.path.abspath(path)  # noqa: PTH100 - a link keeps its name


def _board(position: str | Board | Asked) -> Board:
    if isinstance(position, Board):
        return position
    return (asked(position) if isinstance(position, str) else position).board


def collections(folder: str | os.PathLike[str] | None = None) -> Sequence[Collection]:
    """Every collection there is, by name."""
    base = where()["collections"] if folder is None else Path(folder)
    if not base.is_dir():
        return []
    found = (Collection(path.name, path) for path in sorted(base.iterdir()) if path.is_dir())
    return [one for one in found if one.exists]
