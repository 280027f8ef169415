"""Sources of lines, as they stand in lesson.toml: a book and page, a game, own analysis, a pupil.

    [[decisions.sources]]
    position = "9a44e0b1c37d5f02"
    move = "f2f4"
    sort = "book"
    words = "the handbook of the club, page 12"

Each is anchored by the position that the line begins with and the move that led there, so that it survives edits elsewhere. An entry
that is none of these counts as not there, and stays.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from pydantic import ValidationError

from lineproof.lesson import Place, Settings

from .wire import Source

TABLE = "sources"
_KEY = re.compile(r"[0-9a-f]{16}")

Anchor = tuple[int, str]
"""The key of the position, and the move to it in UCI; "" for the start of a game."""


def read_sources(decisions: Mapping[str, Any]) -> dict[Anchor, Source]:
    """All that the table of decisions has."""
    return dict(found for entry in _entries(decisions) if (found := _read(entry)) is not None)


def with_source(settings: Settings, place: Place, source: Source | None) -> Settings:
    """The settings with this source of the line from a place on; None: it has none."""
    anchor = (place.key, place.uci or "")
    entries = [
        entry
        for entry in _entries(settings.decisions)
        if (found := _read(entry)) is None or found[0] != anchor
    ]
    if source is not None:
        key, move = anchor
        new = {"position": f"{key:016x}", "move": move, "sort": source.sort, "words": source.words}
        entries.append(new)
    decisions = {key: value for key, value in settings.decisions.items() if key != TABLE}
    if entries:
        decisions[TABLE] = entries
    return replace(settings, decisions=decisions)


def _entries(decisions: Mapping[str, Any]) -> list[Any]:
    entries = decisions.get(TABLE, [])
    return list(entries) if isinstance(entries, list) else []


def _read(entry: Any) -> tuple[Anchor, Source] | None:
    if not isinstance(entry, Mapping):
        return None
    position, move = entry.get("position"), entry.get("move")
    if not (isinstance(position, str) and _KEY.fullmatch(position) and isinstance(move, str)):
        return None
    try:
        source = Source.model_validate({"sort": entry.get("sort"), "words": entry.get("words")})
    except ValidationError:
        return None
    return (int(position, 16), move), source
