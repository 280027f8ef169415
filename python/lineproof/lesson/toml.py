"""TOML as a user writes it: read, or refused with the place of what is wrong.

>>> parse_toml("format = 1", "lesson.toml")
{'format': 1}
"""

from __future__ import annotations

import re
import tomllib
from typing import Any

from lineproof.lesson.errors import SettingsError, shortened

LEVELS = 20
"""Deepest nesting of tables and lists; people write two or three."""
INTEGERS = range(-(2**63), 2**63)
"""The integers that every reader of TOML has (TOML 1.0.0, Integer)."""
# More digits than any of them has, underscores between them.
DIGITS = re.compile(r"[0-9](?:_?[0-9]){19,}")
OPENING = re.compile(r"[\[{]")
AT_LINE = re.compile(r" \(at line (\d+), column (\d+)\)$")
AT_END = " (at end of document)"


def parse_toml(text: str, path: str) -> dict[str, Any]:
    """The values of a TOML text.

    :raises SettingsError: with the line and column of what is wrong.
    """
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _broken(str(error), text, path) from error
    except RecursionError as error:
        raise _too_deep(_offset_of_depth(text), text, path) from error
    except ValueError as error:  # more digits than Python reads
        raise _too_large(text, path) from error
    _refuse_extremes(values, text, path)
    return values


def _refuse_extremes(values: dict[str, Any], text: str, path: str) -> None:
    """Refuses what TOML can spell and others cannot take: deep nesting, long numbers."""
    waiting: list[tuple[Any, int, str]] = [(value, 1, key) for key, value in values.items()]
    while waiting:
        value, level, key = waiting.pop()
        if level > LEVELS:
            line, column = place_of(key, text)
            raise _too_deep(_offset_at(line, column, text), text, path)
        if isinstance(value, dict):
            waiting.extend((inner, level + 1, key) for inner in value.values())
        elif isinstance(value, list):
            waiting.extend((inner, level + 1, key) for inner in value)
        elif isinstance(value, int) and value not in INTEGERS:
            raise _too_large(text, path, key)


def _offset_of_depth(text: str) -> int:
    """Where nesting passes `LEVELS`, brackets within texts counted too; 0 where it does not."""
    depth = 0
    for found in re.finditer(r"[\[\]{}]", text):
        depth += 1 if OPENING.match(found.group()) else -1
        if depth > LEVELS:
            return found.start()
    return 0


def _too_deep(offset: int, text: str, path: str) -> SettingsError:
    line, column = _line_and_column(offset, text)
    return SettingsError(
        f"tables or lists are nested more than {LEVELS} levels deep",
        path=path,
        line=line,
        column=column,
        hint="write it flatter",
    )


def _too_large(text: str, path: str, key: str | None = None) -> SettingsError:
    long = DIGITS.search(text)
    if key is not None and long is None:
        line, column = place_of(key, text)
    else:
        line, column = _line_and_column(0 if long is None else long.start(), text)
    return SettingsError(
        "a number has too many digits",
        path=path,
        line=line,
        column=column,
        hint="TOML has whole numbers of 64 bits",
    )


def _line_and_column(offset: int, text: str) -> tuple[int, int]:
    return text.count("\n", 0, offset) + 1, offset - text.rfind("\n", 0, offset)


def _offset_at(line: int, column: int, text: str) -> int:
    return sum(len(each) + 1 for each in text.split("\n")[: line - 1]) + column - 1


def _broken(message: str, text: str, path: str) -> SettingsError:
    found = AT_LINE.search(message)
    if found:
        line, column = int(found[1]), int(found[2])
    else:
        lines = text.split("\n")
        line, column = len(lines), len(lines[-1]) + 1
    reason = AT_LINE.sub("", message).removesuffix(AT_END)
    return SettingsError(
        f"this is not TOML: {shortened(reason[:1].lower() + reason[1:])}",
        path=path,
        line=line,
        column=column,
        hint="correct the line",
    )


def place_of(key: str, text: str) -> tuple[int, int]:
    """(line, column) of a top-level key or table; (1, 1) where it is spelled in an unusual way."""
    spelled = rf"[ \t]*(?:\[\[?[ \t]*)?[\"']?{re.escape(key)}[\"']?[ \t]*[=.\]]"
    for number, line in enumerate(text.split("\n"), 1):
        if re.match(spelled, line):
            return number, len(line) - len(line.lstrip()) + 1
    return 1, 1
