"""What the author says, without the commands of other programs, and the headings under which it stands."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from typing import Final

from lineproof.claims import Reading
from lineproof.lesson import Game, Lesson
from lineproof.report.script import Stretch

COMMAND: Final = re.compile(r"\[%[^\]]*\]")
"""A bracketed command of another program, or of a clock: no word of the author's."""


def said_words(readings: Iterable[Reading]) -> Iterator[str]:
    """The sentences as they are, none empty."""
    spoken = (COMMAND.sub("", reading.sentence.text) for reading in readings)
    return (text for text in spoken if text.strip())


def game_title(game: Game) -> str:
    """What a game is called: its event, else its number."""
    return game.tag("Event") or f"Game {game.index + 1}"


def headed(
    lesson: Lesson, stretches: Iterable[Stretch], spelled: Callable[[str], str]
) -> Iterator[tuple[Stretch, bool, list[tuple[int, str]]]]:
    """Each part of the lesson, whether a game begins with it, and its headings: depth from 2, and words.

    A game has one where there are several; a part where it goes on from another. spelled: spells the moves in it.
    """
    several = len(lesson.games) > 1
    game = -1
    for stretch in stretches:
        begins, game = stretch.game.index != game, stretch.game.index
        titles = [(2, game_title(stretch.game))] if begins and several else []
        if not begins or stretch.after is not None:
            titles.append((3 if several else 2, spelled(stretch.heading)))
        yield stretch, begins, titles
