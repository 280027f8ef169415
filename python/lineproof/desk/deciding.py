"""Edits of the settings as the page asks for them: what the lesson is called and for whom, and what the author decides of its places."""

from __future__ import annotations

from dataclasses import replace

from lineproof.lesson import Lesson, Place, Settings
from lineproof.lesson.diagrams import with_diagram
from lineproof.lesson.errors import EditError
from lineproof.lesson.opinions import TABLE as OPINIONS
from lineproof.lesson.opinions import read_opinions, with_opinions

from .naming import Names
from .put_off import with_decision
from .sources import with_source
from .wire import Decide, PutDiagram, SetLesson, SetSource, TakeBack

SettingsOp = SetLesson | Decide | SetSource | PutDiagram | TakeBack


def settled(lesson: Lesson, names: Names, op: SettingsOp) -> tuple[Settings, Place]:
    """The settings after an edit, and the place that it is of.

    :raises EditError: when there is no such place, or no such mark.
    """
    settings = lesson.settings
    if isinstance(op, SetLesson):
        return _about(settings, op), lesson.places[0]
    if isinstance(op, TakeBack):
        return _without_opinion(lesson, op.name), lesson.places[0]
    place = names.place(op.place)
    match op:
        case Decide():
            return with_decision(settings, (op.sort, place.key, op.about), op.decided), place
        case SetSource():
            return with_source(settings, place, op.source), place
        case PutDiagram():
            return with_diagram(place, op.wanted), place


def _without_opinion(lesson: Lesson, name: str) -> Settings:
    marks = read_opinions(lesson.settings.decisions)
    left = [each for each in marks if each.name != name]
    if len(left) == len(marks):
        raise EditError(
            "there is no such mark", path=lesson.name, hint="it was taken back elsewhere"
        )
    return with_opinions(lesson.settings, left)


def bearing(settings: Settings) -> Settings:
    """What of the settings bears on what is found in the lesson: not its title, nor where sources and diagrams stand."""
    marks = {name: each for name, each in settings.decisions.items() if name == OPINIONS}
    return replace(settings, title="", decisions=marks)


def _about(settings: Settings, op: SetLesson) -> Settings:
    if op.title is not None:
        settings = replace(settings, title=op.title)
    if op.side is not None:
        settings = replace(settings, side=op.side)
    if op.audience is not None:
        settings = replace(settings, audience=op.audience, audience_said=True)
    return settings
