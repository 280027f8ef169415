"""The same pawn structure: that of a named opening, or of another line of the lesson, perhaps with colours reversed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from lineproof.claims.board import other, title
from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import ADJECTIVES, members
from lineproof.claims.noun import Noun
from lineproof.claims.openings import named
from lineproof.claims.road import road
from lineproof.claims.sentence import SAN
from lineproof.claims.structure import mirrored, pawns
from lineproof.claims.tense import answer, when
from lineproof.engine import Board
from lineproof.lesson import Place


@dataclass(frozen=True)
class Skeleton:
    """The pawns that make a named structure: squares of White's and Black's, and files that a side has no pawn on."""

    white: tuple[str, ...] = ()
    black: tuple[str, ...] = ()
    white_without: str = ""
    black_without: str = ""


SKELETONS: dict[str, tuple[Skeleton, ...]] = {
    "french": (Skeleton(("d4", "e5"), ("d5", "e6")),),
    "exchange french": (Skeleton(("d4",), ("d5",), "e", "e"),),
    "caro kann": (Skeleton(("d4",), ("c6", "e6"), "e", "d"), Skeleton(("d4", "e5"), ("d5", "c6"))),
    "slav": (Skeleton(("d4",), ("c6", "d5")),),
    "exchange slav": (Skeleton(("d4",), ("d5",), "c", "c"),),
    "carlsbad": (Skeleton(("d4", "e3"), ("d5", "c6"), "c", "e"),),
    "queen 's gambit": (Skeleton(("c4", "d4"), ("d5", "e6")),),
    "stonewall": (Skeleton(("d4", "e3", "f4")), Skeleton((), ("d5", "e6", "f5"))),
    "london": (Skeleton(("c3", "d4", "e3")),),
    "benoni": (Skeleton(("d5",), ("c5", "d6")),),
    "king 's indian": (Skeleton(("c4", "d5", "e4"), ("d6", "e5")),),
    "maroczy": (Skeleton(("c4", "e4"), (), "d", "c"),),
    "hedgehog": (Skeleton(("c4", "e4"), ("a6", "b6", "d6", "e6"), "d", "c"),),
    "dragon": (Skeleton(("e4",), ("d6", "e7", "g6"), "d", "c"),),
    "scheveningen": (Skeleton(("e4",), ("d6", "e6"), "d", "c"),),
    "najdorf": (Skeleton(("e4",), ("a6", "d6", "e5"), "d", "c"),),
    "open sicilian": (Skeleton(("e4",), (), "d", "c"),),
    "panov": (Skeleton(("c4", "d4"), ("d5",), "e", "c"),),
    "scotch": (Skeleton(("e4",), (), "d", "e"),),
    "sicilian": (Skeleton(("e4",), ("c5",)), Skeleton(("e4",), (), "d", "c")),
}
"""Pawns that make the structure of a named opening (common practice)."""
_NAMES = {
    **{name: name for name in SKELETONS},
    "caro kann defence": "caro kann", "french defence": "french", "french exchange": "exchange french", "slav defence": "slav", "slav exchange": "exchange slav", "maroczy bind": "maroczy", "london system": "london", "sicilian defence": "sicilian", "modern benoni": "benoni", "king 's indian defence": "king 's indian", "advance french": "french", "french advance": "french", "queen 's gambit declined": "queen 's gambit", "exchange queen 's gambit": "carlsbad", "sicilian dragon": "dragon",
}  # fmt: skip


def _opening(noun: Noun) -> str | None:
    """The named structure that a noun phrase names."""
    name = named(noun.text) if noun.head == "opening" else None
    return name if name in SKELETONS else None


FRAMES = (
    "[{anything}] <~> {structure} [reversed]",
    "[{anything}] <be/have/reach/get/play> {structure} [reversed]",
    "[{anything}] <be> in {structure} [reversed]",
    "{formation} <be> {that} of {opening} [reversed]",
    "{formation} <be> {opening} [reversed]",
    "{formation} <be> {same} in {opening} [reversed]",
    "[{anything}] <be/have/reach/get> {same_structure} (in|as) {opening} [reversed]",
    "[{anything}] <be/have/reach/get> {same_structure} (in|after|from|as) {road} [(with|after) {moves}] [reversed]",
    "{formation} <be> {same} (in|after|from|as) {road} [(with|after) {moves}] [reversed]",
    "[{anything}] <~> {opening} reversed",
    "[{anything}] <~> {turned}",
    "[{anything}] <have/reach/adopt/take_up/take_on/show/get/play> {formation} of {opening} [reversed]",
    "[{anything}] <be> {formation} of {opening} [reversed]",
    "[{anything}] <be> in {formation} of {opening} [reversed]",
)


_STRUCTURES = frozenset({"structure", "formation", "set up", "setup", "skeleton", "chain"})
_REVERSED = frozenset({"reversed", "mirrored"})


def _structure(noun: Noun) -> str | None:
    """The structure of a named opening, and whether it is reversed: "london|", "london|reversed"."""
    if noun.head not in _STRUCTURES or "like" in noun.adjectives:
        return None
    said = " ".join(
        a for a in noun.adjectives if a not in _REVERSED | {"pawn", "typical", "classic", "same"}
    )
    name = (_NAMES.get(said) or named(said)) if said else None
    if name not in SKELETONS:
        return None
    return f"{name}|{'reversed' if _REVERSED & set(noun.adjectives) else ''}"


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    asked = when(here, slots)
    if "structure" in slots:
        slots["opening"], _, mirror = slots["structure"].partition("|")
        if mirror:
            slots["turned"] = slots["opening"]
    if "road" in slots:
        slots["line"] = f"{slots['road']} {slots.get('moves', '')}".strip()
    turned = "reversed" in slots or "turned" in slots or _turned(here)
    if "turned" in slots:
        slots["opening"] = slots["turned"]
    if "opening" in slots:
        name: str = slots["opening"]
        _of_that_side(here, name, turned)
        return [
            here.claim(KIND.id, _speaker(here), when=asked, opening=name, reversed=turned, twins=())
        ]
    line = slots.get("line", "").strip()
    moves = [re.sub(r"^(?:\d+\.(?:\.\.)?|\.\.\.)", "", t) for t in line.split() if re.fullmatch(rf"(?:\d+\.(?:\.\.)?|\.\.\.)?{SAN}[+#]?", t)]  # fmt: skip
    if not moves and "main" not in line:
        raise Unread("no line of the lesson is named")
    places = [p for p in here.lesson.places if p is not here.place and p.key != here.place.key]
    meant = [p for p in places if _named(p, moves)] if moves else [p for p in places if p.is_main]
    if not meant:
        raise Unread(f"{line!r} names no line of the lesson")
    twins = tuple(dict.fromkeys(p.label for p in meant if _skeleton(p.board, turned) == _skeleton(here.board, False)))  # fmt: skip
    return [here.claim(KIND.id, _speaker(here), when=asked, opening="", reversed=turned, twins=twins, line=line)]  # fmt: skip


def _turned(here: Here) -> bool:
    words = f" {here.said} "
    return any(f" {w} " in words for w in members("reversed", ADJECTIVES))


def _speaker(here: Here) -> str | None:
    return here.taught if here.said.split()[0] in {"we", "our"} else None


def _of_that_side(here: Here, name: str, turned: bool) -> None:
    """ "Black has a London structure": that is White's, unless it is reversed.

    :raises Unread: when the structure is another side's than the one named.
    """
    who = here.said.split()[0]
    skeletons = SKELETONS[name]
    if who not in {"white", "black", "he"} or any(s.white and s.black for s in skeletons):
        return
    owners = {other(side) if turned else side for s in skeletons for side in (("white",) if s.white else ("black",))}  # fmt: skip
    if here.side(who) not in owners:
        raise Unread("a structure of the other side, unless colours are reversed")


def _named(place: Place, moves: list[str]) -> bool:
    """Whether all the moves lie on the road to a place."""
    road = {re.sub(r"[+#!?]", "", p.san or "") for p in place.path()}
    return all(re.sub(r"[+#!?]", "", m) in road for m in moves)


def _skeleton(board: Board, turned: bool) -> tuple[frozenset[str], frozenset[str]]:
    """White's pawns and Black's; turned: with colours reversed."""
    white, black = (frozenset(pawns(board, side)) for side in ("white", "black"))
    if not turned:
        return white, black
    return frozenset(map(mirrored, black)), frozenset(map(mirrored, white))


def _missing(board: Board, skeleton: Skeleton, turned: bool) -> Iterator[str]:
    """What the position lacks of a named structure, in words."""
    for side in ("white", "black"):
        asked = skeleton.white if side == "white" else skeleton.black
        without = skeleton.white_without if side == "white" else skeleton.black_without
        whose = other(side) if turned else side
        own = pawns(board, whose)
        for square in asked:
            at = mirrored(square) if turned else square
            if at not in own:
                yield f"{title(whose)} has no pawn on {at}"
        for file in without:
            if any(p[0] == file for p in own):
                yield f"{title(whose)} still has a pawn on the {file}-file"


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p, board = claim.params, claim.spot.board
    turned = " with colours reversed" if p["reversed"] else ""
    if not p["opening"]:
        if p["twins"]:
            return answer(claim, True, f"After {p['twins'][0]} the pawns stand on the same squares{turned}.")  # fmt: skip
        return answer(claim, False, f"In {p['line']} the pawns never stand on these squares{turned}.")  # fmt: skip
    lacks = [list(_missing(board, s, p["reversed"])) for s in SKELETONS[p["opening"]]]
    said = _spoken(p["opening"])
    if not all(lacks):
        return answer(claim, True, f"The pawns of the {said} structure stand there{turned}.")
    fewest = min(lacks, key=len)
    return answer(claim, False, f"For the {said} structure{turned}: {', and '.join(fewest)}.")


def _spoken(opening: str) -> str:
    return " ".join(w.capitalize() for w in opening.replace(" 's", "'s").split()).replace("Caro Kann", "Caro-Kann")  # fmt: skip


KIND = Kind(
    id="same-structure",
    title="Same structure",
    version=1,
    definition="Of a named opening: the pawns that make its structure stand on their squares (a table names them; 'reversed' turns ranks and colours round). Of a line of the lesson: at some place of it all pawns of both sides stand on the same squares, or on the mirrored ones with colours reversed. '-like' is left unread.",
    source="common practice (the table of structures)",
    slots={
        "opening": _NAMES,
    },
    frames=FRAMES,
    tests={
        "structure": _structure,
        "same_structure": lambda n: (
            n.head if n.head in _STRUCTURES and {"same", "identical"} & set(n.adjectives) else None
        ),
        "same": lambda n: n.head if n.head == "same" else None,
        "that": lambda n: n.head if n.type == "pronoun" and n.head == "that" else None,
        "road": road,
        "moves": lambda n: n.text if n.type == "move" else None,
        "formation": lambda n: (
            n.head
            if n.head in {"formation", "structure", "features", "shape", "skeleton", "set up", "outlines", "feature", "outline", "character"}
            or ({"pawn"} & set(n.adjectives) and n.head in {"structure", "formation", "chain", "skeleton"})
            else None
        ),
        "opening": _opening, "turned": lambda n: _opening(n) if "reversed" in n.adjectives or "mirrored" in n.adjectives else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
