"""What happens if a side does nothing."""

from __future__ import annotations

from typing import Any

from lineproof.claims.amounts import LEAST
from lineproof.claims.bands import edge_of_two
from lineproof.claims.board import other, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import SAFE
from lineproof.claims.frame import SLOTS
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.passing import Gain, gained, parsed
from lineproof.claims.phrase import SHARED

_IDLE = (
    "(does nothing|do nothing|does nothing about it|do nothing about it|does nothing special|do nothing special|passes|pass|ignores it|ignore it|ignores this|ignore this|ignores the threat|ignore the threat|"
    "overlooks it|overlook it|overlooks this|overlook this|overlooks the threat|waits|wait|sits still|sit still|does not react|do not react|does not reply|do not reply|does not respond|do not respond|does not answer|do not answer|"
    "plays a waiting move|play a waiting move|plays a quiet move|makes a waiting move|make a waiting move|wastes time|waste time|wastes a move|waste a move|wastes a tempo|waste a tempo|plays slowly|play slowly|makes a pass|goes to sleep)"
)
_LEFT = (
    "(left alone|left to himself|left to itself|left unhindered|unhindered|if left alone|if left unhindered|given time|if given time|given a free move|with a free move|if given a free move|given another move|with another move|if nothing is done|if nothing happens|if ignored|if allowed|unchecked|left unchecked|if left unchecked|"
    f"(if|when|should|in case) {{idle}} [now|here|simply|just] {_IDLE} [now|here])"
)
PHRASES = (
    f"{_LEFT} [,] [then] [{{side}}] <play/go> {{move}}",
    f"{_LEFT} [,] [then] {{move}} <follow/come>",
    f"{_LEFT} [,] [then] {{move}} <win> {{amount}}",
    f"{_LEFT} [,] [then] {{side}} <win/pick up/net/take> {{amount}} [with {{move}}]",
    f"{_LEFT} [,] [then] {{side}} <take> on {{square}}",
    f"{{side}} <play/go> {{move}} {_LEFT}",
    f"{{side}} <win/pick up/net> {{amount}} [with {{move}}] {_LEFT}",
    f"{{side}} <take> on {{square}} {_LEFT}",
    f"{{move}} <follow/come> {_LEFT}",
    f"{{move}} <win> {{amount}} {_LEFT}",
    "(otherwise|or else) [,] {side} <play/go> {move}",
)  # fmt: skip

_AMOUNTS: dict[str, Any] = {
    **dict.fromkeys(("material", "some material"), "material"),
    **dict.fromkeys(("a pawn", "the pawn", "another pawn"), "pawn"),
    **dict.fromkeys(("a piece", "the piece", "a whole piece", "a knight", "a bishop"), "piece"),
    **dict.fromkeys(("the exchange", "an exchange"), "exchange"),
    **dict.fromkeys(("a rook", "the rook", "a whole rook"), "rook"),
    **dict.fromkeys(("the queen", "his queen", "our queen", "her queen", "your queen"), "queen"),
}  # fmt: skip
PROFIT = 5
"""Points that a move after the pass gains at least over best play without it (common practice)."""


FRAMES = (
    "[{side}] <play/push/capture> {move} ; passed=yes",
    "[{side}] <move/play/push> (with|to) {move} ; passed=yes",
    "{first} <follow/come/be> [next] ; passed=yes",
    "{first} <=> next ; passed=yes",
    "[{side}] <win> {won} [(with|by) {move}] ; passed=yes",
    "[{side}] <capture> (on|at) {square} ; passed=yes",
)
"""Said of the move after "if Black does nothing", "let White pass and"."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if "passed" in slots:
        if here.idle is None:
            raise Unread("nobody has been let pass")
        if verb is not None and (verb.negated or verb.modal in {"can", "may", "might", "could"}):
            raise Unread("it is not said to follow")
        here = here.at(here.idle)
        if "first" in slots:
            slots["move"] = slots["first"].split()[0]
        if "won" in slots:
            slots["amount"] = _AMOUNTS.get(slots["won"])
    if verb is not None and verb.past:
        raise Unread("said of an earlier moment")
    idler = here.board.turn
    if "idle" in slots and here.side(slots["idle"]) != idler:
        raise Unread("the side that would do nothing is not to move")
    side = here.side(slots["side"]) if "side" in slots else other(idler)
    if side == idler:
        raise Unread("it is that side's own move")
    move, square = slots.get("move"), slots.get("square")
    free = here.spot.passed()
    if free is not None and move is not None and parsed(free, move) is None:
        raise Unread(f"{move} cannot be played after a pass")
    if square is not None and here.board.piece_at(square) is None:
        raise Unread(f"nothing stands on {square}")
    return [here.claim(KIND.id, side, move=move, amount=slots.get("amount"), square=square)]


def check(claim: Claim, ask: Ask) -> Judgement:
    side, spot = claim.side or "white", claim.spot
    opponent, amount = title(other(side)), claim.params["amount"]
    free = spot.passed()
    if free is None:
        because = f"{opponent} is in check and cannot pass."
        return Judgement(Outcome.UNSETTLED, because)
    gain = gained(ask, spot, side, _allowed(claim, free.board.legal_moves()))
    if gain is None:
        because = f"If {opponent} passes, {title(side)} cannot play it."
        return Judgement(Outcome.FAILS, because, (), free, instead=because)
    least = LEAST[amount][0] if amount is not None else None

    def holds(points: int, base: int) -> bool:
        if gain.mates:
            return True
        if least is not None:
            return gain.wins(amount, least)
        return gain.best - points <= SAFE and points - base >= PROFIT

    said = holds(gain.points, gain.base)
    near = 100.0 if gain.mates else edge_of_two(gain.points, gain.base, holds)
    if least is not None and least - 1 <= gain.material < least:
        near = 1.0
    because = f"If {opponent} passes, {gain.san} {_spoken(gain)}."
    numbers = {"material": gain.material, "points": gain.points, "without the pass": gain.base}
    return Judgement(
        Outcome.HOLDS if said else Outcome.FAILS, because, gain.line, free, numbers, near,
        None if said else because, marks=(Mark("move", (gain.uci[:2], gain.uci[2:4]), side),),
    )  # fmt: skip


def _allowed(claim: Claim, legal: list[str]) -> list[str] | None:
    free = claim.spot.passed()
    if claim.params["move"] is not None and free is not None:
        uci = parsed(free, claim.params["move"])
        return [] if uci is None else [uci]
    if claim.params["square"] is not None:
        return [m for m in legal if m[2:4] == claim.params["square"]]
    return None


def _spoken(gain: Gain) -> str:
    if gain.mates:
        return "mates" if len(gain.line) == 1 else "leads to mate"
    worth = "wins no material" if gain.material < 1 else f"wins material worth {gain.material}"
    more = gain.points - gain.base
    said = f"{worth} and {'gains' if more >= 0 else 'loses'} {abs(more)} points over best play without the pass"
    short = gain.best - gain.points
    return said + (f"; another move is {short} points better" if short > SAFE else "")


KIND = Kind(
    id="pass-consequence",
    title="What happens after a pass",
    version=1,
    definition=(
        "If the opponent passes, the move named is sensible (costs at most 5 points) and leaves its side at least 5 points better than best play without the pass, or mates; "
        "where an amount of material is named, best play after the pass wins that amount. Not asked of a side in check."
    ),
    formula=f"gain = points(after the pass) - points(without it); holds: cost <= {SAFE} and gain >= {PROFIT}, or mate, or the amount named is won",
    phrases=PHRASES,
    frames=FRAMES,
    tests={
        "first": lambda n: n.text if n.type in {"move", "square"} else None,
        "won": lambda n: SLOTS["amount"](n) if SLOTS["amount"](n) in _AMOUNTS else None,
    },
    slots={"amount": _AMOUNTS},
    patterns={"idle": SHARED["side"]},
    vocabulary=frozenset(
        ["left", "alone", "unhindered", "unchecked", "given", "free", "nothing", "passes", "pass", "ignored", "ignores", "ignore", "overlooks", "overlook", "waits", "wait", "react", "reply", "respond", "answer", "waiting", "quiet", "waste", "wastes", "slowly", "otherwise", "else", "another", "allowed", "sleep", "still"]
    ),
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
