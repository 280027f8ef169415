"""Bad bishops: hampered by their own pawns."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bishop_state import COLOURED, bishop_phrases, check_bishop, read_bishop
from lineproof.claims.bishops import is_bad, is_hemmed_in
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here
from lineproof.claims.kind import Kind
from lineproof.claims.owner import SLOTS, owning

PHRASES = (
    *bishop_phrases(
        "[{very}] bad",
        "(bad|a bad bishop|the bad bishop|a bad 1|the bad 1|a problem bishop|hampered by (its|his) own pawns|hemmed in by (its|his) own pawns|restricted by (its|his) own pawns|(its|his) own pawns ' prisoner)",
    ),
    "{whose} own pawns <hamper/hem in/restrict/obstruct> {target}",
    "{target} <bite/run/look> into (its|his) own pawns",
    "(hemmed in|hampered|restricted|obstructed) by (its|his) own pawns",
)


FRAMES = (
    *owning("bad bishop [(on|at) {square}]"),
    "{target} <=> bad",
    "{target} <=> bad bishop",
    "{target} <=> bad one",
    "{pawns} <shut_in> {target}",
    "<*> bad bishop [(on|at) {square}]",
    "bad bishop <be> (on|at) {square}",
    "bad bishop <be> one (on|at) {square}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if here.said.split()[0] in {"hemmed", "hampered", "restricted", "obstructed"}:
        slots["target"] = "it"
    hemmed = re.search(r"\b(?:hem|hemmed|hampered|restricted|obstructed|prisoner)\b", here.said)
    facts = is_hemmed_in if hemmed else is_bad
    return [read_bishop(KIND.id, here, slots, facts, hemmed=bool(hemmed))]


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
    phrases=PHRASES,
    slots=SLOTS,
    patterns={"coloured": COLOURED},
    vocabulary=frozenset({"bad", "hampered", "hemmed", "restricted", "obstructed", "hamper", "restrict", "obstruct", "problem", "hem"}),
    frames=FRAMES,
    tests={"pawns": lambda n: n.text if n.head == "pawn" and n.plural else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
