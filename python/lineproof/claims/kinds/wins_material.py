"""Material won or lost in the line shown."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.amounts import LEAST, LETTERS_OF, MOST, WORTH, Amount, pawns
from lineproof.claims.board import material, other, side_of, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.deed import deed
from lineproof.claims.exchange import losing
from lineproof.claims.gain import Count, before_last_moves_of, counted, end_of_shown_line, settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.kinds import by_force
from lineproof.claims.played import doer
from lineproof.claims.reference import Reference
from lineproof.claims.showing import comes_to, shortest

BACK = 4
"""Moves of the loser that are looked back for what has already happened ("has won")."""


FRAMES = (
    "[{agent}] <win> {amount} [for {price}]",
    "{anything} <win/bring/earn> {side} {amount}",
    "{played} <give> {side} {amount}",
    "{deed} <cost> {side} {given}",
    "{deed} <cost> {given}",
    "{thing} <cost> {side} {given}",
    "[{agent}] <lose> {given} [for {price}]",
    "[{agent}] <lose> {given} to {anything}",
    "[{agent}] <sacrifice/fling_in> {given} if modal=must",
    "{fallen} <fall/drop> if without=in|into|on|to|onto|at|from|down",
    "<be:lose> {fallen}",
    "{fallen} <=> lost",
    "{side} <come_out/emerge/end_up/finish> {amount} +ahead|up|to_the_good ; ends=yes",
    "{fallen} <=> in bag|pocket|net",
    "{fallen} <=> won",
    "{fallen} <=> {ours}",
    "[{agent}] <win> {nil} ; amount=material",
    "[{agent}] <get> {amount} for {price}",
    "{pointer} <=> {amount} (to|for) {side} ; here=yes",
    "{pointer} <=> {amount} in bag|pocket|net",
    "{anything} <cost> {side} equivalent of {given}",
    "[{thing}] <cost> {given} ; costs=yes",
    "{fallen} <survive> if negated",
    "<be:salvage> {fallen} if negated",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    text = " ".join(here.said.split())
    said = slots.get("amount") or slots.get("given") or slots["fallen"]
    amount = Amount.read(said)
    if (
        "other"
        in f"{slots.get('agent', '')} {slots.get('thing', slots.get('anything', ''))}".split()
    ):
        raise Unread("it is said of other moves")
    verb = slots.get("verb")
    spot = here.spot
    if "ends" in slots and verb is not None and verb.done:
        raise Unread("it is said of the material on the board")
    if "deed" in slots:  # "a capture on d4 would cost Black his queen"
        agent = doer(here, slots["deed"])
        spot, winner = agent.spot, other(agent.side)
        if "side" in slots and here.side(slots["side"]) != agent.side:
            raise Unread("the move is not that side's")
    elif "costs" in slots:
        winner = other(here.last().side)
    elif "ours" in slots:
        winner = here.side({"ours": "we", "his": "he"}.get(slots["ours"], slots["ours"]))
    elif "fallen" in slots:
        winner = _taker(here, said, amount)
    elif "here" in slots:
        winner = here.side(slots["side"])
    elif "side" in slots:
        agent = doer(here, slots.get("agent", slots.get("played")))
        side, spot = here.side(slots["side"]), agent.spot
        winner = other(side) if re.search(r"\bcost", text) else side
    else:
        agent = doer(here, slots.get("agent"))
        spot = agent.spot
        winner = other(agent.side) if "given" in slots else agent.side
        balance = material(here.board, "white")
        if "agent" not in slots and here.subject is None and balance and _PASSIVE.search(text):
            winner = "white" if balance > 0 else "black"  # "a pawn has been won"
    for side, tail in (("white", "for white"), ("black", "for black")):
        if slots.get("tail") == tail and winner != side:
            raise Unread("it is not clear who wins it")
    price = Amount.read(slots["price"]).name if "price" in slots else None
    if price is not None and WORTH.get(amount.name, 0) - WORTH.get(price, 99) < 1:
        raise Unread("what is given is worth as much as what is won")
    done = verb is not None and verb.done
    if "fallen" in slots:
        done = done or _just_taken(here, amount)
    claim = here.claim(
        KIND.id,
        winner,
        spot=spot,
        amount=amount.name,
        force="by force" in text or (verb is not None and verb.modal == "can"),
        free=re.search(r"\bfor (?:free|nothing)\b", text) is not None,
        price=price,
        done=done or _PAST.search(text) is not None,
    )
    if "by force" in text and not (verb is not None and verb.negated):
        return [claim, by_force.beside(here.at(spot), other(winner), amount)]
    return [claim]


_PASSIVE = re.compile(
    r"\b(?:been|was|were|is|are) (?:\w+ )?(?:won|gained|netted|collected|bagged|pocketed)\b"
)
_PAST = re.compile(
    r"^(?!.*\b(?:is|are|be|was|were)\b).*\b(?:won|gained|lost|picked up|netted|collected|fell|dropped|blundered)\b"
)
"""Words of what has happened, as against "is lost"."""


def _taker(here: Here, text: str, amount: Amount) -> str:
    """Who wins a piece that "falls" or "is lost": its owner's opponent.

    :raises Unread: when the words do not say whose it is, and none such has just been taken.
    """
    reference = Reference.read(text)
    owner = here.owner(reference)
    if owner is None and amount.square is not None:
        letter = here.board.piece_at(amount.square)
        owner = side_of(letter) if letter else None
    if owner is not None:
        return other(owner)
    if _just_taken(here, amount):
        return here.mover
    owners = {side_of(p) for _, p in here.board.pieces() if p.lower() in amount.letters}
    if len(owners) == 1 and amount.letters in {"q", "r"}:
        return other(owners.pop())  # the only one that is left
    moved = here.spot.moves[-1][2:4] if here.spot.moves else None
    if moved is not None and (here.board.piece_at(moved) or "").lower() in amount.letters:
        return here.board.turn  # "with this capture the queen is lost": the one that has captured
    hanging = [
        side
        for side in ("white", "black")
        if any(
            (here.board.piece_at(at) or "").lower() in amount.letters
            for at in losing(here.board, side)
        )
    ]
    if len(hanging) == 1 and amount.letters in {"q", "r"}:
        return other(hanging[0])  # "and the queen falls": the one that can be taken
    if here.spot.moves != tuple(here.place.moves()):
        return here.board.turn  # the sentence has played moves, and now it is taken
    raise Unread(f"it is not clear whose {amount.name} is meant")


def _just_taken(here: Here, amount: Amount) -> bool:
    if not here.spot.moves:
        return False
    last = here.last()
    if amount.square not in (None, last.uci[2:4]):
        return False
    taken = (last.before.board.piece_at(last.uci[2:4]) or "").lower()
    return bool(taken) and taken in amount.letters


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
    line = _line(
        ask,
        claim.spot,
        (*shown.moves[len(claim.spot.moves) :], *final.moves),
        final,
        base.balance,
        winner,
    )
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
    falls = _does_fall(befores[0] if befores else claim.spot, final.spot, amount, winner)
    given = WORTH.get(amount, 0) - gain
    if final.mated is None and price is None and falls and gain < least:
        because += (
            f" The {amount} does fall, but {title(loser)} has the worth of {pawns(given)} for it: "
            f"to win {'the' if amount == 'queen' else 'a'} {amount} is a net gain of {pawns(int(least))} or more."
        )
    elif final.mated is None and price is None and amount in _BIG and holds and given > 1:
        because += f" It is not for nothing: {title(loser)} has the worth of {pawns(given)} for the {amount}."
    near = (
        1.0 if least - 1 <= gain < least else 100.0
    )  # a claim is not refused for one pawn at once
    if not holds:
        instead = (
            f"{title(winner)} gains {pawns(gain)} here."
            if gain > 0
            else f"{title(winner)} gains no material here."
        )
        if final.mated == winner:
            instead = f"The line ends with mate against {title(winner)}."
        elif claim.params["force"]:
            instead = instead.replace(" here.", " by force.")
        return Judgement(Outcome.FAILS, because, line, claim.spot, numbers, near, instead)
    if gain < clean and final.mated is None:
        because += f" {title(loser)} has something for it: the net gain is less than a piece."
    second = _falls(claim.spot, line, winner)
    return Judgement(Outcome.HOLDS, because, line, claim.spot, numbers, near, second=second)


_BIG = frozenset({"queen", "rook"})


def _does_fall(start: Spot, end: Spot, amount: str, winner: str) -> bool:
    """Whether the winner takes such a piece on the way from one position to a later one."""
    if amount not in {*_BIG, "piece"}:
        return False
    first = len(start.moves)
    taken = (
        (board.piece_at(uci[2:4]) or "").lower()
        for board, uci in zip(end.boards[first:], end.moves[first:], strict=False)
        if board.turn == winner
    )
    return any(letter and letter in LETTERS_OF[amount] for letter in taken)


def _line(
    ask: Ask, spot: Spot, moves: tuple[str, ...], final: Count, before: int, winner: str
) -> tuple[str, ...]:
    """The shortest line that shows the gain; to the mate where it mates."""
    if final.mated is not None:
        mating = ask.best(final.spot)
        moves = (*moves, *(mating.moves if mating is not None else ()))
    return shortest(spot, moves, before=before if winner == "white" else -before)


def _falls(spot: Spot, line: tuple[str, ...], winner: str) -> str | None:
    """What falls, the move that led here included where the winner has just taken."""
    if spot.moves and spot.board.turn != winner:
        spot, line = spot.earlier(1), (spot.moves[-1], *line)
    what = comes_to(spot, line, winner)
    return f"{what[0].upper()}{what[1:]}." if what else None


def _balance(count: int) -> str:
    if count == 0:
        return "level"
    return f"{pawns(count)} {'ahead' if count > 0 else 'behind'}"


def _change(gain: int) -> str:
    if gain == 0:
        return "nothing is gained"
    return f"a {'gain' if gain > 0 else 'loss'} of {pawns(gain)}"


KIND = Kind(
    id="wins-material",
    title="Wins or loses material",
    version=4,
    definition=(
        "Material at the end of the line shown, continued by best play until no capture gains a pawn, against material at the end of best play from before the loser's last move: "
        "a pawn 1 or more, the exchange 1 to 2.5, a piece 2 or more (less than 2 but at least 1 holds with a note when a piece was won and pawns given for it), a rook 3, the queen 3 net; 'X for Y' within one pawn of the difference. 'For free' and 'for nothing': the whole value. 'By force' asks the position itself, not the line shown. Said of what has happened ('has won', 'has cost'), material now against best play from before any of the loser's last four moves."
    ),
    formula="gain = material(end of the line shown) - material(end of best play from before the loser's last move), both continued until no capture gains a pawn; holds: the amount <= gain",
    frames=FRAMES,
    gives_way=frozenset({"by-force", "for-free", "regains", "gives-back"}),
    tests={
        "deed": lambda n: deed(n) if n.type != "pronoun" else None,
        "thing": lambda n: n.text if n.type == "pronoun" or deed(n) is None else None,
        "played": lambda n: n.text if n.type in {"move", "pronoun"} else None,
        "ours": lambda n: n.text if n.text in {"ours", "his", "white 's", "black 's"} else None,
        "pointer": lambda n: n.text if n.head in {"that", "this", "it"} else None,
        "nil": lambda n: n.text if n.head in {"nothing", "anything"} else None,
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)
