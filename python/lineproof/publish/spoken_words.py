"""What the author says, without the commands of other programs."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Final

from lineproof.claims import Reading
from lineproof.lesson import Game

COMMAND: Final = re.compile(r"\[%[^\]]*\]")
"""A bracketed command of another program, or of a clock: no word of the author's."""


def said_words(readings: Iterable[Reading]) -> Iterator[str]:
    """The sentences as they are, none empty."""
    spoken = (COMMAND.sub("", reading.sentence.text) for reading in readings)
    return (text for text in spoken if text.strip())


def game_title(game: Game) -> str:
    """What a game is called: its event, else its number."""
    return game.tag("Event") or f"Game {game.index + 1}"
