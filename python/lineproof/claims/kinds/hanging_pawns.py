"""Hanging pawns: two abreast with nobody beside them."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here
from lineproof.claims.kind import Kind
from lineproof.claims.owner import (
    SLOTS,
    brings,
    denied,
    either,
    named_after,
    only_side,
    owner,
    owning,
    pawns_meant,
)
from lineproof.claims.structure import hanging
from lineproof.claims.tense import answer, first, squares, when
from lineproof.claims.where import Where

FRAMES = (
    *owning("hanging_pawn [{where}]"),
    "{targets} <=> hanging_pawn",
    "<*> hanging_pawn [{where}]",
    "{side} <have> hanging pawn [{where}]",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    asked = when(here, slots, brings=brings(here, slots))
    at = named_after(here, slots)
    where = Where.read(slots.get("where"))
    pawns: tuple[str, ...] = ()
    side: str | None = None
    if "target" in slots or "targets" in slots:
        side, meant = pawns_meant(here, slots.get("targets", slots.get("target", "")))
        pawns = tuple(meant)
    elif here.said.split()[0] != "these" and not ("agent" in slots and "side" not in slots):
        told = where.squares and not {"side", "whose"} & slots.keys()  # the squares tell whose
        side = None if told else owner(here, slots)
    if side is None:
        side = only_side(lambda s: hanging(at.board, s))
    return [
        here.claim(
            KIND.id,
            side,
            spot=at.spot,
            negated=denied(slots),
            when=asked,
            where=where,
            pawns=pawns,
        )
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params

    def fitting(spot: Spot) -> list[tuple[str, tuple[str, str]]]:
        return [
            (side, two)
            for side in either(claim.side)
            for two in hanging(spot.board, side)
            if all(p["where"].holds(at) for at in two) and set(p["pawns"]) <= set(two)
        ]

    spot, found = first(claim, fitting)
    if found:
        side, two = found[0]
        because = f"{title(side)}'s pawns on {two[0]} and {two[1]} stand abreast, with no own pawn on the files beside them and no enemy pawn on their files."
        return answer(claim, True, because, at=spot, marks=squares(two, side))
    whose = " or ".join(title(side) for side in either(claim.side))
    because = f"{whose} has no two pawns{p['where']} that stand abreast on half-open files with nobody beside them."
    sides = either(claim.side)
    none = len(sides) == 1 and not hanging(claim.spot.board, sides[0])
    instead = f"{whose} has no hanging pawns." if none else None
    return answer(claim, False, because, instead=instead)


KIND = Kind(
    id="hanging-pawns",
    title="Hanging pawns",
    version=1,
    definition="Two own pawns stand abreast on their fourth rank or further, each alone on its file, with no own pawn on the files beside the two and no enemy pawn on their files.",
    source="Nimzowitsch, My System (from memory)",
    slots=SLOTS,
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
