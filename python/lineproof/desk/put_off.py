"""Things to do that the author has put off or dismissed, as they stand in lesson.toml.

    [[decisions.put_off]]
    what = "slips"
    position = "9a44e0b1c37d5f02"
    about = "f6e4"
    decided = "dismissed"

Each is anchored by its position, so that it survives edits elsewhere. An entry that is none of these counts as not there, and stays.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, get_args

from lineproof.lesson import Settings
from lineproof.lesson.decisions import entries, position, spelled, with_entries

from .wire import Decided, Sort

TABLE = "put_off"

Anchor = tuple[Sort, int, str]
"""Its list, the key of its position, and what tells it from others there."""


@dataclass(frozen=True)
class PutOff:
    """What was decided of one thing."""

    anchor: Anchor
    how: Decided


def read_put_off(decisions: Mapping[str, Any]) -> Iterator[PutOff]:
    """All that the table of decisions has."""
    for entry in entries(decisions, TABLE):
        found = _read(entry)
        if found is not None:
            yield found


def with_decision(settings: Settings, anchor: Anchor, how: Decided | None) -> Settings:
    """The settings with this decided; None: the thing is open again."""
    kept = [
        entry
        for entry in entries(settings.decisions, TABLE)
        if (found := _read(entry)) is None or found.anchor != anchor
    ]
    if how is not None:
        sort, key, about = anchor
        kept.append({"what": sort, "position": spelled(key), "about": about, "decided": how})
    return with_entries(settings, TABLE, kept)


def _read(entry: Any) -> PutOff | None:
    if not isinstance(entry, Mapping):
        return None
    what, key = entry.get("what"), position(entry.get("position"))
    about, how = entry.get("about"), entry.get("decided")
    sort: Sort | None = next((each for each in get_args(Sort) if each == what), None)
    decided: Decided | None = next((each for each in get_args(Decided) if each == how), None)
    if sort is None or decided is None:
        return None
    if key is None or not isinstance(about, str):
        return None
    return PutOff((sort, key, about), decided)
