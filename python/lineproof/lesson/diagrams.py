"""Diagrams that the author has put into the text, as they stand in lesson.toml.

    [[decisions.diagrams]]
    line = "1. e4 e5 2. Nc3 Nf6 3. f4"
    position = "9a44e0b1c37d5f02"

Each stands after a move and its words, or, with an empty line, at the start of a game. It is anchored by the position and the line
that leads there; `game`, from 1, is written where it is not the first. An entry that is none of these counts as not there, and stays.

>>> from lineproof.lesson import Lesson
>>> lesson = Lesson.from_text("1. e4 e5 2. Nc3 {the Vienna} *")
>>> lesson = lesson.with_settings(with_diagram(lesson.places[3], True))
>>> [place.label for place in diagrams(lesson)]
['2. Nc3']
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from lineproof.lesson.decisions import entries, position, spelled, with_entries
from lineproof.lesson.places import Place
from lineproof.lesson.settings import Settings

if TYPE_CHECKING:
    from lineproof.lesson.lesson import Lesson

TABLE = "diagrams"


@dataclass(frozen=True)
class _Anchor:
    key: int
    line: str
    game: int


def diagrams(lesson: Lesson) -> tuple[Place, ...]:
    """The places after which the author wants a diagram, in text order."""
    found = {place.index: place for _, place in _found(lesson) if place is not None}
    return tuple(found[index] for index in sorted(found))


def with_diagram(place: Place, wanted: bool) -> Settings:
    """The settings of the place's lesson with a diagram at this place, or without one."""
    lesson = place.lesson
    some = list(_found(lesson))
    if wanted and any(at == place for _, at in some):
        return lesson.settings
    kept = [entry for entry, at in some if wanted or at != place]
    if wanted:
        kept.append(_spelled(place))
    return with_entries(lesson.settings, TABLE, kept)


def _found(lesson: Lesson) -> Iterator[tuple[Any, Place | None]]:
    """Every entry with its place; None where it is none of these, or its place is gone."""
    for entry in entries(lesson.settings.decisions, TABLE):
        anchor = _read(entry)
        yield entry, None if anchor is None else _place(lesson, anchor)


def _place(lesson: Lesson, anchor: _Anchor) -> Place | None:
    """Of the places with this position the one on this line. Where an edit has left none: the first that the same move leads to."""
    there = lesson.positions.get(anchor.key, ())
    move = anchor.line.rpartition(" ")[2]
    same = [place for place in there if (place.san or "") == move]
    return max(
        same,
        key=lambda place: (
            _line(place) == anchor.line,
            lesson.pgn.game(place.index) == anchor.game,
            -place.index,
        ),
        default=None,
    )


def _line(place: Place) -> str:
    parts: list[str] = []
    for at in place.path()[1:]:
        number = "" if parts and at.number.endswith("...") else at.number
        parts.append(f"{number} {at.san}".strip())
    return " ".join(parts)


def _spelled(place: Place) -> dict[str, Any]:
    entry: dict[str, Any] = {"line": _line(place), "position": spelled(place.key)}
    game = place.lesson.pgn.game(place.index)
    if game:
        entry["game"] = game + 1
    return entry


def _read(entry: Any) -> _Anchor | None:
    if not isinstance(entry, Mapping):
        return None
    key, line, game = position(entry.get("position")), entry.get("line"), entry.get("game", 1)
    if key is None or not isinstance(line, str) or not isinstance(game, int) or game < 1:
        return None
    return _Anchor(key, line, game - 1)
