"""The bishop pair: both bishops."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bishops import has_pair
from lineproof.claims.board import name, names, other, pieces, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import (
    SLOTS,
    brings,
    denied,
    having,
    named_after,
    named_side,
    owner,
    owning,
)
from lineproof.claims.tense import When, answer, first, spots, squares, when
from lineproof.engine import Board

_PAIR = "(bishop pair|pair of bishops|2 bishops|bishops pair)"
PHRASES = (
    *having(f"[{{no}}|the|a|his|her|our|your|their|both|{{alone}}] {_PAIR}"),
    *having("both [his|her|our|your|their|of his|of her] bishops"),
    *having("the {advantage} of (the bishop pair|the 2 bishops|the pair of bishops)"),
    f"{{side}} {{gives}} [{{very}}] (the|his|her|our|your|their) {_PAIR} [for {{price}}]",
    f"(giving up|surrendering|losing|parting with) (the|his|her|our|your|their) {_PAIR}",
    f"(this|that|it|{{move}}|{{described}}) {{gives}} [{{very}}] (the|his|her|our|your|their) {_PAIR}",
    f"(this|that|it|{{move}}|{{described}}) (costs|cost|has cost) {{side}} (the|his|her|our|your|their) {_PAIR}",
    f"[{{agent}}] <win/secure/grab/bag/gain> [{{side}}] (the|a) {_PAIR}",
    f"<ing:win/secure/grab/gain> (the|a) {_PAIR}",
    f"[{{agent}}] <win/secure/gain> (the|a) {_PAIR} for {{side}}",
    f"(the|both) {_PAIR} <be> [{{very}}] (on|with) {{whose}} side",
)  # fmt: skip


FRAMES = (
    *owning("bishop_pair"),
    "{side} <have> {pair} ; without=of",
    "{side} <have> {both_bishops}",
    "[{agent}] <surrender> bishop_pair ; gives=yes",
    "[{agent}] <surrender> {pair} ; without=of gives=yes",
    "bishop_pair <be> asset [for {side}]",
    "<*> bishop_pair",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "known" in slots and not {"side", "whose"} & slots.keys():
        raise Unread("it is not clear who has it")
    lost = "gives" in slots or any(
        w in f" {here.said} " for w in (" giving up ", " surrendering ", " losing ", " parting ", " costs ", " cost ")
    )  # fmt: skip
    if lost:
        return [_given_up(here, slots)]
    wins = any(w in here.said for w in ("win", "secur", "grab", "bag", "gain"))
    asked = when(here, slots, brings=brings(here, slots) or wins)
    at = named_after(here, slots)
    side: str | None
    if "agent" in slots and "side" not in slots:
        side = here.agent(slots["agent"]).side
    else:
        side = owner(here, slots)
    # what is given or gained is an advantage over the other side
    alone = "alone" in slots or "advantage" in slots or asked is When.SOON
    return [
        here.claim(
            KIND.id, side, spot=at.spot, negated=denied(slots), when=asked, alone=alone, lost=False
        )
    ]


def _given_up(here: Here, slots: dict[str, Any]) -> Claim:
    """ "White gives up the bishop pair": denied of the side, and looked for after the recapture."""
    spot = here.spot
    if "move" in slots:
        move = here.named(slots["move"])
        spot, side = move.after, move.side
    elif "described" in slots:
        side = here.described(slots["described"]).side
    elif "side" in slots:
        side = named_side(here, slots["side"])
    elif "agent" in slots:
        agent = here.agent(slots["agent"])
        spot, side = agent.spot, agent.side
    elif here.said.split()[0] in {"this", "that", "it"}:
        side = here.last().side
    else:
        side = here.implied()
    return here.claim(KIND.id, side, spot=spot, negated=True, when=When.SOON, alone=False, lost=True)  # fmt: skip


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    side = claim.side or "white"
    p = claim.params
    if p["lost"]:
        return _kept(claim, side)

    def fitting(spot: Spot) -> bool:
        mine = has_pair(spot.board, side)
        return mine and not (p["alone"] and has_pair(spot.board, other(side)))

    spot, found = first(claim, fitting)
    board = spot.board if found else claim.spot.board
    mine, enemy = pieces(board, side, "b"), other(side)
    second = None
    if found:
        because = f"{title(side)} has {names(board, mine)}."
        if has_pair(board, enemy):
            second = f"{title(enemy)} has both bishops too."
        return answer(claim, True, because, at=spot, marks=squares(mine, side), second=second)
    if has_pair(board, side):
        because = f"Both sides have both bishops: {names(board, [*mine, *pieces(board, enemy, 'b')])}."  # fmt: skip
    else:
        because = _bishops(board, side)
    return answer(claim, False, because, marks=squares(mine, side))


def _kept(claim: Claim, side: str) -> Judgement:
    """Whether the side keeps the pair that it is said to give up: nowhere soon has it lost it."""
    gone = [spot for spot in spots(claim) if not has_pair(spot.board, side)]
    had = any(has_pair(board, side) for board in claim.spot.boards)
    if gone and had:
        return answer(claim, False, _bishops(gone[0].board, side), at=gone[0])
    if not had:
        return answer(claim, True, f"{title(side)} had no bishop pair to give up.")
    return answer(claim, True, f"{title(side)} keeps {names(claim.spot.board, pieces(claim.spot.board, side, 'b'))}.")  # fmt: skip


def _bishops(board: Board, side: str) -> str:
    mine = pieces(board, side, "b")
    if not mine:
        return f"{title(side)} has no bishop."
    return f"{upper(name(board, mine[0]))} is {title(side)}'s only bishop."


KIND = Kind(
    id="bishop-pair",
    title="Bishop pair",
    version=1,
    definition="A side has a bishop on each colour. 'The advantage of the bishop pair', and getting or giving it, asks in addition that the other side has not; where both have it, a second finding says so. Giving it up is looked for here and within two plies of the line shown, or after the recapture where none is shown.",
    source='"Bishop Pair", Chess Programming Wiki (from memory)',
    phrases=PHRASES,
    slots={
        **SLOTS,
        "advantage": dict.fromkeys(("advantage", "asset", "luxury", "plus"), True),
        "alone": dict.fromkeys(("the only",), True),
        "gives": dict.fromkeys(("gives up", "give up", "has given up", "have given up", "surrenders", "surrender", "has surrendered", "loses", "lose", "has lost", "have lost", "parts with", "part with", "has parted with", "gives away", "concedes", "has conceded"), True),
        "price": dict.fromkeys(("a knight", "the knight", "doubled pawns", "the initiative", "a pawn", "development", "structure", "a better structure", "the better structure"), True),
    },
    vocabulary=frozenset({"bishop", "bishops", "pair"}),
    frames=FRAMES,
    tests={"pair": lambda n: n.head if n.head == "pair" and n.det == "the" else None,
        "both_bishops": lambda n: n.head if n.type == "piece" and n.head == "bishop" and n.plural and (n.det in {"both", "both of", "the 2", "2"} or n.count == 2) else None,},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
