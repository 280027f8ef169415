"""Exercises: pause points as diagrams with a move to find, the easy ones first, and their solutions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from lineproof.claims.claim import Spot
from lineproof.claims.showing import numbered
from lineproof.lesson import Lesson
from lineproof.publish.exercises import also_safe
from lineproof.publish.moments import Moment
from lineproof.publish.product import Found

from .blocks import Writer, drawing

OWN, OTHER = 16, 8
"""Exercises of the taught side and of the other side at most, those that are met most often. The EPD has all pause points."""


def exercises(lesson: Lesson, found: Found, moments: Sequence[Moment]) -> tuple[Moment, ...]:
    """The chosen pause points, by grade, then as in the lesson."""
    by_key = {m.place.key: m for m in moments if m.pause is not None}
    side = lesson.settings.side
    own = [p for p in found.studied.pauses if p.place.board.turn == side]
    other = [p for p in found.studied.pauses if p.place.board.turn != side]
    chosen = [by_key[p.place.key] for p in (*own[:OWN], *other[:OTHER])]
    return tuple(sorted(chosen, key=lambda m: (m.pause.grade if m.pause else 0, m.place.index)))


def asked(writer: Writer, chosen: Sequence[Moment]) -> Iterator[dict[str, Any]]:
    for moment in chosen:
        assert moment.pause is not None
        yield {
            **drawing(moment, flipped=writer.flipped),
            "mover": moment.place.board.turn.capitalize(),
            "grade": moment.pause.grade,
        }


def solutions(writer: Writer, chosen: Sequence[Moment]) -> Iterator[dict[str, Any]]:
    for moment in chosen:
        pause = moment.pause
        assert pause is not None
        line = numbered(Spot.of(pause.place), pause.line)
        also = f" {also_safe(writer.lesson, pause)}".rstrip()
        yield {
            "line": writer.notation.moves(line),
            "words": writer.notation.words(f"{_sentence(pause.point)}{also}"),
            "at": writer.at(pause.place),
            "place": pause.place.index,
        }


def _sentence(point: str) -> str:
    """With a capital letter, unless it begins with a move."""
    first = point.split(" ", 1)[0]
    return f"{point[:1].upper() if first.isalpha() else point[:1]}{point[1:]}."
