"""The lesson folder: lesson.toml, read strictly, written with the author's comments kept."""

from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Callable, Mapping, MutableMapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from lineproof.lesson.errors import (
    FolderNotEmptyError,
    NoSuchFileError,
    SettingsError,
    UnreadableError,
    VersionError,
)
from lineproof.lesson.lesson import HOME, LINES, SETTINGS, Lesson
from lineproof.lesson.save import replace_file
from lineproof.lesson.settings import (
    AUDIENCE,
    AUDIENCES,
    WORDS_A_MINUTE,
    WORDS_A_MINUTE_RANGE,
    Settings,
    Side,
)

FORMAT = 1
"""The folder format that this version writes."""
MIGRATIONS: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {}
"""From an older format to the next one."""

KEYS = ("format", "title", "side", "audience", "words_a_minute", "decisions")
EMPTY = """[Event "{title}"]
[Result "*"]

*
"""
"""The lines of a new lesson."""
AT_LINE = re.compile(r" \(at line (\d+), column (\d+)\)$")
AT_END = " (at end of document)"


def read_settings(file: Path, *, name: str | None = None) -> Settings:
    """Reads and checks a lesson.toml.

    :raises SettingsError: with the line and column of what is wrong.
    :raises VersionError: when the format is not known.
    """
    path = os.fspath(file) if name is None else name
    try:
        text = file.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise SettingsError(
            "the file is not UTF-8", path=path, line=1, column=1, hint="save it as UTF-8"
        ) from error
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise UnreadableError(f"the file cannot be read ({reason})", path=path) from error
    return parse_settings(text, path=path, title=file.resolve().parent.name)


def parse_settings(text: str, *, path: str, title: str) -> Settings:
    """Checks the text of a lesson.toml; `title` stands where it has none.

    :raises SettingsError, VersionError:
    """
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _broken(str(error), text, path) from error

    def wrong(key: str, message: str, hint: str) -> SettingsError:
        line, column = _place_of(key, text)
        return SettingsError(message, path=path, line=line, column=column, hint=hint)

    values = _current(values, text, path)
    for key in values:
        if key not in KEYS:
            raise wrong(key, f"{key} is no setting", f"the settings are {', '.join(KEYS)}")
    title = values.get("title", title)
    if not isinstance(title, str) or not title.strip():
        raise wrong("title", "title is no text", 'write title = "..."')
    side = values.get("side")
    if side not in (None, "white", "black"):
        raise wrong("side", f"side is {side!r}", 'write side = "white" or side = "black"')
    audience = values.get("audience", AUDIENCE)
    if not _within(audience, AUDIENCES):
        low, high = AUDIENCES
        raise wrong("audience", f"audience is {audience!r}", f"write a rating from {low} to {high}")
    speed = values.get("words_a_minute", WORDS_A_MINUTE)
    if not _within(speed, WORDS_A_MINUTE_RANGE):
        low, high = WORDS_A_MINUTE_RANGE
        raise wrong(
            "words_a_minute",
            f"words_a_minute is {speed!r}",
            f"write a number from {low} to {high}",
        )
    decisions = values.get("decisions", {})
    if not isinstance(decisions, dict):
        raise wrong("decisions", "decisions is no table", "write [decisions] on a line of its own")
    return Settings(title, side, audience, speed, decisions)


def new(
    folder: str | os.PathLike[str],
    from_file: str | os.PathLike[str] | None = None,
    side: Side | None = None,
    audience: int | None = None,
) -> Lesson:
    """Makes a lesson folder, its lines copied byte for byte from a PGN file or empty.

    :raises FolderNotEmptyError: when the folder holds anything, or is a file.
    :raises LessonError: when `from_file` is no lesson.
    """
    base = Path(folder)
    name = os.fspath(folder)
    if base.exists() and (not base.is_dir() or any(base.iterdir())):
        raise FolderNotEmptyError("something is there already", path=name)
    source = None if from_file is None else _source(from_file)
    title = (source and _event(source)) or base.resolve().name
    settings = Settings(title=title, side=side)
    if audience is not None:
        settings = replace(settings, audience=audience)
    parse_settings(_spelled("", settings), path=name, title=title)  # refuses a wrong side or rating
    if source is None:
        lines = EMPTY.format(title=title.replace("\\", "\\\\").replace('"', '\\"')).encode()
    else:
        lines = source.disk or b""
    for inner in (base / "talk", base / HOME / "history", base / HOME / "cache"):
        inner.mkdir(parents=True, exist_ok=True)
    replace_file(base / LINES, lines, name=os.path.join(name, LINES))  # noqa: PTH118
    text = _spelled("", settings).encode()
    replace_file(base / SETTINGS, text, name=os.path.join(name, SETTINGS))  # noqa: PTH118
    return Lesson.open(folder)


def _source(from_file: str | os.PathLike[str]) -> Lesson:
    if Path(from_file).is_dir():
        raise NoSuchFileError("this is a folder", path=os.fspath(from_file), hint="give a file")
    return Lesson.open(from_file)


def _event(source: Lesson) -> str | None:
    """The title that a PGN's first game gives itself by its Event tag (PGN standard, 8.1.1.1); None for "?"."""
    event = source.games[0].tag("Event") if source.games else None
    return event if event is not None and event.strip(" ?") else None


def write_settings(lesson: Lesson, settings: Settings) -> Lesson:
    """Writes lesson.toml: only what differs changes; comments and order stay. The old one is kept.

    :returns: the lesson with these settings.
    :raises SettingsError: when a value cannot be, or the lesson has no folder.
    :raises SaveError: as `lineproof.lesson.save.save`.
    """
    if lesson.folder is None:
        raise SettingsError(
            "a bare PGN file has no settings",
            path=lesson.name,
            hint="make a folder of it with `lineproof new FOLDER --from FILE`",
        )
    from lineproof.lesson.lock import WriterLock

    file = lesson.folder / SETTINGS
    name = os.fspath(file)
    with WriterLock(lesson):
        old = file.read_bytes() if file.exists() else None
        text = _spelled((old or b"").decode("utf-8-sig"), settings)
        parse_settings(text, path=name, title=settings.title)
        history = lesson.folder / HOME / "history"
        replace_file(file, text.encode(), name=name, expected=old, history=history)
    return lesson.with_settings(settings)


def _spelled(text: str, settings: Settings) -> str:
    """The text of a lesson.toml with these settings in it."""
    import tomlkit

    document = tomlkit.parse(text)
    values = {
        "format": FORMAT,
        "title": settings.title,
        "side": settings.side,
        "audience": settings.audience,
        "words_a_minute": settings.words_a_minute,
    }
    for key, value in values.items():
        _set(document, key, value)
    if settings.decisions or "decisions" in document:
        if "decisions" not in document:
            document["decisions"] = tomlkit.table()
        _merge(document["decisions"], settings.decisions)
    return tomlkit.dumps(document)


def _merge(table: Any, values: Mapping[str, Any]) -> None:
    """Makes a table hold these values, and touches only what differs."""
    for key in [key for key in table if key not in values]:
        del table[key]
    for key, value in values.items():
        if isinstance(value, Mapping) and isinstance(table.get(key), MutableMapping):
            _merge(table[key], value)
        else:
            _set(table, key, value)


def _set(table: Any, key: str, value: Any) -> None:
    if value is None:
        if key in table:
            del table[key]
    elif key not in table or table[key] != value:
        table[key] = value


def _within(value: object, bounds: tuple[int, int]) -> bool:
    low, high = bounds
    return isinstance(value, int) and not isinstance(value, bool) and low <= value <= high


def _current(values: dict[str, Any], text: str, path: str) -> dict[str, Any]:
    line, column = _place_of("format", text)
    version = values.get("format")
    if version is None:
        raise SettingsError(
            "format is missing", path=path, line=1, column=1, hint=f"write format = {FORMAT}"
        )
    if not isinstance(version, int) or isinstance(version, bool):
        raise SettingsError(
            f"format is {version!r}",
            path=path,
            line=line,
            column=column,
            hint=f"write format = {FORMAT}",
        )
    if version > FORMAT:
        raise VersionError(
            f"the lesson was made by a newer version (format {version};"
            f" this one reads up to {FORMAT})",
            path=path,
            line=line,
            column=column,
            hint="install the newer version",
        )
    while version < FORMAT:
        if version not in MIGRATIONS:
            raise VersionError(
                f"format {version} is not known",
                path=path,
                line=line,
                column=column,
                hint=f"write format = {FORMAT} after checking the settings",
            )
        values = MIGRATIONS[version](values)
        version += 1
    return values


def _broken(message: str, text: str, path: str) -> SettingsError:
    found = AT_LINE.search(message)
    if found:
        line, column = int(found[1]), int(found[2])
    else:
        lines = text.split("\n")
        line, column = len(lines), len(lines[-1]) + 1
    reason = AT_LINE.sub("", message).removesuffix(AT_END)
    return SettingsError(
        f"this is not TOML: {reason[:1].lower()}{reason[1:]}",
        path=path,
        line=line,
        column=column,
        hint="correct the line",
    )


def _place_of(key: str, text: str) -> tuple[int, int]:
    """(line, column) of a top-level key or table; (1, 1) where it is spelled in an unusual way."""
    spelled = rf"[ \t]*(?:\[[ \t]*)?[\"']?{re.escape(key)}[\"']?[ \t]*[=.\]]"
    for number, line in enumerate(text.split("\n"), 1):
        if re.match(spelled, line):
            return number, len(line) - len(line.lstrip()) + 1
    return 1, 1
