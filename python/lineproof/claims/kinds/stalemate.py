"""Stalemate."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import other, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.pointing import checked_side, present

FRAMES = (
    "<be:stalemate> {side}",
    "<be:stalemate> {king}",
    "<be:stalemate> {side} with {men}",
    "<be:stalemate> {king} with {men}",
    "[{agent}] <~> stalemate",
    "[{agent}] <~> draw by stalemate",
    "(game|position|result|end) <=> stalemate",
    "(game|position|line) <end> in stalemate",
    "(game|position|line) <end_in> stalemate",
    "{agent} <stalemate> {side}",
    "{agent} <stalemate> {king}",
    "{side} <=> in stalemate",
    "{side} <have> {none} ; moveless=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb)
    spot = here.spot
    if "move" in slots:
        spot = here.named(slots["move"]).after
    elif "agent" in slots:
        agent = here.agent(slots["agent"])
        spot = agent.spot
        if spot.board.turn == agent.side:
            raise Unread("the move that gives stalemate is not on the board")
    side = spot.board.turn
    if "agent" in slots and slots.get("side") in {"he", "him", "her", "they", "them"}:
        pass  # "f4 leaves him stalemated": the one who then is to move
    elif "side" in slots:
        side = here.side(slots["side"])
    elif "king" in slots:
        side = checked_side(here.at(spot), slots["king"])
    if "moveless" in slots and spot.board.in_check:
        raise Unread("without a legal move it is mate")
    return [here.claim(KIND.id, side, spot=spot)]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board = claim.spot.board
    side = claim.side or "white"
    legal = board.legal_moves()
    holds = board.turn == side and not legal and not board.in_check
    if holds:
        because = f"{title(side)} is not in check and has no legal move."
    elif board.turn != side:
        because = f"It is {title(other(side))}'s move, so {title(side)} cannot be stalemated."
    elif board.in_check:
        because = f"{title(side)} is in check" + (", and it is mate." if not legal else ".")
    else:
        because = f"{title(side)} can still play {' or '.join(board.san(m) for m in legal[:3])}."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        {"legal moves": len(legal)},
        instead=None if holds else because,
    )


KIND = Kind(
    id="stalemate",
    title="Stalemate",
    version=1,
    definition="The side to move is not in check and has no legal move (FIDE Laws of Chess 5.2.1).",
    source="FIDE Laws of Chess, article 5.2.1",
    frames=FRAMES,
    tests={
        "men": lambda n: n.text if n.type == "piece" else None,
        "none": lambda n: (
            n.text if n.no and n.head == "move" and {*n.adjectives} <= {"legal", "single"} else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
