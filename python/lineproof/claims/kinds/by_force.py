"""Results that cannot be avoided: mate, or the loss of material."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from lineproof.claims.amounts import LEAST, Amount, pawns
from lineproof.claims.board import material, other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, GameOver, Judgement, Outcome, Spot
from lineproof.claims.deed import deed
from lineproof.claims.gain import settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import doer, played
from lineproof.claims.showing import shortest
from lineproof.claims.slot import SLOTS
from lineproof.engine import Line

_DEFENCES = frozenset(
    ["defence", "way", "way out", "answer", "remedy", "escape", "cure", "antidote", "reply", "protection", "help"]
)  # fmt: skip
"""Nouns which, denied, say that something cannot be averted."""


FRAMES = (
    "[{anything}] <avert> mate if modal=can negated",
    "{nobody} <avert> mate",
    "<have/be to avert> mate ; turned=yes",
    "[{anything}] <~> {none} (against|to|from|for) mate",
    "mate <=> unavoidable",
    "[{anything}] <avert> loss of {amount} if modal=can negated",
    "{nobody} <avert> loss of {amount}",
    "loss <=> unavoidable of {amount}",
    "{side} <avert to lose> {amount} ; turned=yes",
    "[{anything}] <salvage/hold/keep/hang on to/hold on to> {thing} if modal=can negated",
    "<have/be to rescue> {thing} ; turned=yes",
    "{thing} <=> doomed",
    "{side} <win> +by_force",
    "{nobody} <salvage> {thing}",
    "{act} <lose> +by_force if lone",
    "{pointer} <=> {all_forced}",
    "{pointer} <=> (inevitable|inescapable|unstoppable)",
    "[{side}] <prevent/get_away_from/get_round> {pointer} if modal=can negated",
    "[{anything}] <~> {none} (round|around|past) {pointer}",
    "{winner} <win> +by_force if lone",
    "[{side}] <parry/wriggle_out_of/deal_with/cope_with/ward_off/fend_off/stop> {pointer} if modal=can negated",
    "[{anything}] <~> {none} (against|to|from|for|out_of) {pointer}",
    "<have/be to parry/wriggle_out_of/deal_with/cope_with/ward_off/fend_off/stop> {pointer} ; turned=yes",
    "{side} <do> {nil} (about|against) {pointer} if modal=can negated",
    "<have/be to do> (about|against) {pointer} ; turned=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    denied = verb is not None and verb.negated
    turned = denied and "turned" in slots
    if verb is not None and verb.past:
        raise Unread("said of an earlier position")
    if "turned" in slots and not denied:
        raise Unread("what can be avoided is not forced")
    side = here.side(slots["side"]) if "side" in slots else None
    text = slots.get("amount", slots.get("thing"))
    if "act" in slots:
        move = played(here, slots["act"])
        return [_claim(here.at(move.after), "win", move.side, None, None, turned)]
    if "winner" in slots:
        return [_claim(here, "win", other(doer(here, slots["winner"]).side), None, None, turned)]
    if "all_forced" in slots:
        return [_claim(here, "something", None, None, None, turned)]
    if "pointer" in slots:
        return [_claim(here, "something", side, None, None, turned)]
    if text is not None:
        amount = Amount.read(text)
        owner = side
        if owner is None and slots.get("anything") is not None:
            with suppress(Unread):
                owner = here.side(slots["anything"])
        if owner is None:
            owner = _loser(here, text, amount)
        return [_claim(here, "material", owner, amount.name, amount.square, turned)]
    if side is not None:
        return [_claim(here, "win", other(side), None, None, turned)]
    loser: str | None = None
    with suppress(Unread):
        if slots.get("anything") is not None:
            loser = here.side(slots["anything"])
    return [_claim(here, "mate", loser, None, None, turned)]


def _claim(
    here: Here, what: str, loser: str | None, amount: str | None, square: str | None, turned: bool
) -> Claim:
    # "there is no way to avoid it" denies the avoiding, and so affirms the result; the reader turns the denial round once
    return here.claim(
        KIND.id, None, negated=turned, what=what, loser=loser, amount=amount, square=square
    )


def beside(here: Here, loser: str, amount: Amount) -> Claim:
    """The claim of "by force" in "wins a pawn by force", which stands beside that of the pawn."""
    return here.claim(
        KIND.id, None, what="material", loser=loser, amount=amount.name, square=amount.square, beside=True
    )  # fmt: skip


def _loser(here: Here, text: str, amount: Amount) -> str | None:
    if amount.square is not None:
        letter = here.board.piece_at(amount.square)
        if letter is None or letter.lower() not in amount.letters:
            raise Unread(f"there is no such piece on {amount.square}")
        return "white" if letter.isupper() else "black"
    found = here.find(text)
    sides = {("white" if (here.board.piece_at(at) or "").isupper() else "black") for at in found}
    if len(found) == 1 and len(sides) == 1:
        return sides.pop()
    if len(found) == 2 and len(sides) == 2 and amount.name == "queen":
        return None  # one each: the side that stands worse loses it
    raise Unread("it is not clear who loses it")


def _worse_off(spot: Spot, line: Line | None) -> str:
    """Who is meant by "mate cannot be avoided" when no side is named: the one that stands worse."""
    if line is None:
        return spot.board.turn
    return "black" if line.points >= 50 else "white"


def check(claim: Claim, ask: Ask) -> Judgement:
    what = claim.params["what"]
    spot = claim.spot
    line = ask.best(spot)
    loser: str = claim.params["loser"] or _worse_off(spot, line)
    winner = other(loser)
    if line is None:
        if spot.board.is_checkmate:
            mated = spot.board.turn == loser
            because = f"{title(spot.board.turn)} is mated."
            return Judgement(Outcome.HOLDS if mated else Outcome.FAILS, because, (), spot, {}, instead=None if mated else because)  # fmt: skip
        raise GameOver("the game is over")
    mates = line.mate is not None and (line.mate > 0) == (winner == "white")
    if mates and line.mate is not None:
        because = f"{title(winner)} mates in {abs(line.mate)}, whatever {title(loser)} plays."
        return Judgement(Outcome.HOLDS, because, line.moves, spot, {"mate in": abs(line.mate)})
    points = line.points if winner == "white" else 100 - line.points
    if what == "mate":
        because = f"No forced mate was found: {title(winner)} scores {points} of 100."
        return Judgement(
            Outcome.UNSETTLED if points >= 85 else Outcome.FAILS, because, shortest(spot, line.moves, most=SHOWN), spot, {"points": points}, 1.0 if points >= 85 else None,
            f"{title(loser)} can avoid mate.",
        )  # fmt: skip
    if what == "win":
        because = f"{title(winner)} scores {points} of 100 with best play."
        holds = points >= 85
        return Judgement(
            Outcome.HOLDS if holds else Outcome.FAILS, because, shortest(spot, line.moves, most=SHOWN), spot, {"points": points}, float(abs(points - 85)),
            None if holds else because,
        )  # fmt: skip
    now = material(spot.board, loser)
    final = settled(ask, spot, loser)
    lost = now - final.balance
    if what == "something":
        holds = lost >= 1 or points >= 85
        because = f"With best play {title(loser)} loses {pawns(lost) if lost > 0 else 'no material'}; {title(winner)} scores {points} of 100."
        return Judgement(
            Outcome.HOLDS if holds else Outcome.FAILS, because, shortest(spot, final.moves), spot, {"lost": lost, "points": points},
            float(abs(points - 85)), None if holds else because,
        )  # fmt: skip
    least = LEAST[claim.params["amount"]][1]
    holds = lost >= least
    said = str(Amount(claim.params["amount"], ""))
    because = f"With best play {title(loser)} loses {pawns(lost) if lost > 0 else 'nothing'}."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS, because, shortest(spot, final.moves), spot, {"lost": lost}, 1.0 if least - 1 <= lost < least else 100.0,
        None if holds else f"{title(loser)} can avoid losing {said}.",
    )  # fmt: skip


KIND = Kind(
    id="by-force",
    title="By force",
    version=2,
    definition=(
        "Best play from the position itself, not the line shown, brings the result about: a forced mate; a loss of the amount named (pawn 1, exchange 1, piece 2, rook and queen 3) when no capture gains a pawn any more; a win, 85 points or more. Where the words say only that nothing can be done about it: the loss of a pawn at least, or a win. "
        "A mate of which no forced line is found is unsettled where the side scores 85 or more."
    ),
    formula="lost = material(here) - material(end of best play); holds: lost >= the amount, or points(winner) >= 85, or a forced mate",
    frames=FRAMES,
    tests={
        "thing": SLOTS["amount"],
        "none": lambda n: n.head if n.no and n.head in _DEFENCES else None,
        "nil": lambda n: n.text if n.no or n.head == "anything" else None,
        "winner": lambda n: n.text if n.type in {"move", "pronoun"} else None,
        "act": lambda n: deed(n) if n.type != "pronoun" else None,
        "all_forced": lambda n: n.text if n.head == "forced" and "all" in n.text.split() else None,
        "pointer": lambda n: n.text if n.head in {"it", "this", "that"} else None,
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)
