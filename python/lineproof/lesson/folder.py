"""The lesson folder: lesson.toml, read strictly, written with the author's comments kept."""

from __future__ import annotations

import contextlib
import os
import re
from collections.abc import Callable, Mapping, MutableMapping, MutableSequence, Sequence
from pathlib import Path
from typing import Any

from lineproof.lesson.disk import is_folder, is_there, read_file, reason, unreadable
from lineproof.lesson.errors import (
    FolderNotEmptyError,
    NoSuchFileError,
    SaveError,
    SettingsError,
    VersionError,
    quoted,
    shortened,
)
from lineproof.lesson.lesson import HOME, LINES, SETTINGS, Lesson
from lineproof.lesson.opinions import OpinionError, read_opinions
from lineproof.lesson.save import replace_file
from lineproof.lesson.settings import (
    AUDIENCE,
    WORDS_A_MINUTE,
    WORDS_A_MINUTE_RANGE,
    Settings,
    Side,
    overridden,
    within,
    wrong_audience,
    wrong_side,
    wrong_title,
)
from lineproof.lesson.toml import parse_toml, place_of

FORMAT = 1
"""The folder format that this version writes."""
MIGRATIONS: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {}
"""From an older format to the next one."""

TALK = "talk"
KEYS = ("format", "title", "side", "audience", "words_a_minute", "decisions")
EMPTY = """[Event "{title}"]
[Result "*"]

*
"""
"""The lines of a new lesson."""


def read_settings(file: Path, *, name: str | None = None) -> Settings:
    """Reads and checks a lesson.toml.

    :raises SettingsError: with the line and column of what is wrong.
    :raises VersionError: when the format is not known.
    """
    path = os.fspath(file) if name is None else name
    text = _decoded(read_file(file, path), path)
    return parse_settings(text, path=path, title=file.resolve().parent.name)


def parse_settings(text: str, *, path: str, title: str) -> Settings:
    """Checks the text of a lesson.toml; `title` stands where it has none.

    :raises SettingsError, VersionError:
    """
    values = parse_toml(text, path)

    def wrong(key: str, message: str, hint: str) -> SettingsError:
        line, column = place_of(key, text)
        return SettingsError(message, path=path, line=line, column=column, hint=hint)

    values = _current(values, text, path)
    for key in values:
        if key not in KEYS:
            message = f"{shortened(key)} is no setting"
            raise wrong(key, message, f"the settings are {', '.join(KEYS)}")
    side = values.get("side")
    audience = values.get("audience", AUDIENCE)
    title_here = values.get("title")
    for key, mistake in (
        ("title", None if title_here is None else wrong_title(title_here)),
        ("side", wrong_side(side)),
        ("audience", wrong_audience(audience)),
    ):
        if mistake is not None:
            raise wrong(key, *mistake)
    speed = values.get("words_a_minute", WORDS_A_MINUTE)
    if not within(speed, WORDS_A_MINUTE_RANGE):
        low, high = WORDS_A_MINUTE_RANGE
        raise wrong(
            "words_a_minute",
            f"words_a_minute is {quoted(speed)}",
            f"write a number from {low} to {high}",
        )
    decisions = values.get("decisions", {})
    if not isinstance(decisions, dict):
        raise wrong("decisions", "decisions is no table", "write [decisions] on a line of its own")
    try:
        read_opinions(decisions)
    except OpinionError as error:
        line, column = _place_of_opinion(error.number, text)
        raise SettingsError(
            str(error), path=path, line=line, column=column, hint=error.hint
        ) from error
    return Settings(
        title if title_here is None else title_here,
        side,
        audience,
        speed,
        decisions,
        "audience" in values,
    )


def _place_of_opinion(number: int, text: str) -> tuple[int, int]:
    """(line, column) of the entry of an opinion; of the decisions where they are spelled in another way."""
    heads = re.finditer(
        r"^[ \t]*(\[\[[ \t]*decisions[ \t]*\.[ \t]*opinions[ \t]*\]\])", text, re.MULTILINE
    )
    starts = [head.start(1) for head in heads]
    if number >= len(starts):
        return place_of("decisions", text)
    before = text[: starts[number]]
    return before.count("\n") + 1, len(before) - before.rfind("\n")


def new(
    folder: str | os.PathLike[str],
    from_file: str | os.PathLike[str] | None = None,
    side: Side | None = None,
    audience: int | None = None,
    title: str | None = None,
) -> Lesson:
    """Makes a lesson folder, its lines copied byte for byte from a PGN file or empty. title: by default that of the file, or the folder's name.

    Where it fails, nothing of it is left.

    :raises FolderNotEmptyError: when the folder holds anything, or is a file.
    :raises SettingsError: for a wrong side or audience, or a folder name that is no title.
    :raises SaveError: when the disk refuses.
    :raises LessonError: when `from_file` is no lesson.
    """
    base = Path(folder)
    name = os.fspath(folder)
    if is_there(base, name) and not _is_empty_folder(base, name):
        raise FolderNotEmptyError("something is there already", path=name)
    source = None if from_file is None else _source(from_file)
    given = title is not None
    title = title or (source and _event(source)) or base.resolve().name
    mistake = wrong_title(title)
    if mistake is not None:
        hint = "choose another title" if given else "choose another name for the folder"
        whose = "" if given else ", which is the folder's name"
        raise SettingsError(f"{mistake[0]}{whose}", path=name, hint=hint)
    settings = overridden(Settings(title=title), side=side, audience=audience, path=name)
    if source is None:
        lines = EMPTY.format(title=title.replace("\\", "\\\\").replace('"', '\\"')).encode()
    else:
        lines = source.disk or b""
    text = _spelled("", settings, name).encode()
    missing = [path for path in (base, *base.parents) if not is_there(path, name)]
    try:
        for inner in (base / TALK, base / HOME / "history", base / HOME / "cache"):
            inner.mkdir(parents=True, exist_ok=True)
        replace_file(base / LINES, lines, name=os.path.join(name, LINES))  # noqa: PTH118
        replace_file(base / SETTINGS, text, name=os.path.join(name, SETTINGS))  # noqa: PTH118
        return Lesson.open(folder)
    except BaseException as error:
        _unmake(base, missing)
        if isinstance(error, OSError):
            raise SaveError(
                f"the folder cannot be made ({reason(error)})",
                path=name,
                hint="choose another place",
            ) from error
        raise


def _is_empty_folder(base: Path, name: str) -> bool:
    try:
        return is_folder(base, name) and not any(base.iterdir())
    except OSError as error:
        raise unreadable(error, name) from error


def _unmake(base: Path, missing: list[Path]) -> None:
    """Removes what was made of a new lesson, and the folders that were missing; what is not, stays."""
    for made in (base / LINES, base / SETTINGS):
        with contextlib.suppress(OSError):
            made.unlink()
    for folder in (base / TALK, base / HOME / "history", base / HOME / "cache", base / HOME):
        with contextlib.suppress(OSError):
            folder.rmdir()
    for folder in missing:
        with contextlib.suppress(OSError):
            folder.rmdir()


def _source(from_file: str | os.PathLike[str]) -> Lesson:
    if is_folder(Path(from_file), os.fspath(from_file)):
        raise NoSuchFileError("this is a folder", path=os.fspath(from_file), hint="give a file")
    return Lesson.open(from_file)


def _event(source: Lesson) -> str | None:
    """The title that a PGN's first game gives itself by its Event tag (PGN standard, 8.1.1.1); None for "?".

    Control characters, which a title cannot have, make way for spaces.
    """
    event = source.games[0].tag("Event") if source.games else None
    if event is None or not event.strip(" ?"):
        return None
    if wrong_title(event) is None:
        return event
    plain = " ".join("".join(c if c.isprintable() else " " for c in event).split())
    return plain if plain.strip(" ?") else None


def write_settings(lesson: Lesson, settings: Settings) -> Lesson:
    """Writes lesson.toml: only what differs changes; comments and order stay. The old one is kept.

    :returns: the lesson with these settings.
    :raises SettingsError: when a value cannot be, the lesson has no folder, or the old lesson.toml
        is no TOML; nothing is written.
    :raises UnreadableError: when the old one cannot be read.
    :raises SaveError: as `lineproof.lesson.save.save`.
    """
    if lesson.folder is None:
        raise SettingsError(
            "a bare PGN file has no settings",
            path=lesson.name,
            hint="make a folder of it with `lineproof new FOLDER --from FILE`",
        )
    from lineproof.lesson.lock import WriterLock

    name = os.fspath(lesson.folder / SETTINGS)
    mistake = wrong_title(settings.title)
    if mistake is not None:
        raise SettingsError(mistake[0], path=name, hint=mistake[1])
    file = Path(os.path.realpath(name))
    with WriterLock(lesson):
        old = read_file(file, name) if is_there(file, name) else None
        before = _decoded(old or b"", name)
        parse_toml(before, name)
        text = _spelled(before, settings, name)
        parse_settings(text, path=name, title=settings.title)
        history = lesson.folder / HOME / "history"
        replace_file(file, text.encode(), name=name, expected=old, history=history)
    return lesson.with_settings(settings)


def _decoded(data: bytes, path: str) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8-sig")
        line, column = before.count("\n") + 1, len(before) - before.rfind("\n")
        raise SettingsError(
            "the file is not UTF-8", path=path, line=line, column=column, hint="save it as UTF-8"
        ) from error


def _spelled(text: str, settings: Settings, path: str) -> str:
    """The text of a lesson.toml with these settings in it.

    :raises SettingsError: for a decision that TOML cannot hold.
    """
    try:
        spelled = _merged(text, settings)
        spelled.encode()
    except (ValueError, TypeError, RecursionError) as error:
        raise SettingsError(
            f"the settings cannot be written as TOML ({shortened(str(error))})",
            path=path,
            hint="keep to texts, numbers, dates, lists and tables",
        ) from error
    return spelled


def _merged(text: str, settings: Settings) -> str:
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
        if not isinstance(document.get("decisions"), MutableMapping):
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
        elif isinstance(value, list) and isinstance(table.get(key), MutableSequence):
            _merge_list(table[key], value)
        else:
            _set(table, key, value)


def _merge_list(entries: Any, values: Sequence[Any]) -> None:
    """Makes a list hold these values: takes out what is not among them, and puts what is new in its place."""
    at = 0
    for value in values:
        while at < len(entries) and entries[at] != value and entries[at] not in values:
            del entries[at]
        if at == len(entries) or entries[at] != value:
            entries.insert(at, value)
        at += 1
    while len(entries) > at:
        del entries[at]


def _set(table: Any, key: str, value: Any) -> None:
    if value is None:
        if key in table:
            del table[key]
    elif key not in table or table[key] != value:
        table[key] = value


def _current(values: dict[str, Any], text: str, path: str) -> dict[str, Any]:
    line, column = place_of("format", text)
    version = values.get("format")
    if version is None:
        raise SettingsError(
            "format is missing", path=path, line=1, column=1, hint=f"write format = {FORMAT}"
        )
    if not isinstance(version, int) or isinstance(version, bool):
        raise SettingsError(
            f"format is {quoted(version)}",
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
