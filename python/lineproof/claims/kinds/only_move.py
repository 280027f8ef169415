"""Only moves: everything else costs too much."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import band, edge_of_two, seen_from, spoken
from lineproof.claims.board import title
from lineproof.claims.claim import SHOWN, Ask, Claim, GameOver, Judgement, Mark, Outcome
from lineproof.claims.frame import SLOTS
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.played import PLAYED, played

LEAST = 15
"""Points that every other move costs at least."""

_WHAT = "(move|defence|defense|reply|answer|way|good move|sensible move|good reply|decent move|playable move|good defence|sensible reply|proper reply|correct move|real move|right move|good answer)"

PHRASES = (
    f"[{{whose}}|the] only {_WHAT} [for {{side}}] [here|now] <be> {{best}}",
    f"[{{whose}}|the] only {_WHAT} [that|which] (holds|works|saves {{side}}|keeps {{side}} in the game|survives|is any good|does not lose|keeps the balance|saves the game) <be> {{best}}",
    "[{whose}|the] only way (to {keep}|out|for {side} to {keep}|of keeping the balance) <be> [to play] {best}",
    f"{{agent}} <be> [{{very}}] (the|{{whose}}|an) only {_WHAT} [for {{side}}] [here|now]",
    "{agent} <be> [{very}] (the|{whose}) only (move that works|move that holds|way to hold|way to defend|way to stay in the game|good way out|way out|chance|salvation|square|option)",
    f"{{agent}} <be> [{{very}}] (the|{{whose}}) only {_WHAT} (that|which|to) {{keeps}}",
    f"{{agent}} <be> [{{very}}] (the|{{whose}}) only {_WHAT} to {{keep}}",
    "{agent} <be> [{very}] (the|{whose}) only [{legal}] move [here|now]",
    "{agent} <be> [{very}] (essential|absolutely necessary|imperative|the only good one|the only one that works)",
    "[the] only {best} (holds|works|saves {side}|helps|will do|defends|keeps the balance|keeps {side} in the game|survives|is good enough|keeps the advantage|saves the game|saves the day|is any good|does not lose|is possible|is playable)",
    "only this (holds|works|saves {side}|helps|will do|defends|keeps the balance|keeps {side} in the game|is good enough|saves the game)",
    "{side} <have> only 1 [{legal}|good|sensible|decent|playable] (move|reply|answer|defence) [,|here ,] {best}",
    "{side} <have> [exactly|just|only] 1 (move|reply|answer|defence) [,] {best}",
    "{side} <have> only 1 [{legal}|good|sensible|decent|playable] (move|reply|answer|defence)",
    "(there is|there 's) [exactly|just|only] 1 [{legal}|good|sensible|decent|playable] (move|reply|answer|defence) [here|now|for {side}] [,] {best}",
    "{side} (must|has to|have to|had to) play {best}",
    "{side} <have> nothing but {best}",
    "{side} <have> (no other move|nothing else|no other good move|no other defence|no alternative to {best}) [than {best}|but {best}]",
    "(every other move|anything else|everything else|all other moves|any other move) <lose/fail/lose at once/lose quickly/be worse/lose by force/lose material/lose a piece>",
    "nothing else (is any good|works|helps|holds|will do|saves {side}|saves the game|is good enough|is playable|is possible|does)",
    "no other move (is any good|works|helps|holds|will do|saves {side}|saves the game|is good enough|is playable|is possible|does)",
    "an only move",
    "the only [{legal}] move",
)
_GLYPHS = {7: "forced", 8: "singular"}
"""PGN standard (1994), NAG table: 7 "forced move (all others lose quickly)", 8 "singular move (no reasonable alternatives)"."""


def only_reply(noun: Noun) -> str | None:
    """ "The only move", "one legal reply"."""
    alone = {"only", "sole", "single"} & set(noun.adjectives) or noun.count == 1
    return (
        noun.text
        if noun.head in NOUNS["move"] + ("defence", "way") and alone and not noun.plural
        else None
    )


FRAMES = (
    "{agent} <=> {only_legal} ; legal=yes",
    "{agent} <=> {only}",
    "{only_legal} <=> {best} ; legal=yes",
    "{only} <=> {best}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    text = " ".join(here.said.split())
    verb = slots.get("verb")
    if verb is not None and verb.negated and _ELSE.search(text):
        raise Unread("that other moves do not fail is not what is checked")
    named_move = slots.get("best", slots.get("agent"))
    if named_move is not None:
        named = played(here, named_move)
    elif "side" in slots and _ONE.search(text):
        following = here.shown_next
        if following is None:
            raise Unread("the only move is not named, and the line shows none")
        named = Named(here.spot, following, here.board.turn)
    else:
        if _ELSE.search(text) and here.subject not in (None, here.mover):
            raise Unread("it is not clear which move is meant")
        named = played(here, None)
    if "side" in slots and here.side(slots["side"]) != named.side:
        raise Unread("the move is not that side's")
    return [
        here.claim(KIND.id, named.side, spot=named.before, move=named.uci, legal="legal" in slots)
    ]


_ONE = re.compile(r"\b(?:only|exactly|just) one\b|\bno other\b|\bnothing else$")
_ELSE = re.compile(r"\b(?:else|other moves?)\b")


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
    if claim.params.get("legal"):
        because = f"{title(side)} has {len(others) + 1} legal moves."
        return Judgement(
            Outcome.FAILS, because, (), spot, {"legal": len(others) + 1}, instead=because
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
    version=2,
    definition="The best other legal move (found by leaving the move out, then searched alone at the same nodes) costs 15 points or more and the verdict's band with it; a single legal move is one too.",
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={
        "legal": {"legal": True, "possible": True},
        "keep": {
            k: k
            for k in (
                "keep the balance",
                "hold",
                "save the game",
                "hold the balance",
                "stay in the game",
                "keep the advantage",
                "hold the position",
                "save the piece",
                "save the queen",
                "defend",
                "avoid mate",
                "avoid losing a piece",
                "avoid disaster",
                "stop mate",
                "stop the mate",
                "parry the threat",
                "meet the threat",
                "survive",
                "keep the pawn",
                "hold the pawn",
                "save the rook",
                "hold the draw",
                "save the pawn",
                "keep an advantage",
                "stay alive",
            )
        },
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
        },
    },
    vocabulary=frozenset(
        {
            "only",
            "every",
            "anything",
            "everything",
            "must",
            "has",
            "have",
            "had",
            "1",
            "else",
            "other",
            "essential",
            "necessary",
            "imperative",
            "nothing",
        }
    ),
    frames=FRAMES,
    tests={
        "only": only_reply,
        "only_legal": lambda n: only_reply(n) if "legal" in n.adjectives else None,
        "agent": SLOTS["played"],
    },
    read=read,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
    flips=True,
)
