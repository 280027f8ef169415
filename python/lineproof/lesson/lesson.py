"""A lesson: lines and the words spoken about them.

>>> lesson = Lesson.from_text("1. e4 e5 2. Nc3 {the Vienna} *")
>>> [place.label for place in lesson.places]
['start', '1. e4', '1... e5', '2. Nc3']
>>> lesson.places[3].comments[0].text
'the Vienna'
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from functools import cached_property, lru_cache
from pathlib import Path

from lineproof._engine import Pgn
from lineproof.lesson.disk import is_folder, is_there, read_file
from lineproof.lesson.errors import (
    PGN_ERRORS,
    EncodingError,
    LessonError,
    MissingLinesError,
    NotALessonError,
    NotAMoveError,
    NotPgnError,
)
from lineproof.lesson.places import Comments, Game, Place, Places
from lineproof.lesson.settings import Settings, Side, overridden
from lineproof.lesson.source import Source

LINES = "lines.pgn"
SETTINGS = "lesson.toml"
HOME = ".lineproof"
BOARDS_KEPT = 4096


class Lesson:
    """A lesson as read; it never changes. Edits (`lineproof.lesson.edit`) make new lessons."""

    def __init__(
        self,
        source: Source,
        settings: Settings,
        *,
        path: Path | None = None,
        folder: Path | None = None,
        disk: bytes | None = None,
    ) -> None:
        """Reads the source.

        :param disk: what the file held when it was read; saving refuses where it differs now.
        :raises PgnError, NotPgnError: at the first mistake; the others are its ``more``.
        """
        self.source = source
        self.settings = settings
        self.path = path
        """The PGN file; None for a lesson that is in no file."""
        self.folder = folder
        """The lesson folder; None for a bare PGN."""
        self.disk = disk
        try:
            self.pgn = Pgn(source.text)
        except UnicodeEncodeError as error:  # half of a surrogate pair
            raise EncodingError("the text is no Unicode text", path=source.name) from error
        """The engine's columns."""
        self._refuse_mistakes()
        self.board = lru_cache(BOARDS_KEPT)(self.pgn.board)
        """The board of a place by its index."""

    @staticmethod
    def open(
        path: str | os.PathLike[str],
        *,
        side: Side | None = None,
        audience: int | None = None,
    ) -> Lesson:
        """Opens a lesson folder or a bare PGN file; `side` and `audience` go before its settings.

        :raises SettingsError: for a wrong side or audience, or a wrong lesson.toml.
        :raises LessonError: one of `lineproof.lesson.errors`.
        """
        given = Path(path)
        name = os.fspath(path)
        folder = given if is_folder(given, name) else None
        if folder is None:
            settings = Settings(title=given.stem)
            file = given
        else:
            file = folder / LINES
            name = os.path.join(name, LINES)  # noqa: PTH118 - the name stays as it was given
            settings = _folder_settings(folder, os.fspath(path))
        settings = overridden(settings, side=side, audience=audience, path=os.fspath(path))
        data = read_file(file, name)
        return Lesson(Source.decode(data, name), settings, path=file, folder=folder, disk=data)

    @staticmethod
    def from_text(
        text: str,
        *,
        name: str = "lesson.pgn",
        side: Side | None = None,
        audience: int | None = None,
    ) -> Lesson:
        """A lesson that is in no file.

        :raises SettingsError: for a wrong side or audience.
        :raises PgnError, NotPgnError, NulByteError: for a wrong text.
        :raises EncodingError: for half of a surrogate pair.
        """
        settings = Settings(title=Path(name).stem)
        settings = overridden(settings, side=side, audience=audience, path=name)
        return Lesson(Source(text, name).checked(), settings)

    def with_text(self, text: str) -> Lesson:
        """The same lesson with another text, read anew.

        :raises PgnError, NotPgnError:
        """
        return Lesson(
            self.source.with_text(text).checked(),
            self.settings,
            path=self.path,
            folder=self.folder,
            disk=self.disk,
        )

    def as_utf8(self) -> Lesson:
        """The same lesson, to be saved as UTF-8."""
        return Lesson(
            self.source.as_utf8(),
            self.settings,
            path=self.path,
            folder=self.folder,
            disk=self.disk,
        )

    def with_settings(self, settings: Settings) -> Lesson:
        """The same lesson with other settings."""
        return Lesson(self.source, settings, path=self.path, folder=self.folder, disk=self.disk)

    def __reduce__(self) -> tuple[object, ...]:
        return (_again, (self.source, self.settings, self.path, self.folder, self.disk))

    def __repr__(self) -> str:
        return f"<Lesson {self.name}: {len(self.places)} places>"

    @property
    def name(self) -> str:
        """The PGN's path as it was given, for messages."""
        return self.source.name

    @property
    def home(self) -> Path | None:
        """Where its history and cache live; None for a lesson that is in no file."""
        if self.folder is not None:
            return self.folder / HOME
        if self.path is None:
            return None
        from lineproof.lesson.where import bare_home

        return bare_home(self.path)

    @property
    def text(self) -> str:
        """The PGN text without its byte order mark, line ends as in the file."""
        return self.source.text

    @cached_property
    def games(self) -> tuple[Game, ...]:
        """The games of the file, in text order."""
        pgn = self.pgn
        found = []
        for index, (root, tags, start, end, result) in enumerate(pgn.games()):
            marker = None
            if result is not None:
                _, from_, to = pgn.token(pgn.token_at(result))
                marker = self.text[from_:to]
            found.append(
                Game(index, tuple(tags), pgn.board(root), Place(self, root), (start, end), marker)
            )
        return tuple(found)

    @property
    def places(self) -> Places:
        """Every place, in text order."""
        return Places(self)

    @property
    def comments(self) -> Comments:
        """Every comment, in text order."""
        return Comments(self)

    @property
    def positions(self) -> Mapping[int, tuple[Place, ...]]:
        """The places of each position by its key: several where lines of any game transpose."""
        return Positions(self)

    def lines(self) -> tuple[Place, ...]:
        """The last place of every line, in text order."""
        return tuple(Place(self, index) for index in self.pgn.leaves())

    def place_at(self, offset: int) -> Place | None:
        """The last place whose move, or whose game, begins at or before an offset of `text`.

        :raises OutsideTextError: for an offset below 0 or above the length of the text.
        """
        self.source.refuse_outside(offset)
        index = self.pgn.place_at(offset)
        return None if index is None else Place(self, index)

    def locate(self, offset: int) -> tuple[int, int]:
        """(line, column), both from 1, of an offset of `text`.

        :raises OutsideTextError: for an offset below 0 or above the length of the text.
        """
        return self.source.locate(offset)

    def _refuse_mistakes(self) -> None:
        mistakes = self.pgn.errors()
        if not mistakes:
            return
        if self.pgn.places == len(self.pgn.games()) and mistakes[0][0] == "not a move":
            tagged = any(tags for _, tags, *_ in self.pgn.games())
            if not tagged:
                raise NotPgnError("this is not PGN: it holds no game", path=self.name)
        errors: list[LessonError] = []
        for kind, offset, message in mistakes:
            line, column = self.locate(offset)
            known = PGN_ERRORS.get(kind, NotAMoveError)
            errors.append(known(message, path=self.name, line=line, column=column))
        errors[0].more = tuple(errors[1:])
        raise errors[0]


class Positions(Mapping[int, tuple[Place, ...]]):
    """The places of each position by its key."""

    def __init__(self, lesson: Lesson) -> None:
        self._lesson = lesson

    @cached_property
    def _keys(self) -> list[int]:
        return self._lesson.pgn.keys()

    def __getitem__(self, key: int) -> tuple[Place, ...]:
        found = self._lesson.pgn.with_key(key)
        if not found:
            raise KeyError(key)
        return tuple(Place(self._lesson, index) for index in found)

    def __iter__(self) -> Iterator[int]:
        return iter(self._keys)

    def __len__(self) -> int:
        return len(self._keys)


def _again(
    source: Source,
    settings: Settings,
    path: Path | None,
    folder: Path | None,
    disk: bytes | None,
) -> Lesson:
    return Lesson(source, settings, path=path, folder=folder, disk=disk)


def _folder_settings(folder: Path, name: str) -> Settings:
    has_settings = is_there(folder / SETTINGS, name)
    if not is_there(folder / LINES, name):
        if has_settings:
            raise MissingLinesError(f"the lesson has no {LINES}", path=name)
        raise NotALessonError("this folder is no lesson", path=name)
    if not has_settings:
        return Settings(title=folder.resolve().name)
    from lineproof.lesson.folder import read_settings

    return read_settings(folder / SETTINGS, name=os.path.join(name, SETTINGS))  # noqa: PTH118
