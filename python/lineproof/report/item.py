"""What a sheet shows of one place of a lesson: a line in large, rows that say more, a diagram or two, and a link to the place; and lists of such items."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, cast

from lineproof.claims.board import upper
from lineproof.claims.claim import Spot
from lineproof.diagram import JustPlayed, Mark, ShownMove, Side
from lineproof.lesson import Place

from .board_figure import board_figure
from .counted import counted
from .markup import Child, Html, join, tag
from .section import Section, beside, lead

SHOWN: Final = 12
"""Of each list, so many items have a diagram; the others stand in a row each."""

IN_A_ROW: Final = 3
"""Rows of such an item that are told."""


@dataclass(frozen=True)
class Figure:
    """A position with marks. caption: "" for where it is and who moves. flipped: as Black sees it; None as the sheet has its boards."""

    spot: Spot
    marks: tuple[Mark, ...] = ()
    caption: str = ""
    flipped: bool | None = None


@dataclass(frozen=True)
class Item:
    """One thing that was found. place: None for what is of no lesson. tag: what it is, in a word or two. words: in large. rows: (term, what is said). note: in the margin of the script; "" for none."""

    place: Place | None
    tag: str
    words: str
    rows: tuple[tuple[str, str | Html], ...]
    figures: tuple[Figure, ...] = ()
    note: str = ""


@dataclass(frozen=True)
class Listing:
    """Items of one sort. id: a word for links. said: the sentence under the heading. most: items with a diagram."""

    id: str
    title: str
    said: str
    items: tuple[Item, ...]
    most: int = SHOWN

    def section(self, *, flipped: bool) -> Section:
        shown = [
            _article(one, self.name(n), flipped) for n, one in enumerate(self.items[: self.most])
        ]
        rest = self.items[self.most :]
        parts: list[Child] = [lead(self.said), *shown]
        if rest:
            if shown:
                parts.append(tag("h3", f"And {counted(len(rest), 'more', 'more')}", class_="group"))
            rows = [_row(one, self.name(self.most + n)) for n, one in enumerate(rest)]
            parts.append(tag("ul", *rows, class_="plain columns"))
        return Section(self.id, self.title, tuple(parts))

    def name(self, number: int) -> str:
        """The id of an item."""
        return f"{self.id}-{number + 1}"


Notes = Mapping[int, Sequence[tuple[str, str]]]
"""By the index of a place what was found there: (words, the id that they lead to)."""


def notes_of(lists: Sequence[Listing]) -> Notes:
    """Those of the items with a diagram."""
    found: dict[int, list[tuple[str, str]]] = {}
    for listing in lists:
        for number, one in enumerate(listing.items[: listing.most]):
            if one.place is not None and one.note:
                found.setdefault(one.place.index, []).append((one.note, listing.name(number)))
    return found


def place_id(place: Place) -> str:
    """The id of a move in the script."""
    return f"place-{place.index}" if place.uci is not None else "script"


def place_link(place: Place, *, begins: bool = False) -> Html:
    """ "after 4. e5, line 16", which leads to the move in the script. begins: a sentence."""
    line = f", line {place.lesson.locate(place.span[0])[0]}" if place.span else ""
    where = upper(beside(place.label)) if begins else beside(place.label)
    return tag("a", f"{where}{line}", href=f"#{place_id(place)}", class_="moves")


def _article(one: Item, name: str, flipped: bool) -> Html:
    said = tag(
        "div",
        tag(
            "h3",
            tag("span", one.tag, class_="tag"),
            place_link(one.place) if one.place is not None else None,
            id=f"{name}-title",
        ),
        tag("p", one.words, class_="words"),
        tag("dl", *(join((tag("dt", term), tag("dd", what))) for term, what in one.rows), class_="proof"),
    )  # fmt: skip
    figures = [_figure(f, f"{name}-{n}", flipped) for n, f in enumerate(one.figures)]
    drawn = tag("div", *figures, class_="pair") if len(figures) > 1 else join(figures)
    wide = " wide" if len(figures) > 1 else "" if figures else " bare"
    return tag(
        "article",
        said,
        drawn,
        class_=f"finding found{wide}",
        id=name,
        aria_labelledby=f"{name}-title",
    )


def _row(one: Item, name: str) -> Html:
    said = join(
        (join((f"{term[0].lower()}{term[1:]}: ", what)) for term, what in one.rows[:IN_A_ROW]),
        "; ",
    )
    return tag(
        "li", tag("span", one.words.rstrip("."), class_="moves"), " ",
        place_link(one.place) if one.place is not None else None,
        tag("span", said, class_="reason"), id=name,
    )  # fmt: skip


def _figure(of: Figure, name: str, flipped: bool) -> Html:
    caption = of.caption or captioned(of.spot)
    turned = flipped if of.flipped is None else of.flipped
    return board_figure(of.spot.board.fen, of.marks, caption, name=name, flipped=turned)


def captioned(spot: Spot, before: str = "") -> str:
    """ "After 5... Bg4. White to move.", with words before it."""
    mover = f"{spot.board.turn.capitalize()} to move."
    if spot.board.is_checkmate:
        mover = "Checkmate."
    last = last_move(spot)
    where = f"After {last}." if last else ""
    return " ".join(part for part in (before, where, mover) if part)


def last_move(spot: Spot) -> str:
    """ "5... Bg4"; "" where there was none."""
    if not spot.moves or spot.moves[-1][:2] == spot.moves[-1][2:4]:
        return ""
    before = spot.earlier(1).board
    dots = "." if before.turn == "white" else "..."
    return f"{before.move_number}{dots} {before.san(spot.moves[-1])}"


def played(spot: Spot) -> tuple[Mark, ...]:
    """The mark of the move just played."""
    if not last_move(spot):
        return ()
    return (JustPlayed(spot.moves[-1][:2], spot.moves[-1][2:4]),)


def shown(spot: Spot, moves: Sequence[str]) -> tuple[Mark, ...]:
    """Marks of moves (UCI) of the side to move."""
    side = cast(Side, spot.board.turn)
    return tuple(ShownMove(uci[:2], uci[2:4], side) for uci in moves)
