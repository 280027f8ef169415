"""How long each cue takes, in seconds. All numbers but the author's words a minute are common practice."""

from __future__ import annotations

from .spoken import words_in

MOVE = 1.0
"""A move on the board, beside the words that name it."""
LOOK = 3.0
"""After a way back, until everybody has found his place on the board."""
MARK = 1.0
"""A mark."""
ASK = {1: 10.0, 2: 15.0, 3: 20.0, 4: 25.0, 5: 30.0}
"""A pause, by the grade of the pause point."""
ASKED = 20.0
"""A pause that the author's own words ask for."""
SHOW = 5.0
"""A show of hands."""
SPEEDS = (60, 300)
"""Words a minute, from and to: what the settings of a lesson may say."""


def spoken(text: str, words_a_minute: int) -> float:
    """Seconds that it takes to say a text."""
    return words_in(text) * 60 / words_a_minute


def clock(seconds: float) -> str:
    """ "3:07" """
    whole = round(seconds)
    return f"{whole // 60}:{whole % 60:02d}"


def length(seconds: float) -> str:
    """ "14 min 30 s" """
    whole = round(seconds)
    return f"{whole // 60} min {whole % 60:02d} s" if whole >= 60 else f"{whole} s"
