"""What a lesson says of where it comes from: the tags of its games that name people, events and books."""

from __future__ import annotations

from typing import Final

from lineproof.lesson import Game, Lesson

UNKNOWN: Final = frozenset({"", "?", "-", "*", "????.??.??"})
"""Values that say nothing (PGN standard, 1994-03-12, 8.1.1, from memory)."""


def sources(lesson: Lesson) -> tuple[str, ...]:
    """Each source once, in the order of the games: "Annotator: ...", "Steinitz against Zukertort, London, 1872"."""
    found = [source for game in lesson.games for source in _of(game)]
    return tuple(dict.fromkeys(found))


def _of(game: Game) -> list[str]:
    found = []
    white, black = _said(game, "White"), _said(game, "Black")
    if (
        white and black and white != black
    ):  # a lesson that names no players often has one word for both
        parts = [f"{white} against {black}", _said(game, "Event"), _said(game, "Site"), _year(game)]
        found.append(", ".join(part for part in parts if part))
    found += [
        f"{name}: {_said(game, name)}" for name in ("Source", "Annotator") if _said(game, name)
    ]
    return found


def _said(game: Game, name: str) -> str:
    value = (game.tag(name) or "").strip()
    return "" if value in UNKNOWN else value


def _year(game: Game) -> str:
    return _said(game, "Date")[:4].strip("?.")
