"""A comparison as JSON, in the published shape `compare`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from lineproof.lesson import Place

from .comparison import Comparison, LineChange
from .sides import Side

FORMAT: Final = 1


def values(of: Comparison) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "old": _side(of.old),
        "new": _side(of.new),
        "added": [_line(change) for change in of.added],
        "removed": [_line(change) for change in of.removed],
        "changed": [_line(change) for change in of.changed],
        "advice": [
            {
                **_at(change.place),
                "old": change.old.san,
                "new": None if change.new is None else change.new.san,
            }
            for change in of.advice
        ],
        "verdicts": [
            {
                **_at(change.place),
                "old": list(change.old),
                "new": list(change.new),
                "held": change.held and change.held.value,
                "holds": change.holds and change.holds.value,
            }
            for change in of.verdicts
        ],
        "words": [
            {**_at(change.place), "old": change.old, "new": change.new} for change in of.words
        ],
        "settings": [
            {"what": change.what, "old": change.old, "new": change.new} for change in of.settings
        ],
    }


def _side(side: Side) -> dict[str, Any]:
    edition = side.edition
    return {
        "name": side.name,
        "title": side.title,
        "edition": None if edition is None else edition.number,
        "date": None if edition is None else edition.day.isoformat(),
    }


def _line(change: LineChange) -> dict[str, Any]:
    return {
        **_at(change.place),
        "old": _moves(change.old),
        "new": _moves(change.new),
        "goes_on": change.goes_on,
        "more": change.more,
        "joins": None if change.joins is None else _at(change.joins),
    }


def _at(place: Place) -> dict[str, Any]:
    return {"after": _moves(place.path()[1:]), "fen": place.board.fen}


def _moves(places: Sequence[Place]) -> list[str]:
    return [place.san or "" for place in places]
