"""Open positions."""

from __future__ import annotations

from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.openness import described, is_open_position
from lineproof.claims.tense import answer, first, when

FRAMES = (
    "(position|centre|game|everything|play) <=> open",
    "<be:open> (position|centre|game)",
    "(position|game|centre) <open>",
    "[{agent}] <~> open position",
    "[{agent}] <~> open centre",
    "(position|centre|game) <have/accept> {character}",
    "(position|centre|game) <take> {character} +on",
    "(position|centre|game) <take on> {character}",
    "(position|centre|game) <be> of {character}",
    "<*> open position",
    "<*> open centre",
    "{it} <=> open",
    "{lines} <=> open",
    "{side} <meet/find> {more_open} than {it} if negated modal=will|can|could",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "opening" in here.said.split():
        raise Unread("an opening is named")
    if slots.get("agent") in {"it", "this", "that"}:
        del slots["agent"]  # "this is an open game"
    asked = when(here, slots, brings="lead" in here.said)
    if slots.get("it") and "more_open" not in slots and here.topic is not None:
        raise Unread("it is not clear what is open")
    if "agent" in slots:
        here = here.at(here.agent(slots["agent"]).spot)
    return [
        here.claim(KIND.id, None, when=asked, game="game" in slots or " game" in f" {here.said}")
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    def fitting(spot: Spot) -> bool:
        return is_open_position(spot.board)

    spot, found = first(claim, fitting)
    if found:
        return answer(claim, True, described(spot.board), at=spot, instead="The position is open.")
    if claim.params["game"] and claim.spot.moves[:2] == ("e2e4", "e7e5"):
        because = "1. e4 e5 is what handbooks call an open game, whatever becomes of the centre."
        return answer(claim, True, because)
    return answer(claim, False, described(claim.spot.board), instead="The position is not open.")


KIND = Kind(
    id="open-position",
    title="Open position",
    version=1,
    definition="A d- or e-pawn of either side has left its file and no two pawns of the c- to f-files stand face to face, or the d- or e-file is open and at most one such pair does; said of the centre it means the same. 'An open game' may also be the family of openings that begin with 1. e4 e5.",
    source="common practice; the numbers are ours",
    slots={"game": {"game": True}},
    frames=FRAMES,
    tests={
        "character": lambda n: (
            n.head if n.head in {"character", "nature", "type"} and "open" in n.adjectives else None
        ),
        "it": lambda n: (
            n.head if n.head in {"it", "this", "everything"} and n.type == "pronoun" else None
        ),
        "lines": lambda n: (
            n.head
            if n.head in {"line", "file", "diagonal"}
            and n.plural
            and n.det in {"all", "all of", "all the", "every"}
            else None
        ),
        "more_open": lambda n: (
            n.head
            if n.head in {"position", "game"} and {"more", "open"} <= set(n.adjectives)
            else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
