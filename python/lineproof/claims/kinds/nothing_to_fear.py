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
from lineproof.claims.phrase import MOVE
from lineproof.claims.played import PLAYED, denied, follows, played

PHRASES = (
    "{side} (need|needs) not [{very}] (fear|worry about|be afraid of|be scared of|lose sleep over|bother about) {agent}",
    "{side} <fear/worry about/mind/lose sleep over> {agent}",
    "{side} <be> [{very}] (afraid|scared|frightened) of {agent}",
    "{side} <have> [absolutely] (nothing to fear from|no fear of|no need to fear|no reason to fear|no cause to fear|little to fear from) {agent}",
    "(there is|there 's) [absolutely] (nothing to fear from|no need to fear|no reason to fear|nothing to worry about in) {agent}",
    "{agent} <be> [{very}] (nothing to fear|nothing to worry about|nothing to be afraid of|no danger|no threat|no problem|harmless|quite harmless|completely harmless) [for {side}|to {side}]",
    "{agent} <be> to be feared [by {side}]",
    "{agent} <be:fear> [by {side}]",
    "{agent} <be> [{very}] dangerous [for {side}]",
    "{agent} <hold> no (terrors|fears|fear|dangers|danger) [for {side}]",
    "{agent} <trouble/worry/frighten/scare/bother/harm/hurt> {side}",
    "{agent} (need|needs) not (worry|trouble|frighten|bother|be feared by) {side}",
    "{agent} (need|needs) not be feared",
)
_AT_EASE = re.compile(
    r"\bneeds? not\b|\bneedn['’]?t\b|\bnothing\b|\bno (?:fears?|need|reason|cause|danger|dangers|terrors|threat|problem)\b|\blittle\b|\bharmless\b"
)
"""Words that say by themselves that there is no fear; without them a "not" must say it, which the reader turns round."""


FRAMES = (
    "{side} <fear> {agent} ; negated=yes ease=yes",
    "{side} <=> afraid of {agent} ; negated=yes ease=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    at_ease = "ease" in slots or _AT_EASE.search(here.said) is not None
    if not at_ease and not denied(slots):
        raise Unread("it is said to be dangerous, not harmless")
    side = here.side(slots["side"]) if "side" in slots else None
    spot, move, since = _feared(here, slots["agent"], side)
    fearer = other(spot.board.turn)
    if side is not None and side != fearer:
        raise Unread("the move is that side's own")
    return [here.claim(KIND.id, fearer, spot=spot, negated=not at_ease, move=move, plies=since)]  # fmt: skip


def _feared(here: Here, text: str, side: str | None) -> tuple[Spot, str, int]:
    """The spot before the feared move, the move, and how many plies before it the fearing side last chose.

    Where the fearing side is to move, it plays the move shown first.
    """
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
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    vocabulary=frozenset(
        [
            "fear",
            "fears",
            "feared",
            "fearing",
            "worry",
            "worries",
            "afraid",
            "scared",
            "frightened",
            "mind",
            "minds",
            "sleep",
            "bother",
            "danger",
            "threat",
            "problem",
            "harmless",
            "dangerous",
            "terrors",
            "dangers",
            "trouble",
            "troubles",
            "frighten",
            "frightens",
            "scare",
            "scares",
            "bothers",
            "harm",
            "harms",
            "hurt",
            "hurts",
        ]
    ),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
