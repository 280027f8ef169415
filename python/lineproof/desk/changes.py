"""Changes of a lesson's settings, as steps that can be taken back: title, side, audience, and what the author decided.

A change says of each field what it was and what it became, and of each table of decisions which entries went and which came. So it
can be taken back, and done again, also where another program has changed other settings meanwhile.

>>> from lineproof.lesson import Settings
>>> was, now = Settings("One", "white"), Settings("Two", "white")
>>> change = Change.between(was, now)
>>> change.fields
{'title': ('One', 'Two')}
>>> change.back.apply(now) == was
True
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from lineproof.lesson import Settings
from lineproof.lesson.decisions import entries, position, with_entries

FIELDS = ("title", "side", "audience")
"""What the desk changes beside the decisions."""

Entries = tuple[tuple[int, Any], ...]
"""Entries of a table of decisions, each with its number there."""


@dataclass(frozen=True)
class Change:
    """fields: by name what stood there and what stands there now. tables: by name the entries that went, and those that came."""

    fields: dict[str, tuple[Any, Any]] = field(default_factory=dict)
    tables: dict[str, tuple[Entries, Entries]] = field(default_factory=dict)

    @classmethod
    def between(cls, before: Settings, after: Settings) -> Change:
        """What makes one of the other."""
        fields = {
            name: (getattr(before, name), getattr(after, name))
            for name in FIELDS
            if getattr(before, name) != getattr(after, name)
        }
        names = sorted({*before.decisions, *after.decisions})
        tables = {name: _between(*(entries(s.decisions, name) for s in (before, after))) for name in names}  # fmt: skip
        return cls(fields, {name: each for name, each in tables.items() if any(each)})

    @property
    def back(self) -> Change:
        return Change(
            {name: (after, before) for name, (before, after) in self.fields.items()},
            {name: (came, went) for name, (went, came) in self.tables.items()},
        )

    def apply(self, settings: Settings) -> Settings:
        """The settings with this changed; what another program has done already is left so."""
        changed = replace(settings, **{name: after for name, (_, after) in self.fields.items()})
        for name, (went, came) in self.tables.items():
            now = entries(settings.decisions, name)
            for _, entry in went:
                if entry in now:
                    now.remove(entry)
            for number, entry in came:
                if entry not in now:
                    now.insert(number, entry)
            changed = with_entries(changed, name, now)
        return changed

    @property
    def position(self) -> int | None:
        """The key of the position that it is of, where it is of one."""
        for went, came in self.tables.values():
            for _, entry in (*came, *went):
                key = position(entry.get("position")) if isinstance(entry, Mapping) else None
                if key is not None:
                    return key
        return None

    def spelled(self) -> dict[str, Any]:
        """As JSON has it. Entries are in TOML, which has dates."""
        return {
            "fields": {name: list(both) for name, both in self.fields.items()},
            "tables": {
                name: [[[number, _toml(entry)] for number, entry in each] for each in both]
                for name, both in self.tables.items()
            },
        }

    @classmethod
    def read(cls, values: Any) -> Change:
        """:raises ValueError, KeyError, TypeError: where it is none."""
        fields = {str(name): (old, new) for name, (old, new) in values["fields"].items()}
        if not set(fields) <= set(FIELDS):
            raise ValueError("a field is not known")
        tables: dict[str, tuple[Entries, Entries]] = {}
        for name, (went, came) in values["tables"].items():
            tables[str(name)] = (_entries(went), _entries(came))
        return cls(fields, tables)


def _between(before: list[Any], after: list[Any]) -> tuple[Entries, Entries]:
    went = tuple((at, entry) for at, entry in enumerate(before) if entry not in after)
    came = tuple((at, entry) for at, entry in enumerate(after) if entry not in before)
    return went, came


def _toml(entry: Any) -> str:
    import tomlkit

    return tomlkit.dumps({"entry": entry})


def _entries(values: Any) -> Entries:
    return tuple((int(at), tomllib.loads(entry)["entry"]) for at, entry in values)
