"""Refutations: a move and the reply that punishes it."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import Mark as Earned
from lineproof.claims.bands import edge_of_two, mark, spoken
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, SAFE, told, weigh
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import PLAYED, denied, follows, played
from lineproof.claims.showing import shortest

PHRASES = (
    "{agent} <fail/fail at once/fall down> [{very}] (to|because of|on account of|on|after|against) {by} [{mate}]",
    "{agent} <run into/walk into/stumble into/founder on/come to grief on/come unstuck against> {by} [{mate}]",
    "{agent} <lose> [at once|by force|outright|immediately] (to|because of|on account of) {by} [{mate}]",
    "{agent} <be:refute/punish/demolish/knock out> [at once|outright|simply|immediately|on the spot|severely|by force] by {by}",
    "{agent} <be:answer/meet> (strongly|powerfully|decisively|crushingly) (by|with) {by}",
    "{agent} <be> [{very}] (bad|wrong|a mistake|an error|a blunder|no use|no good|weak|impossible|unplayable|a bad move|possible|good|out of the question|too greedy|premature|unsound|losing) (because of|on account of|owing to|in view of) {by}",
    "{agent} <work> (because of|on account of|owing to|in view of) {by}",
    "{agent} can not be played [here|now] (because of|on account of|owing to|in view of) {by} [{mate}]",
    "{side} can not play {agent} [here|now] (because of|on account of|owing to|in view of) {by} [{mate}]",
    "{by} <refute/punish/demolish/bust/knock out> {agent} [at once|outright|by force|immediately|on the spot]",
    "{by} <be> [{very}] (the|a) [{praise}] (refutation|punishment) [of {agent}]",
    "[the|{whose}] [{praise}] (refutation|punishment) [of {agent}|for {agent}] <be> {by}",
    "{agent} <have/meet> [{very}] (a|its|his|her) [{praise}] (refutation|punishment) [in|,] {by}",
    "{by} <put paid to/take care of/deal with/make nonsense of> {agent}",
)


FRAMES = (
    "{agent} <fail> {by}",
    "{agent} <fail> {by} mate ; mate=yes",
    "{agent} <fail> (to|because_of|on|against|after) {by}",
    "<be:refute> {agent}",
    "{by} <refute> {agent}",
    "{by} <=> refutation of {agent}",
    "refutation of {agent} <=> {by}",
    "refutation <=> {by}",
    "{agent} <work> (because_of|on_account_of|owing_to|in_view_of|thanks_to) {by}",
    "{agent} <=> {bad} (because_of|on_account_of|owing_to|in_view_of|thanks_to) {by}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    said = here.said
    refuted = played(here, slots["agent"]) if "agent" in slots else _refuted(here, slots["by"])
    if "side" in slots and here.side(slots["side"]) != refuted.side:
        raise Unread("the move is not that side's")
    by = follows(refuted.after, slots["by"])
    if "mate" in slots and not refuted.after.play(by).board.is_checkmate:
        raise Unread(f"{slots['by']} is not mate")
    turned = _WORKS.search(said) is not None
    if turned and not denied(slots):
        raise Unread("a move that works, or is sound, because of the reply is not refuted")
    return [
        here.claim(
            KIND.id, refuted.after.board.turn, spot=refuted.before, negated=turned, move=refuted.uci, by=by
        )
    ]  # fmt: skip


_WORKS = re.compile(r"\b(?:works?|worked|possible|(?<!no )good)\b")
"""Words that must be denied to say that a move is refuted; the reader turns every denial round once."""


def _refuted(here: Here, by: str) -> Named:
    """The move that "the refutation is" means: the one just played, when the refuting move answers it."""
    last = played(here, None)
    follows(last.after, by)
    return last


def outcome(best: int, points: int, by_cost: int) -> tuple[Outcome, bool]:
    """best, points: of the side that is refuted, by its best move and by this one; by_cost: what the refuting move costs."""
    earned = mark(best, points)
    if best < LOST:
        return Outcome.UNSETTLED, False
    if by_cost > SAFE or earned is Earned.GOOD:
        return Outcome.FAILS, False
    return (Outcome.HOLDS, False) if earned >= Earned.MISTAKE else (Outcome.UNSETTLED, True)


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move, by = claim.spot, claim.params["move"], claim.params["by"]
    cost = weigh(ask, spot, move)
    after = spot.play(move)
    reply = weigh(ask, after, by)
    said, one_off = outcome(cost.best, cost.played, reply.points)
    because = told(cost)
    if cost.best < LOST:
        because = f"{title(cost.side)} is lost whatever he plays ({cost.best} of 100), so what {cost.san} costs is not counted."
    elif reply.points > SAFE:
        because += f" {reply.san} is not the refutation: it costs {reply.points} points against {reply.better}."
    elif said is Outcome.HOLDS:
        because += f" {reply.san} is the right reply: {spoken(reply.side, reply.played)}."
    elif one_off:
        because += " That is an inaccuracy, one mark short of a refutation."
    instead = None
    if said is Outcome.FAILS:
        sound = mark(cost.best, cost.played) is Earned.GOOD
        instead = (
            f"{cost.san} is sound; after {reply.san} {spoken(cost.side, 100 - reply.played)}."
            if sound
            else f"{cost.san} is refuted by {reply.better}."
        )
    near = min(
        edge_of_two(cost.best, cost.played, lambda b, p: outcome(b, p, reply.points)[0]),
        float(abs(reply.points - SAFE) + 1 if reply.points <= SAFE else reply.points - SAFE),
    )
    return Judgement(
        said, because, shortest(spot, (move, *reply.line)), spot, {**cost.numbers, "reply costs": reply.points}, near, instead, one_off,
        marks=(Mark("move", (move[:2], move[2:4]), cost.side), Mark("move", (by[:2], by[2:4]), reply.side)),
    )  # fmt: skip


KIND = Kind(
    id="refuted-by",
    title="Refuted by",
    version=1,
    definition=(
        "The refuted move earns ? or ?? (12 points or more, or a result class lost at a cost above 5), and the refuting move costs at most 5 against the best reply. "
        "A move that earns ?! is one mark off; with the best move below 15 points nothing is counted."
    ),
    formula=f"holds: the move earns ? or ?? and cost(reply) <= {SAFE}; one mark off: it earns ?!; best < {LOST}: not counted",
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={
        "mate": {k: k for k in ("mate", "checkmate", "with mate")},
        "praise": {
            k: k
            for k in (
                "simple",
                "clear",
                "famous",
                "immediate",
                "only",
                "well known",
                "beautiful",
                "strong",
                "best",
                "tactical",
                "known",
                "thematic",
                "convincing",
            )
        },
    },
    vocabulary=frozenset(
        [
            "played",
            "play",
            "fail",
            "fails",
            "failed",
            "failing",
            "falls",
            "fall",
            "run",
            "runs",
            "ran",
            "walk",
            "walks",
            "walked",
            "stumbles",
            "founders",
            "comes",
            "lose",
            "loses",
            "lost",
            "refuted",
            "punished",
            "demolished",
            "knocked",
            "answered",
            "met",
            "bad",
            "wrong",
            "mistake",
            "error",
            "blunder",
            "good",
            "weak",
            "impossible",
            "unplayable",
            "possible",
            "question",
            "greedy",
            "premature",
            "unsound",
            "losing",
            "work",
            "works",
            "worked",
            "refute",
            "refutes",
            "punish",
            "punishes",
            "demolishes",
            "busts",
            "knocks",
            "refutation",
            "punishment",
            "puts",
            "takes",
            "deals",
            "makes",
        ]
    ),
    frames=FRAMES,
    tests={"bad": lambda n: n.text if n.head in {"mistake", "blunder", "error"} else None},
    read=read,
    check=check,
    flips=True,
)
