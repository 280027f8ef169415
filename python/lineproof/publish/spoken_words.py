"""What the author says, without the commands of other programs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from lineproof.lesson import Game
from lineproof.report.script import Passage

COMMAND: Final = re.compile(r"\[%[^\]]*\]")
"""A bracketed command of another program, or of a clock: no word of the author's."""


def said_words(passage: Passage) -> Iterator[str]:
    """The sentences of a passage, none empty."""
    spoken = (COMMAND.sub("", reading.sentence.text) for reading in passage.readings)
    return (text for text in spoken if text.strip())


def game_title(game: Game) -> str:
    """What a game is called: its event, else its number."""
    return game.tag("Event") or f"Game {game.index + 1}"
