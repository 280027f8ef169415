"""Bishops of opposite colours."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bishops import are_opposite
from lineproof.claims.board import name, names, pieces, title
from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.structure import colour
from lineproof.claims.tense import answer, first, squares, when
from lineproof.engine import Board

FRAMES = (
    "[{agent}] <~> opposite_bishop",
    "opposite_bishop <be/remain/arise>",
    "{bishops} <be> (of|on) {colours}",
    "{bishops} <be> (of|on) {alike}",
    "[{agent}] <~> position with opposite_bishop",
    "<~> {lone} (against|versus|vs) {rival}",
    "{lone} <meet> {rival}",
    "{side} <be> from position with opposite_bishop +(a_long_way|far|miles) ; no=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "lone" in slots and ("light" in slots["lone"]) == ("light" in slots["rival"]):
        raise Unread("two bishops of one colour")
    asked = when(here, slots, brings=any(w in here.said for w in ("lead", "reach")))
    alike = "alike" in slots
    return [here.claim(KIND.id, None, negated=("no" in slots) != alike, when=asked, alike=alike)]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    def fitting(spot: Spot) -> bool:
        # "of the same colour" is read as a denial; it speaks of one bishop each
        return are_opposite(spot.board) or (claim.params["alike"] and not _one_each(spot.board))

    spot, found = first(claim, fitting)
    if not found:
        no = "The bishops are not of opposite colours."
        return answer(claim, False, _said(claim.spot.board), instead=no)
    marks = tuple(m for s in ("white", "black") for m in squares(pieces(spot.board, s, "b"), s))
    instead = "The bishops are of opposite colours." if are_opposite(spot.board) else None
    return answer(claim, True, _said(spot.board), at=spot, marks=marks, instead=instead)


def _one_each(board: Board) -> bool:
    return all(len(pieces(board, side, "b")) == 1 for side in ("white", "black"))


def _said(board: Board) -> str:
    white, black = pieces(board, "white", "b"), pieces(board, "black", "b")
    if len(white) == len(black) == 1:
        one, two = colour(white[0]), colour(black[0])
        return f"White has {name(board, white[0])}, a {one}-squared bishop, and Black {name(board, black[0])}, a {two}-squared one."
    parts = [
        f"{title(s)} has {names(board, at) if at else 'no bishop'}"
        for s, at in (("white", white), ("black", black))
    ]
    return f"{' and '.join(parts)}."


KIND = Kind(
    id="opposite-bishops",
    title="Opposite-coloured bishops",
    version=1,
    definition="Each side has exactly one bishop, and the two go on squares of different colours.",
    slots={
        "alike": dict.fromkeys(
            ("of the same colour", "on the same colour", "like coloured", "same coloured"), True
        ),
    },
    frames=FRAMES,
    tests={
        "lone": lambda n: (
            n.text
            if n.type == "piece"
            and n.head == "bishop"
            and not n.plural
            and re.search("light|dark", n.text)
            else None
        ),
        "rival": lambda n: (
            n.text
            if n.type == "piece"
            and n.head == "bishop"
            and not n.plural
            and re.search("light|dark", n.text)
            else None
        ),
        "bishops": lambda n: n.text if n.head == "bishop" and n.plural else None,
        "colours": lambda n: (
            n.text
            if n.head in {"colour", "color"} and set(n.adjectives) & {"opposite", "different"}
            else None
        ),
        "alike": lambda n: (
            n.text if n.head in {"colour", "color"} and "same" in n.adjectives else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
