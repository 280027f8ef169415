"""Isolated pawns: no own pawn beside them."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from lineproof.claims.board import name
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import SLOTS, only_side, owning
from lineproof.claims.pawn_state import check_pawns, read_pawns, stated
from lineproof.claims.structure import beside, doubled, isolated, pawns
from lineproof.engine import Board

FRAMES = (
    *owning("isolated_pawn [{where}]"),
    "<be:isolate> {target}",
    "{side} <live with/put up with/cope with/contend with/accept/take on> isolated_pawn [{where}] if modal=must|can|may",
    "{target} <=> isolated_pawn",
    "{target} <=> (lone|lonely)",
    "{target} <=> orphan",
    "{target} <be> +alone",
    "{target} <be> on (own|lonesome)",
    "[{agent}] <isolate> {target}",
    "<*> isolated_pawn [{where}]",
    "{target} <have> {none} ; no=yes",
    "<be:isolate> {doubled}",
    "{doubled} <=> isolated_pawn",
    "<be:isolate> {targets}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    words = f" {here.said} "
    if "known" in slots and not {"side", "whose", "where", "file"} & slots.keys():
        with suppress(Unread):
            slots["target"] = stated(here, "the isolated pawn")
    if "doubled" in slots:
        slots["targets"] = _doubled(here, slots["doubled"])
    if "royal" in slots:
        slots["file"] = slots["royal"]
    claim = read_pawns(KIND.id, here, slots, isolated)
    named = " and " in slots.get("targets", slots.get("target", ""))
    if named and "doubled" not in slots and len(claim.params["pawns"]) > 1:
        return [  # each of those that are named
            here.claim(**{**_fields(claim), "pawns": (pawn,)}) for pawn in claim.params["pawns"]
        ]
    if " have " in words or " has " in words or " had " in words:
        neighbours = any(w in words for w in ("neighbour", "beside it", "adjacent"))
        if neighbours and "target" in slots:  # "has no neighbours" says that it is isolated
            return [here.claim(**{**_fields(claim), "negated": "no" not in slots})]
    return [claim]


def _doubled(here: Here, whose: str) -> str:
    """The doubled pawns in words, one by one.

    :raises Unread: when it is not clear whose.
    """
    side = (
        only_side(lambda s: doubled(here.board, s))
        if whose == "the"
        else here.side(whose.removesuffix(" 's"))
    )
    found = [at for two in doubled(here.board, side or "white").values() for at in two]
    if side is None or not found:
        raise Unread("it is not clear which doubled pawns are meant")
    return " and ".join(f"the pawn on {at}" for at in found)


def _fields(claim: Claim) -> dict[str, Any]:
    return {"kind": claim.kind, "side": claim.side, "spot": claim.spot, **claim.params}


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    return check_pawns(claim, isolated, "isolated", _reason)


def _reason(board: Board, side: str, at: str) -> str:
    near = pawns(board, side, beside(at[0]))
    if not near:
        files = " or ".join(f"{f}-" for f in beside(at[0]))
        return f"has no pawn of its side on the {files}file"
    return f"has {name(board, near[0])} on a neighbouring file"


KIND = Kind(
    id="isolated-pawn",
    title="Isolated pawn",
    version=1,
    definition="A pawn has no pawn of its own side on a neighbouring file.",
    source='"Isolated Pawn", Chess Programming Wiki (from memory)',
    slots={
        **SLOTS,
    },
    frames=FRAMES,
    tests={
        "doubled": lambda n: n.whose or "the" if n.head == "doubled pawn" and not n.no else None,
        "none": lambda n: n.head if n.no and n.head == "neighbour" else None,
    },
    read=read,
    check=check,
    flips=True,
)
