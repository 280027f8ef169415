"""Only moves: everything else costs too much."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import band, edge_of_two, seen_from, spoken
from lineproof.claims.claim import SHOWN, Ask, Claim, GameOver, Judgement, Mark, Outcome
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind

LEAST = 15
"""Points that every other move costs at least."""

PHRASES = (
    "[{whose}] only (move|defence|defense|reply|answer|way|good move|sensible move|good reply|decent move) [here|now] {is} {move}",
    "the only (move|defence|defense|reply|answer|good move|good reply) [for {side}] [here|now] {is} {move}",
    "the only (move|defence|defense|reply|answer) [that] (holds|works|saves {side}|keeps {side} in the game|survives|is any good) {is} {move}",
    "{move} {is} [{very}] (the|{whose}) only (move|defence|defense|reply|answer|good move|sensible move|good reply|decent move|move that works|move that holds|way to hold|way to defend|way to stay in the game)",
    "(this|that|it) {is} [{very}] (the|{whose}) only (move|defence|defense|reply|answer|good move|sensible move|good reply|decent move|move that works|move that holds|way to hold|way to defend|way to stay in the game|good way out)",
    "[the] only {move} (holds|works|saves {side}|helps|will do|defends|keeps the balance|keeps {side} in the game|survives|is good enough|keeps the advantage)",
    "only this (holds|works|saves {side}|helps|will do|defends|keeps the balance|keeps {side} in the game|is good enough)",
    "(this|that|it|{move}) {is} [{very}] (the|{whose}) only (move|reply|defence|defense|answer|way) (that|which|to) {keeps}",
    "{side} {has} only one (good|sensible|decent) move [,] {move}",
    "{side} {has} only one (good|sensible|decent) (move|reply|answer)",
    "{side} (must|has to|have to) play {move}",
    "every other move loses",
    "(anything|everything) else loses",
    "an only move",
    "the only move",
    "(this|that|it) is an only move",
)
_GLYPHS = {7: "forced", 8: "singular"}
"""PGN standard (1994), NAG table: 7 "forced move (all others lose quickly)", 8 "singular move (no reasonable alternatives)"."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    text = here.said
    if "move" in slots:
        named = here.named(slots["move"])
    elif "only one" in text:
        following = here.place.next
        if (
            following is None
            or here.spot.moves != tuple(here.place.moves())
            or following.uci is None
        ):
            raise Unread("the only move is not named, and the line shows none")
        named = Named(here.spot, following.uci, here.board.turn)
    else:
        named = here.last()
    return [here.claim(KIND.id, named.side, spot=named.before, move=named.uci)]


def read_glyph(here: Here, nag: int, _: str) -> list[Claim]:
    named = here.last()
    return [here.claim(KIND.id, named.side, spot=named.before, move=named.uci, glyph=nag)]


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move = claim.spot, claim.params["move"]
    side = spot.board.turn
    san = spot.board.san(move)
    mark = (Mark("move", (move[:2], move[2:4]), side),)
    others = [m for m in spot.board.legal_moves() if m != move]
    if not others:
        return Judgement(
            Outcome.HOLDS, f"{san} is the only legal move.", (move,), spot, {"legal": 1}, marks=mark
        )
    rival = ask.best(spot, without=(move,))
    if rival is None:
        raise GameOver("the game is drawn before the move")
    alone, best = ask.move(spot, rival.moves[0]), ask.move(spot, move)
    own = seen_from(side, best.points)
    second = seen_from(side, alone.points)
    cost = own - second
    holds = _is_only(own, second)
    rival_san = spot.board.san(alone.moves[0])
    numbers: dict[str, int | float | str] = {
        "points": own,
        "next best": rival_san,
        "its points": second,
        "cost": cost,
    }
    margin = edge_of_two(own, second, _is_only)
    if holds:
        because = f"Every other move costs at least {cost} points: after {rival_san} {spoken(side, second)}."
        return Judgement(
            Outcome.HOLDS, because, alone.moves[:SHOWN], spot, numbers, margin, marks=mark
        )
    if cost <= 0:
        because = (
            f"{rival_san} is no worse: {spoken(side, second)}, after {san} {spoken(side, own)}."
        )
    else:
        because = f"{rival_san} costs only {cost} points: {spoken(side, second)}, after {san} {spoken(side, own)}."
    instead = (
        f"{san} is a good move here, and so is {rival_san}."
        if cost >= -5
        else f"{rival_san} is better than {san}."
    )
    return Judgement(
        Outcome.FAILS,
        because,
        alone.moves[:SHOWN],
        spot,
        numbers,
        margin,
        instead,
        marks=mark,
    )


def _is_only(own: int, second: int) -> bool:
    """Whether the next best move costs enough, and the verdict's band with it."""
    return own - second >= LEAST and band(second) != band(own)


KIND = Kind(
    id="only-move",
    title="Only move",
    version=1,
    definition="The best other legal move (found by leaving the move out, then searched alone at the same nodes) costs 15 points or more and the verdict's band with it; a single legal move is one too.",
    phrases=PHRASES,
    slots={
        "keeps": {
            k: k
            for k in (
                "keeps the balance",
                "keep the balance",
                "holds",
                "works",
                "hold",
                "saves the game",
                "save the game",
                "holds the balance",
                "hold the balance",
                "does not lose",
                "stays in the game",
                "stay in the game",
                "keeps black in the game",
                "keeps white in the game",
                "keeps us in the game",
                "keeps him in the game",
                "keeps the advantage",
                "keep the advantage",
                "holds the position",
                "hold the position",
                "saves the piece",
                "save the piece",
                "saves the queen",
                "save the queen",
                "is any good",
            )
        }
    },
    vocabulary=frozenset({"only", "every", "anything", "everything", "must", "has", "have"}),
    read=read,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
)
