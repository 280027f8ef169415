"""Works now: a move whose moment has come, or not yet."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import spelled, weigh
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.passing import POINTS, parsed

_NOW = "(now|at last|finally|only now|now at last|now that {moves} is played)"
_MORE = "(now|at last|finally|at this moment|right now|already)"
_BE = "(is|becomes|has become|is finally|is at last|is really|is suddenly)"

PHRASES = (
    f"{_NOW} {{move}} {_BE} {{on}}",
    f"{_NOW} {{move}} (works|really works|does work|wins|succeeds|comes off)",
    f"{{move}} {_BE} {_MORE} {{on}}",
    f"{{move}} {_BE} {{on}} {_MORE}",
    f"{{move}} (works|does work|succeeds|comes off) {_MORE}",
    f"{{move}} {_MORE} (works|succeeds|comes off)",
    "(now|at last|finally) [{side}] (can|may) [safely|really|at last] play {move}",
    "{side} (can|may) (now|at last|finally) [safely|really] play {move}",
    "the (time|moment|hour) for {move} has come",
    "(it is|now is|this is) [now] (time|the time|the moment|the right time|the right moment) (for|to play) {move}",
    "only now does {move} work",
    "{move} (is|does) not [quite] {fails} yet",
    "{move} (is|does) not yet {fails}",
    "(it is|this is) (too early|too soon|not yet time|not the time yet|not yet the time|not yet the moment) (for|to play) {move}",
    "not yet {move}",
    "{move} (is|comes) [still|a move|a little|a bit] (too early|too soon|premature) [here]",
    "the time for {move} has not come [yet]",
    "{move} no longer (works|succeeds|comes off)",
    "{move} (does not work|is not on|is not possible) (any more|any longer|now)",
)  # fmt: skip
FRAMES = (
    "moment <come/arrive> for {move}",
    "{move} <be> +on",
    "{move} <be> possible +now",
    "{move} <work/succeed> +now",
)
_ON = dict.fromkeys(("on", "possible", "playable", "in order", "available", "a real option", "a possibility", "feasible", "safe"), True)  # fmt: skip
_FAILS = dict.fromkeys(
    (
        "on",
        "possible",
        "playable",
        "in order",
        "good",
        "work",
        "right",
        "feasible",
        "strong",
        "available",
        "safe",
    ),
    True,
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    text = slots["move"]
    verb = slots.get("verb")
    if verb is not None and (
        verb.past or verb.modal in {"could", "would", "might", "may", "almost"}
    ):
        raise Unread("said of what may come")
    said = f" {here.said} "
    not_yet = (
        re.search(
            r"\bnot\b|n['’]t\b|\bno longer\b|\btoo early\b|\btoo soon\b|\bpremature\b|\bnot yet\b",
            said,
        )
        is not None
    )
    spot, side = _moment(here, text)
    if "side" in slots and here.side(slots["side"]) != side:
        raise Unread(f"{text} is no move of that side")
    return [
        here.claim(
            KIND.id,
            side,
            spot=spot,
            negated=not_yet != (verb is not None and verb.negated),
            move=text.split(".")[-1],
        )
    ]


def _moment(here: Here, text: str) -> tuple[Spot, str]:
    """The position in which the move is to be played: here, after a pass, or before it when it has just been played.

    :raises Unread: when the move is legal in none of them.
    """
    spot = here.spot
    if spot.moves:
        before = spot.earlier(1)
        if parsed(before, text) == spot.moves[-1]:
            return before, before.board.turn
    free = spot.passed()
    for at in (spot, free):
        if at is not None and parsed(at, text) is not None:
            return (spot if at is spot else free or spot), at.board.turn
    raise Unread(f"{text} is not legal here")


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, side = claim.spot, claim.side or "white"
    uci = parsed(spot, claim.params["move"])
    if uci is None:
        return Judgement(Outcome.FAILS, f"{claim.params['move']} is not legal here.", (), spot)
    found = weigh(ask, spot, uci)
    san = spot.board.san(uci)
    if not found.counted:
        because = f"{title(side)} is lost whatever he plays, so what {san} costs is not counted."
        return Judgement(Outcome.UNSETTLED, because)
    said = outcome(found.best, found.played)
    near = edge_of_two(found.best, found.played, outcome)
    because = f"{san} costs {title(side)} {spelled(found.points)} here"
    because += "." if found.is_best else f" against {found.better}."
    second = None
    if said is Outcome.HOLDS and not claim.negated:
        second = _before(claim, ask, san)
    return Judgement(
        said, because, found.line, spot, {"cost": found.points}, near,
        because if said is Outcome.FAILS else None, one_off=said is Outcome.UNSETTLED, second=second,
        marks=(Mark("move", (uci[:2], uci[2:4]), side),),
    )  # fmt: skip


def outcome(best: int, played: int) -> Outcome:
    """What the points of best and played say of a move that is said to work."""
    if is_safe(best, played):
        return Outcome.HOLDS
    return Outcome.FAILS if best - played >= POINTS else Outcome.UNSETTLED


def _before(claim: Claim, ask: Ask, san: str) -> str | None:
    """The second finding: whether the move worked a move earlier as well."""
    if len(claim.spot.moves) < 2:
        return None
    earlier = claim.spot.earlier(2)
    uci = parsed(earlier, claim.params["move"])
    if uci is None:
        return f"A move earlier {san} was not possible."
    was = weigh(ask, earlier, uci)
    if is_safe(was.best, was.played):
        return f"A move earlier {san} would have worked as well."
    return f"A move earlier {san} would have cost {was.points} points."


KIND = Kind(
    id="works-now",
    title="Works now",
    version=1,
    definition=(
        "The move costs at most 5 points here (after a pass by the other side when that is to move), or keeps 85 of more than 90; from 15 it does not work, between it is unsettled. "
        "Whether it worked a move earlier is a second finding. 'Not yet', 'no longer' and 'too early' say that it does not work."
    ),
    formula=f"cost = best - played; works: safe move; unsettled: cost < {POINTS}; does not: cost >= {POINTS}",
    phrases=PHRASES,
    slots={"on": _ON, "fails": _FAILS},
    vocabulary=frozenset(
        {"now", "last", "finally", "yet", "time", "moment", "early", "soon", "premature", "longer", "more", "hour", "already"}
    ),
    gives_way=frozenset({"as-before", "unlike-before", "refuted-by"}),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
