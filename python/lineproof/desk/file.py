"""The file of an open lesson: written whole, and watched for what other programs write into it."""

from __future__ import annotations

import os
import time
from pathlib import Path

from lineproof.lesson import Lesson, Settings
from lineproof.lesson.disk import read_file
from lineproof.lesson.errors import LessonError
from lineproof.lesson.folder import read_settings
from lineproof.lesson.lesson import SETTINGS
from lineproof.lesson.save import HISTORY, replace_file
from lineproof.lesson.source import Source

KEEP = 600
"""Seconds of work after which a save puts the text that it replaces into the history once more; between, the steps have it all."""

Seen = tuple[int, int, int]


class LessonFile:
    """lines.pgn, or the bare PGN file. The holder of the lesson's lock is the only one of ours to write it."""

    def __init__(self, lesson: Lesson) -> None:
        if lesson.path is None or lesson.home is None or lesson.disk is None:
            raise AssertionError("a lesson in no file cannot be open")
        self._name = lesson.name
        self._file = Path(os.path.realpath(lesson.path))
        self._history = lesson.home / HISTORY
        self._disk = lesson.disk
        self._stamp = _stamp(self._file)
        self._settings = None if lesson.folder is None else lesson.folder / SETTINGS
        self._settings_stamp = _stamp(self._settings)
        self._kept: float | None = None
        self.unreadable: LessonError | None = None
        """Why what another program has put into the file cannot be read; it is left alone as long as that is so."""

    def write(self, lesson: Lesson) -> None:
        """Puts a lesson into the file, as one step; the text before it goes to the history, from time to time.

        :raises ChangedOnDiskError: when another program has written it.
        :raises SaveError: when the disk refuses; the old file is whole.
        :raises EncodingError: when the file's encoding lacks a character.
        """
        data = lesson.source.encode()
        if data == self._disk:
            return
        now = time.monotonic()
        keeps = self._kept is None or now - self._kept > KEEP
        history = self._history if keeps else None
        replace_file(self._file, data, name=self._name, expected=self._disk, history=history)
        if keeps:
            self._kept = now
        self.seen(data)

    def changed(self, lesson: Lesson) -> tuple[Lesson, bytes] | None:
        """What another program has put into the file, or None; where it cannot be read, `unreadable` says why. Each change is told of once."""
        stamp = _stamp(self._file)
        if stamp == self._stamp:
            return None
        self._stamp = stamp
        try:
            data = read_file(self._file, self._name)
            self.unreadable = None
            if data == self._disk:
                return None
            source = Source.decode(data, self._name)
            theirs = Lesson(
                source, lesson.settings, path=lesson.path, folder=lesson.folder, disk=data
            )
        except LessonError as error:
            self.unreadable = error
            return None
        return theirs, data

    def changed_settings(self, lesson: Lesson) -> Settings | None:
        """What another program has put into lesson.toml, or None; one that cannot be read counts as not changed."""
        if self._settings is None:
            return None
        stamp = _stamp(self._settings)
        if stamp == self._settings_stamp:
            return None
        self._settings_stamp = stamp
        try:
            found = read_settings(self._settings, name=os.fspath(self._settings))
        except LessonError:
            return None
        return None if found == lesson.settings else found

    def seen(self, data: bytes, *, keep_it: bool = False) -> None:
        """The file is known to hold this. keep_it: it goes to the history when it is replaced."""
        self._disk = data
        self._stamp = _stamp(self._file)
        if keep_it:
            self._kept = None

    def settings_seen(self) -> None:
        """lesson.toml was written by ourselves."""
        self._settings_stamp = _stamp(self._settings)


def _stamp(file: Path | None) -> Seen | None:
    """What differs when a file has been written; None where there is none."""
    try:
        found = None if file is None else file.stat()
    except OSError:
        return None
    return None if found is None else (found.st_mtime_ns, found.st_size, found.st_ino)
