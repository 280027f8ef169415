"""Refutations: a move and the reply that punishes it."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import Mark as Earned
from lineproof.claims.bands import edge_of_two, mark, spoken
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import LOST, SAFE, told, weigh
from lineproof.claims.deed import deed
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import follows, played
from lineproof.claims.showing import shortest
from lineproof.claims.worded import fitting

_FAULTS = frozenset(w for line in ("mistake", "blunder", "inaccuracy") for w in JUDGEMENTS[line])
_BAD = frozenset(w for line in ("bad", "terrible", "unaffordable", "dubious") for w in JUDGEMENTS[line]) | {
    "impossible", "unplayable", "losing", "no use", "out of the question",
}  # fmt: skip
_BECAUSE = "(because_of|on_account_of|owing_to|in_view_of|thanks_to|due_to)"
FRAMES = (
    "{deed} <fail> {by}",
    "{deed} <fail> {by} mate ; mate=yes",
    "{deed} <fail> (to|because_of|on|against|after|thanks_to|on_account_of|owing_to|due_to|in_view_of) {by}",
    "{deed} <lose> (to|because_of|on_account_of) {by} if lone",
    "<be:refute> {deed}",
    "<be:refute> {deed} by {by}",
    "<be:answer/meet> {deed} (by|with) {by} +strongly|powerfully|decisively|crushingly",
    "{by} <refute> {deed}",
    "{by} <=> refutation [(of|for) {deed}]",
    "refutation (of|for) {deed} <=> {by}",
    "refutation <=> {by}",
    "{deed} <have/meet> refutation in {by}",
    "{by} <answer> {deed} +strongly|powerfully|decisively|crushingly",
    "{by} <put paid to/take care of/deal with> {deed}",
    "{mating} <answer/meet> {deed} ; mate=yes",
    "{deed} <allow/permit> {mating} ; mate=yes",
    "{side} <refute> {deed} with {by}",
    f"{{deed}} <work> {_BECAUSE} {{by}} if negated",
    f"{{deed}} <=> {{bad}} {_BECAUSE} {{by}}",
    f"{{deed}} <=> {{sound}} {_BECAUSE} {{by}} if negated",
    f"<be:play> {{deed}} {_BECAUSE} {{by}} if modal=can negated",
    f"{{side}} <play> {{deed}} {_BECAUSE} {{by}} if modal=can negated",
)


_FOLLIES = frozenset({"suicide", "madness", "folly", "insanity", "nonsense", "hopeless"})


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    slots.setdefault("by", slots.get("mating", ""))
    if not slots["by"]:
        raise Unread("it is not said by which move")
    refuted = played(here, slots["deed"]) if "deed" in slots else _refuted(here, slots["by"])
    refutes = (
        "by" in slots and "deed" in slots and re.search(r"\brefut\w+\b", here.said) is not None
    )
    side = here.side(slots["side"]) if "side" in slots else None
    if side is not None and refutes and side != refuted.side:
        side = refuted.side  # "Black refutes it with Nd3"
    if side is not None and side != refuted.side:
        raise Unread("the move is not that side's")
    by = _reply(refuted.after, slots["by"].rstrip("#"))
    if "mate" in slots and not refuted.after.play(by).board.is_checkmate:
        raise Unread(f"{slots['by']} is not mate")
    return [here.claim(KIND.id, refuted.after.board.turn, spot=refuted.before, move=refuted.uci, by=by)]  # fmt: skip


def _reply(spot: Spot, text: str) -> str:
    """The reply (UCI), written out or in words ("a queen check on h5").

    :raises Unread: when there is none, or several.
    """
    if MOVE.fullmatch(text):
        return follows(spot, text)
    found = fitting(spot, text)
    if len(found) != 1:
        raise Unread(f"it is not clear which move {text!r} means")
    return found[0]


def _refuted(here: Here, by: str) -> Named:
    """The move that "the refutation is" means: the one just played, when the refuting move answers it."""
    last = played(here, None)
    _reply(last.after, by)
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
    slots={
        "bad": dict.fromkeys(_BAD, True),
        "sound": dict.fromkeys({"good", "possible", "sound", "playable", "on"}, True),
    },
    frames=FRAMES,
    tests={
        "mating": lambda n: n.text if n.type == "move" and n.text.endswith("#") else None,
        "by": lambda n: deed(n) if n.type != "pronoun" else None,
        "bad": lambda n: (
            n.text
            if n.head in _FAULTS
            or n.head in _FOLLIES
            or ("bad" in n.adjectives and n.head == "move")
            else None
        ),
    },
    read=read,
    check=check,
    flips=True,
)
