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
    named_after,
    named_side,
    owner,
    owning,
)
from lineproof.claims.tense import When, answer, first, spots, squares, when
from lineproof.engine import Board

FRAMES = (
    *owning("bishop_pair"),
    "{side} <have> {pair} if without=of",
    "{side} <have> {both_bishops}",
    "[{agent}] <surrender> bishop_pair ; gives=yes",
    "[{agent}] <surrender> {pair} ; gives=yes if without=of",
    "bishop_pair <be> asset [for {side}]",
    "[{agent}] <let to have/let to keep> bishop_pair",
    "<*> bishop_pair",
    "{side} <have> {edge} of bishop_pair ; advantage=yes",
    "[{agent}] <surrender/lose/give_back> bishop_pair for {anything} ; gives=yes",
    "[{agent}] <lose> bishop_pair ; gives=yes",
    "[{agent}] <cost> {side} bishop_pair ; gives=yes lost=yes",
    "[{agent}] <win> {side} bishop_pair ; wins=yes",
    "[{agent}] <win> bishop_pair [for {side}] ; wins=yes",
    "{side} <console> bishop_pair if modal=can|may|",
    "bishop_pair <be> {theirs}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "theirs" in slots:
        slots["side"] = {"ours": "we", "mine": "we"}.get(slots["theirs"], "he")
    if "known" in slots and not {"side", "whose"} & slots.keys():
        raise Unread("it is not clear who has it")
    if "gives" in slots:
        return [_given_up(here, slots)]
    wins = "wins" in slots
    asked = when(here, slots, brings=brings(here, slots) or wins)
    at = named_after(here, slots)
    side: str | None
    if "agent" in slots and "side" not in slots:
        side = here.agent(slots["agent"]).side
    else:
        side = owner(here, slots)
    # what is given or gained is an advantage over the other side
    alone = "advantage" in slots or asked is When.SOON
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
    slots={
        **SLOTS,
    },
    frames=FRAMES,
    tests={
        "theirs": lambda n: n.head if n.type == "pronoun" and n.head in {"his", "ours", "theirs", "mine"} else None,
        
        "edge": lambda n: (
            n.head if n.head in {"advantage", "edge", "plus", "asset", "luxury", "joy"} else None
        ),
        "pair": lambda n: n.head if n.head == "pair" and n.det == "the" else None,
        "both_bishops": lambda n: n.head if n.type == "piece" and n.head == "bishop" and n.plural and (n.det in {"both", "both of", "the 2", "2"} or n.count == 2) else None,},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
