"""Material on the board, counted."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import counts, material, other, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.phrase import SHARED
from lineproof.claims.played import PLAYED, played

PHRASES = (
    "{side} <be> [{very}] {amount} (up|ahead|to the good|more|in front) [already|for nothing|for now|in this line]",
    "{side} <be> [{very}] {amount} (down|behind|short|less|to the bad) [already|for now|in this line]",
    "{side} <have/keep/retain/enjoy> [{very}] {extra} [already|for now|in this line]",
    "{side} <have/keep/retain/enjoy> [{very}] {amount} (more|extra|less|fewer) [than {second_side}]",
    "{side} <have> [{very}] {amount} for {price}",
    "{side} <have> {amount} in hand",
    "with {extra} [for {side}]",
    "(being|while|and|still) {amount} {updown}",
    "{amount} {updown}",
    "with {amount} (more|less)",
    "(material|the material|the material balance|the piece count|the pawn count) <be> [{very}] {level} [again]",
    "(nobody|no one|neither side) <be> {nothing}",
    "{side} <be> [{very}] (up|down|ahead|behind) {amount}",
    "{side} <be> [{very}] (up|down) {amount} for {price}",
    "{side} <be> [{very}] {amount} (up|down) for {price}",
    "(the pawns|pawns) <be> {n} (against|to|for) {m}",
    "(this|which|that|it) (makes|leaves|gives) [the] pawns {n} (against|to|for) {m}",
    "{agent} <leave/make/put> {side} [{very}] {amount} {updown}",
    "(leaving|putting) {side} [{very}] {amount} {updown}",
    "{side} <be> [{very}] short of {amount}",
    "{side} <lead> by {amount}",
    "{side} <lack/miss> [{very}] {amount}",
    "{side} <be> [{very}] (ahead in material|up in material|material up|material ahead)",
    "{side} <be> [{very}] (behind in material|down in material|material down|material behind)",
    "(the sides|both sides|the two sides) <be> {level} in material",
    "(both sides|the sides|the two sides) <have> the same material",
)
_AMOUNTS: dict[str, Any] = {
    **dict.fromkeys(("a pawn", "one pawn", "1 pawn", "a clear pawn", "a clean pawn", "a healthy pawn", "a single pawn", "a whole pawn", "just a pawn", "only a pawn", "a sound pawn", "a solid pawn"), "pawn"),
    **dict.fromkeys(("2 pawns", "2 clear pawns", "2 clean pawns", "2 whole pawns", "2 healthy pawns"), "2 pawns"),
    **dict.fromkeys(("3 pawns",), "3 pawns"),
    **dict.fromkeys(("a piece", "a clear piece", "a whole piece", "a minor piece", "a knight", "a bishop", "a full piece", "a clean piece", "a whole knight", "a whole bishop", "a full knight", "a clear knight"), "piece"),
    **dict.fromkeys(("2 pieces", "2 whole pieces"), "2 pieces"),
    **dict.fromkeys(("the exchange", "an exchange", "a clear exchange"), "exchange"),
    **dict.fromkeys(("a rook", "a whole rook", "a clear rook", "a full rook"), "rook"),
    **dict.fromkeys(("a queen", "a whole queen", "the queen"), "queen"),
    **dict.fromkeys(("the exchange and a pawn", "exchange and pawn", "an exchange and a pawn"), "exchange and pawn"),
    **dict.fromkeys(("the exchange and 2 pawns",), "exchange and 2 pawns"),
    **dict.fromkeys(("a piece and a pawn", "piece and pawn"), "piece and pawn"),
    **dict.fromkeys(("a rook and a pawn", "rook and pawn"), "rook and pawn"),
}  # fmt: skip
_EXTRA: dict[str, Any] = {
    **dict.fromkeys(("an extra pawn", "a pawn more", "one extra pawn", "one pawn more"), "pawn"),
    **dict.fromkeys(("2 extra pawns", "2 pawns more"), "2 pawns"),
    **dict.fromkeys(("an extra piece", "a piece more"), "piece"),
    **dict.fromkeys(("an extra exchange",), "exchange"),
    **dict.fromkeys(("an extra rook", "a rook more"), "rook"),
    **dict.fromkeys(("an extra queen", "a queen more"), "queen"),
}  # fmt: skip
_PRICE = {
    k: v
    for k, v in _AMOUNTS.items()
    if v in {"pawn", "2 pawns", "3 pawns", "piece", "rook", "2 pieces", "queen"}
} | {"a rook and a pawn": "rook and pawn", "2 minor pieces": "2 pieces"}
_LEVEL = dict.fromkeys(
    (
        "level",
        "equal",
        "even",
        "balanced",
        "dead level",
        "dead equal",
        "exactly level",
        "exactly equal",
        "in balance",
        "back in balance",
        "fully level",
    ),
    True,
)
VALUE = {
    "pawn": 1,
    "2 pawns": 2,
    "3 pawns": 3,
    "piece": 3,
    "2 pieces": 6,
    "exchange": 2,
    "rook": 5,
    "queen": 9,
    "rook and pawn": 6,
}


FRAMES = (
    "{side} <be> {amount} +up|ahead|to_the_good|down|behind|short",
    "{side} <be> {amount} [for {price}] +up|ahead|down|behind",
    "{side} <have> {extra}",
    "material <=> {level}",
    "{side} <be> (up|down|ahead) {amount}",
    "{side} <be_short_of> {amount}",
    "{side} <lack> {amount}",
    "{agent} <give> {side} {amount} +down|up|ahead|behind",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if verb is not None and (verb.modal or verb.done):
        raise Unread("it is not said of the material on the board now")
    text = f" {here.said} "
    if "agent" in slots:
        here = here.at(played(here, slots["agent"]).after)
    if "n" in slots:
        return [
            here.claim(KIND.id, "white", amount="pawns", pawns=(int(slots["n"]), int(slots["m"])))
        ]
    if (
        "side" not in slots
        and here.after_unread
        and "level" not in slots
        and "nothing" not in slots
        and "same material" not in text
    ):
        raise Unread("the clause before was not read, so it is not clear what is counted")
    if "level" in slots or "nothing" in slots or "the same material" in text:
        return [here.claim(KIND.id, "white", amount="level")]
    side = here.side(slots.get("side"))
    if any(
        f" {w} " in text.replace(".", " ").replace(",", " ")
        for w in (
            "down",
            "behind",
            "short",
            "less",
            "fewer",
            "lack",
            "lacks",
            "miss",
            "misses",
            "is missing",
            "bad",
        )
    ):
        side = other(side)
    amount = slots.get("amount", slots.get("extra"))
    return [here.claim(KIND.id, side, amount=amount or "material", price=slots.get("price"))]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board, side, amount = claim.spot.board, claim.side or "white", claim.params["amount"]
    balance = material(board, side)
    own, enemy = counts(board, side), counts(board, other(side))
    diff = {k: own[k] - enemy[k] for k in "qrbnp"}
    minor = diff["b"] + diff["n"]
    same_big = diff["q"] == 0 and diff["r"] == 0
    match amount:
        case "level":
            holds = balance == 0
        case "material":
            holds = balance >= 1
        case "pawn" | "2 pawns" | "3 pawns":
            holds = same_big and minor == 0 and diff["p"] == VALUE[amount]
        case "piece":
            holds = same_big and minor == 1 and balance >= 1
        case "2 pieces":
            holds = same_big and minor == 2
        case "exchange":
            holds = diff["q"] == 0 and diff["r"] == 1 and minor == -1
        case "exchange and pawn" | "exchange and 2 pawns":
            holds = (
                diff["q"] == 0
                and diff["r"] == 1
                and minor == -1
                and diff["p"] == (1 if amount == "exchange and pawn" else 2)
            )
        case "piece and pawn":
            holds = same_big and minor == 1 and diff["p"] == 1
        case "rook and pawn":
            holds = diff["q"] == 0 and diff["r"] == 1 and minor == 0 and diff["p"] == 1
        case "pawns":
            holds = sorted(claim.params["pawns"]) == sorted((own["p"], enemy["p"]))
        case "rook":
            holds = diff["q"] == 0 and diff["r"] == 1 and minor == 0
        case "queen":
            holds = diff["q"] == 1 and diff["r"] == 0 and minor == 0
        case _:
            holds = False
    if amount == "pawns":
        because = f"White has {own['p']} pawns, Black {enemy['p']}."
        return Judgement(
            Outcome.HOLDS if holds else Outcome.FAILS,
            because,
            (),
            claim.spot,
            {"white": own["p"], "black": enemy["p"]},
            instead=None if holds else because,
        )
    price = claim.params.get("price")
    if price is not None:
        holds = _traded(amount, price, diff, minor)
    ahead = side if balance >= 0 else other(side)
    flip = 1 if balance >= 0 else -1
    words = _words({k: v * flip for k, v in diff.items()}, minor * flip)
    if words == "nothing":
        because = "Material is level."
    elif balance == 0:
        because = f"Material is level by value: {title(side)} has {words}."
    else:
        because = f"{title(ahead)} has {words}."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        {"balance": balance},
        instead=None if holds else because,
    )


def _traded(amount: str, price: str, diff: dict[str, int], minor: int) -> bool:
    """Whether exactly `amount` was had for exactly `price`."""
    wanted = {"q": 0, "r": 0, "m": 0, "p": 0}
    for what, sign in ((amount, 1), (price, -1)):
        match what:
            case "pawn" | "2 pawns" | "3 pawns":
                wanted["p"] += sign * VALUE[what]
            case "piece" | "2 pieces":
                wanted["m"] += sign * (2 if what == "2 pieces" else 1)
            case "exchange":
                wanted["r"] += sign
                wanted["m"] -= sign
            case "rook":
                wanted["r"] += sign
            case "rook and pawn":
                wanted["r"] += sign
                wanted["p"] += sign
            case "queen":
                wanted["q"] += sign
    return wanted == {"q": diff["q"], "r": diff["r"], "m": minor, "p": diff["p"]}


def _words(diff: dict[str, int], minor: int) -> str:
    names = (("queen", diff["q"]), ("rook", diff["r"]), ("minor piece", minor), ("pawn", diff["p"]))
    number = {1: "one", 2: "two", 3: "three", 4: "four", 5: "five"}
    more = [f"{number.get(n, n)} {w}{'s' if n > 1 else ''}" for w, n in names if n > 0]
    less = [f"{number.get(-n, -n)} {w}{'s' if n < -1 else ''}" for w, n in names if n < 0]
    parts = [f"{' and '.join(more)} more"] if more else []
    parts += [f"{' and '.join(less)} less"] if less else []
    return " and ".join(parts) or "nothing"


KIND = Kind(
    id="material-count",
    title="Material count",
    version=2,
    definition="Pieces on the board at that moment, by values 1, 3, 3, 5, 9: 'a pawn up' is one pawn more with pieces equal, 'the exchange' a rook for a minor piece, 'a piece' one minor piece more and still ahead, 'level' equal by value.",
    phrases=PHRASES,
    patterns={"agent": PLAYED, "second_side": SHARED["side"]},
    slots={
        "amount": _AMOUNTS,
        "extra": _EXTRA,
        "price": _PRICE,
        "level": _LEVEL,
        "nothing": {
            "a pawn up": True,
            "ahead in material": True,
            "a pawn ahead": True,
            "material up": True,
        },
        "updown": {
            "up": "up",
            "down": "down",
            "ahead": "up",
            "behind": "down",
            "to the good": "up",
        },
    },
    vocabulary=frozenset(
        [
            "up",
            "down",
            "ahead",
            "behind",
            "more",
            "less",
            "extra",
            "material",
            "good",
            "short",
            "for",
            "front",
            "bad",
            "fewer",
            "hand",
            "lead",
            "leads",
            "lack",
            "lacks",
            "misses",
            "missing",
            "pawn",
            "pawns",
        ]
    ),
    frames=FRAMES,
    gives_way=frozenset({"majority"}),
    read=read,
    check=check,
    flips=True,
)
