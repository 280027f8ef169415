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
    named_after,
    only_side,
    owner,
    owning,
    pawns_meant,
)
from lineproof.claims.structure import doubled, isolated
from lineproof.claims.tense import answer, first, squares, when
from lineproof.claims.where import Where

FRAMES = (
    "<be:double> {their_pawns} [{where}]",
    *owning("doubled_pawn [{where}]"),
    "<be:double> {target}",
    "{side} <live with/put up with/cope with/contend with/accept/take on> doubled_pawn [{where}] if modal=must|has|can|may",
    "{target} <=> doubled_pawn",
    "<*> doubled_pawn [{where}]",
    "<be:double> {file_pawns}",
    "{file_pawns} <=> doubled_pawn",
    "[{agent}] <double> {whose_pawns} [{where}] ; causes=yes",
    "{side} <have> {sets} of doubled_pawn",
    "{side} <have> {tripled} [{where}]",
    "{side} <have> {isolated} [{where}]",
    "<~> {tripled} [{where}]",
    "doubled_pawn <be/remain/arise> [{where}] ; impersonal=yes",
)


_WINGS = frozenset({"kingside", "queenside"})


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if slots.get("side", "") in {
        "both sides",
        "both players",
        "both camps",
        "each side",
        "each player",
    }:
        return [c for side in ("white", "black") for c in read(here, {**slots, "side": side})]
    if "their_pawns" in slots:
        slots["whose"], wing = slots["their_pawns"].split("|")
        if wing:
            slots["where"] = f"on the {wing}"
    if "file_pawns" in slots:
        slots["file"] = slots["file_pawns"]
    if "whose_pawns" in slots:
        slots["whose"], _, file = slots["whose_pawns"].partition("|")
        if file:
            slots["file"] = file
    if "sets" in slots:
        slots["n"] = slots["sets"]
    causes = "causes" in slots or brings(here, slots)
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
            files=int(slots.get("n", 1)), tripled="tripled" in slots, isolated="isolated" in slots,
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
        instead = f"{title(side)} has {'tripled' if p['tripled'] else 'doubled'} pawns."
        return answer(claim, True, because, at=spot, marks=squares(at, side), instead=instead)
    board = claim.spot.board
    there = {s: [a for two in doubled(board, s).values() for a in two] for s in either(claim.side)}
    said = [
        f"{title(s)} has {names(board, at) + ' doubled' if at else 'no two pawns on one file'}"
        for s, at in there.items()
    ]
    none = [f"{title(s)} has no doubled pawns." for s, at in there.items() if not at]
    plain = none[0] if len(none) == len(there) == 1 else None
    return answer(claim, False, f"{', and '.join(said)}.", instead=plain)


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
    slots={
        **SLOTS,
    },
    frames=FRAMES,
    tests={
        "their_pawns": lambda n: (
            f"{n.whose}|{next((a for a in n.adjectives if a in _WINGS), '')}"
            if n.type == "piece"
            and n.head == "pawn"
            and n.plural
            and n.whose
            and not (n.file or n.square or n.parts)
            else None
        ),
        "file_pawns": lambda n: (
            n.file
            if n.type == "piece" and n.head == "pawn" and n.plural and n.file and not n.whose
            else None
        ),
        "whose_pawns": lambda n: (
            f"{n.whose}|{n.file or ''}"
            if n.type == "piece" and n.head == "pawn" and n.whose and not n.parts
            else None
        ),
        "sets": lambda n: str(n.count) if n.head in {"set", "pair"} and n.count else None,
        "tripled": lambda n: (
            n.head
            if n.head in {"pawn", "doubled pawn"} and {"tripled", "trebled"} & set(n.adjectives)
            else None
        ),
        "isolated": lambda n: (
            n.head if n.head == "doubled pawn" and "isolated" in n.adjectives else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
