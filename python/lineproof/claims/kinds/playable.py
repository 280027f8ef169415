"""Playable moves: nothing is wrong with them."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import Mark as Earned
from lineproof.claims.bands import edge_of_two, mark
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, taught, told, weigh
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import PLAYED, denied, played

NOT_ON = 10
"""Points from which a move that "cannot be played" costs too much."""

PHRASES = (
    "{agent} <be> [{very}] [{fairly}] {playable} [here|now|too|as well] [for {side}]",
    "{agent} can [{very}] [not|also] be played [here|now|too|as well]",
    "{agent} may [also] be played [here|now|too|as well]",
    # "can now play" says that it works now: that is another kind
    "{side} can [really|simply|just|still|even|of course] [not|also] play {move} [here|too|as well|instead]",
    "{side} may [also] play {move} [here|too|as well|instead]",
    "{agent} <come> into (consideration|question|the picture)",
    "{agent} <deserve> (attention|consideration|a try|a look)",
    "(there is|there 's) [absolutely] nothing wrong with {agent}",
    "nothing is wrong with {agent}",
    "{move} <work> [here|now|too|as well|fine|perfectly well|just fine]",
    "{agent} <be:consider> playable",
    "(a|another) {playable_noun} <be> {move}",
    "{side} <have> {move} as (a|another) {playable_noun}",
)
_FAIRLY = ("perfectly", "fully", "entirely", "absolutely", "certainly", "definitely", "completely", "quite", "eminently", "fairly", "well")  # fmt: skip
_NOUNS = ("playable move", "reasonable alternative", "decent alternative", "option", "good option", "possibility", "sensible alternative", "playable alternative", "reasonable option", "reasonable move", "decent option", "sensible option", "worthy alternative", "viable alternative", "viable option", "decent try")  # fmt: skip
_PLAYABLE = (
    "playable", "viable", "possible", "ok", "okay", "all right", "acceptable", "respectable", "worth a try", "worth a look", "worth considering", "worth trying", "an option", "an alternative", "worth playing",
    "a possibility", "reasonable", "sensible", "in order", "a decent move", "decent", "good enough", "also good", "also fine", "fine too",
    *(f"{'an' if n[0] in 'aeiou' else 'a'} {n}" for n in _NOUNS if n not in {"option", "possibility"}),
)  # fmt: skip


FRAMES = ("{side} <play> {move} ; modal=can|may",)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    move = played(here, slots.get("agent", slots.get("move")))
    if "side" in slots and here.side(slots["side"]) != move.side:
        raise Unread("the move is not that side's")
    negated = denied(slots) or (" can not " in f" {_plain(here)} ")
    return [here.claim(KIND.id, move.side, spot=move.before, negated=negated, move=move.uci)]


def _plain(here: Here) -> str:
    return here.said.replace("can't", "can not").replace("can’t", "can not").replace("cannot", "can not")  # fmt: skip


def outcome(best: int, points: int, negated: bool) -> Outcome:
    """What best and played say. A move in a lost position is not counted."""
    if best < LOST:
        return Outcome.UNSETTLED
    sound = mark(best, points) <= Earned.DUBIOUS
    if not negated:
        return Outcome.HOLDS if sound else Outcome.FAILS
    return Outcome.HOLDS if not sound or best - points >= NOT_ON else Outcome.FAILS


def check(claim: Claim, ask: Ask) -> Judgement:
    move = claim.params["move"]
    cost = weigh(ask, claim.spot, move)
    said = outcome(cost.best, cost.played, claim.negated)
    because = told(cost)
    if cost.best < LOST:
        because = f"{title(cost.side)} is lost whatever he plays ({cost.best} of 100), so what {cost.san} costs is not counted."
    instead = None
    if said is Outcome.FAILS:
        instead = f"{cost.san} can be played." if claim.negated else f"{cost.better} is better than {cost.san}."  # fmt: skip
    near = edge_of_two(cost.best, cost.played, lambda b, p: outcome(b, p, claim.negated))
    return Judgement(
        said, because, cost.line, claim.spot, cost.numbers, near, instead,
        marks=(Mark("move", (move[:2], move[2:4]), cost.side),), second=taught(cost, claim.spot),
    )  # fmt: skip


KIND = Kind(
    id="playable",
    title="Playable",
    version=1,
    definition=(
        "A playable move is no mistake: it costs less than 12 points and loses no result class, or costs at most 5 (the marks ! and ?!). 'Cannot be played' speaks of a bad move, not of an illegal one: "
        "it costs 10 points or more. With the best move below 15 nothing is counted."
    ),
    formula=f"cost = best - played; playable: earns no worse than ?!; cannot be played: cost >= {NOT_ON}; best < {LOST}: not counted",
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={
        "playable": {k: k for k in _PLAYABLE},
        "playable_noun": {k: k for k in _NOUNS},
        "fairly": {k: k for k in _FAIRLY},
    },
    vocabulary=frozenset(
        [
            "playable",
            "viable",
            "possible",
            "ok",
            "okay",
            "right",
            "acceptable",
            "respectable",
            "worth",
            "option",
            "alternative",
            "possibility",
            "reasonable",
            "sensible",
            "order",
            "decent",
            "good",
            "fine",
            "played",
            "play",
            "consideration",
            "question",
            "picture",
            "attention",
            "try",
            "look",
            "wrong",
            "works",
            "work",
        ]
    ),
    frames=FRAMES,
    read=read,
    check=check,
)
