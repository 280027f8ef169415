"""Compensation: what a side has for the material it is behind."""

from __future__ import annotations

from typing import Any

from lineproof.claims.amounts import WORTH, Amount, pawns
from lineproof.claims.bands import edge, seen_from, spoken
from lineproof.claims.board import counts, material, other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, GameOver, Judgement, Outcome, Spot
from lineproof.claims.gain import counted
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import MOVE

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

_SOME = frozenset({"some", "a little", "partial", "certain", "practical"})
_FULL = frozenset(
    ["enough", "sufficient", "full", "adequate", "ample", "good", "fair", "excellent", "fine", "plenty of", "plenty", "satisfactory", "complete", "real", "rich", "great", "every", "proper"]
)  # fmt: skip
_MORE = frozenset({"more than enough", "more than full", "too much"})
_SHORT = frozenset(
    {
        "little",
        "not enough",
        "insufficient",
        "inadequate",
        "precious little",
        "too little",
        "hardly",
    }
)
_GIVEN = frozenset({"play", "counterplay", "activity", "value", "return"})
"""What is compensation when it is said that it is for material."""


_RESOURCES = frozenset(
    ["lead", "development", "centre", "activity", "attack", "initiative", "space", "play", "file", "diagonal", "bishop pair", "tempo", "pressure", "mobility", "position", "grip", "king"]
)  # fmt: skip
"""What makes up for material."""


def comp(noun: Noun) -> tuple[str, bool] | None:
    """The degree that a noun phrase gives, and whether it is denied: "full compensation", "too little compensation"."""
    if noun.head not in NOUNS["compensation"] and noun.head != "enough":
        return None
    return _sized(noun)


def _sized(noun: Noun) -> tuple[str, bool]:
    said = {*noun.adjectives, noun.det, *noun.head.split()[:-1]}  # "good play" is one word
    if said & _SHORT:
        return "enough", True
    if said & _MORE:
        return "more than enough", False
    if said & _FULL:
        return "enough", False
    return ("some" if said & _SOME else AT_LEAST), False


_SUFFICIENT: dict[str, tuple[str, bool]] = {
    **dict.fromkeys(("sufficient", "enough", "adequate", "full", "ample", "good enough", "satisfactory", "complete", "fully sufficient", "obvious", "clear", "evident", "excellent", "good", "quite sufficient", "quite enough"), ("enough", False)),
    **dict.fromkeys(("insufficient", "inadequate", "too little"), ("enough", True)),
    **dict.fromkeys(("more than enough", "more than sufficient", "more than adequate"), ("more than enough", False)),
}  # fmt: skip
FRAMES = (
    "{side} <have> {comp} [for {amount}]",
    "{side} <have> {comp} for {it}",
    "{side} <have> {given} for {amount}",
    "{side} <have> {given} for {it}",
    "<~> {comp} [for {amount}] [for {side}]",
    "<~> {comp} for {it}",
    "<~> {given} for {amount}",
    "<~> without {comp} [for {amount}] ; lacks=yes",
    "[{cause}] <give> {side} {comp} [for {amount}]",
    "[{cause}] <give> {side} with {comp} [for {amount}]",
    "{asset} <=> {comp} [for {amount}]",
    "{asset} <=> {comp} for {it}",
    "{author} <consider/call/judge> {that} {comp} [for {amount}]",
    "{author} <consider/call/judge> {comp} [for {amount}] ; that=that if active",
    "{that} <=> {comp} [for {amount}]",
    "{that} <=> {comp} for {it}",
    "<be:compensate> {side} for {amount} ; paid=yes",
    "<be:invest> {amount} +well|wisely ; paid=yes",
    "{whose_comp} <=> {sufficient} [for {amount}]",
    "{side} <have> {nobody} for {amount} ; lacks=yes",
    "{side} <have to show> for {amount} {above} ; lacks=yes",
    "{side} <have to show> for {it} {above} ; lacks=yes",
    "{resource} <compensate> for {amount}",
    "{resource} <compensate> {amount}",
    "{resource} <=> worth {amount}",
    "{resource} <=> {comp} for {amount}",
    "{side} <have> {anything} as {comp} [for {amount}]",
    "{side} <have> as {comp} [for {amount}]",
    "{author} <see/find/spot> {comp} [for {amount}] [for {side}] if modal=|can",
    "{side} <have> {scraps} for {amount} ; lacks=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    amount = Amount.read(slots["amount"]) if "amount" in slots else None
    if (
        "that" in slots
        and amount is None
        and "it" not in slots
        and "author" not in slots
        and slots["comp"][0] == AT_LEAST
    ):
        raise Unread("it is not said that it is for material")
    owner = next((slots[s] for s in ("side", "asset") if s in slots), None)
    try:
        side = here.side(owner) if owner is not None else _behind(here, slots.get("whose"))
    except Unread:
        if owner not in {"he", "they"}:
            raise
        side = (
            here.third if here.neutral and here.third else _behind(here, None)
        )  # "Black gives up a bishop, and he gets too little for it"
    if "lacks" in slots:
        degree, negated = AT_LEAST, True
    else:
        degree, negated = next(
            (slots[s] for s in ("comp", "given", "sufficient") if s in slots), ("enough", False)
        )
        verb = slots.get("verb")
        negated = negated != bool(verb is not None and verb.negated)
    cause = slots.get("cause", "")
    spot = here.named(cause).after if MOVE.fullmatch(cause) else here.spot
    return [
        here.claim(
            KIND.id, side, spot=spot, negated=negated, degree=degree, amount=amount.name if amount else None
        )
    ]  # fmt: skip


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


KIND = Kind(
    id="compensation",
    title="Compensation",
    version=1,
    definition=(
        "The side is a pawn or more behind on the board (by the amount named), and its expected score with best play is 35 to 45 (some), 45 or more (enough), 55 or more (more than enough); without a degree 35 or more. "
        "One band off is unsettled; 'no compensation' is below 35, 'not enough' below 45; a hedge widens by five points."
    ),
    formula="behind = -material(here) >= 1; some: 35 <= points < 45; enough: points >= 45; more than enough: points >= 55; one band off: unsettled",
    slots={"sufficient": _SUFFICIENT},
    frames=FRAMES,
    tests={
        "comp": comp,
        "given": lambda n: (
            _sized(n) if n.head.split()[-1:] and n.head.split()[-1] in _GIVEN else None
        ),
        "it": lambda n: (
            n.text
            if n.type == "pronoun" or n.head in {"investment", "sacrifice", "gambit"}
            else None
        ),
        "asset": lambda n: n.whose if n.type == "noun" and n.whose else None,
        "that": lambda n: n.text if n.head in {"this", "that", "which"} else None,
        "author": lambda n: n.text if n.type == "side" and n.text in {"i", "we"} else None,
        "whose_comp": lambda n: n.text if n.head in NOUNS["compensation"] else None,
        "above": lambda n: n.text if n.head in {"nothing", "little", "precious little"} else None,
        "cause": lambda n: n.text if n.type != "side" else None,
        "resource": lambda n: (
            n.text
            if n.head in _RESOURCES or (n.type == "pronoun" and n.head in {"this", "that", "it"})
            else None
        ),
        "scraps": lambda n: (
            n.text if n.head in {"little", "precious little", "too little"} else None
        ),
    },
    read=read,
    check=check,
)
