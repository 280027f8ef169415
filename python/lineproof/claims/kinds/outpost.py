"""Outposts: squares from which no enemy pawn can drive a piece."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import LETTERS, NAMES, name, other, pieces, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.owner import (
    SLOTS,
    agreeing,
    brings,
    denied,
    either,
    only_side,
    owner,
    owning,
)
from lineproof.claims.structure import guards, pawns, rank
from lineproof.claims.tense import answer, first, squares, when
from lineproof.engine import Board

FRAMES = (
    *owning("outpost [(on|at) {squares}] [for {for_piece}]"),
    "{squares} <=> outpost [for {side}]",
    "{squares} <be/make> {dream_home} [for {piece_of}]",
    "{squares} <=> {dream_home} [for {side}]",
    "<*> {post}",
    "{squares} <=> outpost for {piece_of}",
    "{squares} <=> outpost for {a} {piece_of}",
    "{target} <have> outpost [(on|at|of) {squares}]",
    "{target} <be> on outpost",
    "<*> outpost (on|at) {squares}",
    "{squares} <give/offer> {whose_piece} outpost",
    "{squares} <give/offer> {side} outpost",
    "{squares} <serve> [{side}] as outpost",
    "{target} <use> {squares} as outpost if modal=will|can|may|",
    "{side} <use> {squares} as outpost if modal=will|can|may|",
    "{squares} <cry_out_for/beg_for/call_for> {piece_of}",
    "{a_pawn} <dislodge> {guest} ; held=yes if negated modal=can|could|will",
    "{a_pawn} <dislodge> {defender} from {squares} ; held=yes if negated modal=can|could|will",
    "{squares} <belong_to> {whose_piece}",
    "{target} <occupy/find/reach> outpost [(on|at|of) {squares}]",
    "{a_pawn} <dislodge> {defender} from outpost [(on|at) {squares}] ; held=yes if negated modal=can|could|will",
    "{nobody} <dislodge> {target} [from {squares}] with {a_pawn} ; held=yes if modal=can|could|will",
    "<be:dislodge> {target} by {a_pawn} ; held=yes if negated modal=can|could|will",
    "{a_pawn} <dislodge> {target} [from {squares}] ; held=yes if negated modal=can|could|will",
    "{side} <own/owns> {square_alone}",
    "{square_alone} <belong_to> {side}",
    "{target} <be/sit> on outpost (on|at) {squares}",
    "<~> outpost [(on|at) {squares}] for {for_piece}",
    "{a_pawn} <attack/challenge/disturb/trouble/bother/annoy/harass/reach/touch> {target} [(at|on) {squares}] ; held=yes if negated modal=can|could|will",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "for_piece" in slots:
        slots["whose"], slots["piece_of"] = slots["for_piece"].split("|")
    for slot in ("guest", "square_alone"):
        if slot in slots:
            slots["squares"] = slots[slot]
    if "post" in slots:
        slots["squares"] = slots["post"]
    asked = when(here, slots, brings=brings(here, slots))
    spot = here.agent(slots["agent"]).spot if "agent" in slots else here.spot
    at = tuple(re.findall("[a-h][1-8]", slots.get("squares", "")))
    letter = LETTERS.get(slots.get("piece_of", "").removesuffix("s"))
    side: str | None = None
    if not {"side", "agent"} & slots.keys():
        agreeing(here, len(at) or 1 if "target" in slots else len(at))
    if "target" in slots:
        found = here.agent(slots["target"], "nbrq")
        if found.square is None or (here.board.piece_at(found.square) or "p").lower() in "pk":
            raise Unread("it is not clear which piece is meant")
        side, letter = found.side, (here.board.piece_at(found.square) or "").lower()
        if at and at != (found.square,):
            return [_claim(here, spot, side, at, letter, asked, slots)]
        at = (found.square,)
    elif "side" in slots or "whose" in slots:
        side = owner(here, slots)
    elif "agent" in slots and not at:
        side = here.agent(slots["agent"]).side
    if side is None and at:
        board = spot.board
        side = only_side(lambda s: all(_is_outpost(board, s, a) for a in at)) or only_side(
            lambda s: all(rank(s, a) > 4 for a in at)
        )
    if side is None and not at:
        side = owner(here, slots)
    return [_claim(here, spot, side, at, letter, asked, slots)]


def _claim(
    here: Here,
    spot: Spot,
    side: str | None,
    at: tuple[str, ...],
    letter: str | None,
    asked: str,
    slots: dict[str, Any],
) -> Claim:
    return here.claim(KIND.id, side, spot=spot, negated=denied(slots), when=asked, squares=at, letter=letter)  # fmt: skip


def _is_outpost(board: Board, side: str, at: str) -> bool:
    return (
        4 <= rank(side, at) <= 7 and not guards(board, other(side), at) and _held(board, side, at)
    )


def _held(board: Board, side: str, at: str) -> bool:
    """Whether the side has a pawn or a piece that protects the square, or a piece on it."""
    standing = board.piece_at(at)
    mine = standing is not None and standing.isupper() == (side == "white")
    return mine or bool(board.attackers(side, at))


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params
    letter: str | None = p["letter"]

    def fitting(spot: Spot) -> list[tuple[str, str]]:
        board = spot.board
        for side in either(claim.side):
            if letter is not None and not pieces(board, side, letter):
                continue
            if p["squares"]:
                found = [at for at in p["squares"] if _is_outpost(board, side, at)]
                if len(found) == len(p["squares"]):
                    return [(side, at) for at in found]
                continue
            held = [
                at
                for at in (f"{f}{r}" for f in "abcdefgh" for r in range(1, 9))
                if _is_outpost(board, side, at) and _pawn_held(board, side, at)
            ]
            if held:
                return [(side, at) for at in held]
        return []

    spot, found = first(claim, fitting)
    if found:
        side, board = found[0][0], spot.board
        at = [a for _, a in found]
        said = "these squares" if len(at) > 1 else at[0]
        because = f"No pawn of {title(other(side))} attacks {' or '.join(at)} or can come to attack {'them' if len(at) > 1 else 'it'}, and {title(side)} holds {said}."
        second = None
        if len(at) == 1:
            by = [g for g in board.attackers(side, at[0]) if g in pawns(board, side)]
            second = f"{upper(name(board, by[0]))} protects it." if by else f"No pawn of {title(side)} protects it."  # fmt: skip
        return answer(claim, True, because, at=spot, marks=squares(at, side), second=second)
    return answer(claim, False, _why_not(claim.spot.board, claim.side, p["squares"], letter))


def _pawn_held(board: Board, side: str, at: str) -> bool:
    return any(g in pawns(board, side) for g in board.attackers(side, at))


def _why_not(board: Board, side: str | None, at: tuple[str, ...], letter: str | None) -> str:
    who = side or "white"
    if letter is not None and not pieces(board, who, letter):
        return f"{title(who)} has no {NAMES[letter]}."
    for square in at:
        for whose in either(side):
            if not 4 <= rank(whose, square) <= 7:
                if side is not None:
                    return f"{square} is not on the fourth to seventh rank of {title(whose)}."
                continue
            drive = guards(board, other(whose), square)
            if drive:
                return f"{upper(name(board, drive[0]))} attacks {square} or can come to attack it."
            if not _held(board, whose, square):
                return f"Nothing of {title(whose)} protects {square}."
    return f"{title(who)} has no square beyond the third rank that a pawn of his protects and no enemy pawn can attack."


KIND = Kind(
    id="outpost",
    title="Outpost",
    version=1,
    definition="A square on the fourth to seventh rank, seen from the side, that no enemy pawn attacks or could attack by going straight on, and that a pawn or piece of the side protects or stands on; where no square is named, an own pawn must protect it. Whether a pawn protects the square named is a second finding.",
    source="Nimzowitsch, My System (from memory), without the open file that he asks for; the ranks: common practice",
    slots={
        **SLOTS,
        "a": {"a": True, "the": True},
        
    },
    frames=FRAMES,
    tests={
        "for_piece": lambda n: f"{n.whose}|{n.head}" if n.type == "piece" and n.whose else None,
        
        "dream_home": lambda n: n.head if n.head in {"home", "square", "place", "perch", "spot", "base"} and {"perfect", "ideal", "dream", "wonderful", "natural", "lovely", "permanent", "eternal", "superb", "excellent"} & set(n.adjectives) and not n.no else None,
        "post": lambda n: n.square if n.head in NOUNS["outpost"] and n.square and n.type == "noun" else None,
        "square_alone": lambda n: n.square if n.type == "square" and not n.parts else None,
        
        "a_pawn": lambda n: n.head if n.type == "piece" and n.head == "pawn" and not n.square and not n.file else None,
        "guest": lambda n: n.square if n.type == "piece" and n.square and n.head in {"knight", "bishop", "rook", "queen"} else None,
"piece_of": lambda n: n.head if n.type == "piece" else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
