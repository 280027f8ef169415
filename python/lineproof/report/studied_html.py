"""A study as one HTML file: what is open, where to pause, what must be known, each with its diagram and its place in the lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from lineproof.replies import Study
from lineproof.replies.study import Beginning

from .collected import numbered
from .counted import counted, listed
from .item import Listing, notes_of, place_link
from .markup import Html, join, tag
from .plain import plain
from .section import Section, lead
from .sheet import Sheet, whom
from .studied import where_from
from .studied_script import studied_script
from .study_items import listings
from .title import title_of
from .writing import write_whole


def study_html(found: Study) -> str:
    """The page as text, to be written as UTF-8."""
    lists = listings(found)
    named = plain(title_of(found.lesson))
    return Sheet(
        kind="Study sheet of a lesson",
        whom=whom(found.lesson),
        page=f"{named}: the study",
        title=named,
        answer=_answer(found),
        rest=(*_rest(found, lists), where_from(found).replace("`", "")),
        sections=tuple(_sections(found, lists)),
        source=found.lesson.name,
    ).html()


def save_study_html(found: Study, file: Path) -> None:
    """Writes the page as one step.

    :raises OSError: when it cannot be written.
    """
    write_whole(file, study_html(found).encode())


def _answer(found: Study) -> Html:
    first = found.beginnings[0]
    move, percent = first.answered[0]
    up_to = "to the end of its lines" if move is None else f"up to move {move}"
    inside = f"Of 100 games of this audience {_about(percent)} inside the lesson {up_to}"
    number = len(found.dangerous)
    if not number:
        return join((f"{inside}; no dangerous reply is left open.",))
    said = tag(
        "strong", counted(number, "dangerous reply", "dangerous replies"), class_="left-open"
    )
    return join((f"{inside}; ", said, f" {'is' if number == 1 else 'are'} left open."))


def _about(percent: float) -> str:
    if 0 < percent < 1:
        return "fewer than one stays"
    return f"about {percent:.0f} {'stays' if round(percent) == 1 else 'stay'}"


_COUNTED = {
    "met": ("other likely reply left open", "other likely replies left open"),
    "slips": ("slip", "slips"),
    "costly": ("move of the lesson that costs something", "moves of the lesson that cost something"),
    "pauses": ("pause point", "pause points"),
    "heart": ("move to be known by heart", "moves to be known by heart"),
    "stops": ("line that stops early", "lines that stop early"),
    "ideas": ("recurring idea", "recurring ideas"),
}  # fmt: skip


def _rest(found: Study, lists: Sequence[Listing]) -> Iterator[str]:
    parts = [counted(len(one.items), *_COUNTED[one.id]) for one in lists if one.id in _COUNTED]
    if parts:
        yield f"There {'is' if parts[0].startswith('1 ') else 'are'} also {listed(parts)}."
    elif not found.dangerous:
        yield "Nothing asks for a pause."


def _sections(found: Study, lists: Sequence[Listing]) -> Iterator[Section]:
    flipped = found.side == "black"
    yield _answered(found.beginnings)
    for one in lists:
        yield one.section(flipped=flipped)
    roads = _roads(found.beginnings)
    if roads is not None:
        yield roads
    script = studied_script(found.lesson, notes_of(lists))
    if script is not None:
        yield script


def _answered(beginnings: Sequence[Beginning]) -> Section:
    """The share of games that stay inside."""
    said = "Of 100 games of this audience, so many stay inside the lesson: the student plays its moves, and the opponents what is likely."
    rows = [
        tag(
            "li",
            place_link(one.place, begins=True), ": ",
            listed([f"{_share(percent)} {'to the end of its lines' if move is None else f'up to move {move}'}" for move, percent in one.answered]),
            ".",
        )
        for one in beginnings
    ]  # fmt: skip
    return Section("answered", "Games answered", (lead(said), tag("ul", *rows, class_="plain")))


def _share(percent: float) -> str:
    return "fewer than one" if 0 < percent < 1 else f"{percent:.0f}"


def _roads(beginnings: Sequence[Beginning]) -> Section | None:
    rows = [
        tag(
            "li",
            tag("span", numbered(road.san), class_="moves"),
            tag("span", f"{f'{road.opening}; ' if road.opening else ''}to {one.place.label}", class_="reason"),
        )
        for one in beginnings
        for road in one.roads
    ]  # fmt: skip
    if not rows:
        return None
    said = "Every legal order of the moves to where the lesson begins, with the opening that it goes through."
    return Section("roads", "Other roads", (lead(said), tag("ul", *rows, class_="plain columns")))
