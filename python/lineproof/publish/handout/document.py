"""The whole handout as one JSON value: what `handout.typ` sets."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Any

from lineproof.lesson import Lesson, Place
from lineproof.publish.moments import Moment, moments
from lineproof.publish.product import Choices, Found
from lineproof.publish.sources import sources
from lineproof.report.plain import plain
from lineproof.report.title import title_of

from . import exercises as tasks
from .blocks import Writer, anchor
from .figures import figures
from .line_map import drawn, in_words, line_map
from .lines import Line, printed_lines
from .meetings import meetings
from .notation import Notation
from .shape import Shape, columns, shapes
from .spread import in_text, spread


def document(
    lesson: Lesson, found: Found, choices: Choices, shape: Shape | None = None
) -> dict[str, Any]:
    """Everything that is printed, in the order of the print. shape: by default with the largest diagrams."""
    shape = shape or shapes(choices)[0]
    lines = printed_lines(lesson)
    moments_found = moments(lesson, found)
    notation = Notation(choices.notation, choices.language)
    shown = spread(lesson, lines, _chosen(lesson, found, moments_found, shape), shape.apart)
    writer = Writer(lesson, lines, found.proof.reading.sentences, shown, notation)
    chosen = tasks.exercises(lesson, found, moments_found)
    where_met = meetings(lines)
    tracks = drawn(lines)
    taught = lesson.settings.side
    sections = [line for line in lines if not line.inline]
    return {
        "title": plain(title_of(lesson)),
        "audience": f"For players of about {lesson.settings.audience}"
        + (f" who have {taught.capitalize()}" if taught else ""),
        "opening": writer.opening(sections[0]),
        "map": {"svg": line_map(tracks, where_met), "alt": in_words(tracks, where_met)}
        if len(tracks) > 1
        else None,
        "sections": [_section(writer, line) for line in sections],
        "exercises": list(tasks.asked(writer, chosen)),
        "solutions": list(tasks.solutions(writer, chosen)),
        "meetings": [
            {
                "line": writer.lines[m.place.index].label,
                "after": writer.label(m.place),
                "anchor": anchor(m.place),
                "other": writer.lines[m.same.index].label,
                "same": writer.label(m.same),
                "other_anchor": anchor(m.same),
            }
            for m in where_met
        ],
        "positions": [
            {
                "after": writer.label(place),
                "line": writer.lines[place.index].label,
                "anchor": anchor(place),
            }
            for place in _indexed(lines, shown)
        ],
        "sources": [plain(source) for source in sources(lesson)],
        "figures": list(figures(writer, found)),
        "edition": None if found.edition is None else found.edition.words,
        "date": None if found.edition is None else _numbers(found.edition.day),
        "paper": {"a4": "a4", "letter": "us-letter"}[choices.paper],
        "columns": columns(choices),
        "board": shape.board,
        "large": bool(choices.large),
    }


def _numbers(day: date) -> dict[str, int]:
    return {"year": day.year, "month": day.month, "day": day.day}


def _chosen(
    lesson: Lesson, found: Found, moments_found: Sequence[Moment], shape: Shape
) -> dict[int, Moment]:
    chosen = in_text(lesson, found, moments_found)
    return {index: each for index, each in chosen.items() if index not in shape.without}


def _indexed(lines: Sequence[Line], shown: Mapping[int, Moment]) -> Iterator[Place]:
    """Positions that a reader looks up: those shown, and those where the lesson goes on in more than one way."""
    for line in lines:
        for place in line.places:
            if place.index in shown or len(place.children) > 1:
                yield place


def _section(writer: Writer, line: Line) -> dict[str, Any]:
    above = line.first.parent
    if line.parent is None or above is None:
        head, instead = [_game_title(writer, line)], ""
    else:
        head = writer.moves(line.places[:3])
        instead = f"{writer.at(above)}, instead of {writer.label(above.next or above)}"
    return {
        "label": line.label,
        "head": head,
        "instead": instead,
        "anchor": anchor(line.first),
        "parent": None
        if line.parent is None
        else {"label": line.parent.label, "anchor": anchor(above or line.first)},
        "blocks": writer.section(line),
    }


def _game_title(writer: Writer, line: Line) -> str:
    if len(writer.lesson.games) > 1:
        return plain(line.first.game.tag("Event") or "") or "The main line"
    return "The main line"
