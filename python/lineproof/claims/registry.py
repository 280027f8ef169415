"""The registry: every module in `kinds` is a kind. Adding a kind touches no other file."""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache

from . import kinds
from .kind import Kind, Scan


@cache
def all_kinds() -> tuple[Kind, ...]:
    """Every kind of claim, by id.

    :raises ValueError: when two files claim one id.
    """
    found: dict[str, Kind] = {}
    for module in sorted(m.name for m in pkgutil.iter_modules(kinds.__path__)):
        kind: Kind = importlib.import_module(f"{kinds.__name__}.{module}").KIND
        if kind.id in found:
            raise ValueError(f"two kinds have the id {kind.id!r}")
        found[kind.id] = kind
    return tuple(found[k] for k in sorted(found))


@cache
def scans() -> tuple[Scan, ...]:
    """What the kinds find in a sentence by looking at it as a whole."""
    return tuple(kind.scan for kind in all_kinds() if kind.scan is not None)


def kind_of(id_: str) -> Kind:
    """The kind with an id.

    :raises KeyError: when there is none.
    """
    return _by_id()[id_]


@cache
def _by_id() -> dict[str, Kind]:
    return {kind.id: kind for kind in all_kinds()}
