"""What is compared: a lesson folder, a PGN file, or an edition of either, as `LESSON@3`."""

from __future__ import annotations

import os
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from lineproof.lesson import Lesson
from lineproof.lesson import Side as Taught
from lineproof.publish.editions import Edition, edition
from lineproof.report.plain import plain
from lineproof.report.title import title_of

_EDITION: Final = re.compile(r"(?P<lesson>.+)@(?P<number>[0-9]{1,9})", re.DOTALL)


@dataclass(frozen=True)
class Side:
    """One of the two. name: as it was given. edition: None for a lesson as it is now."""

    name: str
    lesson: Lesson
    edition: Edition | None = None

    @property
    def title(self) -> str:
        """As it is shown, or was."""
        return plain(self.edition.settings.title if self.edition else title_of(self.lesson))

    @property
    def words(self) -> str:
        """ "edition 3 of 29 November 2026", or the name."""
        if self.edition is None:
            return self.name
        return f"edition {self.edition.number} of {self.edition.day_in_words}"


def opened(given: str | os.PathLike[str], *, side: Taught | None = None) -> Side:
    """A side by its name. A file or folder whose own name ends in "@3" is itself.

    :raises LessonError: when it cannot be opened, or there is no such edition.
    """
    name = os.fspath(given)
    found = _EDITION.fullmatch(name)
    if found is None or Path(name).exists():
        return unpublished(Lesson.open(name, side=side), name)
    lesson = Lesson.open(found["lesson"], side=side)
    kept = edition(lesson, int(found["number"]))
    return Side(name, kept.lesson(name), kept)


def unpublished(lesson: Lesson, name: str | None = None) -> Side:
    """A lesson as it is now."""
    return Side(lesson.name if name is None else name, lesson)
