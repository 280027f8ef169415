"""What the author says about a lesson as a whole: the contents of lesson.toml."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Literal

from lineproof.lesson.errors import SettingsError, quoted

Side = Literal["white", "black"]

AUDIENCE = 1500
"""Rating of the audience where nothing is said."""
AUDIENCES = (400, 2900)
"""Lowest and highest rating of an audience."""
WORDS_A_MINUTE = 150
"""Speed of speech (common practice)."""
WORDS_A_MINUTE_RANGE = (60, 300)


BAD = ("Cc", "Cs", "Zl", "Zp")
"""Unicode categories that a title has nothing of: controls, halves of pairs, line separators."""
SIDES = ("white", "black")


@dataclass(frozen=True)
class Settings:
    """Title, side taught, audience and the author's decisions."""

    title: str
    side: Side | None = None
    audience: int = AUDIENCE
    """Rating."""
    words_a_minute: int = WORDS_A_MINUTE
    decisions: Mapping[str, Any] = field(default_factory=dict)
    """The [decisions] table as it is."""
    audience_said: bool = False
    """Whether the author said the rating."""


def wrong_side(side: object) -> tuple[str, str] | None:
    """What is wrong with a side, and what to do; None for a right one, and for the lack of one."""
    if side is None or (isinstance(side, str) and side in SIDES):
        return None
    return f"side is {quoted(side)}", 'write side = "white" or side = "black"'


def wrong_audience(audience: object) -> tuple[str, str] | None:
    """What is wrong with an audience's rating, and what to do; None for a right one."""
    if within(audience, AUDIENCES):
        return None
    low, high = AUDIENCES
    return f"audience is {quoted(audience)}", f"write a rating from {low} to {high}"


def wrong_title(title: object) -> tuple[str, str] | None:
    """What is wrong with a title, and what to do; None for a right one."""
    if not isinstance(title, str) or not title.strip():
        return "title is no text", 'write title = "..."'
    bad = next((c for c in title if not c.isprintable() and unicodedata.category(c) in BAD), None)
    if bad is not None:
        return f"the title holds {bad!r}", "a title is one line of text without control characters"
    return None


def within(value: object, bounds: tuple[int, int]) -> bool:
    """Whether a value is a whole number in these bounds, which belong to it."""
    low, high = bounds
    return isinstance(value, int) and not isinstance(value, bool) and low <= value <= high


def overridden(
    settings: Settings, *, side: Side | None, audience: int | None, path: str
) -> Settings:
    """Settings with a side and an audience in place of theirs, where these are given.

    :raises SettingsError: for a side or an audience that cannot be.
    """
    wrong = wrong_side(side) or (None if audience is None else wrong_audience(audience))
    if wrong is not None:
        raise SettingsError(wrong[0], path=path, hint=wrong[1])
    if side is not None:
        settings = replace(settings, side=side)
    if audience is not None:
        settings = replace(settings, audience=audience, audience_said=True)
    return settings
