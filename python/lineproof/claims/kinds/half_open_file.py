"""Half-open files: an enemy pawn on them and none of one's own."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import name, names, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Spot
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
)
from lineproof.claims.structure import FILES, is_half_open, is_open, pawns
from lineproof.claims.tense import answer, first, when
from lineproof.claims.where import Where
from lineproof.engine import Board

FRAMES = (
    *owning("half_open file"),
    "{files} <=> half_open [for {side}] ; it=yes",
    "{side} <have> half_open file",
    "{side} <have> {bare} [for {anything}]",
    "{side} <have> pawn (on|along) {bare} ; gone=yes if negated",
    "{files} <=> half_open for {whose}",
    "{defender} <have> half_open file",
    "[{agent}] <leave> {files} half_open [for {side}]",
    "{defender} <be> (on|along|down) half_open file",
    "<*> half_open file",
    "{side} <have> {files} half_open",
    "{side} <have> {anything} (on|along|down) half_open file",
    "{side} <have> half_open file for {anything}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "bare" in slots:
        slots["files"] = slots.pop("bare")
        if not any(
            is_half_open(here.board, s, f) for s in ("white", "black") for f in slots["files"]
        ):
            raise Unread("it is not half-open, so it is not clear what is said of it")
    asked = when(here, slots, brings=brings(here, slots) or "opening" in here.said.split())
    at = named_after(here, slots)
    files = "".join(f for f in slots.get("files") or "" if f in FILES)
    words = here.said.split()
    if words[0] == "the":
        agreeing(here, len(files))
    side: str | None = None
    if "side" in slots or "whose" in slots:
        side = owner(here, slots)
    elif "defender" in slots:
        side = _whose(here, slots["defender"])
    elif "agent" in slots:
        side = here.agent(slots["agent"]).side
    elif "it" not in slots and words[0] not in {"the", "there"}:
        side = owner(here, slots)
    if side is None:
        side = only_side(lambda s: any(is_half_open(at.board, s, f) for f in files or FILES))
        if side is None and not files:
            raise Unread("it is not clear for whom")
    return [
        here.claim(
            KIND.id, side, spot=at.spot, negated=denied(slots), when=asked, files=files,
            n=int(slots.get("n", 1)),
        )
    ]  # fmt: skip


def _whose(here: Here, text: str) -> str | None:
    """Whose piece words mean, of "our rook" whichever of the two it is."""
    if text.split()[0] in {"our", "his", "their"}:
        return owner(here, {"whose": text.split()[0]})
    return here.agent(text).side


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params

    def fitting(spot: Spot) -> list[tuple[str, str]]:
        found: list[tuple[str, str]] = []
        for side in either(claim.side):
            half = [f for f in p["files"] or FILES if is_half_open(spot.board, side, f)]
            if len(half) >= max(p["n"], len(p["files"]), 1):
                found.extend((side, f) for f in half)
        return found

    spot, found = first(claim, fitting)
    if found:
        side, file = found[0]
        standing = [a for s in ("white", "black") for a in pawns(spot.board, s, file)]
        because = f"The {file}-file is half-open for {title(side)}: only {names(spot.board, standing)} {'stands' if len(standing) == 1 else 'stand'} on it."
        marks = tuple(Mark("move", (f + "1", f + "8"), s) for s, f in found)
        return answer(claim, True, because, at=spot, marks=marks)
    return answer(claim, False, _why_not(claim.spot.board, claim.side, p["files"]))


def _why_not(board: Board, side: str | None, files: str) -> str:
    for file in files:
        if is_open(board, file):
            return f"The {file}-file is open for both sides: no pawn stands on it."
        for whose in either(side):
            own = pawns(board, whose, file)
            if own:
                return f"{title(whose)} still has {name(board, own[0])} on the {file}-file."
    half = {s: [f for f in FILES if is_half_open(board, s, f)] for s in either(side)}
    said = [
        f"half-open for {title(s)} {'is' if len(f) == 1 else 'are'}{str(Where(files=''.join(f))).removeprefix(' on')}"
        if f
        else f"{title(s)} has no half-open file"
        for s, f in half.items()
    ]
    text = ", and ".join(said)
    return f"{text[0].upper()}{text[1:]}."


KIND = Kind(
    id="half-open-file",
    title="Half-open file",
    version=1,
    definition="On the file stands an enemy pawn, and none of the side for which it is half-open.",
    source='"Half-open File", Chess Programming Wiki (from memory)',
    slots={
        **SLOTS,
    },
    frames=FRAMES,
    tests={
        "bare": lambda n: (
            n.file or None if n.type == "file" and not n.adjectives and not n.no else None
        )
    },
    read=read,
    check=check,
    flips=True,
)
