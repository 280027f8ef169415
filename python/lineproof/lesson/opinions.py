"""Opinions: the sentences that the author has marked as his own opinion, as they stand in lesson.toml.

    [[decisions.opinions]]
    words = "I would call it roughly level."
    move = "7. Bd2"
    position = "9a44e0b1c37d5f02"

>>> read_opinions({"opinions": [{"words": "I like it."}]})
(Opinion(words='I like it.', move='', position=None, others=()),)
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from lineproof.lesson.decisions import position as position_of
from lineproof.lesson.decisions import spelled, with_entries
from lineproof.lesson.errors import quoted, shortened
from lineproof.lesson.settings import Settings

TABLE = "opinions"
KEYS = ("words", "move", "position", "others")
_HINT = 'write [[decisions.opinions]] with words = "..." under it, or mark the sentence with `lineproof opinion`'
_EDGES = " .,;:!?…\"'“”‘’()-–—"


@dataclass(frozen=True)
class Opinion:
    """A mark. Where the author wrote it himself, the words alone may be there; then it is of every sentence of these words.

    words: the sentence. move: the label of the move that it stood beside. position: the key of the position that it spoke of.
    others: positions at which the same words stood unmarked; they are never taken for the marked ones.
    """

    words: str
    move: str = ""
    position: int | None = None
    others: tuple[int, ...] = ()

    @property
    def san(self) -> str:
        """The move without its number."""
        return self.move.rpartition(" ")[2]

    @property
    def fingerprint(self) -> str:
        return fingerprint(self.words)

    @property
    def name(self) -> str:
        """What tells it from other marks: its words, move and position."""
        at = "" if self.position is None else spelled(self.position)
        return f"{self.fingerprint}|{self.move}|{at}"


class OpinionError(ValueError):
    """An entry that is no opinion. number: which, from 0. hint: what to do."""

    hint = _HINT
    number = 0


def fingerprint(words: str) -> str:
    """Equal for words that differ only in line breaks, in capitals or in marks at their ends."""
    return " ".join(words.split()).casefold().strip(_EDGES)


def read_opinions(decisions: Mapping[str, Any]) -> tuple[Opinion, ...]:
    """The opinions of a [decisions] table, none twice.

    :raises OpinionError: for an entry that is none.
    """
    entries = decisions.get(TABLE, [])
    if not isinstance(entries, list):
        raise OpinionError("decisions.opinions is no list of tables")
    found: dict[Opinion, None] = {}
    for number, entry in enumerate(entries):
        try:
            found[_read(entry)] = None
        except OpinionError as error:
            error.number = number
            raise
    return tuple(found)


def _read(entry: Any) -> Opinion:
    if not isinstance(entry, Mapping):
        raise OpinionError(f"an opinion is {quoted(entry)}")
    for key in entry:
        if key not in KEYS:
            raise OpinionError(f"{shortened(key)} is nothing that an opinion has")
    words, move = entry.get("words"), entry.get("move", "")
    position, others = entry.get("position"), entry.get("others", [])
    if not isinstance(words, str) or not fingerprint(words):
        raise OpinionError("an opinion has no words")
    if not isinstance(move, str):
        raise OpinionError(f"the move of an opinion is {quoted(move)}")
    if not isinstance(others, list):
        raise OpinionError(f"the other positions of an opinion are {quoted(others)}")
    at = None if position is None else _position(position)
    return Opinion(words, move, at, tuple(_position(other) for other in others))


def _position(value: Any) -> int:
    found = position_of(value)
    if found is None:
        raise OpinionError(f"a position of an opinion is {quoted(value)}")
    return found


def with_opinions(settings: Settings, opinions: Iterable[Opinion]) -> Settings:
    """The settings with these opinions in place of theirs; entries that stay are written as they were."""
    old = settings.decisions.get(TABLE, [])
    kept = {_read(entry): entry for entry in old}
    entries = (kept.get(opinion) or _spelled(opinion) for opinion in opinions)
    return with_entries(settings, TABLE, entries)


def _spelled(opinion: Opinion) -> dict[str, Any]:
    entry: dict[str, Any] = {"words": " ".join(opinion.words.split())}
    if opinion.move:
        entry["move"] = opinion.move
    if opinion.position is not None:
        entry["position"] = spelled(opinion.position)
    if opinion.others:
        entry["others"] = [spelled(other) for other in opinion.others]
    return entry
