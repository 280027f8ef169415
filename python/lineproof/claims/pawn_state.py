"""What is said of single pawns: isolated, backward, passed. How the sentences are built is the same for all three."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from lineproof.engine import Board

from .board import name, names, title, upper
from .claim import Claim, Judgement, Spot
from .here import Here, Unread
from .owner import (
    agreeing,
    brings,
    denied,
    either,
    having,
    named_after,
    only_side,
    owner,
    pawns_meant,
)
from .structure import backward, isolated, passed
from .tense import answer, first, squares, when
from .where import Where

Facts = Callable[[Board, str], list[str]]
"""The pawns of a side of which it is true."""


def pawn_phrases(noun: str, state: str) -> tuple[str, ...]:
    """Phrases for a kind that says something of single pawns.

    noun: with adjectives, without article: "isolated pawn". state: what is said after "is": "(isolated|an isolated pawn)".
    """
    return (
        *having(f"[{{no}}|a|an|the|any|this|that|his|her|our|your|their|{{n}}] {noun} [{{where}}]"),
        f"[{{agent}}] <create/produce/make/cause/inflict/obtain/get> (a|an|another|{{n}}) {noun} [{{where}}] [(for|on) {{side}}|in {{whose}} (position|camp|structure)]",
        f"<ing:create/get/make/obtain> (a|an|another) {noun} [{{where}}] [for {{side}}]",
        f"{{target}} <be> [{{very}}] {state}",
        f"{{targets}} <be> [{{very}}] {state}",
        f"(it|this|that|which) <be> [{{very}}] {state}",
        f"{{whose}} {{file}} pawn <be> [{{very}}] {state}",
        f"both [{{whose}}|the] [{{file}}] pawns <be> [{{very}}] {state}",
    )


def read_pawns(kind: str, here: Here, slots: dict[str, Any], facts: Facts, **extra: Any) -> Claim:
    """The claim of a kind about single pawns.

    :raises Unread: when it is not clear which pawns, or whose.
    """
    if "stated" in slots:
        slots["target"] = stated(here, slots["stated"])
    becomes = any(f" {word} " in f" {here.said} " for word in ("becomes", "become", "gets"))
    made = {"create", "creates", "makes", "make", "produces", "obtains", "inflicts", "creating"}
    causes = brings(here, slots) or becomes or bool(made & set(here.said.split()))
    asked = when(here, slots, brings=causes)
    at = named_after(here, slots)
    where = Where.read(slots.get("file"), slots.get("where"))
    pawns: tuple[str, ...] = ()
    side: str | None
    if "both" in here.said.split() and not re.search(
        " and ", slots.get("targets", slots.get("target", ""))
    ):
        raise Unread("it is not clear which two pawns")
    if "target" in slots or "targets" in slots:
        true = {p for s in ("white", "black") for p in facts(at.board, s)}
        words_ = slots.get("targets", slots.get("target", ""))
        side, meant = pawns_meant(here, words_, true.__contains__)
        agreeing(here, len(meant))
        pawns = tuple(meant)
    elif (
        "noun" not in extra
        and "known" not in slots
        and not ({"side", "whose"} & slots.keys())
        and _points(here)
    ):
        side, meant = pawns_meant(here, "it")
        pawns = tuple(meant)
    elif "agent" in slots and not ({"side", "whose"} & slots.keys()):
        side = here.agent(slots["agent"]).side  # "White creates a passed pawn"
    elif where.squares and not ({"side", "whose"} & slots.keys()):
        side = None  # the square tells
    else:
        side = owner(here, slots)
    extra.pop("noun", None)
    if side is None:
        side = only_side(lambda s: any(where.holds(a) for a in facts(at.board, s)))
        if side is None and "known" in slots:
            raise Unread("there is none on the board, so it may be any such pawn")
    count = int(slots.get("n", 1))
    return here.claim(
        kind, side, spot=at.spot, negated=denied(slots), when=asked, where=where, pawns=pawns, n=count, **extra
    )  # fmt: skip


STATED: dict[str, Facts] = {
    "isolated pawn": isolated,
    "isolani": isolated,
    "backward pawn": backward,
    "passed pawn": passed,
    "passer": passed,
}
"""What a pawn may be called instead of by its square."""


def stated(here: Here, text: str) -> str:
    """The pawn that "the isolated pawn" means: the one that has just moved, or else the only one.

    :raises Unread: when it is not clear which.
    """
    whose, name_ = text.split(" ", 1) if text.split()[0] != "the" else ("the", text[4:])
    if name_.startswith("'s "):
        name_ = name_[3:]
    sides = ("white", "black") if whose == "the" else (here.side(whose),)
    found = [at for s in sides for at in STATED[name_](here.board, s)]
    last = here.spot.moves[-1][2:4] if here.spot.moves else ""
    found = [last] if last in found else found
    if len(found) != 1:
        raise Unread(f"it is not clear which pawn {text!r} is")
    return f"the pawn on {found[0]}"


def _points(here: Here) -> bool:
    return here.said.split()[0] in {"it", "this", "that", "which"} and " with " not in here.said


def check_pawns(
    claim: Claim,
    facts: Facts,
    adjective: str,
    reason: Callable[[Board, str, str], str] | None = None,
) -> Judgement:
    """The answer of a kind about single pawns.

    facts: the pawns of which it is true. reason: what decides it for one pawn, as the end of a sentence about the pawn.
    """
    p = claim.params

    def fitting(spot: Spot) -> list[tuple[str, list[str]]]:
        found = []
        for side in either(claim.side):
            true = [at for at in facts(spot.board, side) if p["where"].holds(at)]
            if p["pawns"]:
                fits = set(p["pawns"]) <= set(true)
                true = list(p["pawns"])
            else:
                fits = len(true) >= p["n"] and (
                    not p["where"].squares or set(p["where"].squares) <= set(true)
                )
            if fits and true:
                found.append((side, true))
        return found

    spot, found = first(claim, fitting)
    if found:
        side, at = found[0]
        because = f"{upper(names(spot.board, at))} {'is' if len(at) == 1 else 'are'} {adjective}"
        if reason is not None and len(at) == 1:
            because += f": it {reason(spot.board, side, at[0])}"
        return answer(claim, True, f"{because}.", at=spot, marks=squares(at, side))
    board = claim.spot.board
    if len(p["pawns"]) == 1 and reason is not None:
        at = list(p["pawns"])
        because = f"{upper(names(board, at))} {reason(board, claim.side or 'white', at[0])}."
        return answer(claim, False, because, marks=squares(at, claim.side or "white"))
    said = []
    for side in either(claim.side):
        true = facts(board, side)
        said.append(
            f"{title(side)}'s only {adjective} pawn is {name(board, true[0])}"
            if len(true) == 1
            else f"{title(side)}'s {adjective} pawns are {names(board, true)}"
            if true
            else f"{title(side)} has no {adjective} pawn"
        )
    return answer(claim, False, f"{', and '.join(said)}.")
