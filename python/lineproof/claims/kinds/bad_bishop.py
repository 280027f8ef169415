"""Bad bishops: hampered by their own pawns."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bishop_state import check_bishop, read_bishop
from lineproof.claims.bishops import is_bad, is_hemmed_in
from lineproof.claims.board import side_of
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import SLOTS, owning

FRAMES = (
    *owning("bad bishop [(on|at) {square}]"),
    "{target} <=> {bad}",
    "{target} <=> bad bishop",
    "{target} <=> bad one",
    "{pawns} <shut_in> {target} ; hemmed=yes",
    "<be:shut_in> {target} by {pawns} ; hemmed=yes",
    "{bishop} <=> {none}",
    "{bishop} <=> {sorry}",
    "{bishop} <=> {sad}",
    "{bishop} <attack/bite_on/run_into/look_at> {own_pawns} ; hemmed=yes",
    "{bishop} <be> behind {own_pawns} ; hemmed=yes",
    "{bishop} <have> {own_pawns} ; hemmed=yes",
    "[{anything}] <make> {bishop} {bad}",
    "<be:limit/restrict/hinder/hamper/obstruct/cramp> {bishop} by {own_pawns} ; hemmed=yes",
    "{own_pawns} <limit/restrict/hinder/hamper/cramp> {bishop} ; hemmed=yes",
    "<*> bad bishop [(on|at) {square}]",
    "bad bishop <be> (on|at) {square}",
    "bad bishop <be> one (on|at) {square}",
    "{bad_piece} <be> {bishop}",
    "{bishop} <=> {child}",
    "{bishop} <=> {sad_one}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "bishop" in slots:
        slots["target"] = slots.pop("bishop")
    if "target" not in slots and "pawns" in slots:
        slots["target"] = "it"  # "hemmed in by its own pawns"
    hemmed = "hemmed" in slots
    at = re.findall("[a-h][1-8]", slots.get("pawns", ""))
    bishop = re.findall("[a-h][1-8]", slots.get("target", ""))
    owners = {side_of(here.board.piece_at(a) or "P") for a in at}
    if at and (not bishop or owners != {side_of(here.board.piece_at(bishop[0]) or "P")}):
        raise Unread("these are not its own pawns")
    facts = is_hemmed_in if hemmed else is_bad
    return [read_bishop(KIND.id, here, slots, facts, hemmed=hemmed)]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    if claim.params["hemmed"]:
        return check_bishop(claim, is_hemmed_in, "hemmed in")
    return check_bishop(claim, is_bad, "bad")


KIND = Kind(
    id="bad-bishop",
    title="Bad bishop",
    version=1,
    definition="Of its side's pawns on the c- to f-files more stand on the bishop's colour than on the other, and one of the first is fixed: a pawn stands before it, or an enemy pawn attacks its next square. Whether the bishop stands outside its pawns is not asked. Hemmed in by its pawns: bad, or no square that it attacks is without an own pawn.",
    source='"Bad Bishop", Chess Programming Wiki (from memory); files and fixed pawn: common practice',
    slots={
        "bad": {"bad": True, "poor": True},
        **SLOTS,
        "sad": dict.fromkeys(("hopelessly passive", "hopeless", "miserable", "hopelessly bad", "sad", "pitiful", "pathetic", "a sorry sight", "half dead", "terrible", "awful", "dreadful", "horrible"), True),
        "sorry": dict.fromkeys(("problem piece", "problem bishop", "dud", "big pawn", "tall pawn", "sad piece", "poor piece", "sorry piece", "sorry sight", "sorry figure", "worst piece", "worst minor piece", "prisoner"), True),
    },
    frames=FRAMES,
    tests={
        "sad_one": lambda n: n.head if n.head == "one" and {"sad", "sorry", "poor", "miserable", "pitiful"} & set(n.adjectives) else None,
        "child": lambda n: n.head if n.head == "problem child" and n.whose else None,
        
        "bad_piece": lambda n: (
            n.head
            if n.head == "piece" and ({"bad", "worst", "poor", "problem", "weakest"} & set(n.adjectives)) and n.whose
            else None
        ),
        
        "pawns": lambda n: n.text if n.head == "pawn" and n.plural else None,
        "own_pawns": lambda n: n.text if n.head in {"pawn", "chain", "pawn chain", "structure"} and "own" in n.adjectives else None,
        "bishop": lambda n: n.text if n.type == "piece" and n.head == "bishop" and not n.parts else None,
        "none": lambda n: n.head if n.head == "better" and n.no else None,
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
