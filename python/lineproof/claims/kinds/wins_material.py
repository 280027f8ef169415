"""Material won or lost in the line shown."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import other, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.gain import before_last_moves_of, counted, end_of_shown_line, settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind

LEAST: dict[str, tuple[float, float]] = {
    "pawn": (1, 1), "two pawns": (2, 2), "three pawns": (3, 3), "exchange": (1, 1), "piece": (1, 2), "rook": (3, 3), "queen": (3, 3), "material": (1, 1), "two pieces": (5, 5),
}  # fmt: skip
"""Net gain in pawns from which the claim holds, and from which it holds without a note."""

BACK = 4
"""Moves of the loser that are looked back for what has already happened ("has won")."""

MOST = {"exchange": 2.5}
"""Net gain in pawns above which it is no longer that."""

_AMOUNTS: dict[str, Any] = {
    **dict.fromkeys(("a pawn", "the pawn", "a clear pawn", "his pawn", "a second pawn", "another pawn", "one pawn", "an important pawn", "a healthy pawn", "a clean pawn", "a centre pawn", "a central pawn", "the e pawn", "the d pawn", "the f pawn", "the pawn on e5", "a whole pawn"), "pawn"),
    **dict.fromkeys(("2 pawns", "the 2 pawns"), "two pawns"),
    **dict.fromkeys(("3 pawns",), "three pawns"),
    **dict.fromkeys(("the exchange", "an exchange"), "exchange"),
    **dict.fromkeys(("a piece", "the piece", "a whole piece", "a clear piece", "a clean piece", "a knight", "the knight", "a bishop", "the bishop", "his knight", "his bishop", "her knight", "our knight", "our bishop", "your knight", "your bishop", "a minor piece", "black 's knight", "white 's knight", "black 's bishop", "white 's bishop", "a full piece", "one piece"), "piece"),
    **dict.fromkeys(("a rook", "the rook", "his rook", "our rook", "a whole rook", "your rook", "a clear rook", "a full rook", "the rook on a8", "the rook on h8", "the rook on a1", "the rook on h1", "the a8 rook", "the h8 rook", "the a1 rook", "the h1 rook", "the rook in the corner"), "rook"),
    **dict.fromkeys(("the queen", "a queen", "his queen", "our queen", "her queen", "your queen", "black 's queen", "white 's queen", "the black queen", "the white queen"), "queen"),
    **dict.fromkeys(("material", "some material"), "material"),
    **dict.fromkeys(("2 pieces",), "two pieces"),
}  # fmt: skip

PHRASES = (
    "[{side}] (wins|win|is winning|are winning|picks up|pick up|nets|gains|gain|will win|is going to win|snaps off|collects|emerges with) [{very}] {amount} [back|outright|by force|for nothing|for free|cleanly|next]",
    "[{side}] (has|have) (won|gained) [{very}] {amount}",
    "(this|that|it|{move}) (wins|will win|is winning) [{side}] [{very}] {amount} [outright|by force|for nothing|for free|cleanly|for white|for black|for us|on the spot]",
    "(this|that|it|{move}) (costs|will cost) {side} [{very}] {amount}",
    "(costs|costing) {side} [{very}] {amount}",
    "(winning|picking up|netting|gaining) [{very}] {amount} [for nothing|for free|cleanly|by force]",
    "{move} (nets|wins|gains|gives) {side} [{very}] {amount}",
    "{side} [only|just|simply] {loses} [{very}] {amount} [to a check|to a fork|to a pin|to a discovered check|to a discovery]",
    "[{side}] {loses} [{very}] {amount} [outright|by force|for nothing|on the spot]",
    "(this|that|it|{move}) {loses} [{very}] {amount} [outright|by force|for nothing|on the spot|to a fork|to a pin|to a simple fork]",
    "{described} (wins|has won|will win|costs|has cost|will cost|loses) [{side}] [{very}] {amount} [for {price}]",
    "{actor} (wins|has won|will win|picks up|collects|nets) [{very}] {amount} [for {price}]",
    "[{side}] (wins|win|has won|have won|gains|is winning) [{very}] {amount} for {price}",
    "[{side}] {loses} [{very}] {amount} for {price}",
    "(this|that|it) (wins|loses|costs) [{side}] [{very}] {amount} for {price}",
    "{amount} (is|will be) lost",
    "{amount} (falls|drops off|drops|is gone)",
    "losing [{very}] {amount}",
)
_LOSES = {
    k: k for k in ("loses", "lose", "drops", "drop", "will lose", "is losing", "are losing", "is going to lose", "simply loses", "blunders", "gives away", "throws away", "has lost", "have lost", "drops off", "sheds", "hangs", "must lose")
}  # fmt: skip

_PRICES = {k: v for k, v in _AMOUNTS.items() if v in {"pawn", "two pawns", "piece", "rook"}}
WORTH = {
    "pawn": 1,
    "two pawns": 2,
    "three pawns": 3,
    "exchange": 2,
    "piece": 3,
    "rook": 5,
    "queen": 9,
    "two pieces": 6,
}
"""Value in pawns, for what was given for something."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    text = here.said
    spot = here.spot
    if "move" in slots:
        spot = here.named(slots["move"]).after
    elif "described" in slots:
        here.described(slots["described"])
    elif "actor" in slots:
        here.described(f"{slots['actor']} move")
    mover = other(spot.board.turn)
    subject = here.side(slots["side"]) if "side" in slots else None
    costs = any(w in text.split() for w in ("costs", "cost", "costing"))
    falls = (
        slots.get("loses") is None
        and any(w in text for w in (" lost", " falls", " drops", " gone"))
        and "won" not in text
    )
    by_this = _points_here(text) or any(k in slots for k in ("move", "described", "actor"))
    if subject is None and not by_this and not falls and not costs:
        subject = here.implied()
    if costs or "loses" in slots or text.startswith("losing"):
        winner = other(subject or mover)
    else:
        winner = subject or mover
    done = _is_done(here, slots["amount"], text, falls)
    price = slots.get("price")
    if price is not None and WORTH.get(slots["amount"], 0) - WORTH[price] < 1:
        raise Unread("what is given is worth as much as what is won")
    return [
        here.claim(
            KIND.id,
            winner,
            spot=spot,
            amount=slots["amount"],
            force="by force" in text,
            free=("for free" in text or "for nothing" in text),
            price=price,
            done=done,
        )
    ]


def _is_done(here: Here, amount: str, text: str, falls: bool) -> bool:
    """Whether the words speak of a gain that has happened: "has won", or "the knight falls" of the piece just taken."""
    if any(
        w in f" {text} "
        for w in (
            " has won ",
            " have won ",
            " has lost ",
            " have lost ",
            " has cost ",
            " have cost ",
            " has gained ",
            " have gained ",
        )
    ):
        return True
    if not falls or not here.spot.moves:
        return False
    last = here.last()
    taken = (last.before.board.piece_at(last.uci[2:4]) or "").lower()
    return bool(taken) and taken in {"piece": "nb", "rook": "r", "queen": "q", "pawn": "p"}.get(
        amount, ""
    )


def _points_here(text: str) -> bool:
    return text.split()[0] in {"this", "that", "it"}


def check(claim: Claim, ask: Ask) -> Judgement:
    winner = claim.side or "white"
    loser = other(winner)
    amount = claim.params["amount"]
    done = claim.params["done"]
    befores = before_last_moves_of(claim.spot, loser, BACK if done else 1)
    here = claim.params["force"] or done
    shown = claim.spot if here else end_of_shown_line(claim.place, claim.spot)
    final = settled(ask, shown, winner)
    # a loser who has not moved yet has made no mistake: material as the line begins
    base = (
        settled(ask, befores[0], winner)
        if befores
        else counted(claim.spot.earlier(len(claim.spot.moves)), winner)
    )
    for before in befores[1:]:
        if final.balance - base.balance >= LEAST[amount][0]:
            break
        earlier = settled(ask, before, winner)
        base = min(base, earlier, key=lambda count: count.balance)
    gain = final.balance - base.balance
    least, clean = LEAST[amount]
    most = MOST.get(amount, 99)
    price = claim.params["price"]
    if price is not None:
        net = WORTH[amount] - WORTH[price]
        least, clean, most = max(net - 1, 1), net - 1, net + 1
    if claim.params["free"]:
        least = clean = max(least, WORTH.get(amount, 1))
    line = (*shown.moves[len(claim.spot.moves) :], *final.moves)
    numbers = {"gain": gain, "before": base.balance, "after": final.balance, "amount": amount}
    holds = least <= gain <= most
    if amount == "piece" and price is None and gain < clean:
        # something was given for it, but a piece it must be
        holds = holds and final.pieces - base.pieces >= clean
    because = (
        f"Before {title(loser)}'s {'mistake' if done else 'last move'} best play leaves {title(winner)} "
        f"{_balance(base.balance)}; at the end of this line he is {_balance(final.balance)}: {_change(gain)}."
    )
    if final.mated == loser:
        holds, because = True, f"The line ends in mate: {title(winner)} wins more than material."
    elif final.mated == winner:
        holds, because = False, f"The line ends in mate, and it is {title(winner)} who is mated."
    near = (
        1.0 if least - 1 <= gain < least else 100.0
    )  # a claim is not refused for one pawn at once
    if not holds:
        instead = (
            f"{title(winner)} gains {_pawns(gain)} here."
            if gain > 0
            else f"{title(winner)} gains no material here."
        )
        return Judgement(Outcome.FAILS, because, line, claim.spot, numbers, near, instead)
    if gain < clean and final.mated is None:
        because += f" {title(loser)} has something for it: the net gain is less than a piece."
    return Judgement(Outcome.HOLDS, because, line, claim.spot, numbers, near)


def _pawns(count: int) -> str:
    return f"{abs(count)} pawn{'s' if abs(count) != 1 else ''}"


def _balance(count: int) -> str:
    if count == 0:
        return "level"
    return f"{_pawns(count)} {'ahead' if count > 0 else 'behind'}"


def _change(gain: int) -> str:
    if gain == 0:
        return "nothing is gained"
    return f"a {'gain' if gain > 0 else 'loss'} of {_pawns(gain)}"


KIND = Kind(
    id="wins-material",
    title="Wins or loses material",
    version=3,
    definition=(
        "Material at the end of the line shown, continued by best play until no capture gains a pawn, against material at the end of best play from before the loser's last move: "
        "a pawn 1 or more, the exchange 1 to 2.5, a piece 2 or more (less than 2 but at least 1 holds with a note when a piece was won and pawns given for it), a rook 3, the queen 3 net; 'X for Y' within one pawn of the difference. 'For free' and 'for nothing': the whole value. 'By force' asks the position itself, not the line shown. Said of what has happened ('has won', 'has cost'), material now against best play from before any of the loser's last four moves."
    ),
    phrases=PHRASES,
    slots={"amount": _AMOUNTS, "loses": _LOSES, "price": _PRICES},
    vocabulary=frozenset(
        [
            "wins",
            "win",
            "won",
            "winning",
            "loses",
            "lose",
            "losing",
            "lost",
            "costs",
            "cost",
            "costing",
            "gains",
            "gain",
            "gained",
            "picks",
            "picking",
            "pick",
            "netting",
            "nets",
            "falls",
            "drops",
            "goes",
            "gone",
            "blunders",
            "hangs",
            "drop",
            "collects",
            "emerges",
            "sheds",
            "throws",
            "gives",
        ]
    ),
    read=read,
    check=check,
)
