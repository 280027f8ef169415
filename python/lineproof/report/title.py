"""The title of a lesson in a report."""

from __future__ import annotations

from lineproof.lesson import Lesson


def title_of(lesson: Lesson) -> str:
    """The lesson's own title; for a bare PGN file, which has none, the event of its first game."""
    if lesson.folder is None and lesson.games:
        event = lesson.games[0].tag("Event")
        if event and event.strip("? "):
            return event
    return lesson.settings.title
