"""Good bishops: their own pawns stand on the other colour."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bishop_state import check_bishop, read_bishop
from lineproof.claims.bishops import is_good
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import owning
from lineproof.claims.verbs import Verb

FRAMES = (
    *owning("good bishop [(on|at) {square}]"),
    "{target} <=> good|better",
    "{target} <=> good bishop",
    "{target} <=> better bishop",
    "{side} <have> better bishop",
    "{target} <=> {better_one}",
    "<*> good bishop [(on|at) {square}]",
    "good bishop <be> (on|at) {square}",
    "good bishop <be> one (on|at) {square}",
    "<~> better bishop",
    "{target} <=> pride",
    "{target} <=> good one",
    "{target} <=> {best_piece}",
    "{best_piece} <be> {target}",
    "{target} <=> good|better than {rival}",
    "{target} <=> {healthy_one}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "better" in here.said.split() and slots.get("verb", Verb()).negated:
        raise Unread("it is compared with another")
    if "side" not in slots:
        state = slots.pop("whose", None)
        if state is not None and ("target" not in slots or here.said.startswith(state)):
            slots["whose"] = state
    return [read_bishop(KIND.id, here, slots, is_good)]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    return check_bishop(claim, is_good, "good")


KIND = Kind(
    id="good-bishop",
    title="Good bishop",
    version=1,
    definition="Of its side's pawns on the c- to f-files more stand on the other colour than on the bishop's.",
    source='"Bad Bishop", Chess Programming Wiki (from memory), turned round; the files: common practice',
    frames=FRAMES,
    tests={
        "healthy_one": lambda n: (
            n.head
            if n.head == "one"
            and {"happy", "healthy", "proud", "active", "strong"} & set(n.adjectives)
            else None
        ),
        "best_piece": lambda n: (
            n.head
            if n.head == "piece"
            and n.type == "noun"
            and {"best", "strongest", "finest", "proudest"} & set(n.adjectives)
            else None
        ),
        "rival": lambda n: (
            n.text
            if n.head in {"counterpart", "colleague", "rival", "opposite number"}
            or (n.type == "piece" and n.head == "bishop" and n.whose)
            else None
        ),
        "better_one": lambda n: (
            n.head if n.head == "one" and {"better", "good"} & set(n.adjectives) else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
