"""Material on the board, counted."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.board import LETTERS, counts, material, other, side_of, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import ADJECTIVES, members
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import around, played
from lineproof.claims.slot import SLOTS

_SIGN: dict[str, int] = {
    **dict.fromkeys(("up", "ahead", "to the good", "in credit"), 1),
    **dict.fromkeys(
        ("down", "behind", "short", "to the bad", "in arrears", "in the red", "light", "shy", "adrift", "minus"), -1
    ),
}  # fmt: skip
_MORE: dict[str, int] = {"more": 1, "extra": 1, "less": -1, "fewer": -1}
_NUMBER = {2: "2 ", 3: "3 "}
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


def amount(noun: Noun) -> str | None:
    """The name of an amount, as `check` knows it: "2 pawns", "exchange and pawn"; None for what is none."""
    if noun.parts:
        named = [amount(part) for part in noun.parts]
        return " and ".join(n for n in named if n) if all(named) and len(named) == 2 else None
    head = "piece" if noun.head in {"knight", "bishop", "minor piece"} else noun.head
    if head in {"material", "exchange"}:
        return head
    if head not in {"pawn", "piece", "rook", "queen"} or noun.square:
        return None
    if noun.plural:
        number = _NUMBER.get(noun.count or 0)
        return f"{number}{head}s" if number and f"{number}{head}s" in VALUE else None
    return head


def extra(noun: Noun) -> str | None:
    """The amount of "an extra pawn", "two extra pawns"; None for "his extra pawn"."""
    return None if noun.whose or noun.det in {"the", "this", "that"} else known_extra(noun)


def known_extra(noun: Noun) -> str | None:
    """The amount of "the extra pawn", "his extra queen"; "his own extra pawn" is one of a majority."""
    if "own" in noun.adjectives or " own " in f" {noun.text} ":
        return None
    if noun.head == "extra pawn":
        return amount(replace(noun, head="pawn", square=""))
    return amount(noun) if "extra" in noun.adjectives else None


_EQUAL = members("level", ADJECTIVES)
FRAMES = (
    "{side} <=> {amount} {sign} [for {price}] [+for_nothing|for_free]",
    "{side} <=> up {amount} [for {price}] ; up=yes",
    "{side} <=> down {amount} [for {price}] ; down=yes",
    "<=> {amount} {sign} [for {price}] if verbless",
    "<=> up {amount} [for {price}] ; up=yes if verbless",
    "<=> down {amount} [for {price}] ; down=yes if verbless",
    "{side} <come_out/emerge/end_up/finish> {amount} {sign} [for {price}] ; ends=yes",
    "{side} <go/fall> {amount} {sign} ; ends=yes",
    "{pointer} <=> {n} (against|to|for) {m}",
    "{side} <=> {amount} in front",
    "{side} <=> {sign} (in|on) material",
    "{side} <=> material {sign}",
    "{side} <lead> (in|on) material",
    "{side} <trail> (in|on) material ; down=yes",
    "{side} <lead> {amount}",
    "{side} <trail> {amount} ; down=yes",
    "{side} <trail> by {amount} ; down=yes",
    "{side} <have/~> {amount} {more} [than {second_side}]",
    "{side} <have/~> {extra} [for {price}]",
    "<=> {extra} [for {side}] if verbless",
    "<~> {extra} for {side}",
    "<*> {known_extra} [on {square}] ; known=yes",
    "{side} <have> {amount} for {price}",
    "{pointer} <=> {amount} for {price}",
    "{side} <have> {amount} +in_hand",
    "{side} <lead> by {amount}",
    "{side} <be_short_of/lack> {amount} ; down=yes",
    "[{agent}] <give/put> {side} {amount} {sign}",
    "[{agent}] <give> {side} {extra}",
    "(material|balance|count) <=> {level}",
    "[{anything}] <=> {level} (in|on) material",
    "[{anything}] <=> {level} +materially",
    "{side} <have> same material ; level=yes",
    "{nobody} <=> {amount} {sign} ; nothing=yes",
    "{nobody} <=> {sign} (in|on) material ; nothing=yes",
    "{nobody} <lead> (in|on) material ; nothing=yes",
    "{nobody} <lead> {amount} ; nothing=yes",
    "pawn <=> {n} (against|to|for) {m}",
    "<=> {pawns_n} (against|to|versus) {m} if verbless without=on",
    "{side} <have> {pawns_n} (against|to) {m} if without=on",
    "<~> {pawns_n} (against|to) {m} if without=on",
    "{both} <have> {pawns_n} ; each=yes",
    "<=> {pawns_n} +each|apiece ; each=yes if verbless",
    "{side} <=> {sign} +materially",
    "<~> {level_material} ; level=yes",
    "<be:restore/re-establish/redress> {level_material} ; level=yes",
    "{nobody} <=> +up anything ; nothing=yes",
    "{nobody} <have> {extra} ; nothing=yes",
    "{both} <have> same material ; level=yes",
    "[{agent}] <make/give> pawn {n} (against|to|for) {m}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    done = "ends" in slots or ("level" in slots and "level_material" in slots)
    if verb is not None and (verb.modal or (verb.done != done and "level_material" not in slots)):
        raise Unread("it is not said of the material on the board now")
    if "development" in here.said:
        raise Unread("it is not material that is counted")
    if "agent" in slots and not _man(slots["agent"]):
        here = here.at(played(here, slots["agent"]).after)
    near = here.said if "pawns_n" in slots else " ".join((*around(here), here.said))
    if ("pawns_n" in slots or "m" in slots) and _IN_PART.search(near):
        raise Unread("it is counted on a part of the board")
    if "pawns_n" in slots:
        pawns = (int(slots["pawns_n"]), int(slots.get("m", slots["pawns_n"])))
        return [here.claim(KIND.id, "white", amount="pawns", pawns=pawns)]
    if re.fullmatch(r"(?:queen|rook|bishop|knight|pawn) behind", here.said):
        raise Unread("it may stand behind another piece")
    if "m" in slots:
        pawns = (int(slots["n"]), int(slots["m"]))
        return [here.claim(KIND.id, "white", amount="pawns", pawns=pawns)]
    if "level" in slots or "nothing" in slots:
        return [here.claim(KIND.id, "white", amount="level")]
    named = slots.get("amount") or slots.get("extra") or slots.get("known_extra")
    if "pointer" in slots and named == slots.get("price"):
        raise Unread("as much is had as is given")
    if "pointer" in slots:
        side = here.last().side
    elif "square" in slots and "side" not in slots:
        letter = here.board.piece_at(slots["square"])
        if letter is None:
            raise Unread(f"nothing stands on {slots['square']}")
        side = side_of(letter)
    elif "known" in slots and re.match(
        r"\s*(?:in the (?:middle|centre|center)|(?:on|over on|out on) the (?:king|queen|other (?:wing|side|flank)|far ))",
        around(here)[1],
    ):
        raise Unread("it is extra there, and not in all")
    elif "known" in slots and "side" not in slots:
        if "whose" not in slots:
            side = _richer(here, str(named))
        elif slots["whose"] in {"his", "their"} and here.neutral:
            raise Unread("it is not clear whose it is")
        else:
            side = here.side(slots["whose"])
    else:
        side = here.side(slots.get("side"))
    if "down" in slots or slots.get("sign", slots.get("more", 1)) < 0:
        side = other(side)
    return [
        here.claim(
            KIND.id, side, amount=named or "material", price=slots.get("price"), known="known" in slots
        )
    ]  # fmt: skip


_IN_PART = re.compile(
    r"\b(?:(?:king|queen)(?:'s |-| )?side|wings?|flanks?|files?|centre|center|over (?:there|here)|majorit\w+|minorit\w+|on [a-h][1-8]|[a-h]\d (?:is|needs))\b",
    re.IGNORECASE,
)
"""Words with which not the whole board is counted."""


def _man(text: str) -> bool:
    """Whether a piece is named and nothing that it does: "he has grabbed the pawn, which leaves Black a pawn up"."""
    return not MOVE.fullmatch(text) and text.split()[-1] in {*LETTERS, *(f"{n}s" for n in LETTERS)}


def _richer(here: Here, amount: str) -> str:
    """Whose "the extra pawn" is: who has more of such pieces; White where nobody has."""
    letter = {"pawn": "p", "2 pawns": "p", "3 pawns": "p", "rook": "r", "queen": "q"}.get(amount)
    if letter is None:
        raise Unread("it is not said whose it is")
    own, enemy = counts(here.board, "white"), counts(here.board, "black")
    return "black" if enemy[letter] > own[letter] else "white"


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
    if claim.params.get("known"):  # "his extra queen": whatever was given for it
        holds = _more(amount, diff, minor)
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


def _more(amount: str, diff: dict[str, int], minor: int) -> bool:
    """Whether there are more of such pieces, and so many more where the words count them."""
    if amount in {"pawn", "rook", "queen"}:
        return diff[amount[0]] >= 1
    if amount in {"2 pawns", "3 pawns"}:
        return diff["p"] >= VALUE[amount]
    return minor >= (2 if amount == "2 pieces" else 1)


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
    if more and less:
        return f"{' and '.join(more)} for {' and '.join(less)}"
    return (
        f"{' and '.join(more or less)} {'more' if more else 'less'}" if more or less else "nothing"
    )


KIND = Kind(
    id="material-count",
    title="Material count",
    version=3,
    definition="Pieces on the board at that moment, by values 1, 3, 3, 5, 9: 'a pawn up' is one pawn more with pieces equal, 'the exchange' a rook for a minor piece, 'a piece' one minor piece more and still ahead, 'level' equal by value.",
    formula="balance = sum of own values - sum of enemy values, with 1, 3, 3, 5, 9",
    slots={
        "sign": _SIGN,
        "more": _MORE,
        "level": dict.fromkeys(members("level", ADJECTIVES), True),
    },
    tests={
        "amount": amount,
        "price": amount,
        "extra": extra,
        "pawns_n": lambda n: str(n.count) if n.head == "pawn" and n.count and n.count > 3 else None,
        "both": lambda n: (
            n.text if n.type == "side" and n.text.split()[0] in {"both", "each"} else None
        ),
        "level_material": lambda n: (
            n.text
            if (n.head == "material" and not _EQUAL.isdisjoint(n.adjectives))
            or (n.head in {"equality", "parity"} and "material" in n.adjectives)
            or n.head in {"material balance", "balance of material", "material equality"}
            else None
        ),
        "known_extra": known_extra,
        "second_side": SLOTS["side"],
        "pointer": lambda n: n.text if n.type == "pronoun" else None,
    },
    frames=FRAMES,
    gives_way=frozenset({"majority", "wins-material"}),
    read=read,
    check=check,
    flips=True,
)
