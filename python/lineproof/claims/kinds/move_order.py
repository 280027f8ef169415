"""Move order: whether one move must come before another."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import MISTAKE, Cost, weigh
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.passing import parsed
from lineproof.claims.played import named_before

PHRASES = (
    "first {move} [,] [and] only then {by}",
    "first {move} [,] [and] then [and] only then {by}",
    "first {move} [,] [and] not {by} [at once|straight away|immediately]",
    "{side} <play> {move} first [,] [and] only then {by}",
    "{side} <play> first {move} [,] [and] only then {by}",
    "{move} (must|has to|needs to|should|ought to) (come|be played|be inserted|be thrown in) before {by}",
    "{move} (must|has to|needs to) (come|be played) first [,] [and] only then {by}",
    "{by} (only works|works only|is only good|is good only|is only possible|comes only) after {move}",
    "only after {move} (comes|is|can|does) {by} [come|work|possible|good]",
    "the (order|move order|order of moves|exact order|sequence) <matter> [here|a great deal|a lot|very much] [:|,|-] [first] {move} [,] [and] [only] then {by}",
    "the (order|move order|order of moves|exact order|sequence) {is} [{very}] {important} [:|,|-] [first] {move} [,] [and] [only] then {by}",
    "the (order|move order|order of moves|exact order|sequence) <matter> [here|a great deal|a lot|very much]",
    "the (order|move order|order of moves|exact order|sequence) {is} [{very}] {important} [here]",
    "the (order|move order|order of moves|sequence) <make> [{very}] {difference} [here]",
    "{move} and {by} can be played in {either} order",
    "{move} and {by} can come in {either} order",
    "it {does} [{very}] [matter|make a difference] whether {side} (plays|play) {move} or {by} first",
    "it {does} [matter|make a difference] whether {move} or {by} comes first",
)  # fmt: skip


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    said = here.said
    verb = slots.get("verb")
    free = "either" in slots or slots.get("does") is False or slots.get("difference") is False
    if verb is not None and verb.modal and verb.modal != "must":
        raise Unread("said of what may come")
    if verb is not None and verb.negated:
        free = not free
    if re.search(r"\b(?:is|are) not\b|\bisn['’]t\b", said) and "important" in slots:
        raise Unread("it is not clear what is denied")
    if slots.get("important") is False:
        free = True
    if "move" in slots:
        first, other_ = slots["move"], slots["by"]
        named = here.named(first)
        spot, side = named.before, named.side
        if "side" in slots and here.side(slots["side"]) != side:
            raise Unread(f"{first} is no move of that side")
        if parsed(spot, first) is None:
            raise Unread(f"{first} is not legal here")
        return [_claim(here, spot, side, named.uci, other_.split(".")[-1], free)]
    if named_before(here) is not None:
        raise Unread("the sentence names other moves")
    last = here.last()
    place = here.place.next.next if here.place.next is not None else None
    if place is None or place.san is None or here.spot.moves != tuple(here.place.moves()):
        raise Unread("the line shown does not tell which two moves are meant")
    return [_claim(here, last.before, last.side, last.uci, place.san, free)]


def _claim(here: Here, spot: Spot, side: str, first: str, second: str, free: bool) -> Claim:
    return here.claim(KIND.id, side, spot=spot, first=first, second=second, free=free)


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, first, second = claim.spot, claim.params["first"], claim.params["second"]
    free: bool = claim.params["free"]
    san = spot.board.san(first)
    marks = (Mark("move", (first[:2], first[2:4]), claim.side or "white"),)
    early = parsed(spot, second)
    one = weigh(ask, spot, first)
    if not one.counted:
        return Judgement(Outcome.UNSETTLED, f"What {san} costs cannot be counted here.", (), spot)
    if early is None:
        because = f"{second} is not possible before {san}."
        said = Outcome.FAILS if free else Outcome.HOLDS
        return Judgement(said, because, (), spot, instead=because if free else None, marks=marks)
    two = weigh(ask, spot, early)
    said = _outcome(free, one, two)

    def with_one(best: int, played: int) -> Outcome:
        return _outcome(free, replace(one, best=best, played=played), two)

    def with_two(best: int, played: int) -> Outcome:
        return _outcome(free, one, replace(two, best=best, played=played))

    near = min(
        edge_of_two(one.best, one.played, with_one), edge_of_two(two.best, two.played, with_two)
    )
    because = f"{san} first costs {title(claim.side or 'white')} {one.points} points, {spot.board.san(early)} first {two.points}."
    numbers = {"first": one.points, "second": two.points}
    return Judgement(
        said, because, two.line, spot, numbers, near, because if said is Outcome.FAILS else None,
        one_off=said is Outcome.UNSETTLED, marks=marks,
    )  # fmt: skip


def _outcome(free: bool, one: Cost, two: Cost) -> Outcome:
    """The order matters where the one is safe and the other first would be a mistake; it does not where both are safe."""
    good, early = is_safe(one.best, one.played), is_safe(two.best, two.played)
    if good and early:
        return Outcome.HOLDS if free else Outcome.FAILS
    if good and two.points >= MISTAKE:
        return Outcome.FAILS if free else Outcome.HOLDS
    if one.points >= MISTAKE:
        return Outcome.FAILS
    return Outcome.UNSETTLED


KIND = Kind(
    id="move-order",
    title="Move order",
    version=1,
    definition=(
        "The order matters where the move named first costs at most 5 points (or keeps 85 of more than 90) and the other, played first, is not legal or costs 12 or more; it does not matter where both cost at most 5. "
        "It fails where the first costs 12 or more, and is unsettled between."
    ),
    formula=f"matters: safe(first) and cost(other first) >= {MISTAKE}; does not: both safe; fails: the reverse, or cost(first) >= {MISTAKE}",
    phrases=PHRASES,
    slots={
        "important": {"important": True, "crucial": True, "essential": True, "vital": True, "everything": True, "unimportant": False, "irrelevant": False, "immaterial": False},
        "difference": {"a difference": True, "a big difference": True, "all the difference": True, "no difference": False, "no difference at all": False, "little difference": False},
        "either": {"either": True, "any": True},
        "does": {"does not": False, "makes no difference": False, "does": True, "makes a difference": True},
    },
    vocabulary=frozenset({"first", "order", "sequence", "before", "only", "after"}),
    read=read,
    check=check,
)  # fmt: skip
