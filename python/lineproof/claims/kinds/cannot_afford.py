"""Moves that a side would like to play and cannot afford."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import edge_of_two
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, taught, told, weigh
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import PLAYED, castling, played

LEAST = 10
"""Points that a move costs at least which a side cannot afford."""

PHRASES = (
    "{side} <afford> {agent} [here|now|yet]",
    "{side} <afford> to (play {agent}|{castle}) [here|now|yet]",
    "{side} <have/have got> [{very}] (no|not the|not enough|not) time (for {agent}|to play {agent}|to {castle}) [here|now|yet]",
    "{side} <have/have got> [{very}] [the] time (for {agent}|to play {agent}|to {castle}) [here|now|yet]",
    "{side} <allow/permit> (himself|herself|ourselves|yourself|themselves) {agent} [here|now|yet]",
    "there <be> [{very}] no time (for {agent}|to play {agent}|to {castle}) [here|now|yet]",
    "(there is|there 's) not [{very}] [the|enough] time (for {agent}|to play {agent}|to {castle}) [here|now|yet]",
    "{agent} <be> [{very}] (too slow|a luxury|too leisurely|much too slow|far too slow|a luxury that {side} can not afford|too expensive) [here|now] [for {side}]",
    "{agent} <take> too long [here|now]",
    "{side} would [{very}] (love|like) to (play {agent}|{castle}) [,] but (can not|{side} can not)",
    "{side} 'd [{very}] (love|like) to (play {agent}|{castle}) [,] but (can not|{side} can not)",
    "no time for {agent}",
)


FRAMES = (
    "{side} <afford> {agent} ; negated=yes lacks=yes",
    "{side} <have> time for {agent} ; negated=yes lacks=yes",
    "<~> time for {agent} ; negated=yes lacks=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    side = here.side(slots["side"]) if "side" in slots else None
    if "castle" in slots:
        move: Named = castling(here, side or here.board.turn)
    else:
        move = played(here, slots["agent"])
    if side is not None and side != move.side:
        raise Unread("the move is not that side's")
    return [
        here.claim(
            KIND.id, move.side, spot=move.before, negated="lacks" not in slots and _LACKS.search(here.said) is None, move=move.uci
        )
    ]  # fmt: skip


_LACKS = re.compile(
    r"\bno time\b|(?:not|n['’]t) (?:the |enough )?time\b|\btoo\b|\bluxury\b|(?:love|like) to\b"
)
"""Words that say by themselves that the move costs too much; "afford" needs a "not", which the reader turns round."""


def outcome(best: int, points: int) -> Outcome:
    """What best and played say of a move that is said to be too costly."""
    if best < LOST:
        return Outcome.UNSETTLED
    return Outcome.HOLDS if best - points >= LEAST else Outcome.FAILS


def check(claim: Claim, ask: Ask) -> Judgement:
    move = claim.params["move"]
    cost = weigh(ask, claim.spot, move)
    said = outcome(cost.best, cost.played)
    because, second = told(cost), taught(cost, claim.spot)
    if cost.best < LOST:
        because = f"{title(cost.side)} is lost whatever he plays ({cost.best} of 100), so what {cost.san} costs is not counted."
    return Judgement(
        said, because, cost.line, claim.spot, cost.numbers, edge_of_two(cost.best, cost.played, outcome),
        f"{title(cost.side)} can afford {cost.san}." if said is Outcome.FAILS else None,
        marks=(Mark("move", (move[:2], move[2:4]), cost.side),), second=second,
    )  # fmt: skip


KIND = Kind(
    id="cannot-afford",
    title="Cannot afford",
    version=1,
    definition="The move is legal and costs its side 10 points or more, each move searched alone at the same nodes. With the best move below 15 points nothing is counted.",
    formula=f"cost = best - played; holds: cost >= {LEAST}; unsettled: best < {LOST}; fails: cost < {LEAST}",
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={"castle": {k: k for k in ("castle", "get castled", "castle now")}},
    vocabulary=frozenset(
        [
            "afford",
            "affords",
            "afforded",
            "time",
            "slow",
            "luxury",
            "leisurely",
            "long",
            "love",
            "like",
            "allow",
            "allows",
            "permit",
            "permits",
            "expensive",
        ]
    ),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
