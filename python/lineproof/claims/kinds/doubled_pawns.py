"""Doubled pawns: two of a side on one file."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import names, title
from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import (
    SLOTS,
    agreeing,
    brings,
    denied,
    either,
    having,
    named_after,
    only_side,
    owner,
    owning,
    pawns_meant,
)
from lineproof.claims.structure import doubled, isolated
from lineproof.claims.tense import answer, first, squares, when
from lineproof.claims.where import WHERE, Where

_NOUN = "[{quality}] (doubled|{tripled}) [{quality}] [{file}] (pawn|pawns) [{where}]"
PHRASES = (
    *having(f"[{{no}}|a|any|the|these|those|his|her|our|your|their|2|a pair of|a set of] {_NOUN}"),
    f"{{side}} <have/get/keep> [{{very}}] {{n}} (sets|pairs) of {_NOUN}",
    "[{agent}] <double> ({whose}|the|white|black) [{file}] pawns [{where}]",
    "[{agent}] <double> ({whose}|the|white|black) [{file}] pawns [{where}] for {side}",
    "<ing:double> ({whose}|the) [{file}] pawns [{where}]",
    "({whose}|the|both|these|those) [{file}] pawns <be> [{very}] (doubled|{tripled}) [{where}]",
    "{targets} <be> [{very}] (doubled|doubled pawns) [{where}]",
    "{target} <be> [{very}] a doubled pawn",
    f"[{{agent}}] <create/produce/inflict/cause> {_NOUN} [(for|on) {{side}}|in {{whose}} (position|camp|structure)]",
    f"<ing:create/inflict> {_NOUN} [(for|on) {{side}}|in {{whose}} (position|camp|structure)]",
)


FRAMES = (
    *owning("doubled_pawn [{where}]"),
    "<be:double> {target}",
    "{target} <=> doubled_pawn",
    "<*> doubled_pawn [{where}]",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if slots.get("side", "") in {"both sides", "both players", "both camps"}:
        return [c for side in ("white", "black") for c in read(here, {**slots, "side": side})]
    causes = "agent" in slots or brings(here, slots) or "doubling" in here.said.split()
    causes = causes or " doubles " in f" {here.said} "
    asked = when(here, slots, brings=causes)
    at = named_after(here, slots)
    where = Where.read(slots.get("file"), slots.get("where"))
    pawns: list[str] = []
    if "target" in slots or "targets" in slots:
        side, pawns = pawns_meant(here, slots.get("targets", slots.get("target", "")))
        agreeing(here, len(pawns))
        whose: str | None = side
    elif "side" in slots or "whose" in slots:
        whose = owner(here, slots)
        _not_himself(slots)
    elif causes or where.files or where.squares:
        whose = None
    else:
        whose = owner(here, slots)
    if whose is None:
        board = at.board
        whose = only_side(lambda s: any(where.holds(two[0]) for two in doubled(board, s).values()))
    return [
        here.claim(
            KIND.id, whose, spot=at.spot, negated=denied(slots), when=asked, where=where, pawns=tuple(pawns),
            files=int(slots.get("n", 1)), tripled="tripled" in slots, isolated=slots.get("quality") == "isolated",
        )
    ]  # fmt: skip


def _not_himself(slots: dict[str, Any]) -> None:
    """ "White doubles his pawns": the pawns may be anybody's.

    :raises Unread: when a side is named and then pointed back at.
    """
    who, whose = slots.get("agent"), slots.get("whose", "").strip()
    if who in {"white", "black"} and whose in {"his", "her", "their"}:
        raise Unread(f"{whose!r} can mean either side here")


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params

    def fitting(spot: Spot) -> list[tuple[str, list[str]]]:
        found: list[tuple[str, list[str]]] = []
        for side in either(claim.side):
            files = [at for at in doubled(spot.board, side).values() if _fits(p, spot, side, at)]
            if p["pawns"]:
                files = [at for at in files if set(at) & set(p["pawns"])]
                if not set(p["pawns"]) <= {a for at in files for a in at}:
                    continue
            if len(files) >= p["files"]:
                found.extend((side, at) for at in files)
        return found

    spot, found = first(claim, fitting)
    if found:
        side, at = found[0][0], [a for _, two in found for a in two]
        because = f"{title(side)} has {'three' if p['tripled'] else 'two'} pawns on one file: {names(spot.board, at)}."
        return answer(claim, True, because, at=spot, marks=squares(at, side))
    board = claim.spot.board
    there = {s: [a for two in doubled(board, s).values() for a in two] for s in either(claim.side)}
    said = [
        f"{title(s)} has {names(board, at) + ' doubled' if at else 'no two pawns on one file'}"
        for s, at in there.items()
    ]
    return answer(claim, False, f"{', and '.join(said)}.")


def _fits(p: Any, spot: Spot, side: str, at: list[str]) -> bool:
    if p["tripled"] and len(at) < 3:
        return False
    if p["isolated"] and not set(at) <= set(isolated(spot.board, side)):
        return False
    where: Where = p["where"]
    return not any(not where.holds(a) for a in at) if not where.squares else set(where.squares) <= set(at)  # fmt: skip


KIND = Kind(
    id="doubled-pawns",
    title="Doubled pawns",
    version=1,
    definition="A side has two pawns or more on one file (three: tripled). What a move gives is looked for here and within two plies of the line shown, or after the recapture where none is shown.",
    source='"Doubled Pawn", Chess Programming Wiki (from memory)',
    phrases=PHRASES,
    slots={
        **SLOTS,
        "quality": {
            **dict.fromkeys(("ugly", "weak", "nasty", "lasting", "permanent", "broken"), "weak"),
            "isolated": "isolated",
        },
        "tripled": {"tripled": True, "trebled": True},
    },
    patterns={"where": WHERE},
    vocabulary=frozenset({"doubled", "doubles", "double", "doubling", "tripled", "trebled"}),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
