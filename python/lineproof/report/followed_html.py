"""What came of students' games as one HTML file: the commonest departures, each with its diagram and its place in the lines, and every game."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from lineproof.claims.cost import spelled
from lineproof.claims.showing import numbered
from lineproof.follow import Common, Departure, Followed
from lineproof.lesson import Lesson

from .counted import counted
from .followed import came, departed, scored
from .item import Figure, Item, Listing, notes_of, played, shown
from .markup import text
from .plain import plain
from .section import Section
from .sheet import Sheet, whom
from .studied_script import studied_script
from .title import title_of
from .writing import write_whole

LINE = 5
"""Plies of a line that are shown."""


def followed_html(found: Followed, lesson: Lesson) -> str:
    """The page as text, to be written as UTF-8."""
    named = plain(title_of(lesson))
    return Sheet(
        kind="Students' games beside a lesson",
        whom=whom(lesson),
        page=f"{named}: students' games",
        title=named,
        answer=text(came(found)),
        rest=tuple(scored(found)),
        sections=tuple(_sections(found, lesson)),
        source=lesson.name,
    ).html()


def save_followed_html(found: Followed, lesson: Lesson, file: Path) -> None:
    """Writes the page as one step.

    :raises OSError: when it cannot be written.
    """
    write_whole(file, followed_html(found, lesson).encode())


def _sections(found: Followed, lesson: Lesson) -> Iterator[Section]:
    lists = [
        Listing(
            "departures",
            "The commonest departures, and what to add",
            "Where games left the lesson, by whose move, and what to play there.",
            tuple(_common(one) for one in found.common),
        ),
        Listing(
            "each",
            "Game by game",
            "In the order of the file.",
            tuple(_game(one) for one in found.departures),
            0,
        ),
    ]
    flipped = lesson.settings.side == "black"
    for one in lists:
        if one.items:
            yield one.section(flipped=flipped)
    script = studied_script(lesson, notes_of(lists))
    if script is not None:
        yield script


def _common(one: Common) -> Item:
    first = one.first
    spot, uci = first.spot, first.uci or ""
    move = numbered(spot, (uci,))
    rows = [
        (
            "Played",
            f"in {counted(one.games, 'game')} by {'the student' if first.by_student else 'the opponent'}",
        )
    ]
    if one.results:
        rows.append(("Scored", f"{one.points:g} of {one.results} by the students"))
    if first.cost is not None and first.cost.points > 0:
        rows.append(("Costs", spelled(first.cost.points)))
    if first.by_student:
        taught = " or ".join(first.taught)
        rows.append(("Lesson", f"it plays {taught}" if taught else "it ends here"))
        own = [own for own in spot.board.legal_moves() if spot.board.san(own) in first.taught]
        figure = Figure(spot, (*played(spot), *shown(spot, own)))
    else:
        after = spot.play(uci)
        best = first.answer.best_line if first.answer is not None else ()
        if best:
            rows.append(("Teach", numbered(after, best[:LINE])))
        figure = Figure(after, (*played(after), *shown(after, best[:1])))
    games = counted(one.games, "game")
    return Item(first.place, games, move, tuple(rows), (figure,), f"{games} left with {move}")


def _game(one: Departure) -> Item:
    words = f"{plain(one.game.white)} against {plain(one.game.black)}"
    return Item(one.place, "game", words, ((f"Line {one.game.line}", departed(one)),))
