"""Moves that the author advises against, with what they cost."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import edge_of_two
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, SAFE, taught, told, weigh
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import PLAYED, denied, played

PHRASES = (
    "(i|we) [{very}] (would|'d) [{very}] (leave {agent} alone|leave {agent} to others|stay away from {agent}|keep away from {agent}|avoid {agent}|steer clear of {agent}|advise against {agent}|skip {agent}|warn against {agent})",
    "(i|we) [{very}] (would|'d|do|can|will|could) not [{very}] (recommend|advise|suggest) {agent} [here|now] [{scope}]",
    "(i|we) [{very}] (would|'d|do|will) not [{very}] (play|go for|choose|touch) {agent} [here|now] [{scope}]",
    "(i|we) [{very}] <advise against/advise you against/warn against/warn you against/steer clear of/keep away from> {agent} [here] [{scope}]",
    "{agent} <be:recommend/advise> [here] [{scope}]",
    "{agent} <be> [{very}] (to be recommended|recommendable|advisable|a good idea|to be advised) [here] [{scope}]",
    "{agent} <be> [{very}] {bad} [here] [{scope}]",
    "(do not|never) (play|go|choose|go for|be tempted by|touch|try) {agent} [here|now]",
    "{side} (should|must|ought to|had better) not (play|choose|go for|try|continue with) {agent} [here|now]",
    "{side} <do> better to avoid {agent}",
    "(avoid|stay away from|keep away from|steer clear of|forget about|forget|beware of) {agent} [here]",
    "leave {agent} (alone|to others)",
    "{agent} <be> not for (us|you|club players|beginners)",
    "(there is no need for|no need for) {agent}",
)
_BAD = ("inadvisable", "a bad idea", "no good idea", "to be avoided", "best avoided", "better avoided", "ill advised", "unwise", "best left alone", "better left alone")  # fmt: skip


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    move = played(here, slots["agent"])
    if "side" in slots and here.side(slots["side"]) != move.side:
        raise Unread("the move is not that side's")
    advises_against = "bad" in slots or "side" in slots or not _POSITIVE.search(here.said)
    if not advises_against and not denied(slots):
        raise Unread("the move is recommended, not advised against")
    return [
        here.claim(
            KIND.id, move.side, spot=move.before, negated="bad" in slots and denied(slots), move=move.uci,
            scope=slots.get("scope"),
        )
    ]  # fmt: skip


_POSITIVE = re.compile(
    r"\b(?:recommended|recommendable|advisable|good idea|to be advised|(?:is|was) advised)\b"
)
"""Words that advise for a move unless they are denied."""


def outcome(best: int, points: int, rival: int | None, negated: bool) -> Outcome:
    """What the points of best move, this move and the best other one (None without one) say of the advice not to play it.

    negated: the author recommends it instead.
    """
    if best < LOST:
        return Outcome.UNSETTLED
    if best - points > SAFE:
        return Outcome.FAILS if negated else Outcome.HOLDS
    if negated:
        return Outcome.HOLDS
    return Outcome.FAILS if rival is None or points - rival > SAFE else Outcome.UNSETTLED


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move = claim.spot, claim.params["move"]
    cost = weigh(ask, spot, move)
    rival, rival_points, rival_san = None, None, ""
    if cost.points <= SAFE and not claim.negated:
        rival = ask.best(spot, without=(move,))
        if rival is not None:
            alone = ask.move(spot, rival.moves[0])
            rival_points = alone.points if cost.side == "white" else 100 - alone.points
            rival_san = spot.board.san(rival.moves[0])
    said = outcome(cost.best, cost.played, rival_points, claim.negated)
    because = told(cost)
    if cost.best < LOST:
        because = f"{title(cost.side)} is lost whatever he plays ({cost.best} of 100), so what {cost.san} costs is not counted."
    elif said is Outcome.UNSETTLED:
        because += f" So is {rival_san} good: which of them to play is a matter of taste."
    elif said is Outcome.FAILS and not claim.negated:
        because += f" Every other move costs more{f', {rival_san} {cost.played - (rival_points or 0)} points' if rival_san else ''}."
    instead = None
    if said is Outcome.FAILS:
        instead = f"{cost.better} is better than {cost.san}." if claim.negated else f"{cost.san} is the move to play."  # fmt: skip
    near = edge_of_two(
        cost.best, cost.played, lambda b, p: outcome(b, p, rival_points, claim.negated)
    )
    return Judgement(
        said, because, cost.line, spot, cost.numbers, near, instead, said is Outcome.UNSETTLED and cost.best >= LOST,
        marks=(Mark("move", (move[:2], move[2:4]), cost.side),), second=taught(cost, spot),
    )  # fmt: skip


KIND = Kind(
    id="not-recommended",
    title="Not recommended",
    version=1,
    definition=(
        "Advice against a move holds, with its cost, when it costs more than 5 points; it fails when every other move costs more than 5 points against it; between the two it is a matter of taste and unsettled. "
        "A move recommended must cost at most 5."
    ),
    formula=f"cost = best - played; holds: cost > {SAFE}; unsettled: cost <= {SAFE} and another move within {SAFE}; fails: every other move costs more than {SAFE} against it",
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={
        "scope": {
            k: k
            for k in (
                "to beginners",
                "to you",
                "to anyone",
                "to anybody",
                "for us",
                "for club players",
                "for beginners",
                "at our level",
                "at club level",
                "to club players",
                "to a beginner",
                "to anyone in this room",
            )
        },
        "bad": {k: k for k in _BAD},
    },
    vocabulary=frozenset(
        [
            "leave",
            "stay",
            "keep",
            "avoid",
            "steer",
            "advise",
            "skip",
            "recommend",
            "recommended",
            "recommendable",
            "advisable",
            "idea",
            "advised",
            "recommendation",
            "inadvisable",
            "avoided",
            "ill",
            "unwise",
            "warn",
            "play",
            "go",
            "choose",
            "touch",
            "tempted",
            "try",
            "suggest",
            "forget",
            "beware",
            "for",
            "need",
        ]
    ),
    read=read,
    check=check,
)
