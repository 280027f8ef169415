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

from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from lineproof.lesson import Place, Settings
from lineproof.lesson.decisions import entries, position, spelled, with_entries

from .wire import Source

TABLE = "sources"

Anchor = tuple[int, str]
"""The key of the position, and the move to it in UCI; "" for the start of a game."""


def read_sources(decisions: Mapping[str, Any]) -> dict[Anchor, Source]:
    """All that the table of decisions has."""
    return dict(found for entry in entries(decisions, TABLE) if (found := _read(entry)) is not None)


def with_source(settings: Settings, place: Place, source: Source | None) -> Settings:
    """The settings with this source of the line from a place on; None: it has none."""
    anchor = (place.key, place.uci or "")
    kept = [
        entry
        for entry in entries(settings.decisions, TABLE)
        if (found := _read(entry)) is None or found[0] != anchor
    ]
    if source is not None:
        key, move = anchor
        kept.append(
            {"position": spelled(key), "move": move, "sort": source.sort, "words": source.words}
        )
    return with_entries(settings, TABLE, kept)


def _read(entry: Any) -> tuple[Anchor, Source] | None:
    if not isinstance(entry, Mapping):
        return None
    key, move = position(entry.get("position")), entry.get("move")
    if key is None or not isinstance(move, str):
        return None
    try:
        source = Source.model_validate({"sort": entry.get("sort"), "words": entry.get("words")})
    except ValidationError:
        return None
    return (key, move), source
