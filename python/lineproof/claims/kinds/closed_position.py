"""Closed positions."""

from __future__ import annotations

from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.openness import described, is_closed_position
from lineproof.claims.reference import Reference
from lineproof.claims.tense import answer, first, when

_CLOSED = "(closed|locked|blocked|closed up|locked up|jammed|locked tight|completely closed|completely blocked|completely locked|shut)"


FRAMES = (
    "(position|centre|game|everything|play) <=> closed",
    "<be:close> (position|centre|game|everything) [{tight}]",
    "[{agent}] <close> (centre|position) [{tight}] [(with|by) {move}]",
    "<be:close> {pawns} [{tight}] [+together]",
    "[{agent}] <~> closed position",
    "[{agent}] <~> closed centre",
    "(position|centre|game) <have/accept> {character}",
    "(position|centre|game) <take> {character} +on",
    "(position|centre|game) <take on> {character}",
    "(position|centre|game) <be> of {character}",
    "{it} <=> closed",
    "<be:close> {it} [{tight}]",
    "<*> closed position",
    "<*> closed centre",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if slots.get("agent") in {"it", "this", "that"}:
        del slots["agent"]  # "this is an open game"
    asked = when(here, slots)
    if "it" in slots and here.topic is not None and not Reference.read(here.topic).plural:
        raise Unread("it is not clear what is closed")
    if "move" in slots and here.standing(slots["move"]) is None:
        here = here.at(here.named(slots["move"]).after)
    elif "agent" in slots:
        here = here.at(here.agent(slots["agent"]).spot)
    return [
        here.claim(KIND.id, None, when=asked, game="game" in slots or " game" in f" {here.said}")
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    def fitting(spot: Spot) -> bool:
        return is_closed_position(spot.board)

    spot, found = first(claim, fitting)
    if found:
        return answer(
            claim, True, described(spot.board), at=spot, instead="The position is closed."
        )
    if claim.params["game"] and claim.spot.moves[:2] == ("d2d4", "d7d5"):
        because = "1. d4 d5 is what handbooks call a closed game, whatever becomes of the centre."
        return answer(claim, True, because)
    return answer(claim, False, described(claim.spot.board), instead="The position is not closed.")


KIND = Kind(
    id="closed-position",
    title="Closed position",
    version=1,
    definition="Neither the d- nor the e-file is open, and at least two pairs of pawns of the c- to f-files stand face to face, one of them on the d- or e-file; said of the centre it means the same. 'A closed game' may also be the family of openings that begin with 1. d4 d5.",
    source="common practice; the numbers are ours",
    slots={
        "game": {"game": True},
        "tight": dict.fromkeys(("tight", "solid", "shut", "fast", "up", "off"), True),
        "centre": dict.fromkeys(("the centre", "the center", "the middle"), True),
    },
    frames=FRAMES,
    tests={
        "it": lambda n: n.head if n.head in {"it", "this"} and n.type == "pronoun" else None,
        "pawns": lambda n: n.head if n.head in {"chain", "pawn chain"} and n.plural else None,
        "character": lambda n: n.head if n.head in {"character", "nature", "type"} and "closed" in n.adjectives else None,},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
