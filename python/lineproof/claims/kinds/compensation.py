"""Compensation: what a side has for the material it is behind."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.amounts import AMOUNT, WORTH, Amount, pawns
from lineproof.claims.bands import edge, seen_from, spoken
from lineproof.claims.board import counts, material, other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, GameOver, Judgement, Outcome, Spot
from lineproof.claims.gain import counted
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.played import denied

AT_LEAST = "at least some"
"""Said without a degree."""
FROM = {"some": 35, AT_LEAST: 35, "enough": 45, "more than enough": 55}
"""Points of the side behind from which it has so much compensation (common practice)."""
BELOW = {"some": 45}
"""Points from which it has more than the words say."""
STEP_DOWN = {"some": 15, AT_LEAST: 15, "enough": 35, "more than enough": 45}
"""Points from which the degree is one band off."""
STEP_UP = {"some": 55}
HEDGE = 5
"""Points by which a hedge widens."""

PHRASES = (
    "{side} <have/get/keep/retain/obtain/enjoy> [{very}] [{degree}] {comp} [for {amount}|for it]",
    "{side} <have/get/keep/retain/obtain> [{very}] {enough} for {amount}",
    "(with|giving {side}|gives {side}|gave {side}) [{very}] [{degree}] {comp} [for {amount}|for it]",
    "(this|that|it|which|{move}) <give/offer/leave/provide/promise> {side} [with] [{very}] [{degree}] {comp} [for {amount}]",
    "(there is|there 's|there are) [{very}] [{degree}] {comp} [for {amount}]",
    "{side} <be> [{very}] [{fully}] compensated for {amount}",
    "{whose} compensation [for {amount}] <be> [{very}] {sufficient}",
    "the compensation [for {amount}] <be> [{very}] {sufficient}",
    "{amount} <be> [{very}] (well invested|more than compensated)",
    "{side} <have> nothing [at all] [to show] for {amount}",
    "{enough} for {amount}",
)
_COMP = ("compensation", "play", "counterplay", "activity", "compensation in return", "positional compensation", "value", "return")  # fmt: skip
_DEGREES: dict[str, str] = {
    **dict.fromkeys(("some", "a little", "a certain amount of", "partial", "a bit of", "some practical", "some real"), "some"),
    **dict.fromkeys(("enough", "sufficient", "full", "adequate", "ample", "good", "fair", "excellent", "fine", "plenty of", "satisfactory", "complete", "fully sufficient", "quite enough", "real", "rich", "great", "every", "good positional", "enough practical"), "enough"),
    **dict.fromkeys(("more than enough", "more than sufficient", "more than adequate", "too much", "more than full"), "more than enough"),
    **dict.fromkeys(("no", "no real", "no sufficient", "no adequate", "zero", "little", "not enough", "insufficient", "inadequate", "not sufficient", "not quite enough", "precious little", "hardly any", "too little", "no visible"), "no"),
}  # fmt: skip


def full(noun: Noun) -> str | None:
    """ "Full compensation"."""
    adjectives = {"full", "ample", "adequate", "sufficient", "enough", "good", "excellent"}
    return (
        "enough"
        if noun.head in NOUNS["compensation"] + ("value",)
        and adjectives & set(noun.adjectives)
        and not noun.no
        else None
    )


FRAMES = (
    "{side} <have> compensation [for {amount}]",
    "<~> compensation for {amount}",
    "{side} <have> enough for {amount} ; degree=enough",
    "{side} <have> {enough} [for {amount}]",
    "<~> {enough} [for {amount}]",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    said = here.said
    amount = Amount.read(slots["amount"]) if "amount" in slots else None
    comp = slots.get("comp", "")
    if amount is None and comp in {"play", "counterplay", "activity", "value", "return"}:
        raise Unread("it is not said that it is for material")
    side = here.side(slots["side"]) if "side" in slots else _behind(here, slots.get("whose"))
    degree, negated = _degree(said, slots)
    if denied(slots):
        negated = not negated
    spot = here.named(slots["move"]).after if "move" in slots else here.spot
    return [
        here.claim(
            KIND.id, side, spot=spot, negated=negated, degree=degree, amount=amount.name if amount else None
        )
    ]  # fmt: skip


def _degree(said: str, slots: dict[str, Any]) -> tuple[str, bool]:
    """The degree, and whether the words deny it."""
    written = slots.get("degree") or slots.get("enough") or slots.get("sufficient")
    if "nothing" in said.split():
        return AT_LEAST, True
    if written == "no":
        enough = re.search(
            r"\b(?:enough|insufficient|inadequate|sufficient|adequate|little)\b", said
        )
        return ("enough" if enough else AT_LEAST), True
    if "invested" in said or "compensated" in said:
        return ("more than enough" if "more than" in said else "enough"), False
    return written or AT_LEAST, False


def _behind(here: Here, whose: str | None) -> str:
    """Whose compensation it is when no side is named: that of the side behind in material.

    :raises Unread: when material is level.
    """
    if whose is not None:
        return here.side(whose)
    balance = material(here.board, "white")
    if balance == 0:
        raise Unread("material is level, so it is not clear who has given something")
    return "white" if balance < 0 else "black"


def outcome(degree: str, points: int, hedged: bool, denied_: bool) -> tuple[Outcome, bool]:
    """What the points of the side behind say of a degree, and whether it is one band off."""
    least, most = FROM[degree], BELOW.get(degree, 101)
    if denied_:
        return (Outcome.HOLDS if points < least else Outcome.FAILS), False
    slack = HEDGE if hedged and points >= 15 else 0
    if least - slack <= points < most + slack:
        return Outcome.HOLDS, False
    if STEP_DOWN[degree] <= points < STEP_UP.get(degree, 101):
        return Outcome.UNSETTLED, True
    return Outcome.FAILS, False


def check(claim: Claim, ask: Ask) -> Judgement:
    side, degree = claim.side or "white", claim.params["degree"]
    behind = -material(claim.spot.board, side)
    if behind < 1:
        because = f"{title(side)} is not behind in material."
        said = Outcome.HOLDS if claim.negated else Outcome.FAILS
        return Judgement(said, because, (), claim.spot, {"behind": behind}, instead=because)
    name = claim.params["amount"]
    if name is not None and not _fits(name, claim.spot, side):
        because = f"{title(side)} is {pawns(behind)} behind, which is not {_said(name)}."
        return Judgement(
            Outcome.FAILS, because, (), claim.spot, {"behind": behind}, instead=because
        )
    line = ask.best(claim.spot)
    if line is None:
        raise GameOver("the game is over")
    points = seen_from(side, line.points)
    said, one_off = outcome(degree, points, claim.hedged, claim.negated)
    because = f"{title(side)} is {pawns(behind)} behind, and with best play {spoken(side, points)}."
    if one_off:
        because += " That is one band off the claim."
    instead = None
    if said is Outcome.FAILS:
        instead = f"{title(side)} has {_earned(points)} compensation for the {pawns(behind)}."
    near = edge(points, lambda p: outcome(degree, p, claim.hedged, claim.negated))
    return Judgement(
        said, because, line.moves[:SHOWN], claim.spot, {"behind": behind, "points": points}, near, instead, one_off
    )  # fmt: skip


def _fits(name: str, spot: Spot, side: str) -> bool:
    """Whether the side is behind by the amount named: pawns with pieces level; pieces whatever pawns were had for them."""
    pieces = -counted(spot, side).pieces
    match name:
        case "material":
            return True
        case "pawn" | "two pawns" | "three pawns":
            return pieces == 0 and -material(spot.board, side) == WORTH[name]
        case "exchange":
            return 1 <= pieces <= 2
        case "queen":
            return counts(spot.board, side)["q"] < counts(spot.board, other(side))["q"]
    return WORTH[name] - 1 <= pieces <= WORTH[name]


def _said(name: str) -> str:
    return str(Amount(name, ""))


def _earned(points: int) -> str:
    if points < FROM["some"]:
        return "too little"
    return "some" if points < FROM["enough"] else "enough" if points < FROM["more than enough"] else "more than enough"  # fmt: skip


_ENOUGH = {k: v for k, v in _DEGREES.items() if "enough" in k} | {"plenty": "enough", "good value": "enough", "nothing": "no", "full value": "enough", "something": "some", "ample play": "enough"}  # fmt: skip
_SUFFICIENT = {
    **dict.fromkeys(("enough", "sufficient", "adequate", "full", "obvious", "good", "clear", "real", "plain", "ample", "fully sufficient", "quite enough", "excellent"), "enough"),
    **dict.fromkeys(("more than enough", "more than sufficient", "more than adequate"), "more than enough"),
    **dict.fromkeys(("insufficient", "inadequate", "not enough", "too little"), "no"),
}  # fmt: skip
KIND = Kind(
    id="compensation",
    title="Compensation",
    version=1,
    definition=(
        "The side is a pawn or more behind on the board (by the amount named), and its expected score with best play is 35 to 45 (some), 45 or more (enough), 55 or more (more than enough); without a degree 35 or more. "
        "One band off is unsettled; 'no compensation' is below 35, 'not enough' below 45; a hedge widens by five points."
    ),
    formula="behind = -material(here) >= 1; some: 35 <= points < 45; enough: points >= 45; more than enough: points >= 55; one band off: unsettled",
    phrases=PHRASES,
    patterns={"amount": AMOUNT},
    slots={
        "comp": {k: k for k in _COMP},
        "degree": _DEGREES,
        "enough": _ENOUGH,
        "sufficient": _SUFFICIENT,
        "fully": {k: k for k in ("fully", "well", "amply", "more than", "richly")},
    },
    vocabulary=frozenset(
        [
            "compensation",
            "compensated",
            "play",
            "counterplay",
            "activity",
            "value",
            "return",
            "enough",
            "invested",
            "nothing",
            "plenty",
            "something",
        ]
    ),
    frames=FRAMES,
    tests={"enough": full},
    read=read,
    check=check,
)
