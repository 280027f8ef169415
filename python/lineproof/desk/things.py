"""Things to do: what a study found, each with its place, its words, and the moves that would answer it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import unescape

from lineproof.claims.claim import Spot
from lineproof.claims.showing import numbered
from lineproof.lesson import Place
from lineproof.replies import Study
from lineproof.replies.unanswered import Unanswered
from lineproof.report.item import Item, Listing
from lineproof.report.markup import Html
from lineproof.report.study_items import LINE, listings

from .naming import Names
from .shown import evidence
from .wire import Moves, Row, Sort, ThingShown

_TAG = re.compile(r"<[^>]*>")
Line = tuple[str, ...]
"""Moves in UCI."""
SORTS: tuple[Sort, ...] = ("dangerous", "met", "slips", "ideas", "stops")
"""Lists of the study, by their names in its report, that ask the author to do something."""


@dataclass(frozen=True)
class Thing:
    """shown: as the page gets it. move: in UCI, the one by which it is known to have been taken up; "" where there is none."""

    shown: ThingShown
    move: str


def things(found: Study, names: Names) -> Iterator[Thing]:
    """All of them, list by list, what matters most first."""
    lists = {listing.id: listing for listing in listings(found)}
    answers = _answers(found)
    for sort in SORTS:
        listing = lists.get(sort)
        if listing is None:
            continue
        for item, line in zip(listing.items, answers[sort], strict=True):
            if item.place is not None:
                yield _thing(sort, listing, item, item.place, line, names)


def _answers(found: Study) -> dict[str, Sequence[Line]]:
    """The moves that would answer each thing, from its place, in the order of the items of its list; none where it is not for moves to answer."""
    return {
        "dangerous": [_reply(one) for one in found.dangerous],
        "met": [_reply(one) for one in found.met if not one.dangerous],
        "slips": [
            () if one.shown else (one.reply.uci, *one.cost.line[1:])
            for one in found.slips
            if one.within_reach
        ],
        "ideas": [() for _ in found.ideas],
        "stops": [one.line if one.to_move else () for one in found.stops],
    }


def _reply(one: Unanswered) -> Line:
    return (one.reply.uci, *(one.natural.best_line if one.natural else ()))


def _thing(
    sort: Sort, listing: Listing, item: Item, place: Place, line: Line, names: Names
) -> Thing:
    moves = line[: LINE + 1]
    spot = Spot.of(place)
    text = numbered(spot, moves) if moves else ""
    shown = ThingShown(
        sort=sort,
        title=listing.title,
        place=names.of(place),
        about="",
        words=item.words,
        rows=[Row(term=term, text=_plain(said)) for term, said in item.rows],
        evidence=evidence(spot.board, list(moves), text) if moves else None,
        add=Moves(place=names.of(place), moves=list(moves)) if moves else None,
        decided=None,
    )
    move = moves[0] if moves else ""
    return Thing(shown.model_copy(update={"about": move or item.words}), move)


def _plain(said: str | Html) -> str:
    """A row's words, without the markup that those of a sheet may have."""
    return unescape(_TAG.sub("", said)) if isinstance(said, Html) else said
