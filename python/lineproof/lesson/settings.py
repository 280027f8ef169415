"""What the author says about a lesson as a whole: the contents of lesson.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

Side = Literal["white", "black"]

AUDIENCE = 1500
"""Rating of the audience where nothing is said."""
AUDIENCES = (400, 2900)
"""Lowest and highest rating of an audience."""
WORDS_A_MINUTE = 150
"""Speed of speech (common practice)."""
WORDS_A_MINUTE_RANGE = (60, 300)


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
