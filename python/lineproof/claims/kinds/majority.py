"""Majorities: more pawns than the other side on a wing."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import name, other, title
from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.owner import (
    SLOTS,
    brings,
    denied,
    named_after,
    only_side,
    owner,
    owning,
)
from lineproof.claims.structure import WINGS, doubled, isolated, pawns
from lineproof.claims.tense import answer, first, squares, when
from lineproof.claims.where import Where
from lineproof.engine import Board

FRAMES = (
    *owning("majority on {wing}"),
    *owning("wing majority"),
    "{side} <have> more pawn on {wing}",
    "{side} <have> {n} (against|to|versus|vs) {m} on {wing}",
    "<~> {n} (against|to|versus|vs) {m} on {wing} [for {side}]",
    "{side} <have> {flank} [of {n}] [(to|against) {m}]",
    "{side} <have> majority of {n} (to|against) {m} on {wing}",
    "{side} <have> preponderance",
    "{side} <have> extra_pawn on {wing}",
    "{side} <outnumber> {than} on {wing}",
    "{side} <outnumber> {than} {to_count} [(on|in) {wing}]",
    "{counted_wing} <meet> {m}",
    "{side} <be> {a_pawn} (on|in) {wing} +up",
    "{flank} <belong to> {side}",
    "<~> {flank} for {side}",
    "<*> preponderance [{where}]",
    "<*> {held_wing}",
    "{side} <push/advance/use> majority (on|in) {wing} if modal=can|may|",
    "{counted} <meet> {m} on {wing}",
    "<be:meet> {counted} by {m} on {wing}",
    "{side} <have> {sound} [(on|in) {wing}]",
    "{held} <=> {quality}",
    "{held} <=> {quality} (on|in) {wing}",
    "<~> {sound} (on|in) {wing} [for {side}]",
    "<be:crippled/cripple/damage/break/devalue/devalued/damaged> {held} ; quality=crippled",
    "{side} <console> {n} (against|to|versus) {m} on {wing} if modal=can|may|",
    "{side} <console> majority on {wing} if modal=can|may|",
    "{side} <console> {flank} if modal=can|may|",
    "{side} <outnumber> {than} {n} to {m} on {wing}",
)


_NUMBERS = frozenset({"two", "three", "four", "five", "six"})


def _count(noun: Noun) -> str | None:
    """How many pawns: "three pawns", "three of ours", "our one"."""
    if noun.type == "piece" and noun.head != "pawn":
        return None
    return str(noun.count) if noun.count is not None else "1" if noun.head == "one" else None


_QUALITIES = {
    **dict.fromkeys(("healthy", "sound", "good", "intact", "mobile"), "healthy"),
    **dict.fromkeys(("crippled", "damaged", "broken", "worthless", "devalued", "doubled"), "crippled"),
}  # fmt: skip


def _sound(noun: Noun) -> str | None:
    """What a majority is called, and its wing: "healthy|kingside"."""
    called = next((_QUALITIES[a] for a in noun.adjectives if a in _QUALITIES), None)
    return f"{called}|{_flank(noun)}" if noun.head == "majority" and called else None


def _flank(noun: Noun) -> str:
    return next((a for a in noun.adjectives if a in {"kingside", "queenside", "central"}), "")


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "extra pawn" in here.said and not {"wing", "where"} & slots.keys():
        raise Unread("an extra pawn is counted on the whole board")
    asked = when(here, slots, brings=brings(here, slots))
    at = named_after(here, slots)
    if "sound" in slots:
        slots["quality"], flank = slots["sound"].split("|")
        slots.setdefault("wing", flank or None)
    if "held_wing" in slots:
        slots["held"] = slots["held_wing"]
    if "held" in slots:
        slots["whose"], flank = slots["held"].split("|")
        slots.setdefault("wing", flank or None)
    if "to_count" in slots:
        slots["n"], slots["m"] = slots["to_count"].split(" to ")
    if "counted_wing" in slots:
        slots["whose"], slots["n"], slots["wing"] = slots["counted_wing"].split("|")
    numbers = (int(slots["n"]), int(slots["m"])) if "n" in slots and "m" in slots else None
    wing = Where.read(slots.get("wing") or slots.get("flank"), slots.get("where")).wing
    if "known" in slots and wing is None and not {"side", "whose"} & slots.keys():
        raise Unread("it may be a majority of anything")
    if numbers is not None and (max(numbers) > 8 or numbers[0] == numbers[1]):
        raise Unread("no such numbers make a majority")
    words = here.said.split()
    if numbers is not None and wing is not None and not {"side", "whose"} & slots.keys():
        side = None  # the numbers tell
    elif "side" in slots or "whose" in slots or (words[0] not in {"there", "it"} and not words[0].isdigit() and words[0] not in _NUMBERS):  # fmt: skip
        side = owner(here, slots)
    else:
        side = None
    fewer = numbers is not None and numbers[0] < numbers[1]
    if numbers is not None and fewer:
        numbers = (numbers[1], numbers[0])
    if side is None:
        side = only_side(lambda s: wing is not None and _largest(at.board, s, wing, numbers, ""))
        if side is None and wing is not None:
            raise Unread("it is not clear whose majority is meant")
    elif fewer:
        side = other(side)
    return [
        here.claim(
            KIND.id,
            side,
            spot=at.spot,
            negated=denied(slots),
            when=asked,
            wing=wing,
            numbers=numbers,
            quality=slots.get("quality", ""),
        )
    ]


def _largest(
    board: Board, side: str, wing: str, numbers: tuple[int, int] | None, quality: str
) -> str | None:
    """The files of a wing, counted in one way or the other, on which the side has the majority spoken of."""
    for files in WINGS[wing]:
        mine, his = pawns(board, side, files), pawns(board, other(side), files)
        if len(mine) <= len(his) or numbers not in (None, (len(mine), len(his))):
            continue
        flawed = _flawed(board, side, files)
        if (quality == "crippled" and not flawed) or (quality == "healthy" and flawed):
            continue
        return files
    return None


def _flawed(board: Board, side: str, files: str) -> list[str]:
    """Pawns of some files that are doubled or isolated."""
    pairs = [at for two in doubled(board, side).values() for at in two]
    return [at for at in pawns(board, side, files) if at in pairs or at in isolated(board, side)]


def _flaw(board: Board, side: str, at: str) -> str:
    pair = any(at in two for two in doubled(board, side).values())
    return f"{name(board, at)} is {'doubled' if pair else 'isolated'}"


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params
    side = claim.side or "white"
    wings = (p["wing"],) if p["wing"] else ("kingside", "queenside")

    def fitting(spot: Spot) -> list[tuple[str, str]]:
        found = []
        for wing in wings:
            files = _largest(spot.board, side, wing, p["numbers"], p["quality"])
            if files is not None:
                found.append((wing, files))
        return found

    spot, found = first(claim, fitting)
    if found:
        wing, files = found[0]
        because = f"{_counted(spot.board, side, wing, files)}."
        flawed = _flawed(spot.board, side, files)
        second = f"It is not sound: {name(spot.board, flawed[0])} is doubled or isolated." if flawed and not p["quality"] else None  # fmt: skip
        marks = squares(pawns(spot.board, side, files), side)
        return answer(claim, True, because, at=spot, marks=marks, second=second)
    board = claim.spot.board
    said = "; ".join(_counted(board, side, wing, WINGS[wing][0]) for wing in wings)
    if p["quality"]:
        flawed = _flawed(board, side, WINGS[wings[0]][0])
        said += f"; of these {_flaw(board, side, flawed[0]) if flawed else 'none is doubled or isolated'}"  # fmt: skip
    return answer(claim, False, f"{said}.")


def _counted(board: Board, side: str, wing: str, files: str) -> str:
    mine, his = (len(pawns(board, s, files)) for s in (side, other(side)))
    return f"{title(side)} has {mine} pawn{'s' if mine != 1 else ''} against {his} on the {wing} ({files[0]} to {files[-1]})"


KIND = Kind(
    id="majority",
    title="Pawn majority",
    version=1,
    definition="A side has more pawns than the other on a wing: kingside e to h or f to h, queenside a to d or a to c, centre d and e or c to f; either count may hold, and the finding says which. Numbers named must be those of one count. Crippled: a pawn of it is doubled or isolated; healthy: none is.",
    slots={
        **SLOTS,
        "more": dict.fromkeys(("more", "1 more", "2 more", "a pawn more", "1 pawn more"), True),
        "quality": _QUALITIES,
    },
    frames=FRAMES,
    tests={
        "held_wing": lambda n: (
            f"{n.whose}|{_flank(n)}"
            if n.head == "majority" and n.whose and _flank(n) and not n.no
            else None
        ),
        "sound": _sound,
        "to_count": lambda n: n.text if re.fullmatch(r"[2-7] to [1-6]", n.text) else None,
        "a_pawn": lambda n: (
            n.head if n.type == "piece" and n.head == "pawn" and not n.plural else None
        ),
        "counted_wing": lambda n: (
            f"{n.whose}|{n.count}|{_flank(n)}"
            if n.type == "piece" and n.head == "pawn" and n.count and n.whose and _flank(n)
            else None
        ),
        "held": lambda n: f"{n.whose}|{_flank(n)}" if n.head == "majority" and n.whose else None,
        "flank": lambda n: (
            next(
                (a for a in n.adjectives if a in {"kingside", "queenside", "central", "centre"}),
                None,
            )
            if n.head in {"majority", "preponderance"}
            else None
        ),
        "counted": lambda n: (
            n.text if n.type == "piece" and n.head == "pawn" and n.count and n.whose else None
        ),
        "n": _count,
        "m": _count,
    },
    read=read,
    check=check,
    flips=True,
)
