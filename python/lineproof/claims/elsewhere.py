"""Elsewhere: the same move at other places of the lesson."""

from __future__ import annotations

import re
from collections.abc import Sequence

from lineproof.lesson import Place

from .claim import NULL_MOVE, Spot
from .here import Here, Named, Unread
from .sentence import SAN

_MOVE = re.compile(rf"(?:\d+\.(?:\.\.)?|\.\.\.)?{SAN}[+#]?")


def same_move(here: Here, named: Named, line: str | None) -> list[Place]:
    """Places of the lesson that the same piece's move to the same square leads to, by the same side, other than the one meant.

    line: words that say where, None for anywhere.

    :raises Unread: when the words name no line of the lesson.
    """
    board = named.before.board
    letter = board.piece_at(named.uci[:2])
    own = (*named.before.moves, named.uci)
    found = [
        place
        for place in here.lesson.places
        if place.uci is not None
        and place.uci != NULL_MOVE
        and place.parent is not None
        and place.uci[2:] == named.uci[2:]
        and place.parent.board.piece_at(place.uci[:2]) == letter
        and tuple(place.moves()) != own
    ]
    return found if line is None else [p for p in found if _on(here, p, line)]


def _on(here: Here, place: Place, line: str) -> bool:
    wanted = [_bare(m) for m in _MOVE.findall(line)]
    if wanted:
        road = [_bare(p.label) for p in place.path() if p.uci]
        if not any(
            all(any(_agrees(m, x) for x in _road(leaf)) for m in wanted)
            for leaf in here.lesson.lines()
        ):
            raise Unread(f"{line!r} names no line of the lesson")
        return all(any(_agrees(m, label) for label in road) for m in wanted)
    if "main" in line:
        return place.is_main
    if re.search(r"\b(?:above|previous|before|last|first)\b", line):
        return place.index < here.place.index
    return place not in here.place.path()


def _road(leaf: Place) -> list[str]:
    return [_bare(p.label) for p in leaf.path() if p.uci]


def _bare(label: str) -> str:
    return re.sub(r"[\s+#!?]", "", label)


def _agrees(move: str, label: str) -> bool:
    """Whether "5...Be7" or "Be7" names the move of a label such as "5...Be7"."""
    if re.match(r"\d", move):
        return label == move
    return re.sub(r"^\d+\.(?:\.\.)?", "", label) == move.lstrip(".")


def spots_before(places: Sequence[Place]) -> list[Spot]:
    """The spots before the moves of some places."""
    return [Spot.of(p.parent) for p in places if p.parent is not None]


def labels(places: Sequence[Place]) -> str:
    """ "5. Nf3 and 6... Bg4", three at most."""
    said = [f"{_before(p)}{p.label}" for p in places[:3]]
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}"


def _before(place: Place) -> str:
    """The move before, so that a reader finds the place: "4... d6 "."""
    parent = place.parent
    if parent is None or parent.uci is None:
        return ""
    return f"{parent.label} "


def just_played_or(here: Here, text: str | None) -> Named:
    """The move named, or the one just played.

    :raises Unread: when there is none, or no move of the side to speak of.
    """
    return here.named(text) if text is not None else here.last()


__all__ = ["just_played_or", "labels", "same_move", "spots_before"]
