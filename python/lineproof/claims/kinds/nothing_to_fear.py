"""Moves that need not be feared."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import edge_of_two, seen_from, spoken
from lineproof.claims.board import other
from lineproof.claims.claim import Ask, Claim, GameOver, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import SAFE, shown, spelled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.patterns import MOVE, SQUARE
from lineproof.claims.played import follows, played

_FEARS = (
    "{side} <fear> {deed} if modal=|must|can|will|should|would",
    "{side} <=> (afraid|scared|frightened|worried) (of|by|about) {deed}",
    "{side} <need to fear> {deed}",
    "<be:fear> {deed} if modal=|must|can",
    "<be to fear> {deed} [by {side}]",
    "{deed} <frighten> {side} if modal=|must|can|will|should",
    "{deed} <=> (dangerous|frightening) [for {side}]",
    "{deed} <=> {danger} [(for|to) {side}]",
    "{deed} <have> {danger} [for {side}]",
    "{side} <have> {danger} of {deed}",
    "{side} <have to fear> {deed} {above}",
    "<be to fear> {deed} {above}",
    "{side} <have to fear> (from|in|about) {deed} {above}",
    "<be to fear> (from|in|about) {deed} {above}",
    "{deed} <be to fear> {above}",
    "<have/be to frighten> [{side}] from {deed} {above}",
)
"""What says, denied, that there is no fear."""
FRAMES = (
    "<fear> {deed} ; ease=yes if bidden negated",
    "<fear> (about|for) {deed} ; ease=yes if bidden negated",
    *(f"{frame} ; ease=yes if negated" for frame in _FEARS),
    "{side} <play> {deed} +as_much_as_he_likes|all_he_likes ; ease=yes free=yes if modal=can|may",
    "{side} <play/push/advance/move/shove> {it} to {square} +as_much_as_he_likes|all_he_likes ; ease=yes free=yes if modal=can|may",
    "{deed} <=> {harmless} [(for|to) {side}] ; ease=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "ease" not in slots:
        raise Unread("it is said to be dangerous, not harmless")
    side = here.side(slots["side"]) if "side" in slots else None
    if "free" in slots and side is not None:
        side = other(side)  # "he can push it to a5 as much as he likes"
        slots.setdefault("deed", slots.get("square"))
    spot, move, since = _feared(here, slots["deed"], side)
    fearer = other(spot.board.turn)
    if side is not None and side != fearer:
        raise Unread("the move is that side's own")
    return [here.claim(KIND.id, fearer, spot=spot, move=move, plies=since)]  # fmt: skip


def _feared(here: Here, text: str, side: str | None) -> tuple[Spot, str, int]:
    """The spot before the feared move, the move, and how many plies before it the fearing side last chose.

    Where the fearing side is to move, it plays the move shown first.
    """
    arrived = here.spot.moves[-1][2:4] if here.spot.moves else ""
    if re.fullmatch(SQUARE, text) and here.board.piece_at(text) is not None and text != arrived:
        raise Unread(f"it may be said of what stands on {text}")
    shown = here.shown_next
    if MOVE.fullmatch(text) and side == here.board.turn and shown is not None:
        spot = here.spot.play(shown)
        return spot, follows(spot, text), 1
    move = played(here, text)
    if side == here.board.turn and move.uci != (here.spot.moves or ("",))[-1]:
        raise Unread("it is that side's move, and none is shown before the feared one")
    return move.before, move.uci, 1 if move.before.moves else 0


def outcome(before: int, after: int) -> Outcome:
    """What the points of the fearing side say: with best play before its last move, and after the feared move."""
    return Outcome.HOLDS if before - after <= SAFE else Outcome.FAILS


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move, side = claim.spot, claim.params["move"], claim.side or "white"
    chose = spot.earlier(claim.params["plies"])
    best = ask.best(chose)
    if best is None:
        raise GameOver("the game is over before the move")
    line = ask.move(spot, move)
    before, after = seen_from(side, best.points), seen_from(side, line.points)
    san = spot.board.san(move)
    said = outcome(before, after)
    because = f"{san} costs {side.capitalize()} {spelled(before - after)}: after it {spoken(side, after)}, before {spoken(side, before)}."
    return Judgement(
        said, because, shown(spot, line.moves, 100 - after), spot, {"points": after, "before": before, "cost": before - after}, edge_of_two(before, after, outcome),
        f"{side.capitalize()} should fear {san}." if said is Outcome.FAILS else None,
        marks=(Mark("move", (move[:2], move[2:4]), spot.board.turn),),
    )  # fmt: skip


KIND = Kind(
    id="nothing-to-fear",
    title="Nothing to fear",
    version=1,
    definition=(
        "Played, the move costs the other side nothing: its expected score after the move is at most 5 points below that of best play from before its own last move (the move shown next, where it is to move)."
    ),
    formula=f"cost = points(before the own last move) - points(after the other side's move); holds: cost <= {SAFE}; fails: cost > {SAFE}",
    slots={
        "harmless": dict.fromkeys(
            (
                "harmless",
                "toothless",
                "innocuous",
                "no problem",
                "nothing to fear",
                "nothing to worry about",
                "nothing to be afraid of",
                "nothing to lose sleep over",
                "no worry",
            ),
            True,
        )
    },
    tests={
        "it": lambda n: n.text if n.head in {"it", "pawn"} and not n.plural else None,
        "danger": lambda n: (
            n.head if n.head in {"danger", "threat", "problem", "terror", "fear", "worry"} else None
        ),
        "above": lambda n: (
            n.text if n.head in {"nothing", "need", "reason", "cause", "little"} else None
        ),
    },
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
