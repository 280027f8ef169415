"""Saving: the file is always the old or the new one, whole; the old one goes to the history first.

>>> from lineproof.lesson import Lesson, edit
>>> lesson = Lesson.open("vienna")  # doctest: +SKIP
>>> lesson, place = edit.add_move(lesson.places[1], "e5")  # doctest: +SKIP
>>> lesson = save(lesson)  # doctest: +SKIP
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import secrets
import stat
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from glob import escape
from pathlib import Path

from lineproof.lesson.disk import read_file, reason
from lineproof.lesson.errors import ChangedOnDiskError, LessonError, NoSuchFileError, SaveError
from lineproof.lesson.lesson import Lesson
from lineproof.lesson.lock import WriterLock

HISTORY = "history"
TEMPORARY = ".saving"
"""Last part of the name of a file that is being written."""
STAMP = "%Y%m%dT%H%M%S%fZ"
KEPT = re.compile(r"-(\d{8}T\d{12}Z)-([0-9a-f]{16})")


@dataclass(frozen=True)
class Version:
    """An earlier text of a lesson."""

    path: Path
    saved: datetime
    """When it went to the history: when a newer text replaced it."""
    digest: str
    """First 16 digits of the SHA-256 of its bytes."""


def save(lesson: Lesson) -> Lesson:
    """Writes a lesson to its file; the text that it replaces goes to the history before.

    :returns: the lesson as it is on the disk now.
    :raises ChangedOnDiskError: when the file is not as it was read; nothing is written.
    :raises LockedError: when another process is writing the lesson.
    :raises EncodingError: when the file's encoding lacks a character.
    :raises SaveError: when the disk refuses; the old file is whole and no other is left behind.
    """
    if lesson.path is None or lesson.home is None:
        raise SaveError("the lesson is in no file", path=lesson.name, hint="save it as a file")
    data = lesson.source.encode()
    file = Path(os.path.realpath(lesson.path))
    with WriterLock(lesson):
        history = lesson.home / HISTORY
        replace_file(file, data, name=lesson.name, expected=lesson.disk, history=history)
    return Lesson(lesson.source, lesson.settings, path=lesson.path, folder=lesson.folder, disk=data)


def save_as(lesson: Lesson, path: str | os.PathLike[str]) -> Lesson:
    """Writes a lesson to a new PGN file.

    :returns: the lesson in that file, a bare one.
    :raises ChangedOnDiskError: when a file of that name exists; it stays as it is.
    :raises SaveError: when the disk refuses.
    """
    name = os.fspath(path)
    source = replace(lesson.source, name=name)
    data = source.encode()
    replace_file(Path(path), data, name=name)
    return Lesson(source, lesson.settings, path=Path(path), disk=data)


def versions(lesson: Lesson, name: str | None = None) -> tuple[Version, ...]:
    """The earlier texts of a lesson's lines (or of another file of its folder), oldest first."""
    if lesson.home is None or lesson.path is None:
        return ()
    file = lesson.path if name is None else lesson.path.with_name(name)
    return _kept(lesson.home / HISTORY, Path(os.path.realpath(file)))


def _kept(history: Path, file: Path) -> tuple[Version, ...]:
    """The kept texts of a file, by the name that links lead to; oldest first."""
    found = []
    for path in history.glob(f"{escape(file.stem)}-*{escape(file.suffix)}"):
        matched = KEPT.fullmatch(path.stem[len(file.stem) :])
        if matched:
            with contextlib.suppress(ValueError):  # no such day: a file of another origin
                saved = datetime.strptime(matched[1], STAMP).replace(tzinfo=UTC)
                found.append(Version(path, saved, matched[2]))
    return tuple(sorted(found, key=lambda version: (version.saved, version.digest)))


def replace_file(
    file: Path,
    data: bytes,
    *,
    name: str,
    expected: bytes | None = None,
    history: Path | None = None,
) -> None:
    """Replaces a file as one step, and keeps its permissions.

    :param expected: what the file must hold; None for a file that must not exist.
    :param history: where the old bytes are kept first.
    :raises ChangedOnDiskError, SaveError:
    :raises UnreadableError: when something else than a readable file has that name.
    """
    try:
        _expect(file, expected, name)
        if data == expected:
            return
        if history is not None and expected is not None:
            _keep(history, file, expected)
        _clean(file.parent, re.escape(file.name))
        _write(file, data, check=lambda: _expect(file, expected, name))
    except (OSError, ValueError) as error:
        if isinstance(error, LessonError):
            raise
        whole = "" if expected is None else "; the old one is whole"
        raise SaveError(
            f"the file could not be saved ({reason(error)}){whole}",
            path=name,
            hint="make room, or make the folder writable, and save again",
        ) from error


def _expect(file: Path, expected: bytes | None, name: str) -> None:
    try:
        now = read_file(file, name)
    except NoSuchFileError:
        now = None
    if now == expected:
        return
    if now is None:
        raise ChangedOnDiskError("the file was deleted since it was read", path=name)
    if expected is None:
        raise ChangedOnDiskError("a file of that name has come about", path=name)
    raise ChangedOnDiskError("the file was changed since it was read", path=name)


def _keep(history: Path, file: Path, data: bytes) -> None:
    """Puts a text into the history, unless the newest there is the same one."""
    digest = hashlib.sha256(data).hexdigest()[:16]
    history.mkdir(parents=True, exist_ok=True)
    now = datetime.now(UTC)
    kept = _kept(history, file)
    if kept:
        if kept[-1].digest == digest:
            return
        # The order is that of the saves, even where the clock was set back.
        now = max(now, kept[-1].saved + timedelta(microseconds=1))
    name = f"{file.stem}-{now.strftime(STAMP)}-{digest}{file.suffix}"
    of_file = f"{re.escape(file.stem)}{KEPT.pattern}{re.escape(file.suffix)}"
    _clean(history, of_file)
    _write(history / name, data)


def _clean(folder: Path, name: str) -> None:
    """Removes what a killed process left half written of the files whose names match a pattern.

    Only the holder of their lock comes here; other files of the folder may be in the making.
    """
    temporary = re.compile(rf"\.(?:{name})\.[0-9a-f]{{16}}{re.escape(TEMPORARY)}")
    for left in folder.iterdir():
        if temporary.fullmatch(left.name):
            left.unlink(missing_ok=True)


def _write(file: Path, data: bytes, check: Callable[[], None] | None = None) -> None:
    temporary = file.with_name(f".{file.name}.{secrets.token_hex(8)}{TEMPORARY}")
    try:
        handle = os.open(temporary, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
        try:
            rest = memoryview(data)
            while rest:
                rest = rest[os.write(handle, rest) :]
            _permit(temporary, file)
            os.fsync(handle)
        finally:
            os.close(handle)
        if check is not None:
            check()
        temporary.replace(file)
    except BaseException:
        with contextlib.suppress(OSError):
            temporary.unlink(missing_ok=True)
        raise
    _sync_folder(file.parent)


def _permit(temporary: Path, file: Path) -> None:
    """Gives a file the permissions, and where allowed the owner, of the one it replaces."""
    with contextlib.suppress(FileNotFoundError):
        old, new = file.stat(), temporary.stat()
        if (old.st_uid, old.st_gid) != (new.st_uid, new.st_gid):
            with contextlib.suppress(OSError):
                os.chown(temporary, old.st_uid, old.st_gid)
        temporary.chmod(stat.S_IMODE(old.st_mode))


def _sync_folder(folder: Path) -> None:
    if os.name == "nt":  # folders cannot be opened there
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
