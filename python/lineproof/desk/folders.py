"""Folders of this machine, as a window shows them to choose a lesson from: names only, and only of what may be one or lead to one."""

from __future__ import annotations

import os
from pathlib import Path

from lineproof.lesson.disk import unreadable
from lineproof.lesson.errors import NoSuchFileError
from lineproof.lesson.lesson import LINES, SETTINGS

from .wire import Entry, FolderShown

MOST = 500
"""Entries that are shown."""
PGN = ".pgn"


def folder_shown(path: str) -> FolderShown:
    """What a folder has; an empty path is the user's own folder.

    :raises LessonError: when it cannot be read.
    """
    try:
        folder = Path(os.path.realpath(named(path or "~")))
        found = [entry for each in folder.iterdir() if (entry := _entry(each)) is not None]
    except (OSError, ValueError) as error:
        raise unreadable(error, path) from error
    found.sort(key=lambda entry: (entry.kind == "folder", entry.name.casefold()))
    parent = None if folder.parent == folder else os.fspath(folder.parent)
    return FolderShown(
        path=os.fspath(folder), parent=parent, entries=found[:MOST], more=len(found) > MOST
    )


def named(path: str) -> Path:
    """The file or folder that a user names in a window, which is in no folder: from the root on, or from his own folder with ~.

    :raises NoSuchFileError: when it is named otherwise.
    """
    if "\0" in path:
        raise NoSuchFileError("no file can have such a name", path=path)
    if path == "~" or path.startswith(("~/", "~\\")):
        return Path.home() / path[2:]
    found = Path(path)
    if not found.is_absolute():
        raise NoSuchFileError(
            "the path is not whole",
            path=path,
            hint="begin it at the root, or with ~/ in your folder",
        )
    return found


def _entry(path: Path) -> Entry | None:
    """None for what is hidden, cannot be looked into, or is neither a folder nor a PGN file."""
    name = path.name
    if name.startswith(".") or not name.isprintable():
        return None
    try:
        if path.is_dir():
            is_lesson = (path / SETTINGS).is_file() or (path / LINES).is_file()
            return Entry(name=name, path=os.fspath(path), kind="lesson" if is_lesson else "folder")
        if path.suffix.lower() == PGN and path.is_file():
            return Entry(name=name, path=os.fspath(path), kind="file")
    except OSError:
        return None
    return None
