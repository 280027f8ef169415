"""Results that cannot be avoided: mate, or the loss of material."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.amounts import AMOUNT, LEAST, Amount, pawns
from lineproof.claims.board import material, other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, GameOver, Judgement, Outcome, Spot
from lineproof.claims.gain import settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.showing import shortest
from lineproof.engine import Line

PHRASES = (
    "(mate|checkmate|the mate) <be:avoid/prevent/stop/parry/avert/escape> [any more|any longer|now]",
    "(mate|checkmate|the mate) <be> [{very}] {certain} [now]",
    "(nothing|nobody|no move|no defence) (can|will) (stop|prevent|avoid|parry|avert) (mate|checkmate|the mate)",
    "nothing (stops|prevents) (mate|checkmate|the mate)",
    "(there is|there 's) [{very}] (no way to|no way of|nothing to|no) (stop|stopping|prevent|preventing|avoid|avoiding|parry|parrying|defence against|escape from|remedy against|answer to) (mate|checkmate|the mate)",
    "{side} can [{very}] (not|no longer) (stop|prevent|avoid|parry|avert|escape) (mate|checkmate|the mate)",
    "{side} <have> no (defence against|way to stop|way to prevent|way to avoid|answer to) (mate|checkmate|the mate)",
    "{side} can [{very}] (not|no longer) (avoid|prevent|avert|escape) (the loss of|losing) {amount}",
    "{side} can [{very}] (not|no longer) (save|hold|keep|rescue) {thing}",
    "the loss of {amount} <be> [{very}] {certain}",
    "the loss of {amount} <be:avoid/prevent/avert/stop> [any more|any longer|now]",
    "{thing} <be:save/hold/keep/rescue/defend> [any more|any longer|now]",
    "{side} [{very}] <win> by force",
)
_CERTAIN = ("unavoidable", "inevitable", "certain", "unstoppable", "forced", "only a matter of time", "a matter of time", "avoidable", "inescapable")  # fmt: skip


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    said = here.said
    verb = slots.get("verb")
    if slots.get("certain") == "avoidable" and not (verb is not None and verb.negated):
        raise Unread("what can be avoided is not forced")
    doubtful = _AVOID.search(said) is not None
    if doubtful and not (verb is not None and verb.negated) and not _NO.search(said):
        raise Unread("what can be avoided is not forced")
    claimed = _win(here, slots) if " by force" in said and "side" in slots else None
    if claimed is not None:
        return [claimed]
    if "mate" in said:
        loser = here.side(slots["side"]) if "side" in slots else None
        return [_claim(here, "mate", loser, None, None, doubtful, verb)]
    text = slots.get("amount", slots.get("thing"))
    if text is None:
        raise Unread("it is not said what cannot be avoided")
    amount = Amount.read(text)
    loser = _loser(here, slots, text, amount)
    return [_claim(here, "material", loser, amount.name, amount.square, doubtful, verb)]


_AVOID = re.compile(r"\b(?:avoid|avoided|prevent|prevented|stop|stopped|stops|prevents|parry|parried|avert|averted|escape|escaped|avoidable|save|saved|hold|held|keep|kept|rescue|rescued|defend|defended)\b")  # fmt: skip
_NO = re.compile(r"\b(?:not|no|nothing|nobody|cannot)\b|n['’]t\b")


def _claim(
    here: Here, what: str, loser: str | None, amount: str | None, square: str | None, doubtful: bool, verb: Any
) -> Claim:  # fmt: skip
    # "cannot be avoided" denies the avoiding, and so affirms the result; the reader turns the denial round once
    turned = doubtful and verb is not None and verb.negated
    return here.claim(
        KIND.id, None, negated=turned, what=what, loser=loser, amount=amount, square=square
    )


def _win(here: Here, slots: dict[str, Any]) -> Claim | None:
    side = here.side(slots["side"])
    what = "mate" if "mate" in here.said else "win"
    return here.claim(KIND.id, None, what=what, loser=other(side), amount=None, square=None)


def _loser(here: Here, slots: dict[str, Any], text: str, amount: Amount) -> str:
    if "side" in slots:
        return here.side(slots["side"])
    if amount.square is not None:
        letter = here.board.piece_at(amount.square)
        if letter is None or letter.lower() not in amount.letters:
            raise Unread(f"there is no such piece on {amount.square}")
        return "white" if letter.isupper() else "black"
    found = here.find(text)
    sides = {("white" if (here.board.piece_at(at) or "").isupper() else "black") for at in found}
    if len(found) == 1 and len(sides) == 1:
        return sides.pop()
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
    version=1,
    definition=(
        "Best play from the position itself, not the line shown, brings the result about: a forced mate; a loss of the amount named (pawn 1, exchange 1, piece 2, rook and queen 3) when no capture gains a pawn any more; a win, 85 points or more. "
        "A mate of which no forced line is found is unsettled where the side scores 85 or more."
    ),
    formula="lost = material(here) - material(end of best play); holds: lost >= the amount, or points(winner) >= 85, or a forced mate",
    phrases=PHRASES,
    patterns={"amount": AMOUNT, "thing": AMOUNT},
    slots={"certain": {k: k for k in _CERTAIN}},
    vocabulary=frozenset(
        [
            "avoid",
            "avoided",
            "prevent",
            "prevented",
            "stop",
            "stops",
            "stopped",
            "parry",
            "parried",
            "avert",
            "averted",
            "escape",
            "escaped",
            "unavoidable",
            "inevitable",
            "certain",
            "unstoppable",
            "matter",
            "avoidable",
            "inescapable",
            "defence",
            "remedy",
            "answer",
            "save",
            "saved",
            "hold",
            "held",
            "keep",
            "kept",
            "rescue",
            "rescued",
            "defend",
            "defended",
            "force",
            "forced",
            "prevents",
            "nothing",
            "loss",
        ]
    ),
    read=read,
    check=check,
    flips=True,
)
