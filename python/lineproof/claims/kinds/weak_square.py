"""Weak squares: holes that no own pawn can protect any more."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import name, names, pieces, side_of, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import (
    SLOTS,
    agreeing,
    brings,
    denied,
    named_after,
    named_side,
    owner,
    owning,
)
from lineproof.claims.structure import guards, rank
from lineproof.claims.tense import When, answer, first, squares, when
from lineproof.engine import Board

FRAMES = (
    *owning("hole (on|at) {squares}"),
    "{squares} <=> weak",
    "{squares} <=> hole",
    "hole <be/appear/arise> (on|at) {squares}",
    "hole <=> {squares}",
    "[{agent}] <weaken> {squares}",
    "[{agent}] <give> hole (on|at) {squares}",
    "[{agent}] <give> {side} hole (on|at) {squares}",
    "[{agent}] <surrender> {squares}",
    "{side} <defend> {squares} with {a_pawn} ; lost=yes if negated modal=can|could|will",
    "{a_pawn} <defend/control> {squares} if negated modal=can|could|will",
    "<*> hole (on|at|of) {squares}",
    "{nobody} <defend> {squares} if modal=can|could|will",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    at = tuple(re.findall("[a-h][1-8]", slots["squares"]))
    hole = "hole" in here.said
    if "side" not in slots and "agent" not in slots:
        agreeing(here, len(at))
    halves = {"black" if int(a[1]) > 4 else "white" for a in at}
    if len(halves) > 1:
        raise Unread(
            "the squares lie in both halves of the board, so it is not clear whose they are"
        )
    side = halves.pop()
    words = here.said.split()
    if "lost" in slots and named_side(here, slots["side"]) != side:
        raise Unread("squares in the other half of the board are not defended by pawns")
    if "side" in slots or "whose" in slots:
        named = owner(here, slots)
        if named != side and not brings(here, slots):
            raise Unread(f"{at[0]} lies in the other half of the board")
        side = named or side
    if "colour" in slots and slots["colour"] != side:
        raise Unread("a pawn of that side protects no square there")
    made = bool({"weakens", "weaken", "weakening", "creates", "creating", "leaves", "leaving", "tears", "makes"} & set(words))  # fmt: skip
    asked = when(here, {k: v for k, v in slots.items() if k != "verb" or "can" not in words}, brings=brings(here, slots) or made)  # fmt: skip
    spot = named_after(here, slots).spot
    weakens = (
        any(w.startswith("weaken") for w in words)
        and bool({"agent", "verb"} & slots.keys())
        and not re.search(r"\b(?:is|are|be|becomes?) \S*\s?weakened", here.said)
    )
    for square in at:
        standing = spot.board.piece_at(square)
        if standing is not None and standing.lower() == "p" and side_of(standing) == side and rank(side, square) != 2:  # fmt: skip
            raise Unread(f"a pawn stands on {square}, and whether that is weak is another question")
    return [here.claim(KIND.id, side, spot=spot, negated=denied(slots) and "pawn" not in words, when=asked, squares=at, hole=hole, weakens=weakens)]  # fmt: skip


def _is_weak(board: Board, side: str, at: str, hole: bool) -> bool:
    if 3 <= rank(side, at) <= 4:
        return not guards(board, side, at)
    return rank(side, at) == 2 and not hole and _king_alone(board, side, at)


def _king_alone(board: Board, side: str, at: str) -> bool:
    """Whether nothing protects a square of the second rank but the king, if even he does."""
    return all((board.piece_at(a) or "").lower() == "k" for a in board.attackers(side, at))


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p, side = claim.params, claim.side or "white"
    at: tuple[str, ...] = p["squares"]

    if p["weakens"]:
        return _weakened(claim, side, at)

    def fitting(spot: Spot) -> bool:
        return all(_is_weak(spot.board, side, a, p["hole"]) for a in at)

    spot, found = first(claim, fitting)
    board = spot.board
    marks = squares(at, side)
    if found:
        if all(rank(side, a) == 2 for a in at):
            said = f"Nothing but {name(board, pieces(board, side, 'k')[0])} is there to protect {' and '.join(at)}."
            return answer(claim, True, said, at=spot, marks=marks)
        because = f"No pawn of {title(side)} protects {' or '.join(at)} or can come to protect {'them' if len(at) > 1 else 'it'}."
        return answer(claim, True, because, at=spot, marks=marks)
    return answer(claim, False, _why_not(claim.spot.board, side, at, p["hole"]), marks=marks)


def _weakened(claim: Claim, side: str, at: tuple[str, ...]) -> Judgement:
    boards = claim.spot.boards
    before = boards[0] if claim.params["when"] == When.NOW else boards[max(0, len(boards) - 2)]
    now = claim.spot.board
    for square in at:
        had, has = guards(before, side, square), guards(now, side, square)
        if len(has) >= len(had):
            because = f"As many pawns of {title(side)} as before protect {square} or can come to protect it: {len(has)}."
            return answer(claim, False, because, marks=squares(at, side))
    lost = [g for g in guards(before, side, at[0]) if g not in guards(now, side, at[0])]
    left = guards(now, side, at[0])
    because = f"The pawn that stood on {lost[0]} does not protect {at[0]} any more"
    because += f"; {names(now, left)} still can." if left else ", and no other pawn can."
    return answer(claim, True, because, marks=squares(at, side))


def _why_not(board: Board, side: str, at: tuple[str, ...], hole: bool) -> str:
    for square in at:
        if _is_weak(board, side, square, hole):
            continue
        able = guards(board, side, square)
        if 3 <= rank(side, square) <= 4:
            now = [a for a in able if a in board.attackers(side, square)]
            verb = "protects" if now else "can come to protect"
            return f"{upper(name(board, (now or able)[0]))} {verb} {square}."
        if rank(side, square) == 2:
            by = board.attackers(side, square)
            return f"{upper(names(board, by))} {'protect' if len(by) > 1 else 'protects'} {square}."
        return f"{square} is not on the second to fourth rank of {title(side)}."
    return f"The squares {' and '.join(at)} are weak."


KIND = Kind(
    id="weak-square",
    title="Weak square",
    version=1,
    definition="A square on the third or fourth rank, seen from the side, that none of its pawns protects or could protect by going straight on (a hole); of the second rank, where pawns protect nothing, a square that nothing but the king protects is called weak, though no hole. Weakening a square: fewer of the side's pawns protect it or could than before the move (of what has been done: than at the start of the line).",
    source='"Holes", Chess Programming Wiki (from memory); the second rank: common practice',
    slots={
        **SLOTS,
        
        
    },
    frames=FRAMES,
    tests={
        "a_pawn": lambda n: n.text if n.type == "piece" and n.head == "pawn" and not n.square else None,
"nobody": lambda n: n.text if n.no and n.head == "pawn" else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
