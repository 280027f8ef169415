"""Move order: whether one move must come before another."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import MISTAKE, Cost, weigh
from lineproof.claims.deed import deed
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.ordering import order
from lineproof.claims.passing import parsed
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import named_before, played
from lineproof.claims.worded import fitting

FRAMES = (
    "<~> {first} only_then {by} if verbless",
    "<~> {move} +first only_then {by} if verbless",
    "{side} <play> {first} only_then {by}",
    "{side} <play> {move} +first only_then {by}",
    "{move} <come> +first only_then {by} if modal=must",
    "{move} <come> before {by} if modal=must|should|ought",
    "<be:play/insert> {move} before {by} if modal=must|should|ought",
    "<be:play> {move} +first only_then {by} if modal=must",
    "{by} <work/come> +only after {move}",
    "{by} <=> {possible} +only after {move}",
    "<take_on> {square} +first only_then {by} if bidden",
    "<capture> (on) {square} +first only_then {by} if bidden",
    "{order} <matter>",
    "{order} <=> {important}",
    "{order} <make> {difference}",
    "<be:play> {by} beside {move} in {either} if modal=can ; free=yes",
    "{by} <come> beside {move} in {either} if modal=can ; free=yes",
)
_IMPORTANT = {
    **dict.fromkeys(("important", "crucial", "essential", "vital", "everything"), True),
    **dict.fromkeys(("unimportant", "irrelevant", "immaterial"), False),
}


def _difference(noun: Noun) -> bool | None:
    if noun.head != "difference":
        return None
    return not noun.no and "little" not in (noun.det, *noun.adjectives)


def _move(noun: Noun) -> str | None:
    """A move, written out or in words."""
    return None if noun.type == "pronoun" else deed(noun)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if verb is not None and verb.modal and verb.modal != "must":
        raise Unread("said of what may come")
    free = "free" in slots or slots.get("important") is False
    if slots.get("difference") is False:
        free = True  # "makes no difference": the verb says so too
    elif verb is not None and verb.negated:
        if free:
            raise Unread("it is not clear what is denied")
        free = True
    if "by" in slots:
        if "square" in slots:
            first = f"taking on {slots['square']}"
        else:
            first = slots.get("first") or slots["move"]
        other_ = slots["by"]
        named = here.named(first) if MOVE.fullmatch(first) else played(here, first)
        spot, side = named.before, named.side
        if here.spot.moves not in {spot.moves, named.after.moves} and not MOVE.fullmatch(first):
            raise Unread(f"{first} is neither the last move nor the next")
        if "side" in slots and here.side(slots["side"]) != side:
            raise Unread(f"{first} is no move of that side")
        if parsed(spot, spot.board.san(named.uci)) is None:
            raise Unread(f"{first} is not legal here")
        return [_claim(here, spot, side, named.uci, _second(here, named, other_), free)]
    if named_before(here) is not None:
        raise Unread("the sentence names other moves")
    last = here.last()
    place = here.place.next.next if here.place.next is not None else None
    if place is None or place.san is None or here.spot.moves != tuple(here.place.moves()):
        raise Unread("the line shown does not tell which two moves are meant")
    return [_claim(here, last.before, last.side, last.uci, place.san, free)]


def _second(here: Here, named: Named, text: str) -> str:
    """The move that comes second in SAN; one in words is the one that the line shows, else the only one that could come first.

    :raises Unread: when it is not clear.
    """
    if MOVE.fullmatch(text):
        return text.split(".")[-1]
    place = here.place if here.spot.moves == named.after.moves else here.place.next
    reply = place.next if place is not None and tuple(place.moves()) == named.after.moves else None
    if reply is not None and reply.next is not None:
        spot, uci = named.after.play(reply.moves()[-1]), reply.next.moves()[-1]
        if uci in fitting(spot, text):
            return spot.board.san(uci)
    found = fitting(named.before, text)
    if len(found) != 1:
        raise Unread(f"it is not clear which move {text!r} means")
    return named.before.board.san(found[0])


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
    frames=FRAMES,
    slots={"important": _IMPORTANT, "possible": dict.fromkeys(("good", "possible"), True)},
    tests={
        "order": order,
        "difference": _difference,
        "either": lambda n: order(n) and n.det,
        "first": lambda n: _move(n) if "first" in n.adjectives else None,
        "move": _move,
        "by": _move,
    },
    read=read,
    check=check,
)  # fmt: skip
