"""Decisions: the tables under [decisions] in lesson.toml, whatever they hold.

>>> from lineproof.lesson.settings import Settings
>>> settings = with_entries(Settings("The Vienna Gambit"), "sources", [{"words": "page 12"}])
>>> entries(settings.decisions, "sources")
[{'words': 'page 12'}]
>>> with_entries(settings, "sources", []).decisions
{}
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from lineproof.lesson.settings import Settings

_KEY = re.compile(r"[0-9a-f]{16}")


def entries(decisions: Mapping[str, Any], table: str) -> list[Any]:
    """The entries of a table as they are; none where it is no list."""
    found = decisions.get(table, [])
    return list(found) if isinstance(found, list) else []


def with_entries(settings: Settings, table: str, new: Iterable[Any]) -> Settings:
    """The settings with these entries in a table, in place of those there; without it, when there are none."""
    decisions = {key: value for key, value in settings.decisions.items() if key != table}
    if found := list(new):
        decisions[table] = found
    return replace(settings, decisions=decisions)


def position(value: Any) -> int | None:
    """The key of a position, written as 16 digits of hexadecimal; None for anything else."""
    return int(value, 16) if isinstance(value, str) and _KEY.fullmatch(value) else None


def spelled(key: int) -> str:
    """How the key of a position is written."""
    return f"{key:016x}"
