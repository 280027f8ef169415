"""Sacrifices: material offered that can be taken."""

from __future__ import annotations

from typing import Any

from lineproof.claims.amounts import LEAST, LETTERS_OF, WORTH, Amount, pawns
from lineproof.claims.board import VALUES, material, name, other, side_of, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.exchange import exchange, taken_by
from lineproof.claims.gain import settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.played import doer, played
from lineproof.claims.showing import shortest

BACK = 4
"""Moves of the giver that are looked back for what has been sacrificed."""

_NOUNS: dict[str, str] = {
    "sacrifice": "material", "pawn sacrifice": "pawn", "piece sacrifice": "piece", "knight sacrifice": "knight", "bishop sacrifice": "bishop", "rook sacrifice": "rook", "queen sacrifice": "queen", "exchange sacrifice": "exchange",
    "pawn offer": "pawn", "piece offer": "piece", "sacrifice of a pawn": "pawn", "sacrifice of a piece": "piece", "sacrifice of a knight": "knight", "sacrifice of a bishop": "bishop", "sacrifice of a rook": "rook",
    "sacrifice of the exchange": "exchange", "sacrifice of the queen": "queen", "gambit": "pawn", "sac": "material",
}  # fmt: skip


def sacrificed(noun: Noun) -> str | None:
    """ "A knight sacrifice": what is given, "material" where it is not said."""
    if noun.head not in NOUNS["sacrifice"] or noun.plural:
        return None
    given = ("pawn", "knight", "bishop", "rook", "queen", "piece", "exchange")
    return next((a for a in noun.adjectives if a in given), "material")


_RETURNS = frozenset({"development", "lead", "tempo", "attack", "initiative", "activity", "centre", "space", "play", "compensation", "file", "time", "move"})  # fmt: skip
"""What material is given for, when it is no material."""
FRAMES = (
    "[{agent}] <sacrifice> {amount} [for {price}] [on {square}] [with {move}]",
    "[{agent}] <sacrifice> {side} {amount} [for {price}] [on {square}] [with {move}]",
    "[{agent}] <give/let> {amount} for {returns}",
    "[{agent}] <fling_in> {amount} [+away] [on {square}] [with {move}] if without=to|as|for|behind active",
    "{noun} <come/follow/begin/start> [+now|next|here] ; coming=yes",
    "{agent} <leave/put/place> {amount} hanging [on {square}] if active",
    "{agent} <leave> {amount} on_offer [on {square}] if active",
    "sacrifice of {amount} <=> looming|hanging on {square} ; coming=yes",
    "{noun} <=> looming|hanging on {square} ; coming=yes",
    "{amount} <=> on offer",
    "[{agent}] <sacrifice> on {square}",
    "{played} <=> {noun}",
    "{played} <=> sacrifice of {amount}",
    "<=> sacrifice of {amount} if verbless",
    "<=> {noun} if verbless",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    amount = Amount.read(slots["amount"]) if "amount" in slots else _noun(slots)
    square = slots.get("square") or amount.square
    verb = slots.get("verb")
    if verb is not None and verb.modal == "must":
        raise Unread("what one must give is lost")
    if "price" in slots and WORTH.get(Amount.read(slots["price"]).name, 0) >= WORTH.get(
        amount.name, 0
    ):
        raise Unread("what is given is worth no more than what is had for it")
    tried: tuple[Spot, ...]
    done = verb is not None and verb.done and "played" not in slots
    if "played" in slots:
        said = slots["played"]
        move = played(here, "this" if said in {"it", "which"} else said)  # no piece is a sacrifice
        side, tried = move.side, (move.after,)
    elif "coming" in slots and square:
        tried = _landing(here, square, amount)
        side = other(tried[0].board.turn) if tried else here.board.turn
    elif "coming" in slots and here.shown_next is not None:
        side, tried = here.board.turn, (here.spot.play(here.shown_next),)
    elif "move" in slots:
        move = here.named(slots["move"])
        side, tried = move.side, (move.after,)
        if "agent" in slots and doer(here, slots["agent"]).side != side:
            raise Unread("the move is not that side's")
    else:
        agent = doer(here, slots.get("agent"))
        side = agent.side
        if "agent" not in slots and here.subject is None and done:
            side = _poorer(here, side)  # "the f-pawn has been sacrificed"
        tried = (agent.move.after,) if agent.move else _moments(here, agent.spot, side)
    if not tried:
        raise Unread("there is no move of that side to speak of")
    return [
        here.claim(
            KIND.id, side, spot=tried[0], amount=amount.name, letters=amount.letters,
            square=square, done=done, moments=tried,
        )
    ]  # fmt: skip


def _landing(here: Here, square: str, amount: Amount) -> tuple[Spot, ...]:
    """The position after the one move that gives an amount on a square, of the side to move or else of the other."""
    for spot in (here.spot, here.spot.passed()):
        board = spot.board if spot is not None else here.board
        ways = [
            m
            for m in board.legal_moves()
            if m[2:4] == square and (board.piece_at(m[:2]) or "").lower() in amount.letters
        ]
        if spot is not None and len(ways) == 1:
            return (spot.play(ways[0]),)
    return ()


def _noun(slots: dict[str, Any]) -> Amount:
    if "noun" not in slots:
        return Amount("material", LETTERS_OF["material"])
    word = slots["noun"]
    return Amount.read(f"the {word}" if word != "material" else "material")


def _poorer(here: Here, side: str) -> str:
    """Whose sacrifice it is when nobody is named: that of the side behind in material, else of the one given."""
    balance = material(here.board, "white")
    return side if balance == 0 else "white" if balance < 0 else "black"


def _moments(here: Here, spot: Spot, side: str) -> tuple[Spot, ...]:
    """The positions after the side's move that may be the sacrifice: the one shown next, the last one played."""
    found: list[Spot] = []
    if spot.board.turn == side:
        following = here.shown_next if spot.moves == here.spot.moves else None
        if following is not None:
            found.append(spot.play(following))
        if len(spot.moves) > 1:
            found.append(spot.earlier(1))
    elif spot.moves:
        found.append(spot)
    return tuple(found)


def check(claim: Claim, ask: Ask) -> Judgement:
    side, amount = claim.side or "white", claim.params["amount"]
    moments: tuple[Spot, ...] = claim.params["moments"]
    if claim.params["done"]:
        moments = (*moments, *_past(claim.spot, side))
    best: tuple[int, str, Spot] | None = None
    for spot in moments:
        for at, net in _offers(spot, side):
            if _fits(claim, spot, side, at, net) and (best is None or net > best[0]):
                best = net, at, spot
    if best is not None:
        net, at, spot = best
        what = name(spot.board, at)
        san = spot.earlier(1).board.san(spot.moves[-1])
        because = f"After {san} {title(other(side))} can take {what}: {pawns(net)} by exchanges on {at} alone."
        second, line = _worth_it(ask, spot, side, at)
        return Judgement(
            Outcome.HOLDS, because, line, spot, {"offered": net}, marks=(Mark("square", (at,), side),),
            second=second,
        )  # fmt: skip
    down = -material(claim.spot.board, side)
    if claim.params["done"] and down >= LEAST[amount][0] and claim.params["square"] is None:
        because = f"{title(side)} is {pawns(down)} behind on the board."
        return Judgement(Outcome.HOLDS, because, (), claim.spot, {"behind": down})
    said = str(Amount(amount, ""))
    because = f"{title(side)} does not offer {said}{_on(claim)}: none can be taken with gain."
    if amount == "queen":
        because = (
            f"{title(side)} does not offer the queen{_on(claim)}: it cannot be taken with gain."
        )
    return Judgement(Outcome.FAILS, because, (), claim.spot, {}, instead=because)


def _on(claim: Claim) -> str:
    return f" on {claim.params['square']}" if claim.params["square"] else ""


def _past(spot: Spot, side: str) -> list[Spot]:
    """The positions after the side's last moves."""
    found = [spot.earlier(n) for n in range(len(spot.moves))]
    return [at for at in found if at.board.turn != side][:BACK]


def _offers(spot: Spot, side: str) -> list[tuple[str, int]]:
    """Squares of the side's pieces that the other may take with gain, and the net gain in pawns.

    What the move itself has taken is taken off.
    """
    board = spot.board
    took = taken_by(spot.earlier(1).board, spot.moves[-1]) if spot.moves else 0
    found = [
        (at, exchange(board, at, other(side)) - took)
        for at, letter in board.pieces()
        if side_of(letter) == side and letter.lower() != "k"
    ]
    return [(at, net) for at, net in found if net >= 1]


def _fits(claim: Claim, spot: Spot, side: str, at: str, net: int) -> bool:
    amount, square = claim.params["amount"], claim.params["square"]
    letter = (spot.board.piece_at(at) or "").lower()
    if square is not None and at != square:
        return False
    if letter not in claim.params["letters"]:
        return False
    if amount in {"two pawns", "three pawns"}:  # one by one: what was given before counts
        return net + max(0, -material(spot.earlier(1).board, side)) >= WORTH[amount]
    if amount == "exchange":
        return 1 <= net <= 2
    return net >= min(LEAST[amount][0], VALUES[letter])


def _worth_it(ask: Ask, spot: Spot, side: str, at: str) -> tuple[str | None, tuple[str, ...]]:
    """The second finding: what is left of the sacrifice when it is taken and both go on with best play; and the line that shows it."""
    takes = [m for m in spot.board.legal_moves() if m[2:4] == at]
    best = ask.best(spot, without=[m for m in spot.board.legal_moves() if m not in takes])
    if best is None:
        return None, ()
    before = material(spot.earlier(1).board, side)
    count = settled(ask, spot.play(best.moves[0]), side)
    moves = (best.moves[0], *count.moves)
    if count.mated == other(side):
        mating = ask.best(count.spot)
        line = (*moves, *(mating.moves if mating is not None else ()))
        return f"It is a sham sacrifice: taken, it ends in mate for {title(side)}.", line
    lost = before - count.balance
    if lost <= 0:
        taken = material(spot.play(best.moves[0]).board, "white")
        line = shortest(spot, moves, before=taken)
        return "It is a sham sacrifice: taken, the material comes back with best play.", line
    line = shortest(spot, moves)
    return (
        f"It is a real sacrifice: taken, it costs {title(side)} {pawns(lost)} with best play.",
        line,
    )


KIND = Kind(
    id="sacrifices",
    title="Sacrifices",
    version=1,
    definition=(
        "After the move (the one shown next, or just played) the opponent may take a piece of that amount with gain, counted by exchanges on its square alone, less what the move itself took: a pawn or a piece 1, the exchange 1 to 2, a rook and the queen 3. "
        "'Has sacrificed' also holds when the side is so much behind on the board. Whether best play wins it back (a sham sacrifice) is a second finding."
    ),
    formula="offered = exchange(square) - what the move took; holds: offered >= the amount (pawn and piece 1, exchange 1 to 2, rook and queen 3)",
    source="sham and real sacrifice: Spielmann, The Art of Sacrifice in Chess (from memory); exchanges on one square: Chess Programming Wiki, Static Exchange Evaluation; amounts: common practice",
    slots={
        "noun": _NOUNS,
    },
    frames=FRAMES,
    gives_way=frozenset({"exchange", "gives-back"}),
    tests={
        "noun": sacrificed,
        "returns": lambda n: n.text if n.type == "noun" and n.head in _RETURNS else None,
    },
    read=read,
    check=check,
    flips=True,
)
