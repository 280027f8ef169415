"""Tense: the positions of which the form of a verb speaks, for claims about a state of the board.

"Black has doubled pawns" speaks of the position here. "This gives Black doubled pawns" may wait for the recapture. "Black will have doubled
pawns" speaks of the line that the lesson shows.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from enum import StrEnum
from typing import Any, TypeVar

from .claim import NULL_MOVE, Claim, Judgement, Mark, Outcome, Spot
from .here import Here, Unread
from .verbs import Verb

SOON_PLIES = 2
"""Plies within which what a move brings about must be seen: the recapture, and the answer to it."""

Found = TypeVar("Found")
_BECOMING = re.compile(
    r"\b(?:gets?|obtains?|acquires?|ends? up|finish(?:es)?|emerges?|accepts?|becomes?|takes? on)\b"
)


class When(StrEnum):
    """NOW: here. SOON: here, within two plies of the line shown, or, where none is shown, after a recapture. LATER: in the line shown."""

    NOW = "now"
    SOON = "soon"
    LATER = "later"


def when(here: Here, slots: dict[str, Any], *, brings: bool = False) -> When:
    """When a state that a clause speaks of must be seen.

    brings: whether the clause says that something brings it about.

    :raises Unread: for what was, what can be or must be, and for a "will" where nothing more is shown.
    """
    verb = slots.get("verb", Verb())
    if verb.past:
        raise Unread("said of what was")
    if verb.modal == "will":
        if next(_shown(here.place, here.spot), None) is None:
            raise Unread("said of what will be, and no more of the line is shown")
        return When.LATER
    if verb.modal in {"can", "must", "shall", "almost"}:
        raise Unread("said of what can or must be, not of what is")
    if not verb.done and (brings or _BECOMING.search(here.said)):
        return When.SOON
    return When.NOW


def _shown(place: Any, spot: Spot) -> Iterator[Spot]:
    """The positions of the shown line after this one; none where the sentence itself has left it."""
    if spot.moves != tuple(place.moves()):
        return
    at = place
    while at.next is not None and at.next.uci not in (None, NULL_MOVE):
        at = at.next
        spot = spot.play(at.uci)
        yield spot


def _recaptures(spot: Spot) -> Iterator[Spot]:
    if not spot.moves:
        return
    last = spot.moves[-1]
    before = spot.boards[-2]
    if before.san(last).count("x"):
        for uci in spot.board.legal_moves():
            if uci[2:4] == last[2:4]:
                yield spot.play(uci)


def spots(claim: Claim) -> list[Spot]:
    """The positions in which a claim may hold, by its param `when`: the first that fits is enough."""
    asked = When(claim.params.get("when", When.NOW))
    if asked is When.NOW:
        return [claim.spot]
    shown = list(_shown(claim.place, claim.spot))
    if asked is When.LATER:
        return [claim.spot, *shown]
    return [claim.spot, *(shown[:SOON_PLIES] or _recaptures(claim.spot))]


def first(claim: Claim, test: Callable[[Spot], Found | None]) -> tuple[Spot, Found | None]:
    """The first position of a claim in which a test finds something, and what; the claim's own position and None where none does."""
    for spot in spots(claim):
        found = test(spot)
        if found:
            return spot, found
    return claim.spot, None


def answer(
    claim: Claim,
    holds: bool,
    because: str,
    *,
    at: Spot | None = None,
    marks: tuple[Mark, ...] = (),
    numbers: dict[str, int | float | str] | None = None,
    second: str | None = None,
    instead: str | None = None,
) -> Judgement:
    """A judgement of a board fact.

    because: a true sentence. at: the position in which it was seen, with the moves to it as evidence. instead: what may be said instead;
    without it the reason. Where the claim holds it is what may be said instead of its denial.
    """
    line = (at or claim.spot).moves[len(claim.spot.moves) :]
    if line:
        instead = None  # it is true of this position only
        because = f"After {' '.join(claim.spot.board.san_line(line))}: {because[0].lower() if because.split()[0] in _SMALL else because[0]}{because[1:]}"
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS, because, line, claim.spot, numbers or {}, instead=instead if holds else instead or because,
        second=second, marks=marks,
    )  # fmt: skip


_SMALL = frozenset({"The", "No", "Nothing", "Neither", "A", "Both", "Each"})
"""First words that a colon before them makes small."""


def squares(found: list[str] | tuple[str, ...], side: str) -> tuple[Mark, ...]:
    """Marks for the diagram on some squares."""
    return (Mark("square", tuple(found), side),) if found else ()
