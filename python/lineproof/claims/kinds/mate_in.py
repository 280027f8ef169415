"""Forced mate, in a number of moves or at all."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from lineproof.claims.bands import seen_from
from lineproof.claims.board import other, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import supposed

MOST = 30
"""Moves to mate that are tried at most."""
_WHOEVER = (None, "this", "that", "it", "which", "there")

FRAMES = (
    "[{agent}] <mate> in {n} [with {move}]",
    "[{agent}] <mate> (on|at|with) {next}",
    "[{agent}] <mate> +by_force|quickly",
    "[{agent}] <forcing_mate>",
    "[{agent}] <~> mate (in|within) {n} [for {side}] [with {move}]",
    "[{agent}] <~> mate (on|at) {next}",
    "{side} <announce> mate [in {n}]",
    "[{side}] <~> forced mate",
    "{side} <have> mate if without=in|within",
    "{anything} <allow/permit/let_in/walk_into/run_into/fall_into/lose_to> mate [in {n}] ; allows=yes",
    "{anything} <walk/run/fall/stumble/lose> (into|to) mate [in {n}] ; allows=yes",
    "<be:mate> {side} in {n} ; loses=yes",
    "mate <follow> [in {n}] if without=on|at",
    "{pointer} <=> mate ; ahead=yes if without=in|on|at",
    "{pointer} <=> mate +soon|quickly|shortly|by_force|anyway",
    "{side} <mate> +soon|quickly|shortly|by_force|next",
)


def count(noun: Noun) -> str | None:
    """How many moves: "two", "three moves", "a single move"."""
    if noun.count is not None:
        return str(noun.count)
    single = noun.head == "move" and not noun.plural
    return "1" if noun.head == "one" or (single and noun.det in {"a", "1"}) else None


def following(noun: Noun) -> str | None:
    """ "The following move", "the very next move": mate in one."""
    near = {"next", "following"} & set(noun.adjectives)
    return "1" if noun.head == "move" and near else None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    spot = here.spot
    verb = slots.get("verb")
    if "ahead" in slots and (not supposed(here) or spot.board.in_check):
        raise Unread("it is said of the position shown")
    if verb is not None and verb.past:
        raise Unread("said of an earlier position")
    agent = here.agent(slots["agent"]) if slots.get("agent") not in _WHOEVER else None
    named = here.named(slots["move"]) if "move" in slots else agent.move if agent else None
    if named is not None:
        # "Qh5 mates in two" counts the move itself
        return [
            here.claim(KIND.id, named.side, spot=named.before, moves=_number(slots), by=named.uci)
        ]
    side: str | None
    if "allows" in slots and MOVE.fullmatch(str(slots["anything"])):
        allowed = here.named(slots["anything"])
        side, spot = other(allowed.side), allowed.after  # "axb4 walks into mate"
    elif "allows" in slots:
        side = other(here.mover)
    elif "ahead" in slots:
        side = None  # "if he takes, it's mate", whoever mates
    elif agent is not None:
        side = agent.side
    elif "side" in slots:
        side = here.side(slots["side"])
        if "loses" in slots:
            side = other(side)
    elif verb is not None and "impersonal" not in slots and "agent" not in slots:
        side = here.implied()
    else:
        side = None  # "mate in two", whoever mates
    return [here.claim(KIND.id, side, spot=spot, moves=_number(slots))]


def _number(slots: dict[str, Any]) -> int | None:
    if "n" not in slots and "next" not in slots:
        return None
    moves = int(slots.get("n") or slots["next"])
    if not 1 <= moves <= MOST:
        raise Unread(f"a mate in {moves} cannot be tried")
    return moves


def check(claim: Claim, ask: Ask) -> Judgement:
    if claim.side is None:
        either = [
            check(replace(claim, side=side), ask)
            for side in (claim.spot.board.turn, other(claim.spot.board.turn))
        ]
        return min(
            either, key=lambda j: [Outcome.HOLDS, Outcome.UNSETTLED, Outcome.FAILS].index(j.outcome)
        )
    side, limit, by = claim.side, claim.params["moves"], claim.params.get("by")
    spot = claim.spot
    sign = 1 if side == "white" else -1
    line = ask.move(spot, by) if by else ask.best(spot)
    if line is None:
        over = spot.board.is_checkmate and spot.board.turn != side
        said = Outcome.HOLDS if over else Outcome.FAILS
        return Judgement(
            said, "The game is over here." if not over else f"{title(side)} has already mated."
        )
    mate = line.mate * sign if line.mate is not None else None
    points = seen_from(side, line.points)
    if mate is not None and mate > 0 and (limit is None or mate <= limit):
        return Judgement(
            Outcome.HOLDS, f"{title(side)} mates in {mate}.", line.moves, spot, {"mate in": mate}
        )
    if limit is None:
        if points < 85:
            because = f"Best play shows no mate: {title(side)} scores {points} of 100."
            return Judgement(
                Outcome.FAILS,
                because,
                line.moves,
                spot,
                {"points": points},
                float(max(1, 85 - points)),
                f"{title(side)} does not mate by force.",
            )
        return Judgement(
            Outcome.UNSETTLED,
            f"{title(side)} is winning ({points} of 100), but no forced mate was found.",
            line.moves,
            spot,
            {"points": points},
            1.0,
        )
    forced, moves = _exhaust(claim, ask, side, limit)
    if forced:
        return Judgement(
            Outcome.HOLDS, f"{title(side)} mates in {limit}.", moves, spot, {"mate in": limit}
        )
    if forced is None:
        return Judgement(
            Outcome.UNSETTLED,
            f"No mate in {limit} was found, but not every defence could be tried.",
            line.moves,
            spot,
            {},
            1.0,
        )
    found = f" The shortest mate found takes {mate} moves." if mate is not None and mate > 0 else ""
    instead = (
        f"{title(side)} mates in {mate}."
        if mate is not None and mate > 0
        else f"{spot.board.san(by)} does not mate in {limit}."
        if by
        else f"{title(side)} has no mate in {limit} here."
    )
    return Judgement(
        Outcome.FAILS,
        f"Every move was tried: there is no mate in {limit}.{found}",
        line.moves,
        spot,
        {"tried": limit},
        None,
        instead,
    )


def _exhaust(claim: Claim, ask: Ask, side: str, limit: int) -> tuple[bool | None, tuple[str, ...]]:
    """Whether `side` mates in at most `limit` whatever the other does; exhaustive."""
    spot = claim.spot
    by = claim.params.get("by")
    if by is not None:
        return _after_any_reply((by,), spot.play(by), ask, limit - 1)
    if spot.board.turn == side:
        return ask.mate(spot, limit)
    return _after_any_reply((), spot, ask, limit)


def _after_any_reply(
    prefix: tuple[str, ...], spot: Any, ask: Ask, limit: int
) -> tuple[bool | None, tuple[str, ...]]:
    replies = spot.board.legal_moves()
    if not replies:
        return spot.board.is_checkmate, prefix
    if limit == 0:
        return False, ()
    shown: tuple[str, ...] = ()
    unknown = False
    for reply in replies:
        forced, line = ask.mate(spot.play(reply), limit)
        if forced is False:
            return False, ()
        unknown = unknown or forced is None
        shown = max(shown, (*prefix, reply, *line), key=len)
    return (None if unknown else True), shown


KIND = Kind(
    id="mate-in",
    title="Mate in n",
    version=2,
    definition="The side mates by force in at most n moves; it fails only when every move has been tried to that depth. Without a number: a forced mate is found, or the side does not even reach 85 of 100.",
    formula="holds: mate found in at most n moves; fails: every move tried to that depth without one",
    source="FIDE Laws of Chess, article 1.4.1, for mate; common practice for the count",
    frames=FRAMES,
    tests={
        "n": count,
        "next": following,
        "pointer": lambda n: n.text if n.head in {"it", "this", "that", "there"} else None,
    },
    flips=True,
    gives_way=frozenset({"by-force", "mate-threat"}),
    read=read,
    check=check,
    tactic="for",
)
