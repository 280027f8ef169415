"""What is said of single bishops: good or bad. How the sentences are built is the same for both."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from lineproof.engine import Board

from .bishops import hampered
from .board import name, pieces, title, upper
from .claim import Claim, Judgement, Spot
from .here import Here, Unread
from .owner import agreeing, brings, denied, either, having, named_after, only_side, owner
from .structure import colour
from .tense import answer, first, squares, when

Fact = Callable[[Board, str, str], bool]
"""Whether it is true of a side's bishop on a square."""

COLOURED = r"(?: (?:light|dark)(?: squared?| coloured)?)"


def bishop_phrases(adjective: str, state: str) -> tuple[str, ...]:
    """Phrases for a kind that calls a bishop something.

    adjective: before "bishop". state: what is said after "is".
    """
    return (
        *having(f"[{{no}}|a|an|the|his|her|our|your|their] {adjective} bishop [(on|at) {{square}}]"),
        f"{{target}} <be/become> [{{very}}] {state}",
        f"({{whose}}|the) {{coloured}} bishop [(on|at) {{square}}] <be/become> [{{very}}] {state}",
        f"{{whose}} bishops <be> [{{very}}] {state}",
        f"(it|this|that|which) <be/become> [{{very}}] {state}",
        f"{{whose}} {adjective} bishop <be/stand> [{{very}}] (on|at) {{square}}",
        f"{{whose}} {adjective} bishop <be> [{{very}}] the {{coloured}} (one|bishop)",
    )  # fmt: skip


def read_bishop(kind: str, here: Here, slots: dict[str, Any], facts: Fact, **extra: Any) -> Claim:
    """The claim of a kind about single bishops.

    :raises Unread: when it is not clear which bishop, or whose.
    """
    asked = when(here, slots, brings=brings(here, slots))
    at = named_after(here, slots)
    said = here.said
    tint = re.match(r".*\b(?:light|dark) squared", slots.get("target", ""))
    if tint is not None:  # "his light-squared bishop" is one, though he may have two
        slots["coloured"] = re.findall(r"light|dark", slots.pop("target"))[0]
        first_word = said.split()[0].replace("’", "'").removesuffix("'s")
        if first_word in {"white", "black", "his", "her", "our", "your", "their", "my"}:
            slots["whose"] = (
                first_word if first_word not in {"white", "black"} else f"{first_word} 's"
            )
    meant: tuple[str, ...] = ()
    side: str | None
    if "target" in slots or (re.match(r"(?:it|this|that|which)\b", said) and not {"side", "agent", "whose"} & slots.keys()):  # fmt: skip
        agent = here.agent(slots.get("target", "it"), "b")
        if agent.square is None or (here.board.piece_at(agent.square) or "").lower() != "b":
            raise Unread("it is not clear which bishop is meant")
        agreeing(here, 1)
        side, meant = agent.side, (agent.square,)
    else:
        side = owner(here, slots) if {"side", "whose"} & slots.keys() or "coloured" not in slots else None  # fmt: skip
        board = at.board
        found = [b for s in either(side) for b in pieces(board, s, "b")]
        if "coloured" in slots:
            wanted = slots["coloured"].split()[0]
            found = [b for b in found if colour(b) == wanted]
        if "square" in slots:
            found = [b for b in found if b == slots["square"]]
        if "coloured" in slots or "square" in slots:
            if len(found) != 1:
                raise Unread("it is not clear which bishop is meant")
            meant = (found[0],)
            side = "white" if (board.piece_at(found[0]) or "").isupper() else "black"
        elif "bishops" in said:
            meant = tuple(found)
    if side is None:
        side = only_side(lambda s: any(facts(at.board, s, b) for b in pieces(at.board, s, "b")))
    return here.claim(
        kind, side, spot=at.spot, negated=denied(slots), when=asked, bishops=meant, **extra
    )


def check_bishop(claim: Claim, facts: Fact, adjective: str) -> Judgement:
    """The answer of a kind about single bishops."""
    meant: tuple[str, ...] = claim.params["bishops"]

    def fitting(spot: Spot) -> list[str]:
        found: list[str] = []
        for side in either(claim.side):
            true = [b for b in pieces(spot.board, side, "b") if facts(spot.board, side, b)]
            if meant and not set(meant) <= set(true):
                continue
            found.extend(meant or true)
        return found

    spot, found = first(claim, fitting)
    side = claim.side or "white"
    if found:
        because = f"{upper(name(spot.board, found[0]))} is {adjective}: {counted(spot.board, side, found[0])}."
        return answer(claim, True, because, at=spot, marks=squares(found, side))
    board = claim.spot.board
    looked = list(meant) or pieces(board, side, "b")
    if not looked:
        return answer(claim, False, f"{title(side)} has no bishop.")
    said = "; ".join(
        f"{name(board, b)} is not {adjective}: {counted(board, side, b)}" for b in looked
    )
    return answer(claim, False, f"{upper(said)}.", marks=squares(looked, side))


def counted(board: Board, side: str, at: str) -> str:
    """What the central pawns say of a bishop, as a clause."""
    found = hampered(board, side, at)
    same, others = (", ".join(p) if p else "none" for p in (found.same, found.others))
    text = f"of {title(side)}'s pawns on the c- to f-files those on its colour are {same}, those on the other {others}"
    plain = found.fixed or len(found.same) <= len(found.others)
    return text + ("" if plain else ", and none of the first is fixed")
